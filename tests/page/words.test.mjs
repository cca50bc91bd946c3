// @ts-check
/** Every code that the core can say has words on the page, and the main ones have these words. */

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { askInNode } from "./golden.mjs";
import { coreSource, pageSource } from "./paths.mjs";

/** The page's words; node takes a file without a package for another kind of module. */
const words = await import(`data:text/javascript;base64,${readFileSync(join(pageSource, "words.js")).toString("base64")}`);

/** The codes of the core, as its source lists them. */
function codes() {
  const source = readFileSync(join(coreSource, "problem.rs"), "utf8");
  const list = source.slice(source.indexOf("\ncodes! {"), source.indexOf("\n}", source.indexOf("\ncodes! {")));
  return [...list.matchAll(/^\s+\w+ = "(\w+)",$/gm)].map(([, code]) => String(code));
}

/** @type {[code: string, place: string, values: Record<string, string>, sentence: string][]} */
const SENTENCES = [
  ["number_unreadable", "bottles[0].paid.price", { typed: "abc" }, "“abc” is not a number this page can read. Try 2, 1.5 or 1 1/2."],
  ["number_ambiguous", "bottles[0].paid.price", { typed: "1,250", either: "1.25", or: "1250" }, "“1,250” could be 1.25 or 1250. Which is it?"],
  ["number_too_long", "bottles[0].paid.price", { most: "6" }, "That has more decimals than can be kept exactly. Try 6 or fewer."],
  ["number_negative", "bottles[0].paid.price", { typed: "-2" }, "Less than nothing cannot be paid or poured. Leave out the minus."],
  ["number_must_be_positive", "bottles[0].holds", {}, "A bottle holds more than 0. Try what the label says: 700 ml."],
  ["number_must_be_positive", "pours[0].measure", {}, "A measure is more than 0. Try 1 dash or 25 ml."],
  ["number_must_be_positive", "bottles[0].paid.bottles", {}, "A case holds at least 1 bottle. Try 6, or leave it empty."],
  ["number_zero_below", "pours[0].measure", { typed: "1/0" }, "“1/0” divides by nought. Try 1/2."],
  ["too_big", "bottles[0].paid.price", { most: "999999999" }, "That is more than this page reckons with. Try 999999999 or less."],
  ["whole_number_needed", "bottles[0].paid.bottles", { typed: "1.5" }, "“1.5” must be a whole number. Try 6 or 12."],
  ["unit_missing", "pours[0].measure", { typed: "2" }, "2 of what? Try 2 ml."],
  ["unit_unknown", "pours[0].measure", { typed: "glug" }, "“glug” is no measure this page knows. Try ml, cl, oz, dash or piece."],
  ["holds_unit", "bottles[0].holds", { typed: "dash" }, "A bottle holds a volume, a weight or a count. Try 700 ml, 1 kg or 40 pieces."],
  ["kind_mismatch", "pours[0].measure", { bottle: "count", measure: "volume" }, "What is in this bottle is counted in pieces, the measure by volume (ml, dashes). Try 1 piece."],
  ["percent_out_of_range", "bottles[0].wastage_percent", { typed: "100", least: "0", most: "100" }, "A percentage here lies between 0 and 100."],
  ["discount_over_price", "bottles[0].paid", {}, "More comes off than was asked. Try a smaller discount, or 10 %."],
  ["bottle_unknown", "specs[0].lines[0].bottle", { id: "x" }, "That bottle is no longer on the shelf. Pick another, or price it here."],
  ["rough_must_be_volume", "house.rough.dash", { typed: "g" }, "A dash or a splash is so much liquid. Try 0.9 ml."],
  ["name_too_long", "bottles[0].name", { most: "80" }, "That name is longer than is kept. Try 80 letters or fewer."],
  ["too_many_lines", "specs[0].lines", { most: "40" }, "A glass takes 40 lines at most. Try putting two small things into one."],
  ["parts_need_size", "measure", { typed: "2 parts" }, "How large is one part? Try 30 ml."],
  ["measure_missing", "measure", {}, "How much of it goes in? Try 25 ml, 2 dashes or 1 piece."],
  ["recipe_too_long", "text", { most: "100" }, "That is longer than a recipe. Try its list of ingredients alone."],
  ["recipe_unreadable", "text", { why: "", where: "" }, "No recipe can be read in that, or it is damaged. Try its list of ingredients, as text."],
  ["link_unreadable", "link", { why: "damaged", where: "" }, "That link is cut off or damaged, so nothing of it was taken. Ask for it once more."],
  ["link_newer", "link", {}, "That link was made by a newer version. Load the page again, then open the link once more."],
  ["link_too_long", "link", { most: "16000" }, "That is more than a link can carry. Save it to a file instead, under Shelf."],
  ["link_long", "link", { most: "2000" }, "Some apps cut off a link of more than 2000 characters, and this one has more. Send it without its prices, or as text."],
  ["storage_refused", "", {}, "This browser keeps nothing for this page (a private window, or its settings). The sums go on; save to a file before you leave."],
  ["storage_full", "farthing:draft", {}, "This device has no room left, so the last change is not kept. Save to a file, then take something away."],
  ["record_set_aside", "farthing:bottle:x", {}, "Something kept here could not be read. It was set aside, not deleted: find it under Shelf, as a file."],
  ["record_newer", "farthing:bottle:x", {}, "Something kept here was written by a newer version. It was left alone; load the page again to get that version."],
  ["file_unreadable", "file", { why: "", where: "" }, "That file is not one saved from here, or it is damaged. Nothing was changed. Try another."],
  ["file_newer", "file", {}, "That file was saved by a newer version. Load the page again, then try once more."],
  ["file_too_large", "file", { most: "10000000" }, "That file is larger than any saved from here. Nothing was changed."],
];

test("every code of the core has a sentence, and every sentence a code", () => {
  assert.ok(codes().length > 25, codes().join());
  assert.deepEqual([...words.problemCodes].sort(), codes().sort());
});

test("the sentences, word for word", () => {
  for (const [code, place, values, sentence] of SENTENCES) assert.equal(words.problemWords({ code, place, values }), sentence);
});

test("a sentence writes numbers with the mark of the place", () => {
  const problem = { code: "number_ambiguous", place: "bottles[0].paid.price", values: { typed: "1.250", either: "1.25", or: "1250" } };
  assert.equal(words.problemWords(problem, ","), "“1.250” could be 1,25 or 1250. Which is it?");
});

test("no sentence has a hole in it, and each ends as a sentence", () => {
  const values = { typed: "7", either: "1.25", or: "1250", most: "9", least: "0", bottle: "volume", measure: "mass" };
  for (const code of codes()) {
    const sentence = words.problemWords({ code, place: "bottles[0].holds", values });
    assert.match(sentence, /^[“A-Z\d].*[.?]$/, code);
    assert.doesNotMatch(sentence, /undefined|null|NaN|\$\{|object Object/, code);
    assert.doesNotMatch(sentence, new RegExp(code), `${code} is said by its code`);
  }
});

test("every unit and step of the core has words", async () => {
  const ask = {
    house: { currency: "GBP", decimal_mark: ".", kitchen: "uk", tax_percent: "20", reclaims_tax: true, rough: { dash: { text: "1", unit: "ml" } } },
    bottles: [{
      id: "b", paid: { price: "100", bottles: "6", discount: "10 %", delivery: "5", tax: "out", tax_percent: "10" }, holds: { text: "70", unit: "cl" },
      wastage_percent: "5", rough: { splash: { text: "5", unit: "ml" } },
    }, { id: "c", paid: { price: "100", discount: "7", tax: "in" }, holds: { text: "1", unit: "l" } }],
    pours: [{ bottle: "b", measure: { text: "2", unit: "dash" } }, { bottle: "b", measure: { text: "1", unit: "splash" } }, { bottle: "b", measure: { text: "1/3", unit: "bottle" } }],
    specs: [{ id: "s", lines: [{ bottle: "b", measure: { text: "1", unit: "drop" }, charge: "whole" }, { bottle: "c", measure: { text: "1 1/3", unit: "cl" }, charge: "poured" }] }],
  };
  const [tables, reply] = await askInNode([
    { name: "tables", call: "tables", ask: {}, reply: null }, { name: "answer", call: "answer", ask, reply: null },
  ]);
  assert.deepEqual(reply.problems, []);
  for (const { code } of tables.units) {
    const names = words.units[code];
    assert.ok(Array.isArray(names) && names.length === 2 && names.every((name) => typeof name === "string" && name.length > 0), `${code} has no words`);
  }
  for (const { code } of tables.units.filter((/** @type {any} */ unit) => unit.rough)) {
    assert.ok(words.sources[code], `${code} has no source`);
    assert.match(words.roughNamed(code), /^A [a-z]/);
  }
  const finds = new Set();
  const is = new Set();
  JSON.stringify(reply, (key, value) => {
    if (key === "finds") finds.add(value);
    if (key === "is") is.add(value);
    return value;
  });
  assert.ok(finds.size > 8 && is.size > 12, `${[...finds]} ${[...is]}`);
  assert.deepEqual([...finds].filter((code) => !words.steps[code]), []);
  assert.deepEqual([...is].filter((code) => code && !words.terms[code]), []);
});
