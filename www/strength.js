// @ts-check
/** How strong a finished glass is, and what should be said with it. Nothing here stops anything. */

import { blank, choice } from "./blanks.js";
import { amount, date, number, said, shown } from "./figures.js";
import { bare, factButton, fold, rowButton, sentenceButton } from "./figure-buttons.js";
import * as kept from "./kept.js";
import { make, write } from "./page.js";
import { clause } from "./sentence.js";
import { allergens, cautions as cautionWords, readOn, standardDrinks, strength as strengthWords } from "./words-price.js";
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").Facts} Facts */
/** @typedef {import("./records.js").Strength} Strength */
/** @typedef {import("./figure-buttons.js").Open} Open */

/**
 * @param {object} does
 * @param {() => Spec} does.spec the glass at hand, changed in place
 * @param {() => void} does.changed
 * @param {Open} does.open
 */
export function strengthFold({ spec, changed, open }) {
  const method = choice(strengthWords.method, Object.entries(strengthWords.methods), "none", (value) => ((spec().method = value), changed()));
  const water = blank({
    label: strengthWords.water, text: "", unit: "ml", offered: "volume",
    likely: () => ["20", "30", "40"].map((text) => ({ label: amount(text, "ml"), text, unit: "ml" })),
    changed: (text, unit) => ((spec().water = text.trim() ? { text, unit } : { ...spec().water, text: "" }), changed()),
  });
  const sold = choice(strengthWords.soldAs, Object.entries(strengthWords.sales), "false", (value) => ((spec().without_alcohol = value === "true"), changed()));
  const facts = {
    percent: factButton(strengthWords.vol, open), drinks: factButton("", open),
    alcohol_g: factButton(strengthWords.alcohol, open), ml: factButton(strengthWords.volume, open),
  };
  const drinksName = /** @type {HTMLElement} */ (facts.drinks.element.lastChild);
  const grid = make("div", { class: "facts four" }, ...Object.values(facts).map((each) => each.element));
  const between = make("p", { class: "small" });
  const ice = sentenceButton(open);
  const naive = sentenceButton(open);
  const missing = make("p", { class: "verdict", hidden: true });
  const elsewhere = make("ul", { class: "told-rows" });
  const others = fold(strengthWords.others, [elsewhere]);
  const advice = make("div", { class: "small" },
    make("p", {}, strengthWords.guideline(date(readOn))), make("p", {}, strengthWords.driving));
  const part = fold(strengthWords.heading, [
    make("div", { class: "sentence" },
      clause(strengthWords.it, [], method.element),
      clause(strengthWords.takesUp, [water]),
      clause(strengthWords.sold, [], sold.element)),
    missing, grid, between, ice.element, naive.element, others.element, advice,
  ]);

  /** @param {Strength} strength */
  function showFigures({ percent, ml, water_ml, alcohol_g, naive_percent, low, high, drinks }) {
    const spread = strengthWords.between(number(low), amount(high, "percent"));
    const told = [strengthWords.byWeight, spread];
    const house = drinks.find(({ code }) => code === kept.house.drinks_of);
    facts.percent.show(percent && { text: shown(percent), figure: percent, title: strengthWords.of.percent, told });
    facts.ml.show(ml && { text: shown(ml), figure: ml, title: strengthWords.of.ml, told: [strengthWords.byWeight] });
    facts.alcohol_g.show(alcohol_g && { text: shown(alcohol_g), figure: alcohol_g, title: strengthWords.of.alcohol_g, told: [strengthWords.byWeight] });
    facts.drinks.show(house ? counted(house) : null);
    if (house) write(drinksName, standardDrinks[house.code]?.[0] ?? house.code);
    write(between, spread);
    const melts = water_ml && Number(water_ml.value) > 0;
    ice.show(melts ? { text: strengthWords.ice(shown(water_ml)), figure: water_ml, title: strengthWords.of.water_ml, told: [strengthWords.iceFrom] } : null);
    naive.show(naive_percent && naive_percent.shown !== percent?.shown
      ? { text: strengthWords.naive(shown(naive_percent)), figure: naive_percent, title: strengthWords.of.naive_percent, told: [strengthWords.byWeight] } : null);
    elsewhere.replaceChildren(...drinks.filter((each) => each !== house).map((each) => rowButton(standardDrinks[each.code]?.[0] ?? each.code, counted(each), open)));
    water.input.placeholder = !spec().water.text && melts ? water_ml.shown : "";
    return [percent, house];
  }

  /** @param {import("./records.js").Drinks} drinks */
  function counted({ code, count }) {
    const [several = code, is = ""] = standardDrinks[code] ?? [];
    return { text: number(count), figure: bare(count, ""), title: several, told: [is] };
  }

  return {
    element: part.element,
    /** @type {[string, import("./blanks.js").Blank][]} */
    places: [["specs[0].water", water]],
    refill() {
      method.set(spec().method || "none");
      water.set(spec().water.text, spec().water.unit || "ml");
      sold.set(String(spec().without_alcohol));
    },
    /** @param {Facts | null} given */
    show(given) {
      const strength = given?.strength;
      const without = given?.strengths_missing ?? 0;
      write(missing, !strength ? strengthWords.none : without ? strengthWords.missing(without) : "");
      missing.hidden = !missing.textContent;
      for (const element of [grid, between, others.element]) element.hidden = !strength;
      if (strength) showFigures(strength);
      else for (const each of [ice, naive]) each.show(null);
      const house = strength?.drinks.find(({ code }) => code === kept.house.drinks_of);
      part.tell(strength?.percent
        ? strengthWords.glance(shown(strength.percent), house ? strengthWords.count(number(house.count), standardDrinks[house.code]?.[0] ?? "") : "") : "");
    },
  };
}

/** Allergens and cautions, each with where it comes from. */
export function cautionsFold() {
  const list = make("ul", { class: "cautions small" });
  const part = fold(cautionWords.heading, [list, make("p", { class: "small" }, cautionWords.defer(date(readOn)))]);
  return {
    element: part.element,
    /** @param {Facts | null} given */
    show(given) {
      const carried = (given?.allergens ?? []).map((code) => allergens[code] ?? code);
      const told = (given?.cautions ?? []).map(({ code, values }) => (cautionWords.said[code] ?? String)(dressed(values)));
      part.tell(cautionWords.glance(carried, told.length), carried.length + told.length === 0);
      const all = [...told, carried.length ? cautionWords.carries(carried) : cautionWords.noneTicked];
      list.replaceChildren(...all.map((text) => make("li", {}, text)));
    },
  };
}

/** Numbers of a caution as this person's locale writes them. @param {Record<string, string>} values */
const dressed = ({ least, percent, ml, ...rest }) => /** @type {Record<string, string>} */ ({
  ...rest, ...(least && { least: said({ text: least, minor: null }, "money") }), ...(percent && { percent: number(percent) }), ...(ml && { ml: number(ml) }),
});
