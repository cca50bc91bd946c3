// @ts-check
/** One line of a glass by itself: what the glass is without it, what its bottle may cost, another bottle in its place. */

import { blank } from "./blanks.js";
import { amount, shown } from "./figures.js";
import { bare, fold, rowButton } from "./figure-buttons.js";
import * as kept from "./kept.js";
import { make } from "./page.js";
import { clause, likelyBottles } from "./sentence.js";
import { bottle as bottleWords, problemWords } from "./words.js";
import { strength as strengthWords, trim as trimWords } from "./words-price.js";
/** @typedef {import("./records.js").Facts} Facts */
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {import("./figure-buttons.js").Open} Open */
/** @typedef {{ was: Facts, is: Facts, at: number, problem: import("./records.js").Problem | undefined }} Swapped both glasses, and what keeps the second from being reckoned */

/**
 * @param {object} does
 * @param {() => void} does.opened
 * @param {Open} does.open
 * @param {(bottle: string) => Swapped | null} does.ask
 * @param {(bottle: string) => void} does.swap
 * @param {() => string} does.bottle the bottle in the line
 */
export function trimFold({ opened, open, ask, swap, bottle }) {
  let other = "";
  const rows = make("ul", { class: "told-rows" });
  const sameMoney = make("ul", { class: "told-rows" });
  const samePart = make("div", { hidden: true }, make("h2", {}, trimWords.sameMoney), sameMoney);
  const name = blank({
    label: trimWords.label, text: "", kind: "words", hint: trimWords.insteadHint,
    likely: () => likelyBottles(name.input.value),
    changed: (text) => choose(named(text)),
  });
  name.fill = (text, id) => (name.set(text), choose(id ?? named(text)));
  const change = make("ul", { class: "told-rows" });
  const problem = make("p", { class: "small", hidden: true });
  const put = make("button", { type: "button", class: "wide", hidden: true, click: () => other && swap(other) }, trimWords.swap);
  const part = fold(trimWords.heading, [rows, samePart, clause(trimWords.instead, [name]), problem, change, put], opened);
  part.element.classList.add("trim");

  /** A bottle of the shelf by its whole name. @param {string} text */
  function named(text) {
    const wanted = text.trim().toLocaleLowerCase();
    return [...kept.bottles.values()].find(({ record }) => wanted && record.name.toLocaleLowerCase() === wanted)?.record.id ?? "";
  }

  /** @param {string} id */
  function choose(id) {
    other = id;
    showChange();
  }

  function showChange() {
    const itself = other !== "" && other === bottle();
    const swapped = other && !itself ? ask(other) : null;
    const wrong = itself ? trimWords.itself : swapped?.problem ? problemWords(swapped.problem) : "";
    problem.textContent = wrong;
    problem.hidden = !wrong;
    change.replaceChildren(...(swapped && !wrong ? changed(swapped) : []));
    put.hidden = !swapped || wrong !== "";
  }

  /** @param {Swapped} swapped */
  function changed({ was, is, at }) {
    const outlay = is.lines[at]?.outlay;
    const [before, after] = [was.strength?.percent, is.strength?.percent];
    return [
      is.cost && row(trimWords.then, is.cost, trimWords.of.then),
      is.change && rowButton(trimWords.change, { text: bottleWords.by(shown(is.change)), figure: is.change, title: trimWords.of.change }, open),
      after && rowButton(trimWords.strengthThen, {
        text: trimWords.fromTo(before ? shown(before) : "", shown(after)), figure: after, title: strengthWords.of.percent, told: [strengthWords.byWeight],
      }, open),
      outlay && row(trimWords.buy, outlay, trimWords.of.outlay),
    ].filter((each) => each instanceof Node);
  }

  /** @param {string} label @param {Figure} figure @param {string} title */
  const row = (label, figure, title) => rowButton(label, { text: shown(figure), figure, title }, open);

  return {
    element: part.element,
    isOpen: () => part.element.open,
    /** Nothing is chosen in its place any more. */
    clear() {
      name.set("");
      choose("");
    },
    /** @param {Facts} facts @param {number} at @param {(line: number) => string} nameOf */
    show(facts, at, nameOf) {
      const line = facts.lines[at];
      if (!line) return rows.replaceChildren();
      const target = facts.target_percent ? amount(facts.target_percent, "percent") : "";
      const { saves, without, strength_without: percent, outlay, bottle_at_most, measure_at_most, cost_kept, same_money } = line;
      const { of } = trimWords;
      rows.replaceChildren(...[
        saves && row(trimWords.saves, saves, of.saves),
        without && row(trimWords.without, without, of.without),
        percent && rowButton(trimWords.strength, {
          text: trimWords.vol(amount(percent, "percent")), figure: bare(percent, "percent"), title: strengthWords.of.percent, told: [strengthWords.byWeight],
        }, open),
        outlay && row(trimWords.outlay, outlay, of.outlay),
        bottle_at_most && row(trimWords.bottleAtMost(target), bottle_at_most, of.bottle_at_most),
        measure_at_most && row(trimWords.measureAtMost(target), measure_at_most, of.measure_at_most),
        cost_kept && row(trimWords.costKept, cost_kept, of.cost_kept),
      ].filter((each) => each instanceof Node));
      sameMoney.replaceChildren(...same_money.map((same) => same.amount && row(nameOf(same.line) || trimWords.another, same.amount, of.same_money))
        .filter((each) => each instanceof Node));
      samePart.hidden = !sameMoney.firstChild;
      if (other) showChange();
    },
  };
}
