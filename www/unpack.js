// @ts-check
/** Starts the page from the one file that holds all of it: the build puts this script into that file, and no other. */

import { unpacked } from "./lzma.js";
import { bytesOf, checksum } from "./packed.js";
import { damaged } from "./words-one-file.js";

/** Where the build writes everything, with its checksum and the lengths of its parts. */
const packed = /** @type {HTMLElement} */ (document.getElementById("packed"));
const { check, lengths = "" } = packed.dataset;
const bytes = bytesOf(packed.textContent ?? "");

if (checksum(bytes) === Number(check)) start(unpacked(bytes));
else sayFirst(damaged);

/** @param {Uint8Array} everything the style, the scripts and the core, one after another */
function start(everything) {
  let from = 0;
  const [style, script, core] = lengths.split(" ").map((length) => everything.subarray(from, (from += Number(length))));
  // The scripts find the core here, which elsewhere they would fetch.
  Object.assign(globalThis, { farthingCore: core });
  const text = new TextDecoder();
  append("style", text.decode(style));
  append("script", trusted(text.decode(script)), { type: "module" });
}

/** Above the worked example. @param {string} words */
function sayFirst(words) {
  const late = /** @type {HTMLElement} */ (document.querySelector(".late"));
  late.textContent = words;
  late.parentElement?.prepend(late);
}

/** The policy of the file knows both texts by their hashes. @param {"style" | "script"} tag @param {string} text @param {object} more */
function append(tag, text, more = {}) {
  document.head.append(Object.assign(document.createElement(tag), more, { textContent: text }));
}

/** @param {string} text @returns {any} */
function trusted(text) {
  const types = /** @type {any} */ (globalThis).trustedTypes;
  return types ? types.createPolicy("farthing", { createScript: () => text }).createScript(text) : text;
}
