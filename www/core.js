// @ts-check
/**
 * The one door to the core: loads it, asks it, and knows when it is gone.
 *
 * A core that trapped may hold half a thought, so it is never asked again; the page says so.
 */

/** @typedef {import("./farthing.js")} Glue */
/** @typedef {import("./farthing-more.js")} MoreGlue */
/** @typedef {"no_wasm" | "not_loaded" | "trapped"} Reason */

/** @type {Glue | null} */
let glue = null;
/** @type {MoreGlue | null} */
let moreGlue = null;
/** @type {Promise<boolean> | null} */
let coming = null;
/** @type {(reason: Reason) => void} */
let gone = () => {};

/**
 * @param {(reason: Reason) => void} whenGone called once, when there is no core or none any more
 * @returns {Promise<boolean>} whether it can be asked
 */
export async function load(whenGone) {
  gone = whenGone;
  if (typeof WebAssembly !== "object") return lose("no_wasm");
  try {
    const loaded = await import("./farthing.js");
    await loaded.default({ module_or_path: new URL("farthing_bg.wasm", import.meta.url) });
    glue = loaded;
    return true;
  } catch {
    return lose("not_loaded");
  }
}

/** Loads what a first visit does without. @returns {Promise<boolean>} whether it can be asked; if not, it is tried again */
export const loadMore = () => (coming ??= bringMore());

async function bringMore() {
  try {
    const loaded = await import("./farthing-more.js");
    await loaded.default({ module_or_path: new URL("farthing-more_bg.wasm", import.meta.url) });
    moreGlue = loaded;
  } catch {
    coming = null;
  }
  return moreGlue !== null;
}

/** @param {Reason} reason */
function lose(reason) {
  glue = moreGlue = null;
  gone(reason);
  return false;
}

export const isAlive = () => glue !== null;

/**
 * Nothing comes back if the core is gone, or that part of it has not come yet.
 * @param {((text: string) => string) | undefined} question
 * @param {object} record
 * @returns {any}
 */
function ask(question, record) {
  if (!question) return null;
  try {
    return JSON.parse(question(JSON.stringify(record)));
  } catch {
    lose("trapped");
    return null;
  }
}

/** @param {import("./records.js").Ask} record @returns {import("./records.js").Reply | null} */
export const answer = (record) => ask(glue?.answer, record);

/** @param {import("./records.js").MovesAsk} record @returns {import("./records.js").MovesReply | null} */
export const moves = (record) => ask(moreGlue?.moves, record);

/** @param {import("./records.js").MeasureAsk} record @returns {import("./records.js").MeasureReply | null} */
export const measure = (record) => ask(moreGlue?.measure, record);

/** @param {import("./records.js").FactsAsk} record @returns {import("./records.js").FactsReply | null} */
export const facts = (record) => ask(moreGlue?.facts, record);

/** @param {import("./records.js").ShopAsk} record @returns {import("./records.js").ShopReply | null} */
export const shop = (record) => ask(moreGlue?.shop, record);

/** @param {import("./records.js").KeepingAsk} record @returns {import("./records.js").KeepingReply | null} */
export const keeping = (record) => ask(moreGlue?.keeping, record);

/** @param {import("./records.js").OffersAsk} record @returns {import("./records.js").OffersReply | null} */
export const offers = (record) => ask(moreGlue?.offers, record);

/** @param {import("./records.js").RecipeAsk} record @returns {import("./records.js").RecipeReply | null} */
export const recipe = (record) => ask(moreGlue?.recipe, record);

/** @param {import("./records.js").RecipeOutAsk} record @returns {import("./records.js").RecipeOutReply | null} */
export const recipeOut = (record) => ask(moreGlue?.recipe_out, record);

/** @param {import("./records.js").LinkAsk} record @returns {import("./records.js").LinkReply | null} */
export const link = (record) => ask(moreGlue?.link, record);

/** @param {import("./records.js").LinkedAsk} record @returns {import("./records.js").LinkedReply | null} */
export const linked = (record) => ask(moreGlue?.linked, record);

/** @type {import("./records.js").Tables | null} */
let known = null;

/** The units, currencies and limits of the core. @returns {import("./records.js").Tables | null} */
export const tables = () => (known ??= ask(glue?.tables, {}));

/** @param {Partial<import("./records.js").ShelfAsk>} wish @returns {import("./records.js").ShelfReply | null} */
export const shelf = (wish) => ask(glue?.shelf, wish);
