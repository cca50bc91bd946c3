// @ts-check
/** What else a bottle may tell, folded away: its strength, how long it keeps, what is there, what it carries. */

import { blank, choice } from "./blanks.js";
import { fold } from "./figure-buttons.js";
import { make } from "./page.js";
import { clause } from "./sentence.js";
import { allergens, bottleMore as moreWords, spirits, strength as strengthWords, warns } from "./words-price.js";
/** @typedef {import("./records.js").Bottle} Bottle */

/**
 * @param {Bottle} bottle changed in place
 * @param {() => void} changed
 */
export function bottleMore(bottle, changed) {
  const tail = (/** @type {string} */ text) => make("span", { class: "tail" }, text);
  const tell = () => (glance(), changed());
  const strength = blank({
    label: moreWords.labels.strength, text: bottle.strength, likely: () => moreWords.strengths.map((text) => ({ label: `${text} %`, text })),
    changed: (text) => ((bottle.strength = text), tell()),
  });
  const keeps = blank({
    label: moreWords.labels.keeps_days, text: bottle.keeps_days, hint: moreWords.forEver,
    likely: () => moreWords.habits.map(([label, text]) => ({ label, text })),
    changed: (text) => ((bottle.keeps_days = text), tell()),
  });
  const have = blank({
    label: moreWords.labels.have, text: bottle.have.text, unit: bottle.have.unit || "bottle", offered: "measure",
    changed: (text, unit) => ((bottle.have = text.trim() ? { text, unit } : { text: "", unit: "" }), tell()),
  });
  const spirit = choice(moreWords.labels.spirit, Object.entries(spirits), bottle.spirit, (value) => ((bottle.spirit = value), tell()));
  const part = fold(moreWords.heading, [
    make("div", { class: "sentence" },
      clause(moreWords.has, [strength], tail(moreWords.vol)),
      clause(moreWords.keeps, [keeps], tail(moreWords.days)),
      make("p", { class: "small" }, moreWords.habitsAbout),
      clause(moreWords.thereIs, [have]),
      clause(moreWords.is, [], spirit.element)),
    ticks(moreWords.allergens, allergens, bottle.allergens),
    ticks(moreWords.warns, warns, bottle.warns),
    make("p", { class: "small" }, moreWords.allergensAbout),
  ]);

  /** @param {string} heading @param {Record<string, string>} all @param {string[]} ticked changed in place */
  function ticks(heading, all, ticked) {
    return make("fieldset", { class: "ticks" }, make("legend", {}, heading), ...Object.entries(all).map(([code, label]) =>
      make("label", { class: "tick" },
        make("input", { type: "checkbox", checked: ticked.includes(code), change(/** @type {Event} */ event) {
          const without = ticked.filter((each) => each !== code);
          const isOn = /** @type {HTMLInputElement} */ (event.target).checked;
          ticked.splice(0, ticked.length, ...without, ...(isOn ? [code] : []));
          tell();
        } }), label)));
  }

  /** What it tells already, at a glance. */
  function glance() {
    const says = [
      bottle.strength.trim() && strengthWords.glance(`${bottle.strength.trim().replace(/\s*%$/, "")} %`, ""),
      bottle.keeps_days.trim() && `${bottle.keeps_days.trim()} ${moreWords.days}`,
      ...bottle.allergens.map((code) => allergens[code] ?? code), ...bottle.warns.map((code) => warns[code] ?? code),
    ];
    part.tell(says.filter(Boolean).join(", "));
  }
  glance();

  return {
    element: part.element,
    /** Where the core finds each blank. @param {string} place @returns {[string, import("./blanks.js").Blank][]} */
    places: (place) => [[`${place}.strength`, strength], [`${place}.keeps_days`, keeps], [`${place}.have`, have]],
    /** What is wrong must be seen. */
    show() {
      if ([strength, keeps, have].some((each) => !each.wrong.hidden)) part.element.open = true;
    },
  };
}
