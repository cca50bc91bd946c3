// @ts-check
/** A glass is sent: as a link, as text, as the data of a recipe. What was paid goes along only if a person says so. */

import { activate, choice } from "./blanks.js";
import * as core from "./core.js";
import { around, date, shown, today } from "./figures.js";
import * as kept from "./kept.js";
import { isOneFile, make, note, write } from "./page.js";
import { copyOut, sheet } from "./over.js";
import { pagePart } from "./send-page.js";
import { clause } from "./sentence.js";
import { glass as glassWords, gone as goneWords, problemWords } from "./words.js";
import { over as overWords } from "./words-menu.js";
import { send as sendWords } from "./words-send.js";
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {{ house: import("./records.js").House, bottles: import("./records.js").Bottle[], spec: Spec, without_prices: boolean }} Glass what is sent, as the core is asked */

/** Not every browser hands things on to other apps. */
const shares = () => typeof navigator.share === "function";

/**
 * @param {object} does
 * @param {() => { spec: Spec, bottles: import("./records.js").Bottle[] }} does.glass as it stands now
 * @param {() => void} does.closed
 * @returns {Promise<import("./over.js").Laid | null>}
 */
export async function openSend({ glass, closed }) {
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded), null;
  let without = false;
  const name = glass().spec.name || glassWords.unnamed;
  const view = sheet("send", sendWords.heading(name), closed);
  const goes = choice(sendWords.choice, sendWords.choices, "with", (value) => ((without = value === "without"), show()));
  const about = make("p", { class: "small" });
  const parts = isOneFile ? [textPart(name), recipePart()] : [linkPart(name), textPart(name), pagePart(), recipePart()];

  function show() {
    write(about, sendWords[isOneFile ? "noLink" : without ? "without" : "with"]);
    const { spec, bottles } = glass();
    for (const part of parts) part.show({ house: kept.house, bottles, spec, without_prices: without });
  }

  view.element.append(clause(sendWords.goes, [], goes.element), about, ...parts.map((part) => part.element));
  view.lay();
  show();
  return { refill: show };
}

/** Hands something on to another app; where the browser cannot, it is copied. @param {ShareData} data @param {string} text @param {Element} place */
async function handOn(data, text, place) {
  try {
    if (shares()) return await navigator.share(data);
  } catch (error) {
    // A person who shut the list of apps wants no copy.
    if (error instanceof Error && error.name === "AbortError") return;
  }
  await copyOut(text, null, place);
}

/** @param {string} name */
function linkPart(name) {
  let link = "";
  const place = make("div");
  const hands = make("button", { type: "button", class: "wide", click: () => handOn({ title: name, url: link }, link, place) }, shares() ? sendWords.share : sendWords.copy);
  const copies = make("button", { type: "button", class: "quiet", hidden: !shares(), click: () => copyOut(link, null, place) }, overWords.copy);
  const told = make("p", { class: "flag" });
  return {
    element: make("div", { class: "by-link" }, hands, copies, told, place),
    /** @param {Glass} glass */
    show(glass) {
      const made = core.link({ ...glass, address: location.href.split("#")[0] });
      link = made?.link ?? "";
      hands.disabled = copies.disabled = link === "";
      const [problem] = made?.problems ?? [];
      write(told, problem ? problemWords(problem) : "");
      told.hidden = !problem;
      place.replaceChildren();
    },
  };
}

/** For a caption or a message. @param {string} name */
function textPart(name) {
  const { element, area, place } = textOut(sendWords.text, []);
  if (shares()) area.after(make("button", { type: "button", class: "quiet", click: () => handOn({ text: area.value }, area.value, place) }, sendWords.shareText));
  return {
    element,
    /** @param {Glass} glass */
    show(glass) {
      const lines = core.recipeOut(glass)?.lines ?? [];
      const { house, bottles, spec } = glass;
      const reply = glass.without_prices ? null : core.answer({ house, bottles, pours: [], specs: [spec] })?.specs[0];
      const cost = reply?.cost;
      const without = reply?.missing ? glassWords.without(reply.missing) : "";
      const text = [name, ...lines, ...(cost ? ["", sendWords.costs(shown(cost), around(cost), without, date(today()))] : [])];
      area.value = text.join("\n");
      // The cost may take two lines more.
      area.rows = text.length + 2;
      place.replaceChildren();
    },
  };
}

/** For other programs to read. */
function recipePart() {
  const missing = make("p", { class: "small" });
  const { element, area, place } = textOut(sendWords.recipe, [make("p", { class: "small" }, sendWords.recipeAbout)], missing);
  return {
    element,
    /** @param {Glass} glass */
    show(glass) {
      const reply = core.recipeOut(glass);
      area.value = reply?.text ?? "";
      write(missing, reply?.missing && !glass.without_prices ? glassWords.without(reply.missing) : "");
      missing.hidden = missing.textContent === "";
      place.replaceChildren();
    },
  };
}

/** A text that stands there to be read and copied. @param {string} heading @param {Node[]} about @param {Node[]} below */
function textOut(heading, about, ...below) {
  const place = make("div");
  const area = make("textarea", { class: "by-hand", readonly: true, rows: 6, dir: "auto", "aria-label": heading, focus: () => activate(null) });
  const copies = make("button", { type: "button", class: "quiet", click: () => copyOut(area.value, null, place) }, overWords.copy);
  return { element: make("div", {}, make("h2", {}, heading), ...about, area, ...below, copies, place), area, place };
}
