// @ts-check
/**
 * What goes into a glass on somebody's page: its own list, a file, or the page's recipe data.
 * All of it is text that the core reads; here it is only found.
 */

/** @typedef {Partial<Record<"name" | "currency" | "prices" | "method" | "part", string>> & { lines: string[] }} Recipe */

/** Characters of a file or of a page's data that are read: as many as of a pasted recipe. */
const MOST_TEXT = 100_000;

/** Lists within lists of a page's data: publishers nest two. */
const MOST_DEPTH = 5;

/** @type {("name" | "currency" | "prices" | "method" | "part")[]} */
const FIELDS = ["name", "currency", "prices", "method", "part"];

/** @param {Element} glass @returns {Promise<Recipe>} */
export async function recipeOf(glass) {
  const file = glass.getAttribute("src");
  if (file !== null) return recipeOfFile(file);
  const lines = [...glass.querySelectorAll("li")].map((item) => plain(ownText(item))).filter(Boolean);
  if (lines.length) return { name: plain(glass.querySelector("h1, h2, h3, h4, h5, h6")?.textContent ?? ""), lines };
  const called = glass.getAttribute("name");
  for (const script of document.querySelectorAll("script[type='application/ld+json']")) {
    const found = recipeIn(parsed(script.textContent ?? ""), called);
    if (found) return found;
  }
  throw new Error("no_lines");
}

/** What an item says without the lists within it, whose items are lines of their own. @param {Node} item @returns {string} */
const ownText = (item) => [...item.childNodes].map((node) => (node instanceof Text ? node.data : isList(node) ? " " : ownText(node))).join("");

/** @param {Node} node */
const isList = (node) => node instanceof HTMLUListElement || node instanceof HTMLOListElement;

/** Each file is fetched once, however many glasses it fills and however often a price changes. @type {Map<string, Promise<Recipe | null>>} */
const files = new Map();

/** @param {string} file */
async function recipeOfFile(file) {
  const coming = files.get(file) ?? fetched(file).catch(() => null);
  files.set(file, coming);
  const found = await coming;
  if (found) return found;
  // The next try may find it.
  files.delete(file);
  throw new Error("no_file");
}

/** @param {string} file */
async function fetched(file) {
  const reply = await fetch(new URL(file, document.baseURI), { credentials: "omit", referrerPolicy: "no-referrer" });
  return reply.ok ? recipeIn(parsed(await textOf(reply)), null) : null;
}

/** The text of a reply, read no further than a recipe may go. @param {Response} reply */
async function textOf(reply) {
  const [reader, decoder] = [reply.body?.getReader(), new TextDecoder()];
  let text = "";
  for (let part = await reader?.read(); part?.value; part = await reader?.read()) {
    text += decoder.decode(part.value, { stream: true });
    if (text.length > MOST_TEXT) return await reader?.cancel(), "";
  }
  return text;
}

/** @param {string} text @returns {unknown} */
function parsed(text) {
  try {
    return text.length > MOST_TEXT ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

/** @param {string} text */
const plain = (text) => text.replace(/\s+/g, " ").trim();

/** @param {any} value @returns {string[]} */
const texts = (value) => (Array.isArray(value) ? value : [value]).filter((one) => typeof one === "string").map(plain).filter(Boolean);

/**
 * The first recipe in data: an object of our own fields, or schema.org/Recipe, at the top, in a list or in `@graph`.
 * @param {any} data @param {string | null} called its name, where there may be several @returns {Recipe | null}
 */
function recipeIn(data, called, depth = 0) {
  if (typeof data !== "object" || data === null || depth > MOST_DEPTH) return null;
  const inside = Array.isArray(data) ? data : [data["@graph"], data.mainEntity];
  const isRecipe = texts(data["@type"]).some((type) => /(^|[/:#])Recipe$/.test(type));
  const lines = isRecipe ? texts(data.recipeIngredient) : Array.isArray(data) ? [] : texts(data.lines);
  if (lines.length && (called === null || plain(String(data.name ?? "")) === plain(called))) {
    /** @type {Recipe} */
    const found = { lines };
    for (const field of FIELDS) if (typeof data[field] === "string") found[field] = data[field];
    if (Array.isArray(data.prices)) found.prices = texts(data.prices).join("\n");
    return found;
  }
  for (const item of inside) {
    const found = recipeIn(item, called, depth + 1);
    if (found) return found;
  }
  return null;
}
