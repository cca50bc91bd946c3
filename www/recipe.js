// @ts-check
/** A recipe that is pasted becomes a glass, once a person said what each line is on the shelf. */

import { activate, blank, choice } from "./blanks.js";
import * as core from "./core.js";
import { written } from "./figures.js";
import { emptyBottle, emptySpec } from "./fresh.js";
import * as kept from "./kept.js";
import { freshId, make, note, say, soon, write } from "./page.js";
import { sheet, tellBlanks } from "./over.js";
import { clause } from "./sentence.js";
import { gone as goneWords, one, problemWords } from "./words.js";
import { over as overWords } from "./words-menu.js";
import { recipe as recipeWords } from "./words-recipe.js";
/** @typedef {import("./records.js").RecipeLine} RecipeLine */
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").Line} Line */
/** @typedef {{ text: string, part: import("./records.js").Written, name: string | null, chosen: [line: string, is: string][] }} Typed no name: as the recipe says it */

/** What a line is, besides a bottle of the shelf. */
const NEW = "new:";
const OUT = "out:";

/** A longer text is not kept for the next visit: it would be written anew at every key. */
const MOST_KEPT = 20_000;

/** Of a file no more is taken than the core would read of it, and a little, so that it says so. */
const MOST_FILE_BYTES = 8_100_000;

/** What was pasted last on this visit, however long. @type {Typed | null} */
let last = null;

/** Problems of a line whose measure is told whole, or not at all. */
const NOTHING_LOST = ["measure_missing", "parts_need_size"];

const WEIGHTS = ["g", "kg", "oz", "lb"];

/** @returns {Typed} */
const emptyTyped = () => ({ text: "", part: { text: "", unit: "ml" }, name: null, chosen: [] });

/**
 * @param {object} does
 * @param {(spec: Spec) => void} does.openGlass
 * @param {() => void} does.closed
 * @returns {Promise<import("./over.js").Laid | null>}
 */
export async function openRecipe({ openGlass, closed }) {
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded), null;
  let typed = last ?? emptyTyped();
  if (!last) kept.takeUp("recipe", ({ text, part, name, chosen }) => {
    typed = {
      text: String(text), part: { text: String(part.text), unit: String(part.unit) }, name: name === null ? null : String(name),
      chosen: [...chosen].map(([line, is]) => [String(line), String(is)]),
    };
  });
  /** What a person said a line is, by the line. */
  let chosen = new Map(typed.chosen);
  /** @type {import("./records.js").RecipeReply | null} */
  let reply = null;
  /** @type {ReturnType<typeof lineView>[]} */
  let views = [];

  const view = sheet("recipe", recipeWords.heading, () => (note("recipe", null), closed()));
  const wrong = make("p", { class: "small", id: freshId(), hidden: true });
  const area = make("textarea", {
    class: "by-hand", rows: 6, "aria-label": recipeWords.text, "aria-describedby": wrong.id, placeholder: recipeWords.hint,
    dir: "auto", spellcheck: "false", autocomplete: "off", autocapitalize: "none",
    focus: () => activate(null), input: () => ((typed.text = area.value), readSoon()),
  });
  const tally = make("p", { class: "small lines-read" });
  const part = blank({
    label: recipeWords.partLabel, text: "", unit: "ml", offered: "volume",
    likely: () => ["15", "20", "25", "30"].map((text) => ({ label: `${text} ml`, text, unit: "ml" })),
    changed: (text, unit) => ((typed.part = { text, unit }), readSoon()),
  });
  const partClause = clause(recipeWords.part, [part]);
  const list = make("ol", {});
  const name = blank({ label: recipeWords.name, text: "", kind: "words", hint: recipeWords.nameHint, changed: (text) => ((typed.name = text), keepNow()) });
  const nameClause = clause(recipeWords.a, [name]);
  const makes = make("button", { type: "button", class: "wide", click: makeGlass }, recipeWords.make);
  const picker = make("input", { type: "file", class: "unseen", tabindex: "-1", "aria-label": recipeWords.file, accept: ".json,.txt,.html,.htm,text/*,application/json,application/ld+json", change: takeFile });
  const files = make("button", { type: "button", class: "quiet", click: () => picker.click() }, recipeWords.file);
  const clear = make("button", { type: "button", class: "quiet", click: startOver }, recipeWords.clear);
  view.element.append(make("p", { class: "small" }, recipeWords.about), area, wrong, make("div", { class: "line-tools" }, files, picker), tally, partClause, list, nameClause, makes, clear);

  function keepNow() {
    last = { ...typed, chosen: [...chosen] };
    kept.keepDraft("recipe", typed.text.length > MOST_KEPT ? null : last);
  }

  const readSoon = soon(() => {
    if (!view.element.isConnected) return;
    read();
    keepNow();
  });

  function read() {
    const bottles = [...kept.bottles.values()].map(({ record: { id, name: called } }) => ({ id, name: called }));
    reply = core.recipe({ house: kept.house, text: typed.text, part: typed.part, bottles });
    if (typed.name === null) name.set(reply?.name ?? "");
    layLines(reply?.lines ?? []);
    const left = tellBlanks([["part", part]], reply?.problems ?? []);
    const ofText = left.find(({ place }) => place === "text");
    write(wrong, ofText ? problemWords(ofText) : "");
    wrong.hidden = !ofText;
    area.setAttribute("aria-invalid", String(Boolean(ofText)));
    const other = left.find((each) => each.place !== "text");
    note("recipe", other ? problemWords(other) : null);
    const unread = views.filter(({ line }) => line.problems.length).length;
    tally.hidden = nameClause.hidden = makes.hidden = views.length === 0;
    write(tally, recipeWords.tally(views.length, unread) + (reply?.makes && !one(reply.makes) ? recipeWords.makes(reply.makes) : ""));
    clear.hidden = typed.text === "";
    partClause.hidden = !typed.part.text && views.every(({ line }) => line.measure.unit !== "part");
    say(() => (ofText ? wrong : tally.hidden ? null : tally)?.textContent ?? "");
  }

  /** A file takes the place of what was typed, which can be had back. */
  async function takeFile() {
    const [file] = picker.files ?? [];
    if (!file) return;
    const was = { ...typed, chosen: [...chosen] };
    const text = await file.slice(0, MOST_FILE_BYTES).text();
    picker.value = "";
    fill({ ...emptyTyped(), text });
    if (was.text) note("undo", recipeWords.cleared, [[overWords.undo, () => fill(was)]]);
  }

  /** A line that says the same stays the same row, also under a thumb. @param {RecipeLine[]} lines */
  function layLines(lines) {
    const before = new Map(views.map((each) => [each.key, each]));
    /** @type {Map<string, number>} */
    const seen = new Map();
    views = lines.map((line) => {
      const at = (seen.get(line.text) ?? 0) + 1;
      seen.set(line.text, at);
      const which = `${line.text}\n${at}`;
      const called = line.candidates.map((id) => kept.bottles.get(id)?.record.name);
      const key = JSON.stringify([which, line, called]);
      return before.get(key) ?? lineView(key, line, chosen.get(which), (is) => (chosen.set(which, is), keepNow()));
    });
    if (views.length !== list.childElementCount || views.some(({ element }, at) => list.children[at] !== element)) list.replaceChildren(...views.map((each) => each.element));
  }

  function makeGlass() {
    const first = kept.specs.values().next().value?.record;
    const was = structuredClone(kept.draft.glass ?? first ?? emptySpec());
    openGlass({ ...emptySpec(), name: name.input.value.trim(), lines: views.flatMap((each) => each.made()) });
    note("undo", recipeWords.made, [[overWords.undo, () => openGlass(was)]]);
  }

  function startOver() {
    const was = { ...typed, chosen: [...chosen] };
    fill(emptyTyped());
    area.focus();
    note("undo", recipeWords.cleared, [[overWords.undo, () => fill(was)]]);
  }

  /** @param {Typed} given */
  function fill(given) {
    typed = given;
    chosen = new Map(given.chosen);
    views = [];
    area.value = typed.text;
    part.set(typed.part.text, typed.part.unit);
    name.set(typed.name ?? "");
    read();
    keepNow();
  }

  view.lay();
  fill({ ...typed, chosen: [...chosen] });
  return { refill: read };
}

/**
 * A line as it was read, and what it is on the shelf.
 * @param {string} key @param {RecipeLine} line @param {string | undefined} said @param {(is: string) => void} says
 */
function lineView(key, line, said, says) {
  const { measure, problems, aside } = line;
  const isPart = measure.unit === "part";
  const much = isPart ? recipeWords.parts(measure.text, one(measure.text)) : written(measure);
  // Where nothing but the measure is missing, the name is all that the line says, without its bullet.
  const asText = problems.every(({ code }) => code === "measure_missing") && !line.note && !aside && line.name || line.text.trim();
  const what = (problems.length ? "" : recipeWords.row(much, line.name)) || asText;
  const under = [aside === "heading" && recipeWords.heads, line.optional && recipeWords.optional, line.garnish && recipeWords.garnish, !problems.length && line.note].filter(Boolean).join(" · ");
  /** @type {[string, string][]} */
  const options = [
    ...line.candidates.map((id) => /** @type {[string, string]} */ ([id, recipeWords.asks(kept.bottles.get(id)?.record.name ?? "")])),
    [NEW, problems.length || aside ? recipeWords.stands : recipeWords.fresh], [OUT, recipeWords.aside[aside] ?? recipeWords.out],
  ];
  // A bottle has no room for a measure that was not read: its words stay, unless a person says otherwise.
  // Nor is it taken for a bottle that only shares a word with it.
  const usual = aside ? OUT : line.is_meant && problems.every(({ code }) => NOTHING_LOST.includes(code)) ? line.candidates[0] : NEW;
  const first = said !== undefined && options.some(([is]) => is === said) ? said : usual;
  const chooses = choice(recipeWords.choice(what), options, first, (is) => (says(is), write(lead, recipeWords.isThis)));
  const saying = clause(said === undefined ? recipeWords.is : recipeWords.isThis, [], chooses.element);
  const lead = /** @type {Element} */ (saying.firstChild);
  const element = make("li", { class: "offer" },
    make("p", { class: "row", dir: "auto" }, what),
    under ? make("p", { class: "row-under", dir: "auto" }, under) : null,
    ...problems.map((problem) => make("p", { class: "flag" }, problemWords(problem))),
    aside === "heading" ? null : saying);

  /** As a line of a glass; what could not be read stands there as its text. @returns {Line[]} */
  function made() {
    const is = chooses.select.value;
    if (aside === "heading" || is === OUT) return [];
    // Read again, these words say the same.
    const note = [line.note, line.optional && recipeWords.optionalNote, line.garnish && recipeWords.garnish].filter(Boolean).join(", ");
    // The glass reads no parts: it keeps them as they are written, and asks.
    const goesIn = isPart ? { text: much, unit: "ml" } : { text: measure.text, unit: measure.unit || "ml" };
    if (is !== NEW) return [{ bottle: is, own: null, measure: goesIn, charge: "poured", note }];
    const own = emptyBottle();
    own.name = problems.length || aside ? asText : line.name;
    own.holds.unit = goesIn.unit === "piece" ? "piece" : WEIGHTS.includes(goesIn.unit) ? "kg" : "ml";
    return [{ bottle: "", own, measure: problems.length || aside ? { text: "", unit: "ml" } : goesIn, charge: "poured", note: problems.length || aside ? "" : note }];
  }

  return { key, line, element, made };
}
