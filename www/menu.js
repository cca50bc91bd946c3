// @ts-check
/** The menu at a glance: every glass with its cost, price, margin and strength. */

import { blank, choice } from "./blanks.js";
import * as core from "./core.js";
import { amount, decimalMark, number, shown } from "./figures.js";
import { folded } from "./find.js";
import { same } from "./fresh.js";
import * as kept from "./kept.js";
import { freshId, make, note, say, write } from "./page.js";
import { clause } from "./sentence.js";
import { cell, copyOut, fact, listTools, sheet, table } from "./over.js";
import { gone as goneWords, glass as glassWords } from "./words.js";
import { menu as menuWords } from "./words-menu.js";
/** @typedef {import("./records.js").Facts} Facts */
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {import("./records.js").Spec} Spec */

/** Glasses that are reckoned at a time, at most and at first, and how long that may take: a phone answers a key in between. */
const SLICE = 50;
const FIRST_SLICE = 12;
const SLICE_MS = 40;

/** Rows drawn at a time: more come as one scrolls. */
const AT_ONCE = 40;

/** @template T @typedef {import("./records.js").Kept<T>} Kept */
/**
 * @typedef {object} Row
 * @property {Kept<Spec>} kept
 * @property {(Kept<import("./records.js").Bottle> | undefined)[]} bottles those that it names, as they were
 * @property {string} name
 * @property {string} folded
 * @property {Facts | null} facts nothing until it is reckoned
 * @property {ReturnType<typeof rowView> | null} view nothing until it is drawn
 */

/**
 * @param {object} does
 * @param {(spec: Spec) => void} does.openGlass
 * @param {import("./over.js").OpenWorking} does.openWorking
 * @param {() => void} does.closed
 * @returns {Promise<import("./over.js").Laid | null>}
 */
export async function openMenu({ openGlass, openWorking, closed }) {
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded), null;
  /** @type {Map<string, Row>} */
  const rows = new Map();
  let house = kept.house;
  let order = "name up";
  let run = 0;
  /** @type {Row[]} */
  let ordered = [];
  /** Those of them that are looked for. */
  let found = ordered;

  const view = sheet("menu", menuWords.heading, () => {
    run = -1;
    observer.disconnect();
    removeEventListener("beforeprint", toPaper);
    closed();
  });
  const summary = make("p", { class: "small tally", role: "status" });
  const orders = choice(menuWords.order, menuWords.orders, order, (value) => ((order = value), sort()));
  const search = blank({ label: menuWords.find, text: "", kind: "words", hint: menuWords.findHint, changed: () => (list.replaceChildren(), find(), scrollTo(0, 0)) });
  search.input.type = "search";
  search.input.enterKeyHint = "search";
  const list = make("ul", { class: "menu-list" });
  const more = make("div", { class: "more" });
  const empty = make("p", { class: "empty", hidden: true });
  const byHand = make("div");
  const paper = make("div", { class: "paper" });
  const tools = listTools(() => copyOut(asText(), asTable(), byHand));
  const ordering = clause(menuWords.by, [], orders.element);
  view.element.append(summary, ordering, list, more, empty, tools, byHand, paper, make("div", { class: "thumb" }, clause("", [search])));

  const observer = new IntersectionObserver((seen) => seen.some((each) => each.isIntersecting) && drawMore(), { rootMargin: "300px" });

  /** One glass with its workings, which all of them together do without. @param {string} id */
  function fullFacts(id) {
    const row = rows.get(id);
    if (!row) return null;
    const bottles = new Map(row.bottles.flatMap((each) => (each ? [[each.record.id, each.record]] : [])));
    return core.facts({ house, bottles: [...bottles.values()], specs: [row.kept.record], in_full: true })?.specs[0] ?? null;
  }

  /** Takes up what is kept now, and forgets only what that changed. */
  function gather() {
    if (!same(house, kept.house)) for (const row of rows.values()) row.facts = null;
    house = kept.house;
    for (const [id, row] of rows) if (!kept.specs.has(id)) rows.delete(id);
    for (const [id, now] of kept.specs) {
      const bottles = now.record.lines.map((line) => kept.bottles.get(line.bottle));
      const name = now.record.name || glassWords.unnamed;
      const old = rows.get(id);
      const known = old && old.facts && alike(old.kept, now) && bottles.every((each, at) => alike(old.bottles[at], each));
      const row = { kept: now, bottles, name, folded: folded(name), facts: known ? old.facts : null, view: old?.view ?? null };
      rows.set(id, row);
      row.view?.show(row.name, row.facts);
    }
    sort();
    reckon();
  }

  /** Asks slice by slice, in the order in which one reads. */
  async function reckon() {
    const mine = ++run;
    const stale = ordered.filter((row) => !row.facts);
    let size = FIRST_SLICE;
    for (let at = 0; at < stale.length; ) {
      const begun = performance.now();
      ask(stale.slice(at, at + size));
      at += size;
      tell(stale.length - at);
      const took = performance.now() - begun;
      size = Math.max(4, Math.min(SLICE, Math.round((size * SLICE_MS) / took)));
      await new Promise((resolve) => setTimeout(resolve));
      if (mine !== run) return;
    }
    if (stale.length) sort();
    tell(0);
  }

  /** @param {Row[]} some */
  function ask(some) {
    const bottles = new Map(some.flatMap((row) => row.bottles.flatMap((each) => (each ? [[each.record.id, each.record]] : []))));
    const reply = core.facts({ house, bottles: [...bottles.values()], specs: some.map((row) => row.kept.record), in_full: false });
    some.forEach((row, at) => {
      row.facts = reply?.specs[at] ?? null;
      row.view?.show(row.name, row.facts);
    });
  }

  function sort() {
    ordered = inOrder([...rows.values()], order);
    find();
  }

  /** Those whose name holds what is typed, from the first on; as many as were drawn stay drawn. */
  function find() {
    const wanted = folded(search.input.value.trim());
    const many = list.childElementCount;
    found = wanted ? ordered.filter((row) => row.folded.includes(wanted)) : ordered;
    const first = found.slice(0, Math.max(many, AT_ONCE)).map(drawn);
    if (first.length !== many || first.some((element, at) => list.children[at] !== element)) list.replaceChildren(...first);
    watch();
    tell(ordered.filter((row) => !row.facts).length);
  }

  /** @param {Row} row */
  function drawn(row) {
    const { id } = row.kept.record;
    if (!row.view) {
      row.view = rowView({ full: () => fullFacts(id), open: () => rows.get(id)?.kept.record, openGlass, openWorking });
      row.view.show(row.name, row.facts);
    }
    return row.view.element;
  }

  function drawMore() {
    const from = list.childElementCount;
    list.append(...found.slice(from, from + AT_ONCE).map(drawn));
    if (list.childElementCount < found.length) watch();
  }

  /** It tells only of changes: asked anew, it tells that the end is still in sight. */
  function watch() {
    observer.unobserve(more);
    observer.observe(more);
  }

  /** @param {number} left */
  function tell(left) {
    const here = found;
    const count = (/** @type {(facts: Facts) => boolean} */ holds) => here.filter((row) => row.facts && holds(row.facts)).length;
    const [under, unpriced, uncosted] = [count((facts) => facts.under_target), count((facts) => !facts.priced), count((facts) => facts.missing > 0 || !facts.cost)];
    const wanted = count((facts) => facts.priced !== null && facts.target_percent !== "");
    write(summary, rows.size === 0 ? "" : [
      here.length < rows.size ? menuWords.found(here.length, rows.size) : menuWords.glasses(rows.size),
      under ? menuWords.under(under) : wanted ? menuWords.allReach : "",
      unpriced ? menuWords.unpriced(unpriced) : "", uncosted ? menuWords.uncosted(uncosted) : "",
      left > 0 ? menuWords.reckoning(left) : "",
    ].filter(Boolean).join(" "));
    empty.hidden = here.length > 0;
    ordering.hidden = tools.hidden = rows.size === 0;
    write(empty, rows.size === 0 ? menuWords.none : menuWords.noneFound);
    if (search.input.value) say(() => summary.textContent || menuWords.noneFound);
  }

  /** Plain figures, which a spreadsheet reads as numbers. */
  function asRows() {
    const plain = (/** @type {Figure | null | undefined} */ figure) => figure?.shown.replace(".", decimalMark) ?? "";
    return found.map(({ name, facts }) => [
      name, plain(facts?.cost), plain(facts?.priced?.price), plain(facts?.priced?.margin),
      (facts?.target_percent ?? "").replace(".", decimalMark), plain(facts?.strength?.percent), remark(facts),
    ]);
  }
  const columns = () => menuWords.columns(house.currency);
  const asText = () => [columns(), ...asRows().map(([name, ...rest]) => [cell(name), ...rest])].map((row) => row.join("\t")).join("\n");
  const asTable = () => table(columns(), asRows());
  const toPaper = () => paper.replaceChildren(asTable());

  addEventListener("beforeprint", toPaper);
  view.lay();
  gather();
  return { refill: gather };
}

/** Whether a record still says what it said. @param {Kept<any> | undefined} old @param {Kept<any> | undefined} now */
const alike = (old, now) => old === now || (old !== undefined && now !== undefined && old.revision === now.revision && same(old.record, now.record));

/** @param {Facts | null} facts */
function remark(facts) {
  if (!facts) return "";
  return [
    facts.cost ? (facts.missing ? menuWords.without(facts.missing) : "") : menuWords.noCost,
    facts.priced ? "" : menuWords.noPrice,
    facts.under_target ? menuWords.underTarget(amount(facts.target_percent, "percent")) : "",
  ].filter(Boolean).join(", ");
}

/** By what a row is put in order: a name, or a figure's size. @type {Record<string, (facts: Facts) => Figure | null | undefined>} */
const FIGURES = {
  cost: (facts) => facts.cost, price: (facts) => facts.priced?.price,
  margin: (facts) => facts.priced?.margin, strength: (facts) => facts.strength?.percent,
};

/** What has no such figure comes last, either way. @param {Row[]} rows @param {string} order */
function inOrder(rows, order) {
  const [by, way] = order.split(" ");
  const names = new Intl.Collator(undefined, { sensitivity: "base", numeric: true });
  const turned = way === "down" ? -1 : 1;
  const figure = FIGURES[by];
  if (!figure) return rows.sort((a, b) => turned * names.compare(a.name, b.name));
  const sizes = new Map(rows.map((row) => [row, row.facts ? figure(row.facts)?.value : undefined]));
  return rows.sort((a, b) => {
    const [one, other] = [sizes.get(a), sizes.get(b)];
    if (one === other) return names.compare(a.name, b.name);
    if (one === undefined || other === undefined) return one === undefined ? 1 : -1;
    return turned * (Number(one) - Number(other)) || names.compare(a.name, b.name);
  });
}

/**
 * One glass: a line of the menu that unfolds into its figures.
 * @param {object} does
 * @param {() => Facts | null} does.full with its workings
 * @param {() => Spec | undefined} does.open
 * @param {(spec: Spec) => void} does.openGlass
 * @param {import("./over.js").OpenWorking} does.openWorking
 */
function rowView({ full, open, openGlass, openWorking }) {
  const what = make("span", { class: "what", dir: "auto" });
  const price = make("span", { class: "row-cost" });
  const under = make("span", { class: "row-under" });
  const flag = make("span", { class: "flag", hidden: true });
  const fold = make("div", { class: "fold", id: freshId(), hidden: true });
  const row = make("button", { type: "button", class: "row", "aria-expanded": "false", "aria-controls": fold.id, click: () => unfold(fold.hidden) },
    what, make("span", { class: "dots" }), price, under, flag);
  const element = make("li", {}, row, fold);
  let name = "";
  /** @type {Facts | null} */
  let facts = null;

  /** @param {boolean} opens */
  function unfold(opens) {
    fold.hidden = !opens;
    row.setAttribute("aria-expanded", String(opens));
    if (opens) fill();
  }

  function fill() {
    const { cost, priced, asked, strength } = (facts && full()) ?? {};
    const asks = menuWords.asks(amount(facts?.target_percent ?? "", "percent"));
    /** @type {[string, Figure | null | undefined][]} */
    const all = [
      [menuWords.facts.cost, cost], [menuWords.facts.price, priced?.price], [menuWords.facts.keeps, priced?.keeps], [menuWords.facts.margin, priced?.margin],
      [asks, asked?.price], [menuWords.facts.strength, strength?.percent],
    ];
    const figures = all.flatMap(([is, figure]) => (figure ? [fact(is, figure, menuWords.figure(name, is), openWorking)] : []));
    fold.replaceChildren(make("div", { class: "facts" }, ...figures),
      make("div", { class: "line-tools" }, make("button", { type: "button", class: "quiet", click: () => { const spec = open(); if (spec) openGlass(spec); } }, menuWords.open)));
  }

  return {
    element,
    /** @param {string} now @param {Facts | null} known */
    show(now, known) {
      [name, facts] = [now, known];
      write(what, name);
      write(price, known ? (known.priced?.price ? shown(known.priced.price) : menuWords.noPrice) : "");
      write(under, known ? [
        known.cost ? menuWords.cost(shown(known.cost)) : menuWords.noCost,
        known.cost && known.missing ? menuWords.without(known.missing) : "",
        known.priced?.margin ? menuWords.margin(shown(known.priced.margin)) : "",
        known.strength?.percent ? menuWords.strength(number(known.strength.percent.shown) + " %") : "",
      ].filter(Boolean).join(" · ") : " ");
      flag.hidden = !known?.under_target;
      if (known?.under_target) write(flag, menuWords.underTarget(amount(known.target_percent, "percent")));
      row.classList.toggle("missing", Boolean(known) && !known?.priced);
      if (!fold.hidden) fill();
    },
  };
}
