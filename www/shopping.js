// @ts-check
/** What to buy for so many of each glass: the bottles, what they cost, what is left of them. */

import { answerLine } from "./answer.js";
import { blank, choice } from "./blanks.js";
import * as core from "./core.js";
import { date, number, shown, today, written } from "./figures.js";
import { folded } from "./find.js";
import * as kept from "./kept.js";
import { make, note, say, soon, write } from "./page.js";
import { clause } from "./sentence.js";
import { copyOut, listTools, sheet, table, tellBlanks } from "./over.js";
import { gone as goneWords, glass as glassWords, problemWords } from "./words.js";
import { over as overWords, shopping as shoppingWords } from "./words-menu.js";
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {import("./blanks.js").Blank} Blank */

/** Glasses that stand there without being looked for. */
const MOST_SHOWN = 24;
/** How many the cost of one is looked at for. */
const PACES = ["1", "10", "25", "50", "100"];

/**
 * @param {object} does
 * @param {import("./over.js").OpenWorking} does.openWorking
 * @param {() => void} does.closed
 * @returns {Promise<import("./over.js").Laid | null>}
 */
export async function openShopping({ openWorking, closed }) {
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded), null;
  /** How many of each glass, as typed, by its id. @type {Record<string, string>} */
  let counts = {};
  kept.takeUp("shopping", (typed) => (counts = Object.fromEntries(Object.entries(typed.counts).map(([id, text]) => [id, String(text)]))));
  /** Every glass by its name's order. @type {Map<string, { name: string, folded: string }>} */
  const names = new Map();
  /** The lines that were drawn. @type {Map<string, { blank: Blank, element: HTMLElement }>} */
  const rows = new Map();
  /** @type {import("./records.js").ShopReply | null} */
  let reply = null;
  /** Of which glass it is told how its cost falls. */
  let falling = "";

  const view = sheet("shopping", shoppingWords.heading, closed);
  const about = make("p", { class: "small" }, shoppingWords.about);
  const list = make("div", { class: "counts" });
  const more = make("p", { class: "small" });
  const search = blank({ label: shoppingWords.find, text: "", kind: "words", hint: shoppingWords.findHint, changed: () => lay() });
  search.input.type = "search";
  const searching = clause("", [search]);
  searching.classList.add("seek");
  const total = answerLine(shoppingWords.hint, (figure) => openWorking(shoppingWords.outlay, figure));
  write(total.lead, shoppingWords.lead);
  const each = make("button", { type: "button", class: "row each", click: () => reply?.each && openWorking(shoppingWords.each, reply.each) });
  total.element.append(each);
  const bought = make("section", { class: "bought" });
  const falls = make("section", { class: "falls" });
  const byHand = make("div");
  const tools = listTools(() => copyOut(asText(), null, byHand));
  const clear = make("button", { type: "button", class: "quiet", click: startOver }, shoppingWords.clear);
  tools.append(clear);
  view.element.append(about, searching, list, more, bought, falls, tools, byHand, total.element);

  /** Those that are counted, the first first. */
  const counted = () => [...kept.specs.values()].map((each) => each.record).filter((spec) => counts[spec.id]?.trim());

  function gather() {
    rows.clear();
    names.clear();
    const order = new Intl.Collator(undefined, { sensitivity: "base", numeric: true });
    const named = [...kept.specs.values()].map(({ record }) => ({ id: record.id, name: record.name || glassWords.unnamed }));
    for (const { id, name } of named.sort((a, b) => order.compare(a.name, b.name))) names.set(id, { name, folded: folded(name) });
    write(about, names.size ? shoppingWords.about : shoppingWords.none);
    searching.hidden = names.size <= MOST_SHOWN;
    lay();
    reckon();
  }

  /** A glass and how many of it, drawn when it is first seen. @param {string} id @param {string} name */
  function drawn(id, name) {
    const old = rows.get(id);
    if (old) return old;
    const count = blank({
      label: shoppingWords.count(name), text: counts[id] ?? "",
      likely: () => ["1", "10", "20", "25", "40", "50", "100"].map((text) => ({ label: text, text })),
      changed(text) {
        counts[id] = text;
        changed();
      },
    });
    const element = clause(count.element, [], make("bdi", { class: "what" }, name));
    element.append(count.wrong);
    const row = { blank: count, element };
    rows.set(id, row);
    return row;
  }

  /** The counted ones stand first when the list is laid; the others as they are looked for. */
  function lay() {
    const wanted = folded(search.input.value.trim());
    const all = [...names].map(([id, each]) => ({ ...each, id, has: Boolean(counts[id]?.trim()) }));
    const others = all.filter((each) => !each.has && each.folded.includes(wanted));
    const first = others.slice(0, MOST_SHOWN);
    list.replaceChildren(...[...all.filter((each) => each.has), ...first].map(({ id, name }) => drawn(id, name).element));
    const left = others.length - first.length;
    write(more, left ? shoppingWords.more(left) : wanted && others.length === 0 ? shoppingWords.noneFound : "");
  }

  const showRestSoon = soon(() => {
    if (!view.element.isConnected) return;
    showRest();
    kept.keepDraft("shopping", { counts });
  });

  function changed() {
    ask();
    showRestSoon();
  }

  function reckon() {
    ask();
    showRest();
  }

  /** @param {Spec[]} specs @param {string[]} numbers @param {boolean} [empty] whether the shelf is taken to be empty */
  function shop(specs, numbers, empty = false) {
    const ids = new Set(specs.flatMap((spec) => spec.lines.map((line) => line.bottle)));
    const bottles = [...ids].flatMap((id) => kept.bottles.get(id)?.record ?? []);
    const none = { text: "", unit: "" };
    return core.shop({ house: kept.house, bottles: empty ? bottles.map((bottle) => ({ ...bottle, have: none })) : bottles, specs, counts: numbers });
  }

  function ask() {
    const specs = counted();
    reply = specs.length ? shop(specs, specs.map((spec) => counts[spec.id])) : null;
    total.show(reply?.outlay);
    each.hidden = !reply?.each;
    write(each, reply?.each ? shoppingWords.eachIs(shown(reply.each)) : "");
  }

  const isFirst = () => {
    const specs = counted();
    return specs.length === 1 && counts[specs[0].id].trim() === "1";
  };

  function showRest() {
    const specs = counted();
    const at = new Map(specs.map((spec, index) => [spec.id, `counts[${index}]`]));
    const left = tellBlanks([...rows].map(([id, { blank: count }]) => [at.get(id) ?? id, count]), reply?.problems ?? []);
    note("shopping", left[0] ? problemWords(left[0]) : null);
    const spoken = total.spoken();
    if (reply?.outlay) say(() => `${shoppingWords.outlay}: ${spoken}`);
    const has = Boolean(reply?.rows.length);
    tools.hidden = !has;
    bought.replaceChildren(...(has ? [
      make("h2", {}, shoppingWords.list),
      ...(isFirst() ? [make("p", { class: "small" }, shoppingWords.first)] : []),
      make("ul", {}, ...(reply?.rows ?? []).map(row)),
    ] : []), ...(reply?.missing ? [make("p", { class: "small" }, shoppingWords.missing(reply.missing))] : []));
    showFalls(specs);
  }

  /** @param {import("./records.js").ShopRow} bottle */
  const said = ({ bottle: id, name, buys }) => {
    const record = kept.bottles.get(id)?.record;
    return buys === 0 ? shoppingWords.enough(name) : shoppingWords.buys(buys, name, record ? written(record.holds) : "");
  };
  /** @param {import("./records.js").ShopRow} bottle */
  const under = ({ bottle: id, needs, has, left, buys }) => {
    const lot = kept.bottles.get(id)?.record.paid.bottles.trim() ?? "";
    return [needs && shoppingWords.needs(shown(needs)), has && shoppingWords.has(shown(has)), left && shoppingWords.left(shown(left)),
      buys > 0 && lot && lot !== "1" && shoppingWords.sold(lot)].filter(Boolean).join(" · ");
  };

  /** @param {import("./records.js").ShopRow} bottle */
  function row(bottle) {
    const { cost, left, name, buys } = bottle;
    const opens = (/** @type {string} */ title, /** @type {Figure | null} */ figure) => () => figure && openWorking(title, figure);
    return make("li", {},
      make("button", { type: "button", class: "row", click: opens(shoppingWords.cost(name), cost) },
        make("span", { class: "what", dir: "auto" }, said(bottle)), make("span", { class: "dots" }),
        make("span", { class: "row-cost" }, cost && buys > 0 ? shown(cost) : "–")),
      make("button", { type: "button", class: "row row-left", click: opens(shoppingWords.leaves(name), left) }, make("span", { class: "row-under" }, under(bottle))));
  }

  /** How the outlay for one falls, the more of a glass are poured. @param {Spec[]} specs */
  function showFalls(specs) {
    if (specs.length === 0) return falls.replaceChildren();
    const spec = specs.find(({ id }) => id === falling) ?? specs[0];
    const name = spec.name || glassWords.unnamed;
    const lines = PACES.flatMap((count) => {
      const asked = shop([spec], [count], true);
      const { outlay, each: one } = asked ?? {};
      if (!outlay || !one) return [];
      const opens = (/** @type {string} */ title, /** @type {Figure} */ figure) =>
        make("button", { type: "button", class: "row figure", click: () => openWorking(title, figure) }, shown(figure));
      return [[number(count), opens(shoppingWords.outlay, outlay), opens(shoppingWords.each, one)]];
    });
    if (lines.length === 0) return falls.replaceChildren();
    const other = specs.length > 1
      ? [clause(shoppingWords.ofGlass, [], choice(shoppingWords.glass, specs.map(({ id, name: each }) => [id, each || glassWords.unnamed]), spec.id, (id) => ((falling = id), showFalls(counted()))).element)]
      : [];
    falls.replaceChildren(make("h2", {}, shoppingWords.falls(name)), make("p", { class: "small" }, shoppingWords.fallsAbout), ...other, table(shoppingWords.columns, lines));
  }

  function asText() {
    const glasses = counted().map((spec) => shoppingWords.nGlasses(counts[spec.id].trim(), spec.name || glassWords.unnamed)).join(", ");
    const lines = (reply?.rows ?? []).map((each) => `${said(each)}${each.cost && each.buys > 0 ? `: ${shown(each.cost)}` : ""} – ${under(each)}`);
    const all = reply?.outlay ? [shoppingWords.textAll(shown(reply.outlay), reply.each ? shown(reply.each) : "")] : [];
    const missing = reply?.missing ? [shoppingWords.missing(reply.missing)] : [];
    return [shoppingWords.textHead(date(today())), shoppingWords.textFor(glasses), "", ...lines, "", ...all, ...missing].join("\n");
  }

  function startOver() {
    const was = counts;
    const set = (/** @type {Record<string, string>} */ next) => ((counts = next), kept.keepDraft("shopping", { counts }), gather());
    set({});
    note("undo", shoppingWords.cleared, [[overWords.undo, () => set(was)]]);
  }

  view.lay();
  gather();
  return { refill: () => !view.element.contains(document.activeElement) || document.activeElement?.localName !== "input" ? gather() : reckon() };
}
