// @ts-check
/**
 * A menu of a thousand glasses, and one price changes: how long until every cost and margin stands
 * again. Ours is timed beside a spreadsheet engine with look-up formulas and a decimal library in
 * plain JavaScript, in turns in one page of one browser. Nothing here passes or fails.
 */

import { readFileSync } from "node:fs";
import { startEngine } from "./engines.mjs";
import { builtPage } from "./paths.mjs";
import { startSite } from "./site.mjs";

const BOTTLES = 300;
const SPECS = 1000;
const REPEATS = 15;

const library = (/** @type {string} */ path) => readFileSync(new URL(`node_modules/${path}`, import.meta.url), "utf8");

const site = await startSite(builtPage);
site.replace("hyperformula.js", library("hyperformula/dist/hyperformula.full.min.js"));
site.replace("decimal.js", library("decimal.js/decimal.mjs"));
site.replace("book.html", "<!DOCTYPE html><title>A book</title><script src=\"hyperformula.js\"></script>");
const browser = await startEngine("chromium");
try {
  await browser.session.go(`${site.address}book.html`);
  const times = await browser.session.runAsync(timeAll, BOTTLES, SPECS, REPEATS);
  const ours = middle(times.ours);
  console.log(`${SPECS} glasses of six lines over ${BOTTLES} bottles, one price changed, ${times.moved} glasses name its bottle`);
  for (const [what, all] of /** @type {[string, number[]][]} */ ([
    ["this core, the glasses that the price moves", times.ours],
    ["a spreadsheet engine, look-up formulas", times.sheet],
    ["a decimal library, every glass again", times.decimal],
  ])) console.log(`${what}: median ${middle(all).toFixed(1)} ms, ${(middle(all) / ours).toFixed(1)} times ours`);
  console.log(`all three agree on ${times.agreed} of ${SPECS} costs, to a ten-thousandth of a penny`);
} finally {
  await browser.stop();
  await site.stop();
}

/** @param {number[]} times */
function middle(times) {
  return Number([...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]);
}

/** Runs in the page. @param {number} bottleCount @param {number} specCount @param {number} repeats */
async function timeAll(bottleCount, specCount, repeats) {
  const { Decimal } = await import(new URL("decimal.js", document.baseURI).href);
  const core = await import(new URL("farthing-more.js", document.baseURI).href);
  await core.default({ module_or_path: new URL("farthing-more_bg.wasm", document.baseURI) });
  const { HyperFormula } = /** @type {any} */ (window);

  const AMOUNTS = ["50", "20", "1.84", "10", "25", "5"];
  const TAX = "20", PRICE = "9.50", HOLDS = "700";
  const bottles = Array.from({ length: bottleCount }, (_, at) => ({
    id: `b${at}`, paid: { price: `${10 + (at % 40)}.${10 + (at % 90)}` }, holds: { text: HOLDS, unit: "ml" },
  }));
  const specs = Array.from({ length: specCount }, (_, at) => ({
    id: `s${at}`, price: PRICE,
    lines: AMOUNTS.map((text, line) => ({ bottle: `b${(at * 7 + line * 53) % bottleCount}`, measure: { text, unit: "ml" } })),
  }));

  // A row of the sheet: the bottle's name, its price, what a ml of it costs.
  const shelf = bottles.map(({ id, paid }, at) => [id, Number(paid.price), `=B${at + 1}/${HOLDS}`]);
  const menu = specs.map(({ lines }, at) => {
    const row = at + 1;
    const costs = lines.map(({ bottle, measure }) => `=${measure.text}*VLOOKUP("${bottle}",Shelf!A$1:C$${bottleCount},3,FALSE())`);
    return [...costs, `=SUM(A${row}:F${row})`, `=1-G${row}/(${PRICE}/(1+${TAX}/100))`];
  });
  const sheet = HyperFormula.buildFromSheets({ Shelf: shelf, Menu: menu }, { licenseKey: "gpl-v3" });
  const menuId = sheet.getSheetId("Menu");

  const changed = 7;
  const moved = specs.filter(({ lines }) => lines.some(({ bottle }) => bottle === `b${changed}`));
  const named = new Set(moved.flatMap(({ lines }) => lines.map(({ bottle }) => bottle)));
  const house = { tax_percent: TAX };
  const facts = (/** @type {object[]} */ some, /** @type {object[]} */ of) =>
    JSON.parse(core.facts(JSON.stringify({ house, bottles: of, specs: some }))).specs;
  /** @type {Map<string, { cost: string, margin: string }>} */
  const ours = new Map();
  const keep = (/** @type {any[]} */ replies) => replies.forEach(({ id, cost, priced }) => ours.set(id, { cost: cost.value, margin: priced.margin.value }));
  keep(facts(specs, bottles));
  /** @type {{ cost: any, margin: any }[]} */
  let decimals = [];

  /** @type {{ ours: number[], sheet: number[], decimal: number[], moved: number, agreed: number }} */
  const times = { ours: [], sheet: [], decimal: [], moved: moved.length, agreed: 0 };
  const timed = (/** @type {number[]} */ into, /** @type {() => void} */ act) => {
    const start = performance.now();
    act();
    into.push(performance.now() - start);
  };
  for (let turn = 0; turn < repeats; turn += 1) {
    const price = `${20 + turn}.37`;
    Object.assign(bottles[changed] ?? {}, { paid: { price } });
    timed(times.ours, () => keep(facts(moved, bottles.filter(({ id }) => named.has(id)))));
    timed(times.sheet, () => {
      sheet.setCellContents({ sheet: sheet.getSheetId("Shelf"), col: 1, row: changed }, [[Number(price)]]);
      sheet.getCellValue({ sheet: menuId, col: 7, row: 0 });
    });
    timed(times.decimal, () => {
      const each = new Map(bottles.map(({ id, paid }) => [id, new Decimal(paid.price).div(HOLDS)]));
      const net = new Decimal(PRICE).div(new Decimal(TAX).div(100).plus(1));
      decimals = specs.map(({ lines }) => {
        const cost = lines.reduce((sum, { bottle, measure }) => sum.plus(new Decimal(measure.text).times(each.get(bottle))), new Decimal(0));
        return { cost, margin: net.minus(cost).div(net).times(100) };
      });
    });
  }
  const near = (/** @type {number} */ one, /** @type {number} */ other) => Math.abs(one - other) < 1e-6;
  times.agreed = specs.filter(({ id }, at) => {
    const cost = Number(ours.get(id)?.cost);
    return near(cost, sheet.getCellValue({ sheet: menuId, col: 6, row: at })) && near(cost, Number(decimals[at]?.cost));
  }).length;
  return times;
}
