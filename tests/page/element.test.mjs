// @ts-check
/** What `custom-elements.json` tells of the element is what its modules say, no more and no less. */

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { pageSource } from "./paths.mjs";

/** @param {string} file */
const read = (file) => readFileSync(join(pageSource, file), "utf8");
const { declarations: [element], exports: [exported] } = JSON.parse(read("custom-elements.json")).modules[0];

/** @param {{ name: string }[]} listed */
const names = (listed) => listed.map(({ name }) => name).sort();

/** @param {string} text @param {RegExp} pattern */
const found = (text, pattern) => [...new Set([...text.matchAll(pattern)].map((match) => String(match[1])))].sort();

test("its attributes are those that it observes, and the one that only its style knows", () => {
  const observed = found(/observedAttributes = \[([^\]]*)\]/.exec(read("glass-element.js"))?.[1] ?? "", /"([a-z]+)"/g);
  const styled = found(read("embed-style.js"), /:host\(\[([a-z]+)="/g);
  assert.deepEqual(names(element.attributes), [...observed, ...styled].sort());
});

test("its parts, properties and events are those of its view", () => {
  const view = read("embed-view.js");
  const panels = found(/const PANELS = \[([^\]]*)\]/.exec(view)?.[1] ?? "", /"([a-z]+)"/g);
  assert.deepEqual(names(element.cssParts), [...new Set([...found(view, /part: "([a-z]+)"/g), ...panels])].sort());
  assert.deepEqual(names(element.cssProperties), found(read("embed-style.js"), /var\((--farthing-[a-z]+)/g));
  assert.deepEqual(names(element.events), found(view, /new CustomEvent\("([a-z-]+)"/g));
});

test("it is named as it is defined", () => {
  const defined = /const NAME = "([a-z-]+)"/.exec(read("farthing-glass.js"))?.[1];
  assert.deepEqual([element.tagName, exported.name], [defined, defined]);
});
