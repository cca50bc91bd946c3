// @ts-check
/**
 * The one door to the core: loads it, asks it, and knows when it is gone.
 *
 * A core that trapped may hold half a thought, so it is never asked again; the page says so.
 */

/** @typedef {import("./farthing.js")} Glue */
/** @typedef {"no_wasm" | "not_loaded" | "trapped"} Reason */

/** @type {Glue | null} */
let glue = null;
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

/** @param {Reason} reason */
function lose(reason) {
  glue = null;
  gone(reason);
  return false;
}

export const isAlive = () => glue !== null;

/**
 * Nothing comes back if the core is gone.
 * @param {"answer" | "moves" | "tables" | "shelf"} name
 * @param {object} record
 * @returns {any}
 */
function ask(name, record) {
  if (!glue) return null;
  try {
    return JSON.parse(glue[name](JSON.stringify(record)));
  } catch {
    lose("trapped");
    return null;
  }
}

/** @param {import("./records.js").Ask} record @returns {import("./records.js").Reply | null} */
export const answer = (record) => ask("answer", record);

/** @param {import("./records.js").MovesAsk} record @returns {import("./records.js").MovesReply | null} */
export const moves = (record) => ask("moves", record);

/** @type {import("./records.js").Tables | null} */
let known = null;

/** The units, currencies and limits of the core. @returns {import("./records.js").Tables | null} */
export const tables = () => (known ??= ask("tables", {}));

/** @param {Partial<import("./records.js").ShelfAsk>} wish @returns {import("./records.js").ShelfReply | null} */
export const shelf = (wish) => ask("shelf", wish);
