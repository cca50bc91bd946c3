// @ts-check
/** One bottle of the shelf, open for a change: its sentence, its rough measures, its earlier prices. */

import { answerLine } from "./answer.js";
import { activate, tellAll } from "./blanks.js";
import { bottleMore } from "./bottle-more.js";
import * as core from "./core.js";
import { around, date, shown, written } from "./figures.js";
import { emptyBottle, freshName, same } from "./fresh.js";
import * as kept from "./kept.js";
import { openMeasuring } from "./measuring.js";
import { freshId, make, note, say, soon, write } from "./page.js";
import { roughTable } from "./rough.js";
import { bottleSentence } from "./sentence.js";
import { bottle as bottleWords, glass as glassWords, problemWords, rough as roughWords, roughNamed, sum as sumWords } from "./words.js";
/** @typedef {import("./records.js").Bottle} Bottle */
/** @typedef {import("./records.js").Figure} Figure */

const MOVES_MS = 300;

/**
 * @param {Bottle | null} given nothing for a new one
 * @param {object} does
 * @param {() => void} does.close
 * @param {(bottle: Bottle) => void} does.use
 * @param {(title: string, figure: Figure, about: import("./doubt.js").About) => void} does.openWorking
 * @param {Bottle | null} [does.seenBefore] the bottle as this tab saw it when a draft of it was begun
 */
export function bottleEditor(given, { close, use, openWorking, seenBefore }) {
  const bottle = { ...emptyBottle(), ...structuredClone(given) };
  const seen = () => kept.bottles.get(bottle.id)?.record ?? null;
  /** As this tab saw it when the editor opened: another tab's change is merged against it. */
  const before = seenBefore ?? structuredClone(seen());
  const onShelf = seen() !== null;
  /** Whether it was kept or taken off, so that nothing is left behind. */
  let settled = false;
  /** @type {Figure | null} */
  let each = null;
  /** @type {import("./records.js").Reply | null} */
  let reply = null;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let movesTimer;

  const heading = make("h1", { id: freshId(), tabindex: "-1" }, onShelf ? bottleWords.change : bottleWords.fresh);
  const sentence = bottleSentence(bottle, { changed });
  const { price, holds, name } = sentence.blanks;
  for (const blank of [price, holds, name]) blank.next = () => [price, holds, name].find((other) => !other.input.value.trim());
  const answer = answerLine(bottleWords.hint, (figure, doubtFirst) =>
    openWorking(sumWords.workingOf.cost_each, figure, { doubtFirst, named: () => bottle.name }));

  const rough = roughTable(bottle.rough, {
    over: kept.house.rough,
    changed(code, size) {
      if (size) bottle.rough[code] = size;
      else delete bottle.rough[code];
      changed();
    },
    about({ code }) {
      const measuring = bottle.measured[code];
      const size = measuring && core.measure({ house: kept.house, measuring, others: [] })?.size;
      return size ? roughWords.measured(shown(size), around(size)) : measuring && !measuring.found ? roughWords.unfinished(roughNamed(code)) : "";
    },
    measure,
  });
  // What was measured is told by the part of the core that comes late, maybe after this was opened.
  core.loadMore().then((isThere) => isThere && rough.tell());
  const roughFold = make("details", {}, make("summary", {}, bottleWords.rough), rough.element);
  roughFold.open = Object.keys(bottle.rough).length + Object.keys(bottle.measured).length > 0;
  const more = bottleMore(bottle, changed);
  const moved = make("div", { class: "moved", "aria-live": "polite" });
  const earlier = make("div", { class: "earlier" });
  const keep = make("button", { type: "button", class: "wide", click: keepIt }, bottleWords.keep);
  const tools = make("div", { class: "line-tools" },
    make("button", { type: "button", class: "quiet", click: close }, bottleWords.leave),
    onShelf ? make("button", { type: "button", class: "quiet", click: () => use(bottle) }, bottleWords.use) : null,
    onShelf ? make("button", { type: "button", class: "quiet", click: takeOff }, bottleWords.remove) : null);

  const element = make("section", { class: "place editor", "aria-labelledby": heading.id },
    heading, make("div", { class: "sentence" }, ...sentence.clauses), answer.element, keep, moved, sentence.toggles, more.element, earlier, roughFold, tools);
  showEarlier();
  reckon();

  const showRestSoon = soon(() => {
    if (!element.isConnected) return;
    showRest();
    keepDraft();
  });
  const keepDraft = () => kept.keepDraft("bottle", { record: bottle, before });

  /** Measures a rough measure of this bottle. @param {string} code */
  function measure(code) {
    openMeasuring(bottle, code, { changed: keepDraft, closed: reckon, openWorking });
  }

  /** At a key: the answer at once, the rest a moment later. */
  function changed() {
    ask();
    showRestSoon();
  }

  function reckon() {
    ask();
    showRest();
  }

  /** Asks what one of it costs. */
  function ask() {
    reply = core.answer({ house: kept.house, bottles: [bottle], pours: [], specs: [] });
    each = reply?.bottles[0]?.cost_each ?? null;
    answer.show(each);
  }

  function showRest() {
    const places = new Map([
      ...sentence.places("bottles[0]"), ...more.places("bottles[0]"),
      .../** @type {[string, import("./blanks.js").Blank][]} */ (rough.places.map(([code, blank]) => [`bottles[0].rough.${code}`, blank])),
    ]);
    holds.read(reply?.bottles[0]?.unit ?? "");
    const left = tellAll(places, reply?.problems ?? []).filter((problem) => problem.place.startsWith("bottles"));
    more.show();
    note("bottle", left[0] ? problemWords(left[0]) : null);
    const unit = reply?.bottles[0]?.usable?.unit ?? "ml";
    write(answer.lead, sumWords.each(unit));
    rough.tell();
    const spoken = answer.spoken();
    say(() => (spoken ? `${sumWords.each(unit)}: ${spoken}` : ""));
    const unchanged = same(seen(), bottle) && !kept.isUnkept(bottle.id);
    keep.hidden = unchanged || !bottle.name.trim();
    write(keep, onShelf ? bottleWords.keepChange : bottleWords.keep);
    clearTimeout(movesTimer);
    if (unchanged) moved.replaceChildren();
    else movesTimer = setTimeout(showMoves, MOVES_MS);
  }

  /** Which glasses the change moves, and by how much. */
  function showMoves() {
    const was = seen();
    const with_ = [...kept.specs.values()].map((each) => each.record).filter((spec) => spec.lines.some((line) => line.bottle === bottle.id));
    if (!was || with_.length === 0) return moved.replaceChildren();
    const needed = new Set(with_.flatMap((spec) => spec.lines.map((line) => line.bottle)));
    needed.delete(bottle.id);
    const bottles = [...needed].flatMap((id) => kept.bottles.get(id)?.record ?? []);
    const result = core.moves({ house: kept.house, before: was, after: bottle, bottles, specs: with_ });
    const rows = (result?.specs ?? []).map((spec) =>
      make("li", { class: "row" }, make("span", { class: "what", dir: "auto" }, kept.specs.get(spec.id)?.record.name || glassWords.unnamed),
        make("span", { class: "dots" }),
        make("span", { class: "row-cost" }, bottleWords.fromTo(spec.before ? shown(spec.before) : "", spec.after ? shown(spec.after) : "")),
        make("span", { class: "row-share" }, spec.change ? bottleWords.by(shown(spec.change)) : "")));
    moved.replaceChildren(...(rows.length ? [make("h2", {}, bottleWords.moves), make("ul", {}, ...rows)] : []));
  }

  function showEarlier() {
    const prices = kept.bottles.get(bottle.id)?.earlier ?? [];
    if (prices.length === 0) return;
    const lines = prices.map((was) => {
      const asked = core.answer({ house: kept.house, bottles: [{ ...bottle, paid: was.paid, holds: was.holds }], pours: [], specs: [] });
      const cost = asked?.bottles[0]?.cost;
      return make("li", {}, bottleWords.until(date(was.until), cost ? shown(cost) : was.paid.price, written(was.holds)));
    });
    earlier.replaceChildren(make("h2", {}, bottleWords.earlier), make("ul", {}, ...lines));
  }

  function keepIt() {
    if (kept.isExample(bottle.id)) bottle.id = freshName();
    const done = kept.keep("bottle", kept.example ? null : before, bottle);
    settled = true;
    kept.keepDraft("bottle", null);
    if (done) note("done", sumWords.kept(bottle.name));
    close();
  }

  function takeOff() {
    const undo = kept.remove("bottle", bottle.id);
    settled = true;
    kept.keepDraft("bottle", null);
    note("undo", bottleWords.removed(bottle.name), [[sumWords.undo, undo]]);
    close();
  }

  /** What was changed and not kept, as it is when one looks elsewhere. */
  const unkept = () => (settled || same(seen() ?? emptyBottle(bottle.id), bottle) ? null : { record: bottle, before });

  return { element, unkept, measure, arrive: () => (onShelf ? heading.focus() : price.input.focus(), activate(price)), bottle };
}
