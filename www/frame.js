// @ts-check
/**
 * A glass in a frame, for pages that allow no script of others. What goes into it stands in the fragment
 * of the address, which no server sees: `#line=50+ml+rye+whisky&prices=…`. It tells its height to the
 * page around it, and nothing else.
 */

import { frameTrouble } from "./words-trouble.js";

/** The version of the fragment, and what it may carry besides lines. */
const VERSION = "1";
const FIELDS = ["currency", "kitchen", "locale", "method", "part", "prices", "show", "theme"];

/** Characters of a fragment: forty lines and their prices, written at length. */
const MOST_FRAGMENT = 16_000;

// A frame without an origin of its own knows no 'self' in some engines, so the origin is written out.
const policy = document.createElement("meta");
policy.httpEquiv = "Content-Security-Policy";
policy.content = `default-src 'none'; script-src ${location.origin} 'wasm-unsafe-eval'; connect-src ${location.origin}; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types 'none'`;
document.head.append(policy);

const main = /** @type {HTMLElement} */ (document.getElementById("glass"));
document.body.style.margin = "0";
// Margins at its ends count into its height.
main.style.display = "flow-root";
document.body.style.font = "1rem/1.4 system-ui, sans-serif";

/** @param {"h2" | "p" | "li"} tag @param {string} text */
function put(tag, text) {
  const element = document.createElement(tag);
  element.textContent = text;
  return element;
}

function lay() {
  if (location.hash.length > MOST_FRAGMENT) return main.replaceChildren(put("p", frameTrouble.long));
  const given = new URLSearchParams(location.hash.slice(1));
  if ((given.get("v") ?? VERSION) !== VERSION) return main.replaceChildren(put("p", frameTrouble.newer));
  const glass = document.createElement("farthing-glass");
  for (const field of FIELDS) {
    const value = given.get(field);
    if (value !== null) glass.setAttribute(field, value);
  }
  const list = document.createElement("ul");
  list.append(...given.getAll("line").map((line) => put("li", line)));
  const name = given.get("name");
  glass.append(...(name ? [put("h2", name)] : []), list);
  main.replaceChildren(glass);
}

let told = 0;
new ResizeObserver(() => {
  const height = Math.ceil(main.getBoundingClientRect().height);
  // The height is no secret, and a frame in a sandbox cannot know whom it tells.
  if (height !== told) parent.postMessage({ farthing: "height", height: (told = height) }, "*");
}).observe(main);

addEventListener("hashchange", lay);
lay();
import("./farthing-glass.js");
