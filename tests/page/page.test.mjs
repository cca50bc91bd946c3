// @ts-check
/** Plays every scenario of the folder `scenarios` on the built page. */

import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { test } from "node:test";
import { leftOut, playAll } from "./scenarios.mjs";

const folder = new URL("scenarios/", import.meta.url);

/** @type {import("./scenarios.mjs").Scenario[]} */
const everything = [];
for (const file of readdirSync(folder).filter((name) => name.endsWith(".mjs")).sort()) {
  const scenarios = (await import(new URL(file, folder).href)).default;
  everything.push(...scenarios);
  playAll(file.replace(".mjs", ""), scenarios);
}

test("an engine is left out only with a reason", (t) => {
  for (const { engine, name, reason } of leftOut(everything)) {
    t.diagnostic(`${engine} does not play “${name}”: ${reason}`);
    assert.match(reason, /\w+ \w+/);
  }
});

test("no two scenarios have the same name", () => {
  const names = everything.map(({ name }) => name);
  assert.deepEqual(names.filter((name, index) => names.indexOf(name) !== index), []);
});
