// @ts-check
/** From what a glass costs to what it sells at: the price, what is kept of it, and prices to choose from. */

import { blank } from "./blanks.js";
import { amount, decimalMark, shown } from "./figures.js";
import { factButton, fold, sentenceButton } from "./figure-buttons.js";
import * as kept from "./kept.js";
import { make, mark, note, write } from "./page.js";
import { clause } from "./sentence.js";
import { problemWords, sum as sumWords } from "./words.js";
import { price as priceWords } from "./words-price.js";
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").Facts} Facts */
/** @typedef {import("./records.js").Priced} Priced */
/** @typedef {import("./records.js").Figure} Figure */

/** Blanks of the house that every price rests on. */
const OF_HOUSE = ["house.target_percent", "house.sale_tax", "house.sale_tax_percent", "house.price_points"];

/**
 * @param {object} does
 * @param {() => Spec} does.spec the glass at hand, whose terms are changed in place
 * @param {() => void} does.changed
 * @param {() => void} does.opened
 * @param {import("./figure-buttons.js").Open} does.open
 */
export function chargeFold({ spec, changed, opened, open }) {
  /** @type {Facts | null} */
  let facts = null;
  const tail = (/** @type {string} */ text) => make("span", { class: "tail" }, text);
  const usual = (/** @type {string[]} */ texts) => () => texts.map((text) => ({ label: text, text }));

  const price = blank({
    label: priceWords.labels.price, text: "",
    likely: () => (facts?.ladder ?? []).flatMap(({ price: rung }) => (rung ? { label: shown(rung), text: typed(rung) } : [])),
    changed: (text) => ((spec().price = text), changed()),
  });
  const target = blank({
    label: priceWords.labels.target_percent, text: "", likely: usual(priceWords.targets),
    changed: (text) => ((spec().target_percent = text), changed()),
  });
  const pace = blank({
    label: priceWords.labels.a_week, text: "", likely: usual(priceWords.paces),
    changed: (text) => ((spec().a_week = text), changed()),
  });
  price.next = () => (target.input.value || target.input.placeholder ? undefined : target);

  const taxed = tail("");
  const verdict = make("p", { class: "verdict", hidden: true });
  const asks = sentenceButton(open);
  const facts4 = {
    keeps: factButton(priceWords.keeps, open), margin: factButton(priceWords.margin, open),
    pour_cost: factButton(priceWords.pourCost, open), markup: factButton(priceWords.markup, open),
  };
  const pays = sentenceButton(open);
  const trap = sentenceButton(open);
  const mayCost = sentenceButton(open);
  const trueCost = sentenceButton(open);
  const nothingSpoils = make("p", { class: "small", hidden: true }, priceWords.nothingSpoils);
  const grid = make("div", { class: "facts four" }, ...Object.values(facts4).map((each) => each.element));
  const ladder = make("ol", { class: "ladder" });
  const ladderPart = make("div", { hidden: true }, make("h2", {}, priceWords.ladder), ladder);
  /** @type {ReturnType<typeof rung>[]} */
  let rungs = [];
  /** @type {{ button: HTMLElement, top: number } | null} the rung that was just tapped, and where */
  let tapped = null;

  const part = fold(priceWords.heading, [
    make("div", { class: "sentence" },
      clause(priceWords.sellsAt, [price], taxed),
      clause(priceWords.toKeep, [target], tail(priceWords.percent)),
      clause(priceWords.selling, [pace], tail(priceWords.aWeek))),
    verdict, asks.element, grid, trap.element, pays.element, mayCost.element, trueCost.element, nothingSpoils, ladderPart,
  ], opened);

  /** A rung of the ladder: a button that takes its price. */
  function rung() {
    /** @type {Figure | null} */
    let of = null;
    const [sells, keeps, told] = [make("b"), make("span", { class: "rung-keeps" }), make("span", { class: "rung-told" })];
    const button = make("button", { type: "button", class: "rung", click: () => of && take(of, button) }, sells, keeps, told);
    return {
      element: make("li", {}, button),
      /** @param {Priced} priced */
      show({ price: figure, margin, reaches }) {
        of = figure;
        const isNow = figure?.value === facts?.priced?.price?.value;
        write(sells, figure ? shown(figure) : "");
        write(keeps, margin ? priceWords.rung(shown(margin)) : "");
        write(told, reaches ? priceWords.rungReaches : priceWords.rungUnder);
        button.classList.toggle("reaches", reaches);
        mark(button, "aria-pressed", String(isNow));
      },
    };
  }

  /** @param {Figure} figure @param {HTMLElement} button */
  function take(figure, button) {
    const [of, was, text] = [spec(), spec().price, typed(figure)];
    tapped = { button, top: button.getBoundingClientRect().top };
    price.fill(text);
    if (was.trim() && was !== text) note("undo", priceWords.took(shown(figure)), [[sumWords.undo, () => of === spec() && price.fill(was)]]);
  }

  /** What follows from a price stands above the ladder: the rung that was tapped stays under the thumb all the same. */
  function stayUnderThumb() {
    const at = tapped;
    tapped = null;
    // Most browsers see to it by themselves, a frame later.
    if (at) requestAnimationFrame(() => requestAnimationFrame(() => scrollBy(0, at.button.getBoundingClientRect().top - at.top)));
  }

  /** The highest first, as a ladder stands. @param {Priced[]} all */
  function showLadder(all) {
    ladderPart.hidden = all.length === 0;
    if (rungs.length !== all.length) {
      rungs = all.map(rung);
      ladder.replaceChildren(...rungs.map((each) => each.element));
    }
    [...all].reverse().forEach((priced, at) => rungs[at].show(priced));
  }

  /** @param {Figure | null | undefined} figure @param {string} title @param {(text: string) => string} [says] */
  const said = (figure, title, says = String) => (figure ? { text: says(shown(figure)), figure, title } : null);

  return {
    element: part.element,
    /** @type {[string, import("./blanks.js").Blank][]} */
    places: [["specs[0].price", price], ["specs[0].target_percent", target], ["specs[0].a_week", pace]],
    /** Shows the terms of another glass. */
    refill() {
      price.set(spec().price);
      target.set(spec().target_percent);
      pace.set(spec().a_week);
    },
    /** @param {Facts | null} given @param {import("./records.js").Problem[]} problems */
    show(given, problems) {
      facts = given;
      const { priced = null, asked = null } = given ?? {};
      const wanted = given?.target_percent ? amount(given.target_percent, "percent") : "";
      target.input.placeholder = kept.house.target_percent ?? "75";
      write(taxed, priceWords.taxes[kept.house.sale_tax ?? "in"] ?? "");
      const wrong = problems.find(({ place }) => OF_HOUSE.includes(place));
      const margin = priced?.margin ? shown(priced.margin) : "";
      const sells = priced?.price ? shown(priced.price) : "";
      const asking = asked?.price ? shown(asked.price) : "";
      const onTarget = !given?.under_target;
      const told = wrong ? priceWords.inHouse(problemWords(wrong, decimalMark))
        : !given?.cost ? priceWords.nothing
        : !margin ? "" : !wanted ? priceWords.justKept(margin)
        : (onTarget ? priceWords.reaches : priceWords.under)(margin, wanted);
      write(verdict, [told, given?.cost && given.missing ? priceWords.partly(given.missing) : ""].filter(Boolean).join(" "));
      verdict.hidden = !verdict.textContent;
      verdict.classList.toggle("under", !onTarget);
      part.tell(margin && !wanted ? priceWords.justKept(margin) : margin ? priceWords.glance(sells, margin, wanted, onTarget) : asking ? priceWords.glanceAsked(wanted, asking) : "");
      asks.show(onTarget && priced ? null : said(asked?.price, priceWords.of.asked, (text) => priceWords.asks(wanted, text)));
      for (const [name, each] of /** @type {["keeps", typeof facts4.keeps][]} */ (Object.entries(facts4))) each.show(said(priced?.[name], priceWords.of[name]));
      grid.hidden = !priced;
      const tax = priced?.tax ? shown(priced.tax) : "";
      trap.show(said(priced?.trap, priceWords.of.trap, (text) => priceWords.trap(text, tax)));
      pays.show(kept.house.sale_tax === "added" ? said(priced?.pays, priceWords.of.pays, priceWords.pays) : null);
      mayCost.show(said(priced && given?.may_cost, priceWords.of.may_cost, (text) => priceWords.mayCost(sells, wanted, text)));
      trueCost.show(said(given?.cost_kept, priceWords.of.cost_kept, priceWords.trueCost));
      nothingSpoils.hidden = !spec().a_week.trim() || Boolean(given?.cost_kept) || !given?.cost || problems.length > 0;
      showLadder(given?.ladder ?? []);
      stayUnderThumb();
    },
    isOpen: () => part.element.open,
    /** What it says aloud. */
    spoken: () => verdict.textContent ?? "",
  };
}

/** A price as one types it here. @param {Figure} figure */
const typed = (figure) => figure.shown.replace(".", decimalMark);
