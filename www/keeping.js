// @ts-check
/** Whether a bottle that spoils earns its place: what a pour of it and of another costs at every pace. */

import { blank } from "./blanks.js";
import * as core from "./core.js";
import { decimalMark, number, said } from "./figures.js";
import { folded } from "./find.js";
import { keepingPicture } from "./keeping-picture.js";
import * as kept from "./kept.js";
import { make, note, say, soon, write } from "./page.js";
import { fact, sheet, table, tellBlanks } from "./over.js";
import { clause, likelyBottles } from "./sentence.js";
import { gone as goneWords, problemWords, usualMeasures } from "./words.js";
import { keeping as keepingWords } from "./words-menu.js";
/** @typedef {import("./records.js").Bottle} Bottle */
/** @typedef {import("./blanks.js").Blank} Blank */
/** @typedef {{ id: string, measure: import("./records.js").Written, days: string }} Side which bottle, how much of it, how long it keeps here */

/** Paces that the table tells. */
const PACES = [1, 2, 5, 10, 20, 40, 60, 100, 200, 500];

/** @param {any} [typed] @returns {Side} */
const side = (typed) => ({
  id: String(typed?.id ?? ""), measure: { text: String(typed?.measure?.text ?? ""), unit: String(typed?.measure?.unit ?? "ml") }, days: String(typed?.days ?? ""),
});

/**
 * @param {object} does
 * @param {import("./over.js").OpenWorking} does.openWorking
 * @param {() => void} does.closed
 * @returns {Promise<import("./over.js").Laid | null>}
 */
export async function openKeeping({ openWorking, closed }) {
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded), null;
  let sides = [side(), side()];
  let most = "";
  if (!kept.takeUp("keeping", (typed) => {
    sides = [side(typed.sides[0]), side(typed.sides[1])];
    most = String(typed.most);
  })) sides[0] = { ...side(), ...likeliest() };
  /** @type {import("./records.js").KeepingReply | null} */
  let reply = null;
  /** What the picture shows. */
  let drawn = "";

  const view = sheet("keeping", keepingWords.heading, closed);
  const parts = sides.map((each, at) => sideView(each, at, { changed, settled: reckon }));
  const upTo = blank({
    label: keepingWords.labels.most, text: most, hint: "60", likely: () => ["20", "60", "100", "200"].map((text) => ({ label: text, text })),
    changed: (text) => ((most = text), changed()),
  });
  const verdict = make("p", { class: "finding", role: "status" });
  const picture = make("div", { class: "picture-place" });
  const facts = make("div", { class: "facts" });
  const paces = make("div", { class: "paces" });
  const about = make("p", { class: "small" });
  // What was found stands on top, where it is seen while one types.
  view.element.append(
    about, verdict, ...parts.flatMap((part) => part.clauses), clause(keepingWords.upTo, [upTo], make("span", { class: "tail" }, keepingWords.aWeek)),
    picture, facts, paces);

  const record = (/** @type {Side} */ { id }) => kept.bottles.get(id)?.record ?? null;
  /** The sides that say of which bottle. */
  const told = () => sides.flatMap((each, at) => {
    const bottle = record(each);
    return bottle ? [{ ...each, at, name: bottle.name, bottle: { ...bottle, id: keepingWords.letters[at], keeps_days: each.days } }] : [];
  });

  const restSoon = soon(() => {
    if (!view.element.isConnected) return;
    showRest();
    kept.keepDraft("keeping", { sides, most });
  });

  function changed() {
    ask();
    restSoon();
  }

  function reckon() {
    ask();
    showRest();
    kept.keepDraft("keeping", { sides, most });
  }

  function ask() {
    const all = told();
    const ready = all.length > 0 && all.every((each) => each.measure.text.trim());
    reply = ready ? core.keeping({ house: kept.house, bottles: all.map((each) => each.bottle), measures: all.map((each) => each.measure), most_a_week: most }) : null;
    write(verdict, ready ? verdictOf(all) : "");
    verdict.hidden = !verdict.textContent;
    about.hidden = !verdict.hidden;
    write(about, kept.bottles.size ? keepingWords.about : keepingWords.none);
  }

  /** @param {ReturnType<typeof told>} all */
  function verdictOf(all) {
    const points = reply?.points ?? [];
    const last = points[points.length - 1];
    if (!last || all.length === 0) return reply && reply.problems.length === 0 ? keepingWords.cannot : "";
    const names = all.map((each) => each.name);
    if (all.length === 1) {
      const [first, end] = [points[0].costs[0], last.costs[0]];
      return keepingWords.high(names[0], said(first, "money"), said(end, "money"), String(last.a_week));
    }
    const { crossing, cheaper_below: below } = /** @type {import("./records.js").KeepingReply} */ (reply);
    if (crossing) return keepingWords.under(number(crossing), names[below], names[1 - below]);
    const apart = points.find(({ heights: [one, other] }) => one !== other);
    const turns = apart && points.some(({ heights: [one, other] }) => one !== other && one < other !== apart.heights[0] < apart.heights[1]);
    if (turns) return keepingWords.changes;
    return apart ? keepingWords.always(names[apart.heights[0] < apart.heights[1] ? 0 : 1], String(last.a_week)) : keepingWords.equal;
  }

  function showRest() {
    const all = told();
    for (const part of parts) part.tell();
    const left = tellBlanks([...all.flatMap(({ at }, index) => parts[at].places(index)), ["most_a_week", upTo]], reply?.problems ?? []);
    note("keeping", left[0] ? problemWords(left[0]) : null);
    if (verdict.textContent) say(() => verdict.textContent ?? "");
    showPicture(all);
    showNever(all);
    const points = (reply?.points ?? []).filter(({ a_week }, at, every) => PACES.includes(a_week) || at === every.length - 1);
    paces.replaceChildren(...(points.length ? [table([keepingWords.columns, ...all.map((each) => each.name)],
      points.map(({ a_week, costs }) => [number(String(a_week)), ...costs.map((cost) => said(cost, "money"))]), keepingWords.caption), make("p", { class: "small" }, keepingWords.whole)] : []));
  }

  /** @param {ReturnType<typeof told>} all */
  function showPicture(all) {
    const { points = [], crossing = "", highest = null } = reply ?? {};
    const now = JSON.stringify([points, crossing, all.map((each) => each.name)]);
    if (now === drawn) return;
    drawn = now;
    picture.replaceChildren(...(points.length > 1 ? [keepingPicture({
      points, crossing, crossed: crossing ? keepingWords.crossing(number(crossing)) : "", axis: keepingWords.axis,
      top: highest ? said({ text: highest.shown, minor: highest.shown_minor }, "money") : "",
      lines: all.map((each) => ({ letter: keepingWords.letters[each.at], name: each.name })),
    })] : []));
  }

  /** What a pour would cost if nothing were ever thrown away. @param {ReturnType<typeof told>} all */
  function showNever(all) {
    const ready = all.filter((each) => each.measure.text.trim());
    const asked = core.answer({ house: kept.house, bottles: ready.map((each) => each.bottle), pours: ready.map((each) => ({ bottle: each.bottle.id, measure: each.measure })), specs: [] });
    const costs = ready.flatMap((each, at) => {
      const { cost, unit } = asked?.pours[at] ?? {};
      parts[each.at].read(unit ?? "");
      const says = each.days.trim() ? keepingWords.never(each.name) : keepingWords.neverSpoils(each.name);
      return cost ? [fact(says, cost, says, openWorking)] : [];
    });
    facts.replaceChildren(...costs);
    facts.hidden = costs.length === 0;
  }

  view.lay();
  reckon();
  return { refill: reckon };
}

/** A bottle of the shelf that spoils, if one does. @returns {Partial<Side>} */
function likeliest() {
  for (const { record } of kept.bottles.values()) if (record.keeps_days?.trim()) return { id: record.id, days: record.keeps_days };
  return {};
}

/**
 * The sentence of one side.
 * @param {Side} one changed in place
 * @param {number} at
 * @param {{ changed: () => void, settled: () => void }} does
 */
function sideView(one, at, { changed, settled }) {
  const { labels } = keepingWords;
  const measure = blank({
    label: labels.measure(at), text: one.measure.text, unit: one.measure.unit, offered: "measure", likely: () => usualMeasures,
    changed: (text, unit) => ((one.measure = { text, unit }), changed()),
  });
  const days = blank({
    label: labels.days(at), text: one.days.replace(".", decimalMark), hint: keepingWords.forEver,
    likely: () => ["3", "7", "14", "30", "90"].map((text) => ({ label: text, text })), changed: (text) => ((one.days = text), changed()),
  });
  const name = blank({
    label: labels.name(at), text: kept.bottles.get(one.id)?.record.name ?? "", kind: "words", hint: keepingWords.which,
    likely: () => likelyBottles(kept.bottles.get(one.id)?.record.name === name.input.value ? "" : name.input.value),
    changed: (text) => take([...kept.bottles.values()].find(({ record }) => text.trim() && folded(record.name) === folded(text.trim()))?.record),
  });
  name.fill = (text, id) => {
    name.set(text);
    take(kept.bottles.get(id ?? "")?.record);
    settled();
  };
  measure.next = () => (name.input.value ? undefined : name);
  name.next = () => (measure.input.value ? undefined : measure);
  const unknown = make("p", { class: "apart", hidden: true });

  /** @param {Bottle | undefined} bottle */
  function take(bottle) {
    one.id = bottle?.id ?? "";
    one.days = bottle?.keeps_days ?? "";
    days.set(one.days);
    changed();
  }

  const named = clause(keepingWords.of, [name]);
  named.append(unknown);
  return {
    clauses: [clause(at === 0 ? keepingWords.pour : keepingWords.or, [measure]), named, clause(keepingWords.keeps, [days], make("span", { class: "tail" }, keepingWords.days))],
    read: measure.read,
    /** Says so when the name is no bottle's, once it is not just being typed. */
    tell() {
      const text = name.input.value.trim();
      unknown.hidden = Boolean(one.id) || !text || likelyBottles(text).length > 0;
      write(unknown, keepingWords.unknown(text));
    },
    /** @param {number} index @returns {[string, Blank][]} */
    places: (index) => [[`pours[${index}].measure`, measure], [`bottles[${index}].keeps_days`, days], [`bottles[${index}]`, name], [`pours[${index}]`, measure]],
  };
}
