// @ts-check
/** Golden cases: what the native core answered, asked again through the built wasm. */

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { builtPage, goldenCases } from "./paths.mjs";

/** @typedef {{ name: string, call: string, ask: unknown, reply: unknown }} Case */

/** Every case of every file in `tests/golden`. @returns {Case[]} */
export function readCases(folder = goldenCases) {
  const files = readdirSync(folder).filter((name) => name.endsWith(".json")).sort();
  const cases = files.flatMap((file) => JSON.parse(readFileSync(join(folder, file), "utf8"))
    .map((/** @type {Case} */ one) => ({ ...one, name: `${file}: ${one.name}` })));
  assert.notEqual(cases.length, 0, `no golden cases in ${folder}`);
  return cases;
}

/** @param {Case[]} cases @param {unknown[]} replies each one parsed */
export function compare(cases, replies) {
  assert.equal(replies.length, cases.length);
  for (const [index, { name, reply }] of cases.entries()) assert.deepEqual(replies[index], reply, name);
}

/** Asks the built wasm in node, which loads it from bytes. @param {Case[]} cases */
export async function askInNode(cases, page = builtPage) {
  const built = ["farthing", "farthing-more", "farthing-embed"].map(async (name) => {
    const glue = readFileSync(join(page, `${name}.js`));
    const core = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
    await core.default({ module_or_path: readFileSync(join(page, `${name}_bg.wasm`)) });
    return core;
  });
  const cores = await Promise.all(built);
  return cases.map(({ call, ask }) => JSON.parse(cores.find((core) => call in core)[call](JSON.stringify(ask))));
}

/** Asks the built wasm in a browser that is on the page. @param {import("./webdriver.mjs").Session} session @param {Case[]} cases */
export const askInBrowser = (session, cases) => session.runAsync(async (/** @type {Case[]} */ all) => {
  const built = ["farthing", "farthing-more", "farthing-embed"].map(async (name) => {
    const core = await import(new URL(`${name}.js`, document.baseURI).href);
    await core.default({ module_or_path: new URL(`${name}_bg.wasm`, document.baseURI) });
    return core;
  });
  const cores = await Promise.all(built);
  return all.map(({ call, ask }) => JSON.parse(cores.find((core) => call in core)[call](JSON.stringify(ask))));
}, cases.map(({ call, ask }) => ({ call, ask })));
