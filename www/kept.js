// @ts-check
/**
 * What this device keeps: bottles, specs, the house and the draft of what is being typed.
 * The core reads and writes the storage; here is what of it the page has at hand.
 */

import * as core from "./core.js";
import { decimalMark, likelyCurrency, likelyKitchen, payIn, today } from "./figures.js";
/** @typedef {import("./records.js").Bottle} Bottle */
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").House} House */
/** @typedef {import("./records.js").Problem} Problem */
/** @template T @typedef {import("./records.js").Kept<T>} Kept */

/** @type {Map<string, Kept<Bottle>>} */
export const bottles = new Map();
/** @type {Map<string, Kept<Spec>>} */
export const specs = new Map();
/** @type {import("./records.js").Aside[]} what could not be read and was set aside */
export let aside = [];

/** What holds on this page: as kept, or as guessed from the locale. */
export let house = /** @type {House} */ ({
  currency: "GBP",
  decimal_mark: decimalMark,
  kitchen: likelyKitchen(),
  tax_percent: "20",
  reclaims_tax: false,
  rough: {},
});
/** @type {House | null} */
let houseSeen = null;

/** Whether the shelf shows the worked example; nothing of it is kept. */
export let example = false;

/** @type {Record<string, any>} what is being typed, by place */
export let draft = {};

/** @type {Set<() => void>} */
const hearers = new Set();
/** Hears of every change of what is kept. @param {() => void} hearer */
export const whenChanged = (hearer) => hearers.add(hearer);
const tell = () => hearers.forEach((hearer) => hearer());

/** @type {(problems: Problem[]) => void} */
let report = () => {};
/** @param {(problems: Problem[]) => void} reporter */
export const whenRefused = (reporter) => (report = reporter);

/** Reads everything kept. @returns {boolean} whether anybody was here before */
export function open() {
  const codes = core.tables()?.currencies.map((each) => each.code) ?? [];
  house.currency = likelyCurrency(codes);
  const opened = core.shelf({ wish: "open" });
  if (!opened) return true;
  take(opened);
  try {
    draft = JSON.parse(opened.draft ?? "{}") ?? {};
  } catch {
    draft = {};
  }
  return opened.house !== null || opened.draft !== null || bottles.size > 0 || specs.size > 0;
}

/** @param {import("./records.js").ShelfReply} opened */
function take(opened) {
  bottles.clear();
  specs.clear();
  for (const kept of opened.bottles) bottles.set(kept.record.id, kept);
  for (const kept of opened.specs) specs.set(kept.record.id, kept);
  aside = opened.aside;
  takeHouse(opened.house);
  example = false;
  report(opened.problems);
}

/** @param {Kept<House> | null} kept */
function takeHouse(kept) {
  houseSeen = kept?.record ?? null;
  if (houseSeen) house = { ...houseSeen, decimal_mark: decimalMark };
  payIn(house.currency);
}

/**
 * Puts the worked example on the shelf, in memory only.
 * @param {{ bottles: Bottle[], specs: Spec[] }} shown
 */
export function showExample(shown) {
  example = true;
  for (const record of shown.bottles) bottles.set(record.id, asKept(record));
  for (const record of shown.specs) specs.set(record.id, asKept(record));
  tell();
}

/** Whether a record is part of the example. @param {string} id */
export const isExample = (id) => example && id.startsWith("example-");

/** Takes the example away and remembers that it was seen. */
export function clearExample() {
  if (!example) return;
  example = false;
  keepDraft("example", false);
  bottles.clear();
  specs.clear();
  keepHouse({});
}

/** A record that nothing keeps: the example, or what the device refused. @template T @param {T} record @returns {Kept<T>} */
const asKept = (record) => ({ format: 1, revision: 0, kept_on: today(), record, earlier: [] });

/** What this tab kept last, by key: another tab may write over it in the same moment. @type {Map<string, object>} */
const mine = new Map();

/** Another tab kept something. @param {string | null} key */
export function hear(key) {
  if (key?.endsWith(":draft")) return;
  const edit = key && mine.get(key.replace(/^.*?:/, ""));
  if (edit) core.shelf({ ...edit, wish: "heard" });
  const opened = core.shelf({ wish: "open" });
  if (!opened) return;
  take(opened);
  tell();
}

/** @param {"bottle" | "spec"} kind @returns {Map<string, Kept<any>>} */
const placeOf = (kind) => (kind === "bottle" ? bottles : specs);

/**
 * Keeps a bottle or a spec. The example gives way to the first thing of one's own.
 * @param {"bottle" | "spec"} kind
 * @param {Bottle | Spec | null} before as this tab last saw it, so that another tab's edit is merged
 * @param {Bottle | Spec} after
 * @returns {string[]} what another tab had changed too
 */
export function keep(kind, before, after) {
  clearExample();
  const ask = { wish: "keep", kind, before, after, on: today() };
  const reply = core.shelf(ask);
  if (!reply) return [];
  mine.set(`${kind}:${after.id}`, ask);
  placeOf(kind).set(after.id, reply.kept ?? asKept(after));
  report(reply.problems);
  askToStay();
  tell();
  return reply.clashes;
}

/**
 * Removes one.
 * @param {"bottle" | "spec"} kind @param {string} id
 * @returns {() => void} brings it back as it was
 */
export function remove(kind, id) {
  const place = placeOf(kind);
  const kept = place.get(id);
  place.delete(id);
  if (!example) report(core.shelf({ wish: "remove", kind, id })?.problems ?? []);
  tell();
  return () => {
    if (!kept) return;
    place.set(id, kept);
    if (!example) report(core.shelf({ wish: "restore", kind, after: kept })?.problems ?? []);
    tell();
  };
}

/** @param {Partial<House>} changes */
export function keepHouse(changes) {
  house = { ...house, ...changes };
  const reply = core.shelf({ wish: "keep", kind: "house", before: houseSeen, after: house, on: today() });
  takeHouse(reply?.kept ?? asKept(house));
  report(reply?.problems ?? []);
  tell();
}

/** Every record, as the text of one file. @returns {string | null} */
export const saveFile = () => core.shelf({ wish: "save_file", on: today() })?.file ?? null;

/** What was set aside, as the text of a file. @returns {string | null} */
export const asideFile = () => core.shelf({ wish: "aside_file" })?.file ?? null;

/** What a file would change. @param {string} text */
export const readFile = (text) => core.shelf({ wish: "read_file", text });

/** @param {string} text */
export function takeFile(text) {
  const opened = core.shelf({ wish: "take_file", text, on: today() });
  if (!opened) return;
  take(opened);
  tell();
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let waiting;
const DRAFT_MS = 250;
/** A page without a core keeps the draft for this tab alone. */
const TAB_DRAFT = "farthing-draft";

/**
 * Keeps what is being typed at one place of the page.
 * @param {string} place @param {any} typed
 */
export function keepDraft(place, typed) {
  draft[place] = typed;
  clearTimeout(waiting);
  waiting = setTimeout(keepDraftNow, DRAFT_MS);
}

/** Keeps it at once: the page may be about to go. */
export function keepDraftNow() {
  if (waiting === undefined) return;
  clearTimeout(waiting);
  waiting = undefined;
  const text = JSON.stringify(draft);
  const result = core.shelf({ wish: "keep_draft", text });
  if (result) report(result.problems);
  else keepInTab(text);
}

/** @param {string} text */
function keepInTab(text) {
  try {
    sessionStorage.setItem(TAB_DRAFT, text);
  } catch {
    // Nothing keeps it then; it still stands on the page.
  }
}

/** Takes up a draft that an earlier page without a core left in this tab. */
export function takeTabDraft() {
  try {
    const text = sessionStorage.getItem(TAB_DRAFT);
    sessionStorage.removeItem(TAB_DRAFT);
    if (text) draft = JSON.parse(text);
  } catch {
    // None was left, or it cannot be read.
  }
}

let asked = false;
/** Asks the browser not to clear this page's storage, once something is worth keeping. */
function askToStay() {
  if (asked) return;
  asked = true;
  navigator.storage?.persist?.().catch(() => {});
}
