// @ts-check
/** Every code of a working, a caution and a choice that follows from a cost has words on the page. */

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { builtPage, coreSource, pageSource } from "./paths.mjs";

/** Node takes a file without a package for another kind of module. @param {string} folder @param {string} file */
const load = (folder, file) => import(`data:text/javascript;base64,${readFileSync(join(folder, file)).toString("base64")}`);
const [first, late] = [await load(pageSource, "words.js"), await load(pageSource, "words-price.js")];

/** A list of codes in the source of the core. @param {string} file @param {string} name */
const listed = (file, name) => {
  const source = readFileSync(join(coreSource, file), "utf8");
  const start = source.indexOf(`pub const ${name}`);
  const end = source.indexOf("];", start);
  return [...source.slice(source.indexOf("= ", start), end).matchAll(/"(\w+)"/g)].map(([, code]) => String(code));
};

test("every figure that follows from a cost has a working in words", async () => {
  const core = await load(builtPage, "farthing-more.js");
  await core.default({ module_or_path: readFileSync(join(builtPage, "farthing-more_bg.wasm")) });
  const bottle = (/** @type {string} */ id, /** @type {object} */ more) => ({
    id, name: id, paid: { price: "30", tax: "in" }, holds: { text: "700", unit: "ml" }, ...more,
  });
  const line = (/** @type {string} */ id, /** @type {string} */ text) => ({ bottle: id, measure: { text, unit: "ml" }, charge: "poured" });
  const specs = [{ id: "a", lines: [line("gin", "50"), line("syrup", "10")], price: "9.50", a_week: "6", method: "stirred" }];
  const bottles = [bottle("gin", { strength: "40" }), bottle("syrup", { keeps_days: "21", have: { text: "100", unit: "ml" } })];
  const finds = new Set();
  const is = new Set();
  for (const sale_tax of ["in", "added", "none"]) {
    const house = { tax_percent: "20", sale_tax };
    const replies = [core.facts(JSON.stringify({ house, bottles, specs, in_full: true })), core.shop(JSON.stringify({ house, bottles, specs, counts: ["200"] }))];
    for (const reply of replies) {
      assert.deepEqual(JSON.parse(reply).problems, []);
      JSON.parse(reply, (key, value) => {
        if (key === "finds") finds.add(value);
        if (key === "is") is.add(value);
        return value;
      });
    }
  }
  assert.ok(finds.size > 20 && is.size > 20, `${[...finds]} ${[...is]}`);
  assert.deepEqual([...finds].filter((code) => !first.steps[code] && !late.steps[code]), []);
  assert.deepEqual([...is].filter((code) => code && !first.terms[code] && !late.terms[code]), []);
});

test("every allergen, warning, spirit and caution of the core has words, and no other has", () => {
  const cautions = [...readFileSync(join(coreSource, "caution.rs"), "utf8").matchAll(/^\/\/! \| ([a-z_, ]+) \| (?!---)/gm)]
    .flatMap(([, codes]) => String(codes).split(", ")).filter((code) => code !== "code");
  assert.ok(cautions.length >= 7, cautions.join());
  assert.deepEqual(Object.keys(late.allergens), listed("caution.rs", "ALLERGENS"));
  assert.deepEqual(Object.keys(late.warns), listed("caution.rs", "WARNS"));
  assert.deepEqual(Object.keys(late.spirits).filter(Boolean), listed("caution.rs", "SPIRITS"));
  assert.deepEqual(Object.keys(late.cautions.said).sort(), cautions.sort());
  const values = { ml: "40", spirit: "gin", least: "£1.05", percent: "0.7" };
  for (const code of cautions) {
    const sentence = late.cautions.said[code](values);
    assert.match(sentence, /^[A-Z].*\.$/, code);
    assert.doesNotMatch(sentence, /undefined|\$\{/, code);
  }
});

test("every country whose drinks are counted has words", () => {
  const source = readFileSync(join(coreSource, "strength.rs"), "utf8");
  const codes = [...source.matchAll(/StandardDrink \{\s*code: "(\w+)"/g)].map(([, code]) => code);
  assert.deepEqual(Object.keys(late.standardDrinks).sort(), codes.sort());
});
