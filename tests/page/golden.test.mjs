// @ts-check
/** The built wasm answers in node as the native core does; `scenarios/golden.mjs` asks the browsers. */

import { test } from "node:test";
import { askInNode, compare, readCases } from "./golden.mjs";

test("every golden case, in node", async (t) => {
  const cases = readCases();
  t.diagnostic(`${cases.length} cases`);
  compare(cases, await askInNode(cases));
});
