// @ts-check
/**
 * Blanks: the written-on rules of a sentence. A blank holds what was typed, as typed;
 * it is never reformatted, and what is wrong with it stands right below.
 */

import { freshId, make, write } from "./page.js";
import { decimalMark } from "./figures.js";
import { one, problemWords, unitGroups, units, words } from "./words.js";
/** @typedef {import("./records.js").Problem} Problem */
/** @typedef {{ label: string, text: string, unit?: string }} Likely an answer that stands ready to tap */

/**
 * @typedef {object} Blank
 * @property {HTMLElement} element the rule and the unit beside it
 * @property {HTMLElement} wrong the line for what is wrong
 * @property {HTMLInputElement} input
 * @property {(text: string, unit?: string) => void} fill as if a person had typed it
 * @property {(text: string, unit?: string) => void} set without telling anybody
 * @property {(problem: Problem | undefined) => void} tell
 * @property {(unit: string) => void} read the unit that was read, if the text names its own
 * @property {() => Likely[]} likely
 * @property {(() => void) | null} letters for a blank that takes words too: brings up a keypad with letters
 * @property {() => Blank | undefined} [next] the blank to go on to once this one is filled by a tap
 */

/** Letters that fit a number's rule. */
const USUAL_LETTERS = 7;

/** The units a purpose offers, by group and in order. */
const ROUGH = ["dash", "drop", "dropper", "bar_spoon", "splash", "rinse", "drizzle"];
const METRIC = ["ml", "cl", "dl", "l"];
const KITCHEN = [
  "us_fl_oz", "imp_fl_oz", "us_tsp", "metric_tsp", "us_tbsp", "metric_tbsp", "au_tbsp",
  "us_cup", "metric_cup", "us_gill", "imp_gill", "us_pint", "imp_pint",
];
const OTHER = ["g", "kg", "oz", "lb", "piece"];
/** @type {Record<string, [string, string[]][]>} */
export const OFFERED = {
  holds: [["metric", METRIC], ["other", OTHER], ["kitchen", KITCHEN]],
  measure: [["rough", ROUGH], ["metric", METRIC], ["part", ["bottle"]], ["other", OTHER], ["kitchen", KITCHEN]],
  volume: [["metric", METRIC], ["kitchen", KITCHEN]],
};

/** @type {Blank | null} */
let active = null;
/** @type {(blank: Blank | null) => void} */
let activeHearer = () => {};
/** Hears which blank the likely answers are for. @param {(blank: Blank | null) => void} hearer */
export function whenActive(hearer) {
  activeHearer = hearer;
  hearer(active);
}
/** @param {Blank | null} blank */
export function activate(blank) {
  active?.element.classList.remove("active");
  active = blank;
  active?.element.classList.add("active");
  activeHearer(active);
}
export const activeBlank = () => active;

/**
 * A blank to write in.
 * @param {object} options
 * @param {string} options.label what it is, for those who do not see the sentence
 * @param {string} options.text
 * @param {"number" | "words"} [options.kind]
 * @param {string} [options.unit]
 * @param {keyof typeof OFFERED} [options.offered] which units stand beside it
 * @param {string} [options.hint] what stands in it while it is empty
 * @param {() => Likely[]} [options.likely]
 * @param {(text: string, unit: string) => void} options.changed
 * @returns {Blank}
 */
export function blank({ label, text, kind = "number", unit = "", offered, hint, likely = () => [], changed }) {
  const wrongId = freshId();
  const input = make("input", {
    type: "text",
    "aria-label": label,
    autocomplete: "off",
    autocapitalize: "none",
    spellcheck: "false",
    enterkeyhint: "next",
    placeholder: hint,
    ...(kind === "number" ? { inputmode: "decimal", class: "number" } : { dir: "auto", class: "words", maxlength: 200 }),
  });
  const choice = offered ? unitChoice(label, offered, () => changeUnit()) : null;
  const wrong = make("p", { class: "wrong", id: wrongId, hidden: true });
  const element = make("span", { class: `blank ${kind}${choice ? " united" : ""}` }, input, choice?.element ?? null);

  /** @param {string} newText @param {string} [newUnit] */
  const set = (newText, newUnit) => {
    if (input.value !== newText) input.value = newText;
    if (choice && newUnit) choice.set(newUnit);
    choice?.count(newText);
    fit();
  };
  /** A rule is as long as usual numbers; an unusual one gets more of the line. */
  const fit = () => {
    const long = kind === "number" && input.value.length > USUAL_LETTERS;
    if (long !== element.classList.contains("long")) element.classList.toggle("long", long);
  };
  const announce = () => changed(input.value, choice?.select.value ?? "");
  const changeUnit = () => {
    // A unit written in the text would win over the one just chosen.
    const bare = input.value.replace(/\s*\p{L}\P{N}*$/u, "");
    if (bare) input.value = bare;
    announce();
  };

  /** @type {Blank} */
  const made = {
    element, wrong, input, likely, set,
    letters: choice && (() => {
      input.inputMode = "text";
      // A keypad that is up changes only for a blank that is entered anew.
      input.blur();
      input.focus();
    }),
    fill(newText, newUnit) {
      set(newText, newUnit);
      announce();
    },
    tell(problem) {
      if (problem) showWrong(made, problem);
      else if (!wrong.hidden) {
        wrong.hidden = true;
        wrong.replaceChildren();
        input.removeAttribute("aria-invalid");
        input.removeAttribute("aria-describedby");
      }
    },
    read(unitRead) {
      if (choice && unitRead && choice.select.value !== unitRead) choice.set(unitRead);
    },
  };
  input.addEventListener("input", () => (fit(), choice?.count(input.value), announce()));
  input.addEventListener("focus", () => {
    activate(made);
    // Not under the answer, which stays in view.
    input.scrollIntoView({ block: "nearest" });
  });
  input.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing) return;
    event.preventDefault();
    nextAfter(input)?.focus();
  });
  set(text, unit);
  return made;
}

/** @param {HTMLInputElement} input */
function nextAfter(input) {
  const all = [...document.querySelectorAll(".blank input")].filter((other) => other.getClientRects().length > 0);
  return /** @type {HTMLInputElement | undefined} */ (all[all.indexOf(input) + 1]);
}

/** @param {Blank} blank @param {Problem} problem */
function showWrong(blank, problem) {
  const { wrong, input } = blank;
  const sentence = problemWords(problem, decimalMark);
  const choices = problem.code === "number_ambiguous" ? [problem.values.either, problem.values.or] : [];
  if (!wrong.hidden && wrong.firstChild?.textContent === sentence) return;
  wrong.replaceChildren(make("span", {}, sentence));
  for (const text of choices) {
    const meant = text?.replace(".", decimalMark) ?? "";
    wrong.append(make("button", { type: "button", click: () => blank.fill(meant) }, meant));
  }
  wrong.hidden = false;
  input.setAttribute("aria-invalid", "true");
  input.setAttribute("aria-describedby", wrong.id);
}

/**
 * A choice written as a word of the sentence; the device's own picker lies over it, unseen.
 * @param {string} label
 * @param {[string, string][]} options value and words
 * @param {string} value
 * @param {(value: string) => void} changed
 */
export function choice(label, options, value, changed) {
  const select = make("select", { "aria-label": label });
  for (const [code, name] of options) select.append(make("option", { value: code }, name));
  const face = make("span", { class: "face", "aria-hidden": "true" });
  const show = () => write(face, select.selectedOptions[0]?.textContent ?? "");
  select.value = value;
  show();
  select.addEventListener("change", () => (show(), changed(select.value)));
  const set = (/** @type {string} */ next) => ((select.value = next), show());
  return { element: make("span", { class: "choice" }, face, select), select, set };
}

/** @param {string} label @param {keyof typeof OFFERED} offered @param {() => void} changed */
function unitChoice(label, offered, changed) {
  const select = make("select", { "aria-label": words.unitOf(label) });
  for (const [group, codes] of OFFERED[offered]) {
    const heading = make("optgroup", { label: unitGroups[group] });
    for (const code of codes) heading.append(make("option", { value: code }, units[code][1]));
    select.append(heading);
  }
  const face = make("span", { class: "face", "aria-hidden": "true" });
  const offers = new Set(OFFERED[offered].flatMap(([, codes]) => codes));
  let single = false;
  const show = () => write(face, units[select.value]?.[single ? 0 : 1] ?? "");
  select.addEventListener("change", () => (show(), changed()));
  return {
    element: make("span", { class: "choice" }, face, select),
    select,
    set(/** @type {string} */ unit) {
      if (offers.has(unit)) select.value = unit;
      show();
    },
    count(/** @type {string} */ text) {
      if (single === one(text)) return;
      single = !single;
      show();
    },
  };
}

/**
 * Tells each blank what is wrong with it, by place.
 * @param {Map<string, Blank>} places
 * @param {Problem[]} problems
 * @returns {Problem[]} those that no blank is for
 */
export function tellAll(places, problems) {
  const wrong = new Map(problems.map((problem) => [problem.place, problem]));
  /** @type {Map<Blank, Problem | undefined>} a blank may stand at several places */
  const told = new Map();
  for (const [place, blank] of places) told.set(blank, told.get(blank) ?? wrong.get(place));
  for (const [blank, problem] of told) blank.tell(problem);
  return problems.filter((problem) => !places.has(problem.place));
}
