// @ts-check
/** The quick sum: what a dash or a pour of one bottle costs. */

import { answerLine } from "./answer.js";
import { blank, activate, tellAll } from "./blanks.js";
import * as core from "./core.js";
import { amount, said, shown, written } from "./figures.js";
import { become, emptyBottle, freshName, same } from "./fresh.js";
import * as kept from "./kept.js";
import { freshId, make, note, say, soon, write } from "./page.js";
import { bottleSentence, clause } from "./sentence.js";
import { clauses, labels, one, sum as sumWords, usualMeasures } from "./words.js";
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {import("./records.js").Bottle} Bottle */

/**
 * @typedef {object} Sum
 * @property {Bottle} bottle
 * @property {{ text: string, unit: string }} measure
 * @property {Bottle | null} [seen] the bottle of the shelf as it was taken up, so that another tab's change is merged
 */

/** @returns {Sum} */
const emptySum = () => ({ bottle: emptyBottle("sum"), measure: { text: "", unit: "dash" } });

/** @param {string} below what the figure is */
function fact(below) {
  const figure = make("b");
  const caption = make("span", {}, below);
  const element = make("button", { type: "button", class: "fact", disabled: true }, figure, caption);
  return { element, figure, caption };
}

/**
 * @param {object} options
 * @param {(title: string, figure: Figure, about: import("./doubt.js").About) => void} options.openWorking
 * @param {(bottle: Bottle, code: string, does: { changed: () => void, closed: () => void }) => void} options.measure
 */
export function sumView({ openWorking, measure: measureBottle }) {
  /** @type {Sum} */
  const sum = emptySum();
  /** @type {import("./records.js").Reply | null} */
  let reply = null;

  const sentence = bottleSentence(sum.bottle, { changed: () => changed(), picked: pick });
  const measure = blank({
    label: labels.measure, text: "", unit: "dash", offered: "measure",
    likely: () => usualMeasures,
    changed(text, unit) {
      sum.measure = { text, unit };
      changed();
    },
  });
  const answer = answerLine(sumWords.hint, (_, doubtFirst) => show("cost", doubtFirst));
  const facts = { amount: fact(sumWords.poured), each: fact(""), count: fact(sumWords.count) };
  const keep = make("button", { type: "button", class: "wide", hidden: true, click: keepBottle }, sumWords.keep);
  const clear = make("button", { type: "button", class: "quiet", click: startOver }, sumWords.clear);
  const three = [sentence.blanks.price, sentence.blanks.holds, measure];
  for (const each of three) each.next = () => three.find((other) => other.input.value.trim() === "");
  /** Where the core finds each blank. */
  const places = new Map([...sentence.places("bottles[0]"), /** @type {[string, import("./blanks.js").Blank]} */ (["pours[0].measure", measure])]);
  sentence.toggles.append(clear);
  const heading = make("h1", { class: "unseen", id: freshId() }, sumWords.heading);
  const element = make(
    "section",
    { class: "place sum", "aria-labelledby": heading.id },
    heading,
    make("div", { class: "sentence" }, ...sentence.clauses, clause(clauses.and, [measure]), answer.element),
    make("div", { class: "facts" }, facts.amount.element, facts.each.element, facts.count.element),
    sentence.toggles, keep,
  );

  facts.amount.element.addEventListener("click", () => show("amount"));
  facts.each.element.addEventListener("click", () => show("cost_each"));
  facts.count.element.addEventListener("click", () => show("count"));

  /** @param {"cost" | "amount" | "count" | "cost_each"} which @param {boolean} [doubtFirst] */
  function show(which, doubtFirst) {
    const figure = which === "cost_each" ? reply?.bottles[0]?.cost_each : reply?.pours[0]?.[which];
    if (figure) openWorking(sumWords.workingOf[which], figure, { doubtFirst, named: () => sum.bottle.name, measure: measureIt });
  }

  /** @param {{ of: string }} part */
  const measureIt = ({ of }) => measureBottle(sum.bottle, of, { changed: keepDraft, closed: reckon });
  const keepDraft = () => kept.keepDraft("sum", sum);

  const showRestSoon = soon(() => {
    showRest();
    keepDraft();
  });

  /** At a key: the figures at once, the rest a moment later. */
  function changed() {
    ask();
    showAnswer();
    showFacts();
    showRestSoon();
  }

  function reckon() {
    ask();
    showAnswer();
    showFacts();
    showRest();
  }

  /** Asks the core about this one bottle and this one pour. */
  function ask() {
    reply = core.answer({
      house: kept.house, bottles: [sum.bottle], pours: [{ bottle: sum.bottle.id, measure: sum.measure }], specs: [],
    });
  }

  /** What stands around the answer. */
  function showRest() {
    const left = tellAll(places, reply?.problems ?? []);
    note("sum", left[0] ? sumWords.problem(left[0]) : null);
    const pour = reply?.pours[0];
    measure.read(pour?.unit ?? "");
    sentence.blanks.holds.read(reply?.bottles[0]?.unit ?? "");
    const figure = answer.spoken();
    say(() => (figure ? sumWords.spoken(written(sum.measure), sum.bottle.name, figure) : ""));
    showKeep();
  }

  function showAnswer() {
    answer.show(reply?.pours[0]?.cost);
    write(answer.lead, clauses.cost(one(sum.measure.text)));
  }

  /** The figures below never disagree with the answer. */
  function showFacts() {
    const pour = reply?.pours[0];
    const each = reply?.bottles[0]?.cost_each;
    const unit = reply?.bottles[0]?.usable?.unit ?? pour?.amount?.unit ?? "ml";
    fillFact(facts.each, each ? shown(each) : null, sumWords.each(unit));
    fillFact(facts.amount, pour?.amount ? shown(pour.amount) : null, sumWords.poured);
    const left = pour?.left_over && pour.left_over.shown !== "0" ? shown(pour.left_over) : "";
    // However many there are, whole ones may be as many at the least as at the most.
    const range = pour?.count?.range;
    fillFact(facts.count, pour?.count ? amount(pour.count.shown, "") : null,
      range && range.low.text !== range.high.text ? sumWords.countBetween(said(range.low, ""), said(range.high, "")) : sumWords.countAndLeft(left));
  }

  /** @param {ReturnType<typeof fact>} place @param {string | null} text @param {string} caption */
  function fillFact(place, text, caption) {
    write(place.figure, text ?? "");
    write(place.caption, caption);
    if (place.element.disabled !== (text === null)) place.element.disabled = text === null;
  }

  function showKeep() {
    const onShelf = kept.bottles.get(sum.bottle.id)?.record;
    const hide = !sum.bottle.name.trim() || !reply?.bottles[0]?.cost || (same(onShelf, sum.bottle) && !kept.isUnkept(sum.bottle.id));
    if (keep.hidden !== hide) keep.hidden = hide;
    write(keep, onShelf && !kept.isExample(sum.bottle.id) ? sumWords.keepChange : sumWords.keep);
  }

  function keepBottle() {
    const ofExample = kept.isExample(sum.bottle.id);
    const onShelf = (!ofExample && kept.bottles.get(sum.bottle.id)?.record) || null;
    if (!onShelf) sum.bottle.id = freshName();
    const done = kept.keep("bottle", onShelf && (sum.seen ?? onShelf), structuredClone(sum.bottle));
    const now = kept.bottles.get(sum.bottle.id)?.record;
    if (now) takeBottle(now);
    refill();
    kept.keepDraft("sum", sum);
    if (done) note("done", sumWords.kept(sum.bottle.name));
  }

  /** The bottle as the shelf has it now. @param {Bottle} now */
  function takeBottle(now) {
    sum.seen = structuredClone(now);
    become(sum.bottle, now);
  }

  /** After something else changed what is kept: a bottle that nobody is changing here follows the shelf. */
  function refill() {
    const unchanged = sum.seen && same(sum.seen, sum.bottle);
    const now = twin() ?? (unchanged && kept.bottles.get(sum.bottle.id)?.record);
    if (now) takeBottle(now);
    sentence.refill();
    reckon();
  }

  /** A bottle of the example that was made one's own. */
  function twin() {
    if (kept.example || !sum.bottle.id.startsWith("example-")) return undefined;
    const { id } = sum.bottle;
    return [...kept.bottles.values()].map((each) => each.record).find((record) => same({ ...record, id }, sum.bottle));
  }

  /** Takes up a bottle of the shelf. @param {string} id */
  function pick(id) {
    const found = kept.bottles.get(id);
    if (!found) return;
    start({ bottle: structuredClone(found.record), measure: sum.measure });
    measure.input.focus();
  }

  function startOver() {
    const was = structuredClone(sum);
    start();
    note("undo", sumWords.cleared, [[sumWords.undo, () => start(was)]]);
  }

  /** Starts the sum with what is given, or with nothing. @param {Sum} [given] */
  function start(given) {
    const { bottle, measure: poured, seen } = given ?? emptySum();
    become(sum.bottle, bottle);
    sum.measure = { ...poured };
    sum.seen = seen ?? structuredClone(kept.bottles.get(bottle.id)?.record ?? null);
    measure.set(poured.text, poured.unit);
    sentence.refill();
    activate(given ? measure : sentence.blanks.price);
    reckon();
    kept.keepDraft("sum", sum);
  }

  return { element, start, reckon, refill, current: () => structuredClone(sum), isEmpty: () => !sum.bottle.paid.price && !sum.measure.text && !sum.bottle.holds.text };
}
