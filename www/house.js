// @ts-check
/** The house: what holds for every bottle. Currency, tax, whose spoons, and how large a dash is. */

import { activate, blank, choice, tellAll } from "./blanks.js";
import * as core from "./core.js";
import { amount, date, decimalMark, locale, number } from "./figures.js";
import * as kept from "./kept.js";
import { freshId, isOneFile, make } from "./page.js";
import { roughTable } from "./rough.js";
import { sellingTerms } from "./selling.js";
import { clause } from "./sentence.js";
import { about as aboutWords, house as houseWords, labels, rough as roughWords, sources } from "./words.js";

export function houseView() {
  const house = kept.house;
  const heading = make("h1", { class: "unseen", id: freshId() }, houseWords.heading);
  const currency = choice(houseWords.currency, currencyNames(), house.currency, (value) => change({ currency: value }));
  const rate = blank({
    label: labels.tax_percent, text: house.tax_percent.replace(".", decimalMark),
    likely: () => houseWords.rates.map((text) => ({ label: `${text} %`, text })),
    changed: (text) => change({ tax_percent: text }),
  });
  const reclaims = choice(houseWords.reclaim, Object.entries(houseWords.reclaims), String(house.reclaims_tax), (value) =>
    change({ reclaims_tax: value === "true" }));
  const kitchen = choice(houseWords.kitchen, Object.entries(houseWords.kitchens), house.kitchen, (value) => change({ kitchen: value }));
  const fill = choice(houseWords.fill, Object.entries(houseWords.fills), String(house.counts_fill), (value) => change({ counts_fill: value === "true" }));
  const rough = roughTable(house.rough, {
    about: ({ code, amount: size, least, most }) => roughWords.from(number(size), number(least), amount(most, "ml"), sources[code] ?? ""),
    changed(code, size) {
      const { [code]: _, ...rest } = kept.house.rough;
      change({ rough: size ? { ...rest, [code]: size } : rest });
    },
  });
  const selling = sellingTerms(change);
  const element = make("section", { class: "place house", "aria-labelledby": heading.id },
    heading,
    make("div", { class: "sentence" },
      clause(houseWords.moneyIn, [], currency.element),
      clause(houseWords.tax, [rate], make("span", { class: "tail" }, houseWords.percent)),
      clause(houseWords.i, [], reclaims.element),
      clause(houseWords.spoon, [], kitchen.element)),
    ...selling.elements,
    make("h2", {}, houseWords.sure),
    clause(houseWords.bottles, [], fill.element),
    make("p", { class: "small" }, houseWords.fillAbout),
    make("h2", {}, houseWords.rough),
    make("p", { class: "small" }, houseWords.roughAbout),
    rough.element,
    ...installHint(),
    make("h2", {}, aboutWords.heading),
    make("div", { class: "small about" }, ...aboutWords.lines(date(aboutWords.day)).map((line) => make("p", {}, line))),
  );

  /** @param {Partial<import("./records.js").House>} changes */
  function change(changes) {
    kept.keepHouse(changes);
    tell();
  }

  function tell() {
    const reply = core.answer({ house: kept.house, bottles: [], pours: [], specs: [] });
    core.loadMore().then((isThere) => isThere && tellAll(new Map(selling.places), core.facts({ house: kept.house, bottles: [], specs: [], in_full: false })?.problems ?? []));
    /** @type {[string, import("./blanks.js").Blank][]} */
    const places = rough.places.map(([code, each]) => [`house.rough.${code}`, each]);
    tellAll(new Map([...places, ["house.tax_percent", rate]]), reply?.problems ?? []);
  }

  function refill() {
    if (element.contains(document.activeElement)) return;
    currency.set(kept.house.currency);
    rate.set(kept.house.tax_percent);
    reclaims.set(String(kept.house.reclaims_tax));
    kitchen.set(kept.house.kitchen);
    fill.set(String(kept.house.counts_fill));
    selling.refill();
    for (const [code, each] of rough.places) each.set(kept.house.rough[code]?.text ?? "", kept.house.rough[code]?.unit);
  }
  tell();

  return { element, refill, arrive: () => activate(null) };
}

/** Every currency by its name here, in the order of names. @returns {[string, string][]} */
function currencyNames() {
  /** @type {(code: string) => string} */
  let nameOf = (code) => code;
  try {
    const names = new Intl.DisplayNames([locale, "en"], { type: "currency" });
    nameOf = (code) => names.of(code) ?? code;
  } catch {
    // The code itself says it then.
  }
  const codes = core.tables()?.currencies ?? [];
  const named = codes.map(({ code }) => /** @type {[string, string]} */ ([code, nameOf(code) === code ? code : `${nameOf(code)} (${code})`]));
  return named.sort((a, b) => a[1].localeCompare(b[1], locale));
}

/** Only Safari on a phone says nothing itself about the home screen. */
function installHint() {
  const phone = /iP(hone|ad|od)/.test(navigator.userAgent) && /Safari/.test(navigator.userAgent) && !/CriOS|FxiOS|EdgiOS/.test(navigator.userAgent);
  if (isOneFile || !phone || matchMedia("(display-mode: standalone)").matches) return [];
  return [make("h2", {}, houseWords.install), make("p", { class: "small" }, houseWords.installHow)];
}
