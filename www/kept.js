// @ts-check
/**
 * What this device keeps: bottles, specs, the house and the draft of what is being typed.
 * The core reads and writes the storage; here is what of it the page has at hand.
 */

import * as core from "./core.js";
import { decimalMark, likelyCurrency, likelyKitchen, likelySelling, payIn, today } from "./figures.js";
import { freshName, same } from "./fresh.js";
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
let aside = [];

/** What holds on this page: as kept, or as guessed from the locale. */
export let house = /** @type {House} */ ({
  currency: "GBP",
  decimal_mark: decimalMark,
  kitchen: likelyKitchen(),
  tax_percent: "20",
  reclaims_tax: false,
  counts_fill: false,
  ...likelySelling(),
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
/** Hears of what could not be kept or read. @param {(problems: Problem[]) => void} reporter */
export const whenRefused = (reporter) => (report = reporter);

/** @typedef {(stands: Bottle | Spec | null, fields: string[], mine: boolean) => void} ClashReporter */
/** @type {ClashReporter} */
let reportClash = () => {};
/**
 * Hears of fields that this tab and another both changed: the record that stands, and whether it is this tab's.
 * Nothing stands any more when the next change comes.
 * @param {ClashReporter} reporter
 */
export const whenClashed = (reporter) => (reportClash = reporter);

/** Reads everything kept. @returns {boolean} whether anybody was here before */
export function open() {
  const codes = core.tables()?.currencies.map((each) => each.code) ?? [];
  house.currency = likelyCurrency(codes);
  const opened = core.shelf({ wish: "open" });
  if (!opened) return true;
  takeDraft(opened.draft);
  take(opened);
  return opened.house !== null || opened.draft !== null || bottles.size > 0 || specs.size > 0;
}

/** A draft that cannot be read goes into the next one as it was found. @param {string | null} text */
function takeDraft(text) {
  draft = {};
  if (!text) return;
  try {
    const read = JSON.parse(text);
    if (read?.constructor !== Object) throw text;
    draft = read;
  } catch {
    draft.unread = [text];
    report([DRAFT_ASIDE]);
  }
}

/** @type {Problem} */
const DRAFT_ASIDE = { code: "record_set_aside", place: "draft", values: {} };

/**
 * Takes up what was being typed at one place; what is damaged is set aside.
 * @param {string} place @param {(typed: any) => void} start
 * @returns {boolean} whether there was something to take up
 */
export function takeUp(place, start) {
  const typed = draft[place];
  if (!typed) return false;
  try {
    start(structuredClone(typed));
    return true;
  } catch {
    keepDraft("unread", [...(draft.unread ?? []), JSON.stringify(typed)]);
    keepDraft(place, null);
    report([DRAFT_ASIDE]);
    return false;
  }
}

/** @param {import("./records.js").ShelfReply} opened */
function take(opened) {
  fill(bottles, opened.bottles);
  fill(specs, opened.specs);
  aside = opened.aside;
  takeHouse(opened.house);
  example = false;
  report(opened.problems);
}

/**
 * What the device has, and what it refused and only this page has.
 * @template T @param {Map<string, Kept<T>>} place @param {Kept<any>[]} found
 */
function fill(place, found) {
  const refused = [...place].filter(([id]) => unkept.has(id));
  place.clear();
  for (const kept of found) place.set(kept.record.id, kept);
  for (const [id, kept] of refused) place.set(id, kept);
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
  // A glass of the example would be left without its bottles.
  if (draft.glass?.lines?.some((/** @type {any} */ line) => isExample(line.bottle))) keepDraft("glass", null);
  example = false;
  keepDraft("example", false);
  bottles.clear();
  specs.clear();
  keepHouse({});
}

/** A record that nothing keeps: the example, or what the device refused. @template T @param {T} record @returns {Kept<T>} */
const asKept = (record) => ({ format: 1, revision: 1, kept_on: today(), record, earlier: [] });
/** Records that the device refused to keep, by id. @type {Set<string>} */
const unkept = new Set();
/** Whether a record stands on this page alone. @param {string} id */
export const isUnkept = (id) => unkept.has(id);

/**
 * What this tab kept last, by key: another tab may write over it in the same moment.
 * @type {Map<string, { kind: string, before: any, after: any, revision: number }>}
 */
const mine = new Map();

/** Another tab kept something. @param {string | null} key */
export function hear(key) {
  draftHeard ||= key === null || key.endsWith(":draft");
  if (key !== null && (!key.startsWith("farthing:") || key.endsWith(":draft"))) return;
  let opened = core.shelf({ wish: "open" });
  if (!opened) return;
  if (example && opened.bottles.length + opened.specs.length === 0) {
    takeHouse(opened.house);
    return tell();
  }
  clearExample();
  const name = key?.replace(/^.*?:/, "") ?? "";
  if (name) reportClash(null, [], false);
  const edit = mine.get(name);
  const now = [...opened.bottles, ...opened.specs].find(({ record }) => name === `${edit?.kind}:${record.id}`);
  if (edit && now) {
    mine.delete(name);
    // It knew of this tab's change if it counted on from there.
    if (now.revision <= edit.revision && !same(now.record, edit.after)) opened = putBack(edit) ?? opened;
  }
  take(opened);
  tell();
}

/** Puts this tab's change back in after another tab wrote over it. @param {{ kind: string, before: any, after: any }} edit */
function putBack({ kind, before, after }) {
  const reply = core.shelf({ wish: "heard", kind, before, after, on: today() });
  if (reply?.clashes.length) reportClash(reply.kept.record, reply.clashes, false);
  return core.shelf({ wish: "open" });
}

/** @param {"bottle" | "spec"} kind @returns {Map<string, Kept<any>>} */
const placeOf = (kind) => (kind === "bottle" ? bottles : specs);

/**
 * Keeps a bottle or a spec. The example gives way to the first thing of one's own.
 * @param {"bottle" | "spec"} kind
 * @param {Bottle | Spec | null} before as this tab last saw it, so that another tab's edit is merged
 * @param {Bottle | Spec} after
 * @returns {boolean} whether the device keeps it now
 */
export function keep(kind, before, after) {
  clearExample();
  reportClash(null, [], false);
  const ask = { kind, before, after, on: today() };
  const reply = core.shelf({ ...ask, wish: "keep" });
  if (!reply) return false;
  const kept = reply.kept ?? asKept(after);
  mine.set(`${kind}:${after.id}`, { ...ask, revision: kept.revision });
  // The latest is the last.
  placeOf(kind).delete(after.id);
  placeOf(kind).set(after.id, kept);
  const done = reply.problems.length === 0;
  if (done) unkept.delete(after.id);
  else unkept.add(after.id);
  report(reply.problems);
  if (reply.clashes.length) reportClash(kept.record, reply.clashes, true);
  askToStay();
  tell();
  return done;
}

/**
 * Keeps a glass together with the example bottles in it, each as one's own.
 * @param {Spec} spec changed in place
 * @returns {boolean} whether the device keeps all of it
 */
export function adopt(spec) {
  /** @type {Map<string, Bottle>} */
  const taken = new Map();
  for (const line of spec.lines) {
    const shown = isExample(line.bottle) && bottles.get(line.bottle)?.record;
    if (shown && !taken.has(shown.id)) taken.set(shown.id, { ...structuredClone(shown), id: freshName() });
  }
  for (const line of spec.lines) line.bottle = taken.get(line.bottle)?.id ?? line.bottle;
  if (isExample(spec.id)) spec.id = freshName();
  keepDraft("glass", spec);
  const all = [...taken.values()].map((bottle) => keep("bottle", null, bottle));
  return keep("spec", null, structuredClone(spec)) && all.every(Boolean);
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
  unkept.delete(id);
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

/** Every record, as the text of one file: those that the device refused, too. */
export function saveFile() {
  const saved = core.shelf({ wish: "save_file", on: today() })?.file;
  /** @type {import("./records.js").ShelfFile} */
  const file = saved ? JSON.parse(saved) : { format: 1, holds: "farthing shelf", saved_on: today(), house: null, bottles: [], specs: [] };
  if (unkept.size === 0) return JSON.stringify(file);
  const whole = (/** @type {Kept<any>[]} */ stored, /** @type {Map<string, Kept<any>>} */ place) => [
    ...stored.filter(({ record }) => !unkept.has(record.id)), ...[...place.values()].filter(({ record }) => unkept.has(record.id)),
  ];
  return JSON.stringify({ ...file, bottles: whole(file.bottles, bottles), specs: whole(file.specs, specs) });
}

/** Everything that was set aside: records and drafts. */
const allAside = () => [...aside, .../** @type {string[]} */ (draft.unread ?? []).map((text) => ({ key: "draft", text }))];
/** How much was set aside. */
export const asideCount = () => allAside().length;
/** What was set aside, as the text of a file. */
export const asideFile = () => JSON.stringify(allAside());

/** What a file would change. @param {string} text */
export const readFile = (text) => core.shelf({ wish: "read_file", text });

/** @param {string} text */
export function takeFile(text) {
  const opened = core.shelf({ wish: "take_file", text, on: today() });
  if (!opened) return;
  // Where the device takes nothing, what stands here stays.
  if (!opened.house && opened.bottles.length + opened.specs.length === 0) return report(opened.problems);
  take(opened);
  tell();
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let waiting;
const DRAFT_MS = 250;
let draftKept = "";
let draftRefused = false;
/** Whether another tab kept its draft since; and what was typed in this one. */
let draftHeard = false;
const typedHere = new Set();
/** A page without a core keeps the draft for this tab alone. */
const TAB_DRAFT = "farthing-draft";

/**
 * Keeps what is being typed at one place of the page.
 * @param {string} place @param {any} typed
 */
export function keepDraft(place, typed) {
  draft[place] = typed;
  typedHere.add(place);
  clearTimeout(waiting);
  waiting = setTimeout(keepDraftNow, DRAFT_MS);
}

/** Keeps it at once: the page may be about to go. */
export function keepDraftNow() {
  clearTimeout(waiting);
  waiting = undefined;
  // A tasting table that another tab filled in is not written over by one that never saw it.
  if (draftHeard && !typedHere.has("tasting")) takeTable();
  draftHeard = false;
  const text = JSON.stringify(draft);
  if (text === draftKept) return;
  const result = core.shelf({ wish: "keep_draft", text });
  if (!result) return keepInTab(text);
  // Said once: the same is true of every key after this one.
  if (!result.problems.length) draftKept = text;
  else if (!draftRefused) report(result.problems);
  draftRefused = result.problems.length > 0;
}

function takeTable() {
  try {
    draft.tasting = JSON.parse(core.shelf({ wish: "open" })?.draft ?? "{}").tasting ?? draft.tasting;
  } catch {
    // What cannot be read is left to the next start, which sets it aside.
  }
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
