// @ts-check
/**
 * Measuring a rough measure with one bottle: a sentence with a blank for each time it was done. It
 * lies over the place that it was asked for at, and changes the bottle there.
 */

import { answerLine } from "./answer.js";
import { activate, activeBlank, blank, choice, tellAll } from "./blanks.js";
import * as core from "./core.js";
import { amount, decimalMark, number, shown, written } from "./figures.js";
import { same } from "./fresh.js";
import * as kept from "./kept.js";
import { freshId, make, mark, note, say, soon, write } from "./page.js";
import { openOver, shut } from "./places.js";
import { clause } from "./sentence.js";
import { gone as goneWords, measuring as measuringWords, problemWords, remarks, rough as roughWords, roughNamed, sum as sumWords, units } from "./words.js";
/** @typedef {import("./records.js").Measuring} Measuring */
/** @typedef {import("./blanks.js").Blank} Blank */
/** @typedef {"number" | "step" | "strength" | "celsius" | "known_weight"} Field */

/** @returns {Measuring} */
const emptyMeasuring = () => ({
  way: "count", readings: [], number: "", vessel: { text: "", unit: "ml" }, step: "", strength: "", celsius: "",
  known_volume: { text: "", unit: "ml" }, known_weight: "", found: null,
});

/** Which lines of the sentence each way has. @type {Record<string, string[]>} */
const SAYS = { count: ["vessel"], weigh: ["number", "step", "liquid"], read: ["number", "step"] };

/**
 * @param {import("./records.js").Bottle} bottle changed in place as a person types
 * @param {string} code the rough measure
 * @param {object} does
 * @param {() => void} does.changed at each key
 * @param {() => void} does.closed
 * @param {(title: string, figure: import("./records.js").Figure, about: import("./doubt.js").About) => void} does.openWorking
 */
export async function openMeasuring(bottle, code, { changed, closed, openWorking }) {
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded);
  bottle.measured ??= {};
  const record = { ...emptyMeasuring(), ...structuredClone(bottle.measured[code]) };
  /** What was read by the ways that are not the one at hand. @type {Record<string, string[]>} */
  const readBy = {};
  const most = core.tables()?.limits.readings ?? 50;
  const title = measuringWords.heading(roughNamed(code), bottle.name);
  const before = activeBlank();
  /** @type {{ reading: Blank, element: HTMLElement, out: HTMLElement, apart: HTMLElement }[]} */
  let rows = [];
  /** @type {import("./records.js").MeasureReply | null} */
  let reply = null;

  /** @param {Field} name @param {string[]} usual */
  const field = (name, usual) => blank({
    label: measuringWords.labels[name], text: record[name], likely: () => usual.map((text) => ({ label: text, text })),
    changed: (text) => ((record[name] = text), store()),
  });
  /** @param {"vessel" | "known_volume"} name @param {string[]} usual */
  const volume = (name, usual) => blank({
    label: measuringWords.labels[name], ...record[name], offered: "volume", likely: () => usual.map((text) => ({ label: amount(text, "ml"), text, unit: "ml" })),
    changed: (text, unit) => ((record[name] = { text, unit }), store()),
  });
  const tail = (/** @type {string} */ text = "") => make("span", { class: "tail" }, text);
  const blanks = {
    vessel: volume("vessel", ["10", "25", "30"]),
    number: field("number", ["1", "5", "10", "20"]),
    step: field("step", [`0${decimalMark}1`, "1"]),
    strength: field("strength", ["0", "20", "40", "45"]),
    celsius: field("celsius", []),
    known_volume: volume("known_volume", ["50", "100"]),
    known_weight: field("known_weight", []),
  };
  blanks.number.input.placeholder = "1";
  blanks.celsius.input.placeholder = "20";
  const way = choice(measuringWords.way, Object.entries(measuringWords.ways), record.way, (value) => {
    readBy[record.way] = record.readings;
    Object.assign(record, { way: value, readings: readBy[value] ?? [] });
    layRows();
    store();
  });
  const liquid = choice(measuringWords.liquid, Object.entries(measuringWords.liquids), knowsWeight(), (value) => {
    // What is not asked for says nothing any more.
    Object.assign(record, value === "true" ? { strength: "", celsius: "" } : { known_volume: emptyMeasuring().known_volume, known_weight: "" });
    refill();
    store();
  });
  const stepTail = tail();
  /** @type {Record<string, HTMLElement>} */
  const lines = {
    vessel: clause(measuringWords.fill, [blanks.vessel]),
    number: clause(measuringWords.together, [blanks.number], tail(units[code][1])),
    step: clause(measuringWords.steps, [blanks.step], stepTail),
    liquid: make("div", {},
      clause(measuringWords.its, [], liquid.element),
      clause(measuringWords.has, [blanks.strength], tail(measuringWords.vol)),
      clause(measuringWords.at, [blanks.celsius], tail("°C")),
      clause(measuringWords.where, [blanks.known_volume]),
      clause(measuringWords.weighs, [blanks.known_weight], tail("g")),
      make("p", { class: "small" }, measuringWords.sugar)),
  };
  const readings = make("div", { class: "readings" });
  const answer = answerLine(measuringWords.hint, (figure, doubtFirst) => openWorking(title, figure, { doubtFirst, named: () => bottle.name }));
  write(answer.lead, roughWords.is(roughNamed(code)));
  const told = make("div", { class: "small told" });
  const done = make("button", { type: "button", class: "wide", click: () => shut() });
  const tools = make("div", { class: "line-tools" }, make("button", { type: "button", class: "quiet", click: clear }, measuringWords.clear));
  const heading = make("h1", { id: freshId(), tabindex: "-1" }, title);
  const element = make("section", { class: "place editor measuring", "aria-labelledby": heading.id },
    heading,
    make("div", { class: "sentence" }, clause(measuringWords.by, [], way.element), ...Object.values(lines), readings),
    answer.element, told, done, tools);

  /** @param {string} text */
  function addRow(text) {
    const reading = blank({ label: "", text, changed: read });
    const apart = make("p", { class: "apart", hidden: true, id: freshId() }, measuringWords.apart);
    const out = make("button", { type: "button", class: "shut", click: () => takeOut(row) }, "×");
    const line = clause(make("span"), [reading], tail(record.way === "count" ? units[code][1] : record.way === "weigh" ? "g" : "ml"), out);
    line.append(apart);
    const row = { reading, element: line, out, apart };
    rows.push(row);
    readings.append(line);
  }

  /** The readings as they stand, and an empty blank after them. */
  function layRows() {
    readings.replaceChildren();
    rows = [];
    record.readings.forEach(addRow);
    count();
  }

  /** An empty blank waits at the end, and each row knows its number. */
  function count() {
    if (rows.length < most && (rows.at(-1)?.reading.input.value.trim() ?? "filled")) addRow("");
    rows.forEach(({ reading, element, out }, at) => {
      write(/** @type {Element} */ (element.firstChild), at === 0 ? measuringWords.took[record.way] : measuringWords.then);
      mark(reading.input, "aria-label", measuringWords.reading(at + 1));
      mark(out, "aria-label", measuringWords.takeOut(at + 1));
      out.hidden = at === rows.length - 1 && !reading.input.value;
    });
  }

  function read() {
    count();
    record.readings = rows.map(({ reading }) => reading.input.value);
    while (record.readings.at(-1)?.trim() === "") record.readings.pop();
    store();
  }

  /** @param {typeof rows[0]} row */
  function takeOut(row) {
    const was = record.readings;
    const at = rows.indexOf(row);
    record.readings = was.filter((_, index) => index !== at);
    putBack(record.readings);
    rows[Math.min(at, rows.length - 1)].reading.input.focus();
    note("undo", measuringWords.takenOut(at + 1), [[sumWords.undo, () => putBack(was)]]);
  }

  /** @param {string[]} all */
  function putBack(all) {
    record.readings = all;
    layRows();
    store();
  }

  function clear() {
    const was = structuredClone(record);
    become(emptyMeasuring());
    note("undo", measuringWords.cleared, [[sumWords.undo, () => become(was)]]);
  }

  /** @param {Measuring} given */
  function become(given) {
    Object.assign(record, given);
    liquid.set(knowsWeight());
    refill();
    layRows();
    store();
  }

  /** What the choice is as it stands. */
  function knowsWeight() {
    return String(Boolean(record.known_volume.text || record.known_weight));
  }

  /** Shows what is said beside the readings. */
  function refill() {
    way.set(record.way);
    for (const [name, each] of /** @type {[Field, Blank][]} */ (Object.entries(blanks))) {
      const said = /** @type {any} */ (record[name]);
      each.set(said.text ?? said, said.unit);
    }
  }

  /** A bottle of which nothing was measured stays as it was. */
  function store() {
    reckon();
    record.found = reply?.found ?? null;
    if (same({ ...record, way: "count" }, emptyMeasuring())) delete bottle.measured[code];
    else bottle.measured[code] = record;
    changed();
  }

  function reckon() {
    const others = [...kept.bottles.values()].flatMap((each) => (each.record.id === bottle.id ? [] : each.record.measured[code]?.found ?? []));
    reply = core.measure({ house: kept.house, measuring: record, others });
    answer.show(reply?.size);
    showRestSoon();
  }

  const showRestSoon = soon(() => {
    if (!element.isConnected) return;
    for (const [name, line] of Object.entries(lines)) line.hidden = !SAYS[record.way].includes(name);
    const isKnown = liquid.select.value === "true";
    [...lines.liquid.children].forEach((line, at) => (/** @type {HTMLElement} */ (line).hidden = at > 0 && at < 5 && isKnown === at < 3));
    write(stepTail, measuringWords.step[record.way] ?? "");
    blanks.step.input.placeholder = record.way === "read" ? `0${decimalMark}1` : "1";
    /** @type {[string, Blank][]} */
    const places = Object.entries(blanks).map(([name, each]) => [`measuring.${name}`, each]);
    rows.forEach(({ reading }, at) => places.push([`measuring.readings[${at}]`, reading]));
    const problems = reply?.problems ?? [];
    const isRemark = (/** @type {import("./records.js").Problem} */ { code }) => remarks.includes(code);
    const left = tellAll(new Map(places), problems.filter((problem) => !isRemark(problem))).concat(problems.filter(isRemark));
    const outlier = reply?.outlier;
    rows.forEach(({ reading: { input }, apart }, at) => {
      apart.hidden = at !== outlier;
      if (!apart.hidden) mark(input, "aria-describedby", apart.id);
      else if (!input.hasAttribute("aria-invalid")) input.removeAttribute("aria-describedby");
    });
    write(done, reply?.size ? measuringWords.done : measuringWords.back);
    tools.hidden = !bottle.measured[code];
    told.replaceChildren(...[...left.map((problem) => problemWords(problem)), ...found()].map((text) => make("p", {}, text)));
    say(() => [title, answer.spoken()].filter(Boolean).join(": "));
    answer.spoken();
  });

  /** What else the readings tell. */
  function found() {
    const own = bottle.rough[code] ?? kept.house.rough[code];
    const assumed = core.tables()?.units.find((unit) => unit.code === code)?.amount ?? "";
    const { scatter, more, density, between_mean: mean, between_deviation: deviation } = reply ?? {};
    return [
      scatter && measuringWords.scatter(units[code][0], shown(scatter)),
      more && measuringWords.more(more),
      density && measuringWords.density(number(density.shown)),
      measuringWords.unmeasured(roughNamed(code), own ? written(own) : amount(assumed, "ml")),
      mean && deviation && measuringWords.between(shown(mean), shown(deviation)),
    ].filter((text) => typeof text === "string");
  }

  layRows();
  refill();
  openOver(element, () => {
    activate(before);
    note("measuring", bottle.measured[code] && record.readings.length > 0 && !reply?.size ? roughWords.unfinished(roughNamed(code)) : null);
    closed();
  });
  reckon();
  heading.focus();
  activate(record.way === "count" && !record.vessel.text ? blanks.vessel : rows[rows.length - 1].reading);
  blanks.vessel.next = () => rows[rows.length - 1].reading;
}
