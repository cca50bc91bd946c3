// @ts-check
import assert from "node:assert/strict";
import { asOnPaper, uselessOnPaper } from "../look/print.mjs";
import { becomes, openPlace, textOf, texts } from "./page/places.mjs";
import { BITTERS, bottle, LOCK_GATE, openWith, RYE } from "./page/records.mjs";

const SIXTY = Array.from({ length: 60 }, (_, at) => bottle(`b${at}`, `Bottle ${at}`, "20", "700"));

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "on paper the shelf has all of its rows, the day and the currency, and no controls",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [...SIXTY, RYE, BITTERS], specs: [LOCK_GATE] });
      await openPlace(session, "shelf");
      await asOnPaper(session);
      await becomes(async () => (await texts(session, ".shelf .row")).length, 63);
      assert.ok((await texts(session, ".shelf .row")).includes("Bottle 592.86p a ml"));
      const printed = await textOf(session, ".printed");
      assert.match(printed, new RegExp(`${new Date().getFullYear()}\\. Costs in GBP, with tax, which is not got back\\.$`));
      await becomes(() => uselessOnPaper(session), []);
    },
  },
  {
    name: "on paper a glass has its lines with units, shares and total",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, BITTERS], specs: [LOCK_GATE] });
      await openPlace(session, "glass");
      await asOnPaper(session);
      await becomes(() => texts(session, ".glass .row"), ["50 ml of rye whisky£2.2487 %", "2 dashes of orange bitters34p13 %"]);
      await becomes(() => textOf(session, ".glass output.answer"), "£2.58");
      await becomes(() => uselessOnPaper(session), []);
    },
  },
];
