// @ts-check
/** The quick sum: what a dash or a pour of one bottle costs. */

import { blank, activate, tellAll } from "./blanks.js";
import * as core from "./core.js";
import { amount, shown } from "./figures.js";
import { emptyBottle, freshName, same } from "./fresh.js";
import * as kept from "./kept.js";
import { freshId, make, note, say, write } from "./page.js";
import { bottleSentence, clause } from "./sentence.js";
import { clauses, labels, one, sum as sumWords, units, usualMeasures } from "./words.js";
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {import("./records.js").Bottle} Bottle */

/** @typedef {{ bottle: Bottle, measure: { text: string, unit: string } }} Sum */

/** The lead word of the answer and the figure itself, which opens its working. */
function answerLine() {
  const output = make("output", { class: "answer", "aria-live": "off", "data-hint": sumWords.hint });
  const open = make("button", { type: "button", class: "opens", hidden: true });
  const lead = make("span", { class: "lead" });
  const around = make("p", { class: "around", hidden: true });
  const element = make("div", { class: "clause cost" }, lead, make("span", { class: "said" }, output, open), around);
  return { element, output, open, lead };
}

/** @param {string} below what the figure is */
function fact(below) {
  const figure = make("b");
  const caption = make("span", {}, below);
  const element = make("button", { type: "button", class: "fact", disabled: true }, figure, caption);
  return { element, figure, caption };
}

/**
 * @param {object} options
 * @param {(title: string, figure: Figure, bottle: Bottle) => void} options.openWorking
 */
export function sumView({ openWorking }) {
  /** @type {Sum} */
  let sum = { bottle: emptyBottle("sum"), measure: { text: "", unit: "dash" } };
  /** @type {import("./records.js").Reply | null} */
  let reply = null;

  let sentence = newSentence();
  const measure = blank({
    label: labels.measure, text: "", unit: "dash", offered: "measure",
    likely: () => usualMeasures,
    changed(text, unit) {
      sum.measure = { text, unit };
      changed();
    },
  });
  const answer = answerLine();
  const facts = { amount: fact(sumWords.poured), each: fact(""), count: fact(sumWords.count) };
  const keep = make("button", { type: "button", class: "wide", hidden: true, click: keepBottle }, sumWords.keep);
  const clear = make("button", { type: "button", class: "quiet", click: startOver }, sumWords.clear);
  const lines = make("div", { class: "sentence" });
  const also = make("div", { class: "also-place" });
  const heading = make("h1", { class: "unseen", id: freshId() }, sumWords.heading);
  const element = make(
    "section",
    { class: "place sum", "aria-labelledby": heading.id },
    heading, lines,
    make("div", { class: "facts" }, facts.amount.element, facts.each.element, facts.count.element),
    also, keep,
  );
  lay();

  function newSentence() {
    return bottleSentence(sum.bottle, { changed: () => changed(), picked: pick });
  }

  /** Puts the sentence of the bottle at hand on the page. */
  function lay() {
    const three = [sentence.blanks.price, sentence.blanks.holds, measure];
    for (const each of three) each.next = () => three.find((other) => other.input.value.trim() === "");
    lines.replaceChildren(...sentence.clauses, clause(clauses.and, [measure]), answer.element);
    sentence.toggles.append(clear);
    also.replaceChildren(sentence.toggles);
  }

  answer.open.addEventListener("click", () => show("cost"));
  facts.amount.element.addEventListener("click", () => show("amount"));
  facts.each.element.addEventListener("click", () => show("cost_each"));
  facts.count.element.addEventListener("click", () => show("count"));

  /** @param {"cost" | "amount" | "count" | "cost_each"} which */
  function show(which) {
    const figure = which === "cost_each" ? reply?.bottles[0]?.cost_each : reply?.pours[0]?.[which];
    if (figure) openWorking(sumWords.workingOf[which], figure, sum.bottle);
  }

  function changed() {
    reckon();
    kept.keepDraft("sum", sum);
  }

  /** Asks the core about this one bottle and this one pour, and shows what it says. */
  function reckon() {
    reply = core.answer({
      house: kept.house, bottles: [sum.bottle], pours: [{ bottle: sum.bottle.id, measure: sum.measure }], specs: [],
    });
    const problems = reply?.problems ?? [];
    const places = new Map([...sentence.places("bottles[0]"), ["pours[0].measure", measure]]);
    const left = tellAll(places, problems);
    sumProblem(left);
    const pour = reply?.pours[0];
    if (pour?.unit) measure.read(pour.unit);
    showAnswer(pour?.cost ?? null);
    showFacts(reply?.bottles[0]?.cost_each ?? null, pour);
    showKeep();
  }

  /** @param {import("./records.js").Problem[]} problems those that belong to no blank here */
  function sumProblem(problems) {
    note("sum", problems[0] ? sumWords.problem(problems[0]) : null);
  }

  /** @param {Figure | null} cost */
  function showAnswer(cost) {
    const text = cost ? shown(cost) : "";
    write(answer.output, text);
    write(answer.lead, clauses.cost(one(sum.measure.text)));
    answer.output.dataset.long = text.length > 9 ? "very" : text.length > 5 ? "rather" : "no";
    answer.open.hidden = !cost;
    answer.open.setAttribute("aria-label", sumWords.howReckoned(text));
    say(cost ? sumWords.spoken(sum.measure.text, measureName(), sum.bottle.name, text) : "");
  }

  const measureName = () => units[sum.measure.unit]?.[one(sum.measure.text) ? 0 : 1] ?? "";

  /** @param {Figure | null} each @param {import("./records.js").PourReply | undefined} pour */
  function showFacts(each, pour) {
    const unit = reply?.bottles[0]?.usable?.unit ?? pour?.amount?.unit ?? "ml";
    fillFact(facts.each, each && shown(each), sumWords.each(unit));
    fillFact(facts.amount, pour?.amount ? shown(pour.amount) : null, sumWords.poured);
    const left = pour?.left_over && pour.left_over.shown !== "0" ? shown(pour.left_over) : "";
    fillFact(facts.count, pour?.count ? amount(pour.count.shown, "") : null, sumWords.countAndLeft(left));
  }

  /** @param {ReturnType<typeof fact>} place @param {string | null} text @param {string} caption */
  function fillFact(place, text, caption) {
    write(place.figure, text ?? "");
    write(place.caption, caption);
    place.element.disabled = text === null;
  }

  function showKeep() {
    const onShelf = kept.bottles.get(sum.bottle.id)?.record;
    keep.hidden = !sum.bottle.name.trim() || !reply?.bottles[0]?.cost || same(onShelf, sum.bottle);
    write(keep, onShelf && !kept.isExample(sum.bottle.id) ? sumWords.keepChange : sumWords.keep);
  }

  function keepBottle() {
    const ofExample = kept.isExample(sum.bottle.id);
    const onShelf = (!ofExample && kept.bottles.get(sum.bottle.id)?.record) || null;
    if (!onShelf) sum.bottle.id = freshName();
    kept.keep("bottle", onShelf, structuredClone(sum.bottle));
    kept.keepDraft("sum", sum);
    note("done", sumWords.kept(sum.bottle.name));
  }

  /** Takes up a bottle of the shelf. @param {string} id */
  function pick(id) {
    const found = kept.bottles.get(id);
    if (!found) return;
    start({ bottle: structuredClone(found.record), measure: sum.measure });
    measure.input.focus();
  }

  function startOver() {
    const was = sum;
    start();
    note("undo", sumWords.cleared, [[sumWords.undo, () => start(was)]]);
  }

  /** Starts the sum with what is given, or with nothing. @param {Sum} [given] */
  function start(given) {
    sum = given ?? { bottle: emptyBottle("sum"), measure: { text: "", unit: "dash" } };
    sentence = newSentence();
    measure.set(sum.measure.text, sum.measure.unit);
    lay();
    activate(given ? measure : sentence.blanks.price);
    changed();
  }

  return { element, start, reckon, refill: () => (sentence.refill(), reckon()), isEmpty: () => !sum.bottle.paid.price && !sum.measure.text && !sum.bottle.holds.text };
}
