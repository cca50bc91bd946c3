// @ts-check
import { askInBrowser, compare, readCases } from "../golden.mjs";

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "the wasm answers every golden case as the native core does",
    async play({ session, site }) {
      const cases = readCases();
      await session.go(site.address);
      compare(cases, await askInBrowser(session, cases));
    },
  },
];
