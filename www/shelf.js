// @ts-check
/** The shelf: every bottle and glass that this device keeps, found as one types. */

import { activate, blank } from "./blanks.js";
import { bottleEditor } from "./bottle.js";
import * as core from "./core.js";
import { shown } from "./figures.js";
import { fileTools } from "./file.js";
import { folded } from "./find.js";
import * as kept from "./kept.js";
import { freshId, make, note } from "./page.js";
import { go, opened, shut } from "./places.js";
import { clause } from "./sentence.js";
import { bottle as bottleWords, glass as glassWords, shelf as shelfWords, sum as sumWords } from "./words.js";
import { over as overWords } from "./words-menu.js";
/** @typedef {import("./records.js").Bottle} Bottle */
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {{ kind: "bottle" | "spec", id: string, name: string, folded: string }} Entry */

/** Rows drawn at a time: more come as one scrolls. */
const AT_ONCE = 30;

/** What lies over the shelf when it is asked for. @typedef {keyof typeof overWords.lead} View */
const VIEWS = /** @type {View[]} */ (Object.keys(overWords.lead));

/**
 * @param {object} does
 * @param {(bottle: Bottle) => void} does.useBottle
 * @param {(spec: Spec) => void} does.openGlass
 * @param {(title: string, figure: import("./records.js").Figure, about?: import("./doubt.js").About) => void} does.openWorking
 */
export function shelfView({ useBottle, openGlass, openWorking }) {
  /** @type {Entry[]} */
  let entries = [];
  /** @type {Map<string, string>} the cost of each row that was drawn, until something changes */
  const costs = new Map();
  let found = entries;

  const heading = make("h1", { class: "unseen", id: freshId() }, shelfWords.heading);
  const search = blank({ label: shelfWords.find, text: "", kind: "words", hint: shelfWords.findHint, changed: () => (look(), scrollTo(0, 0)) });
  search.input.type = "search";
  search.input.enterKeyHint = "search";
  const leads = make("nav", { class: "leads", "aria-label": overWords.views },
    ...VIEWS.map((name) => make("button", { type: "button", "data-leads": name, click: () => lay(name) }, overWords.lead[name])));
  const list = make("ul", { class: "shelf-list" });
  const more = make("div", { class: "more" });
  const empty = make("p", { class: "empty", hidden: true });
  const files = fileTools();
  const add = make("button", { type: "button", class: "wide", click: () => edit(null) }, shelfWords.add);
  const element = make("section", { class: "place shelf", "aria-labelledby": heading.id });
  const all = [heading, leads, list, more, empty, files.element, make("div", { class: "thumb" }, clause("", [search]), add)];
  element.append(...all);

  const observer = new IntersectionObserver((seen) => seen.some((each) => each.isIntersecting) && drawMore(), { rootMargin: "300px" });
  observer.observe(more);

  /** What is kept, in the order of names. */
  function gather() {
    costs.clear();
    const order = new Intl.Collator(undefined, { sensitivity: "base", numeric: true });
    const entry = (/** @type {"bottle" | "spec"} */ kind) => (/** @type {{ record: Bottle | Spec }} */ { record }) =>
      ({ kind, id: record.id, name: record.name, folded: folded(record.name) });
    entries = [...[...kept.specs.values()].map(entry("spec")), ...[...kept.bottles.values()].map(entry("bottle"))];
    entries.sort((a, b) => (a.kind === b.kind ? order.compare(a.name, b.name) : a.kind === "spec" ? -1 : 1));
    look();
  }

  function look() {
    const wanted = folded(search.input.value.trim());
    found = wanted ? entries.filter((entry) => entry.folded.includes(wanted)) : entries;
    list.replaceChildren();
    empty.hidden = found.length > 0;
    empty.textContent = entries.length === 0 ? shelfWords.empty : shelfWords.none;
    drawMore();
  }

  function drawMore() {
    const from = list.childElementCount;
    const batch = found.slice(from, from + AT_ONCE);
    if (batch.length === 0) return;
    price(batch);
    list.append(...batch.map(row));
    // It tells only of changes: asked anew, it tells that the end is still in sight.
    observer.unobserve(more);
    observer.observe(more);
  }

  /** Asks what the rows about to be drawn cost, those and no others. @param {Entry[]} batch */
  function price(batch) {
    const fresh = batch.filter((entry) => !costs.has(entry.kind + entry.id));
    if (fresh.length === 0) return;
    const specs = fresh.flatMap((entry) => (entry.kind === "spec" ? kept.specs.get(entry.id)?.record ?? [] : []));
    const ids = new Set(fresh.filter((entry) => entry.kind === "bottle").map((entry) => entry.id));
    for (const line of specs.flatMap((spec) => spec.lines)) ids.add(line.bottle);
    const bottles = [...ids].flatMap((id) => kept.bottles.get(id)?.record ?? []);
    const reply = core.answer({ house: kept.house, bottles, pours: [], specs });
    reply?.bottles.forEach(({ cost_each, usable }, i) =>
      costs.set(`bottle${bottles[i].id}`, cost_each ? shelfWords.perUnit(shown(cost_each), sumWords.each(usable?.unit ?? "ml")) : glassWords.noPrice));
    reply?.specs.forEach(({ cost, missing }, i) =>
      costs.set(`spec${specs[i].id}`, cost ? `${shown(cost)}${missing ? `, ${glassWords.without(missing)}` : ""}` : glassWords.noPrice));
  }

  /** @param {Entry} entry */
  function row(entry) {
    return make("li", { class: `of-${entry.kind}` },
      make("button", { type: "button", class: "row", click: () => openEntry(entry) },
        make("span", { class: "what", dir: "auto" }, entry.name || glassWords.unnamed),
        make("span", { class: "dots" }),
        make("span", { class: "row-cost" }, costs.get(entry.kind + entry.id) ?? "")));
  }

  /** @param {Entry} entry */
  function openEntry(entry) {
    const record = (entry.kind === "bottle" ? kept.bottles : kept.specs).get(entry.id)?.record;
    if (!record) return;
    if (entry.kind === "spec") openGlass(/** @type {Spec} */ (record));
    else edit(/** @type {Bottle} */ (record));
  }

  /** @param {Bottle | null} bottle @param {Bottle | null} [seenBefore] */
  function edit(bottle, seenBefore) {
    const from = scrollY;
    const editor = bottleEditor(bottle, { close: shut, use: useBottle, openWorking, seenBefore });
    element.replaceChildren(editor.element);
    opened(() => {
      const left = editor.unkept();
      if (left) note("undo", bottleWords.left(left.record.name), [[sumWords.undo, () => (go("shelf"), edit(left.record, left.before))]]);
      kept.keepDraft("bottle", null);
      element.replaceChildren(...all);
      activate(null);
      gather();
      scrollTo(0, from);
    });
    scrollTo(0, 0);
    editor.arrive();
    return editor;
  }

  /** @type {import("./over.js").Laid | null} what lies over the shelf */
  let laid = null;
  let laying = false;
  /** Lays a view over the shelf, once however often it is tapped. @param {View} name */
  async function lay(name) {
    if (laying) return;
    laying = true;
    const does = { openGlass, openWorking, closed: () => (laid = null) };
    try {
      if (name === "menu") laid = await (await import("./menu.js")).openMenu(does);
      else if (name === "shopping") laid = await (await import("./shopping.js")).openShopping(does);
      else if (name === "tasting") laid = await (await import("./tasting.js")).openTasting(does);
      else if (name === "recipe") laid = await (await import("./recipe.js")).openRecipe(does);
      else laid = await (await import("./keeping.js")).openKeeping(does);
    } finally {
      laying = false;
    }
  }

  // Paper has no scrolling: every row is drawn first.
  addEventListener("beforeprint", () => {
    while (list.childElementCount < found.length) drawMore();
  });
  gather();
  kept.takeUp("bottle", ({ record, before }) => edit(record, before));
  return {
    element,
    refill: () => (files.refill(), gather(), laid?.refill()),
    arrive() {
      activate(null);
      // A table that was open when the page went is open again.
      if (!laid && kept.draft.tasting?.open) lay("tasting");
    },
    /** Measures a rough measure of a bottle that stands here. @param {string} id @param {string} code */
    measure(id, code) {
      const record = kept.bottles.get(id)?.record;
      if (record) edit(record).measure(code);
    },
  };
}
