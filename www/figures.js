// @ts-check
/**
 * Figures as this person's locale writes them. The core rounds; here a decimal's text is only
 * dressed, with exactly the digits it came with. Also: which currency the locale pays in.
 */

import { minor, one, ranges, units } from "./words.js";
/** @typedef {import("./records.js").Figure} Figure */

/** Some engines answer "C" for a language, which `Intl` refuses. */
export const locale = (() => {
  try {
    return new Intl.NumberFormat(navigator.language).resolvedOptions().locale;
  } catch {
    return "en";
  }
})();

let currency = "";
/** How the figures are dressed now. */
let dressed = locale;
/** @type {Map<string, Intl.NumberFormat>} */
const formats = new Map();

/** @param {string} code @param {string} [as] a locale other than this person's */
export function payIn(code, as = locale) {
  currency = code;
  dressed = as;
}

/**
 * @param {string} text a decimal
 * @param {"decimal" | "currency"} style
 */
function format(text, style) {
  if (text.includes("/")) return text;
  const digits = (text.split(".")[1] ?? "").length;
  const key = `${dressed} ${style} ${currency} ${digits}`;
  let found = formats.get(key);
  if (!found) {
    found = new Intl.NumberFormat(dressed, {
      style,
      ...(style === "currency" ? { currency, currencyDisplay: "narrowSymbol" } : {}),
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    });
    formats.set(key, found);
  }
  // A string keeps every digit; engines that do not read strings read the number nearest to it.
  return found.format(/** @type {any} */ (text));
}

/** @param {string} text a decimal, such as "1.84" */
export const number = (text) => format(text, "decimal");

/** The mark before decimals, as money is written in a locale. @param {string} of */
export function markOf(of) {
  const parts = new Intl.NumberFormat(of, { style: "currency", currency: "EUR" }).formatToParts(1.5);
  return parts.find((part) => part.type === "decimal")?.value === "," ? "," : ".";
}

export const decimalMark = markOf(locale);

/** The sign of the currency, as it stands before the price blank. */
export function currencySign() {
  if (!currency) return "";
  const options = { style: "currency", currency, currencyDisplay: "narrowSymbol" };
  const parts = new Intl.NumberFormat(locale, /** @type {any} */ (options)).formatToParts(1);
  return parts.find((part) => part.type === "currency")?.value ?? currency;
}

/**
 * A figure in words a person reads: "34p", "£1.20", "1.84 ml".
 * @param {Figure} figure
 */
export const shown = (figure) => said({ text: figure.shown, minor: figure.shown_minor }, figure.unit);

/** The same for a number rounded for display. @param {import("./records.js").Shown} rounded @param {string} unit */
export function said({ text, minor: small }, unit) {
  if (unit !== "money") return amount(text, unit);
  const inMinor = minor[currency];
  return small !== null && inMinor ? inMinor(number(small)) : format(text, "currency");
}

/** Between what a figure lies; empty if nothing in it is in doubt. @param {Figure} figure */
export function around(figure) {
  const { range, unit } = figure;
  if (!range) return "";
  const isMoney = unit === "money";
  const about = said(range.about, unit);
  const between = ranges.between(said(range.low, isMoney ? unit : ""), said(range.high, unit));
  return isMoney && about !== shown(figure) ? ranges.about(about, between) : between;
}

/** @param {string} text @param {string} unit */
export function amount(text, unit) {
  if (unit === "" || unit === "measure") return number(text);
  if (unit === "money") return number(text);
  if (unit === "percent") return `${number(text)} %`;
  const name = units[unit];
  return `${number(text)}\u00a0${name ? name[one(text) ? 0 : 1] : unit}`;
}

/** Whether a text ends in words of its own: "half", "60 ml"; not "about 50". */
const NAMES_A_UNIT = /\p{L}\P{N}*$/u;

/** A blank with its unit, as it was typed. @param {import("./records.js").Written} blank */
export function written({ text, unit }) {
  const names = units[unit];
  return !text || !names || NAMES_A_UNIT.test(text) ? text : `${text}\u00a0${names[one(text) ? 0 : 1]}`;
}

/** @param {string} day "2026-11-25" */
export function date(day) {
  const when = new Date(`${day}T12:00:00`);
  return Number.isNaN(when.getTime()) ? day : new Intl.DateTimeFormat(locale, { dateStyle: "long" }).format(when);
}

/** Today as the core takes it. */
export function today() {
  const now = new Date();
  const two = (/** @type {number} */ part) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Where one pays in a currency of another name. */
const PAYS = {
  EUR: "AD AT AX BE BG BL CY DE EE ES FI FR GF GP GR HR IE IT LT LU LV MC ME MF MQ MT NL PM PT RE SI SK SM TF VA XK YT",
  USD: "AS BQ EC FM GU IO MH MP PR PW SV TC TL UM VG VI",
  XOF: "BF BJ CI GW ML NE SN TG", XAF: "CF CG CM GA GQ TD", XPF: "NC PF WF", XCD: "AG AI DM GD KN LC MS VC", XCG: "CW SX",
  GBP: "GG IM JE", AUD: "CC CX KI NF NR TV", NZD: "CK NU PN TK", DKK: "FO GL", NOK: "BV SJ", CHF: "LI CH", MAD: "EH", ILS: "PS",
};
/** Codes of funds and the like: nobody pays a bar in them. */
const FUNDS = "BOV CHE CHW CLF COU MXV USN UYI UYW VED";

/** The region of a locale, such as "GB"; a bare language takes its likeliest. @param {string} tag */
function regionOf(tag) {
  try {
    return new Intl.Locale(tag).maximize().region ?? "GB";
  } catch {
    return "GB";
  }
}

const region = regionOf(navigator.language);

/**
 * The currency that this locale most likely pays in. Most codes begin with their country's.
 * @param {string[]} codes every currency there is
 */
export function likelyCurrency(codes) {
  const elsewhere = Object.entries(PAYS).find(([, regions]) => regions.includes(region));
  return elsewhere?.[0] ?? codes.find((code) => code.startsWith(region) && !FUNDS.includes(code)) ?? "USD";
}

/** How this locale most likely sells: tax in the price but where it is added at the till, and whose drinks are counted. */
export const likelySelling = () => ({
  sale_tax: "US CA".includes(region) ? "added" : "in",
  drinks_of: "US CA AU NZ IE DK AT JP".includes(region) ? region.toLowerCase() : "GB IM JE GG".includes(region) ? "uk" : "grams",
});

/** Whose spoons and ounces a locale most likely means; by itself, this person's. */
export function likelyKitchen(tag = navigator.language) {
  const own = regionOf(tag);
  if (own === "US") return "us";
  if (own === "AU") return "au";
  return "GB IE IM JE GG".includes(own) ? "uk" : "metric";
}
