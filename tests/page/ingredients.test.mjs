// @ts-check
/** The reader of recipe lines, in the built wasm, against what a person reads, and against a public reader of ingredients. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { numericQuantity } from "numeric-quantity";
import { parseIngredient, unitsOfMeasure } from "parse-ingredient";
import { askInNode } from "./golden.mjs";
import { english, foreign, WHY } from "./ingredients.mjs";
/** @typedef {import("./ingredients.mjs").Line} Line */
/** @typedef {import("../../www/records.js").RecipeLine} RecipeLine */

/** The other reader's units, by the name that the core has for each. Without a unit it is a count. @type {Record<string, string>} */
const OURS = { "": "piece", piece: "piece", ounce: "us_fl_oz", "fluid ounce": "us_fl_oz", milliliter: "ml", liter: "l", gram: "g", kilogram: "kg", pound: "lb", teaspoon: "us_tsp", tablespoon: "us_tbsp", cup: "us_cup", pint: "us_pint", dash: "dash", drop: "drop" };

const THEIR_SPELLINGS = new Set(Object.entries(unitsOfMeasure).flatMap(([id, { short, plural, alternates = [] }]) => [id, short, plural, ...alternates]));

/** Each line by itself, as the core reads it. @param {Line[]} lines @param {object} house @returns {Promise<RecipeLine[]>} */
async function readAll(lines, house) {
  const replies = await askInNode(lines.map(({ line }) => ({ name: line, call: "recipe", ask: { house, text: line }, reply: null })));
  return replies.map((reply) => {
    const read = /** @type {import("../../www/records.js").RecipeReply} */ (reply).lines;
    assert.equal(read.length, 1);
    return read[0];
  });
}

/** The ends of a measure as the blank takes it, read by a third party. @param {string} text */
function ends(text) {
  const [least, most = least] = text.replace(/ oz$/, "").split(/[-–]/).map((end) => numericQuantity(end.trim().replace(",", ".")));
  return [least, most];
}

/** What is wrong with a reading; nothing if it is a person's. @param {Line} meant @param {RecipeLine} read */
function wrong(meant, read) {
  const asked = read.problems[0]?.code ?? "";
  const found = read.measure.text ? ends(read.measure.text) : null;
  const same = JSON.stringify([found, read.measure.unit, read.name, asked]) === JSON.stringify([meant.amount, meant.unit, meant.name, meant.asked]);
  return same ? null : { line: meant.line, read: [found, read.measure.unit, read.name, asked], meant: [meant.amount, meant.unit, meant.name, meant.asked] };
}

for (const [what, lines, house] of /** @type {[string, Line[], object][]} */ ([
  ["3,600 lines in English", english(3600), { kitchen: "us" }],
  ["1,200 lines in German, French, Spanish and Italian", foreign(300), { kitchen: "metric", decimal_mark: ",", currency: "EUR" }],
])) {
  test(`${what} are read as a person would`, async (t) => {
    const read = await readAll(lines, house);
    const faults = lines.flatMap((line, at) => wrong(line, read[at]) ?? []);
    const asked = read.filter(({ problems }) => problems.length).length;
    t.diagnostic(`${lines.length - faults.length} of ${lines.length} as meant, ${asked} of them with a question that must be asked; ${faults.filter(({ read }) => !read[3]).length} misread silently`);
    assert.deepEqual(faults, []);
  });
}

/** The words of a text in order, less those that only link or mark. @param {string} text */
const words = (text) => text.toLowerCase().split(/[^\p{L}\p{N}]+/u).filter((word) => !["", "of", "optional", "for", "garnish"].includes(word)).sort().join(" ");

test("each line that parse-ingredient reads otherwise is of a kind with a reason", async (t) => {
  const lines = english(3600);
  const read = await readAll(lines, { kitchen: "us" });
  /** @type {Map<string, number>} by its only reason */
  const alone = new Map();
  let alike = 0;
  const unexplained = lines.filter((line, at) => {
    const [theirs, ...more] = parseIngredient(line.line);
    assert.deepEqual(more, []);
    const their = theirs.unitOfMeasureID ?? "";
    const own = [line.amount, read[at].measure.unit, words(`${read[at].name} ${read[at].note}`)];
    const other = [[theirs.quantity, theirs.quantity2 ?? theirs.quantity], OURS[their], words(theirs.description)];
    if (JSON.stringify(own) === JSON.stringify(other)) return alike++, false;
    const why = [...line.why];
    if (line.amount && line.spelled && !THEIR_SPELLINGS.has(line.spelled)) why.push(WHY.unknown);
    if (line.amount && !OURS[their]) why.push(WHY.counts);
    if (why.length === 1) alone.set(why[0], (alone.get(why[0]) ?? 0) + 1);
    return why.length === 0;
  });
  t.diagnostic(`${alike} of ${lines.length} alike; of the others, by the reason where it is the only one: ${[...alone].map(([why, count]) => `${count} ${why}`).join("; ")}`);
  assert.deepEqual(unexplained.map(({ line }) => line), []);
  // No reason is named that explains nothing by itself.
  assert.deepEqual([...alone.keys()].sort(), Object.values(WHY).sort());
});
