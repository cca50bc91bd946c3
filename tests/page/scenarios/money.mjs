// @ts-check
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pageSource } from "../paths.mjs";
import { ANSWER, becomes, FACTS, HOLDS, MEASURE, PRICE, textOf, texts, write } from "./page/places.mjs";
import { house, openWith } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

/** Digits and marks alone: engines differ in signs and spaces, and may not in these. @param {string} text */
const digitsOf = (text) => text.replace(/[^\d.,/]/g, "").replace(/^[.,]+|[.,]+$/g, "");

/** 18500 for 700 ml; what 50 ml and what one ml cost, in digits. ISO 4217 gives 2, 2, 0, 3 and 4. */
const CURRENCIES = {
  HUF: ["1,321.43", "26.43"], IDR: ["1,321.43", "26.43"], JPY: ["1,321", "26.4"], KWD: ["1,321.429", "26.429"], CLF: ["1,321.4286", "26.4286"],
};

/** Locales of every script, mark and grouping that browsers print numbers in. */
const LOCALES = [
  "en-GB", "en-US", "en-IN", "en-ZA", "de-DE", "de-CH", "de-AT", "fr-FR", "fr-CH", "it-IT", "es-ES", "es-MX", "pt-PT", "pt-BR", "nl-NL", "sv-SE", "nb-NO", "da-DK", "fi-FI",
  "pl-PL", "cs-CZ", "hu-HU", "ro-RO", "bg-BG", "el-GR", "tr-TR", "ru-RU", "uk-UA", "he-IL", "ar-EG", "fa-IR", "hi-IN", "bn-BD", "mr-IN", "my-MM", "th-TH", "ja-JP", "ko-KR",
];

/** Numbers as the core hands them out to be shown: small, long, large, whole. */
const NUMBERS = [
  "0", "0.0043", "0.34", "1.5", "1.84", "12", "99.999", "850", "1234.56", "12345.6", "1234567.89", "123456789.01", "0.123456", "1000.5",
  "1234", "987000", "1234567",
];

/**
 * Prints numbers as the page does in a locale, reads them back as a price, and tells which came
 * back as another one. One that could be two, such as “1,234”, may be asked about.
 * @param {Session} session @param {string} locale
 * @returns {Promise<string[]>}
 */
const misread = (session, locale) => session.runAsync(async (/** @type {string} */ spoken, /** @type {string[]} */ numbers) => {
  Object.defineProperty(navigator, "language", { get: () => spoken, configurable: true });
  const figures = await import(new URL(`figures-for-tests.js?${spoken}`, document.baseURI).href);
  const core = await import(new URL("farthing.js", document.baseURI).href);
  await core.default({ module_or_path: new URL("farthing_bg.wasm", document.baseURI) });
  const lean = (/** @type {string} */ text) => (text.includes(".") ? text.replace(/\.?0+$/, "") : text);
  /** @param {string} text */
  const read = (text) => {
    const ask = {
      house: { currency: "GBP", decimal_mark: figures.decimalMark, kitchen: "metric", tax_percent: "", reclaims_tax: false, rough: {} },
      bottles: [{ id: "b", paid: { price: text }, holds: { text: "1", unit: "piece" } }], pours: [], specs: [],
    };
    const { bottles, problems } = JSON.parse(core.answer(JSON.stringify(ask)));
    const [problem] = problems;
    const { either = "", or = "" } = problem?.values ?? {};
    return problem ? `${problem.code} ${either} ${or}`.trim() : lean(bottles[0].cost.value);
  };
  figures.payIn("GBP");
  const found = [];
  for (const number of numbers) {
    // The sign of a currency is a name; what else stands around the digits must be read.
    const money = figures.shown({ unit: "money", shown: number, shown_minor: null }).replace(/[\p{L}\p{Sc}]/gu, "");
    for (const text of [figures.number(number), money]) {
      const back = read(text);
      const asked = back.startsWith("number_ambiguous") && back.replaceAll(",", ".").split(" ").includes(lean(number));
      if (back !== lean(number) && !asked) found.push(`${number} is printed “${text}” and read as ${back}`);
    }
  }
  return found;
}, locale, NUMBERS);

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a currency has the digits of ISO 4217, whatever the engine thinks",
    async play({ session, site }) {
      for (const [code, digits] of Object.entries(CURRENCIES)) {
        await openWith(session, site, { house: house({ currency: code }) });
        await write(session, PRICE, "18500");
        await write(session, HOLDS, "700");
        await write(session, MEASURE, "50 ml");
        await becomes(async () => [digitsOf(await textOf(session, ANSWER)), digitsOf((await texts(session, FACTS))[1] ?? "")], digits, code);
      }
    },
  },
  {
    name: "every number that the page prints is read back as the same number, in 38 locales",
    async play({ session, site }) {
      assert.equal(new Set(LOCALES).size, 38);
      for (const name of ["figures", "words"]) {
        site.replace(`${name}-for-tests.js`, readFileSync(join(pageSource, `${name}.js`), "utf8").replace('"./words.js"', '"./words-for-tests.js"'));
      }
      await openWith(session, site);
      /** @type {Record<string, string[]>} */
      const found = {};
      for (const locale of LOCALES) {
        const wrong = await misread(session, locale);
        if (wrong.length > 0) found[locale] = wrong;
      }
      assert.deepEqual(found, {});
    },
  },
];
