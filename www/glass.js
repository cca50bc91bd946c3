// @ts-check
/** A glass: its name, its lines, what it costs, and a picture of what in it costs how much. */

import { answerLine } from "./answer.js";
import { activate, blank, tellAll } from "./blanks.js";
import * as core from "./core.js";
import { amount } from "./figures.js";
import { emptyBottle, emptySpec, same } from "./fresh.js";
import { glassLine } from "./glass-line.js";
import { glassPicture } from "./glass-picture.js";
import * as kept from "./kept.js";
import { freshId, make, note, say, soon, write } from "./page.js";
import { chargeFold } from "./price.js";
import { clause } from "./sentence.js";
import { cautionsFold, strengthFold } from "./strength.js";
import { clauses, glass as glassWords, problemWords, sum as sumWords } from "./words.js";
import { price as priceWords, trim as trimWords } from "./words-price.js";
import { send as sendWords } from "./words-send.js";
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").Line} Line */
/** @typedef {import("./records.js").SpecReply} SpecReply */

/** What follows from the cost is asked for once the keys rest. */
const FOLLOWS_MS = 60;

/**
 * @param {object} does
 * @param {(title: string, figure: import("./records.js").Figure, about: import("./doubt.js").About) => void} does.openWorking
 * @param {(bottle: import("./records.js").Bottle, code: string, does: { changed: () => void, closed: () => void }) => void} does.measure
 * @param {(id: string, code: string) => void} does.measureOnShelf
 */
export function glassView({ openWorking, measure, measureOnShelf }) {
  /** @type {Spec} */
  let spec = emptySpec();
  /** @type {ReturnType<typeof glassLine>[]} */
  let lines = [];
  /** @type {SpecReply | null} */
  let reply = null;
  /** @type {import("./records.js").Reply | null} */
  let whole = null;
  /** What the picture shows. */
  let drawn = "";
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let following;

  const heading = make("h1", { class: "unseen", id: freshId() }, glassWords.heading);
  const name = blank({
    label: glassWords.name, text: "", kind: "words", hint: glassWords.nameHint, likely: likelySpecs,
    changed(text, id) {
      spec.name = text;
      changed();
    },
  });
  name.fill = (text, id) => open(id ? structuredClone(kept.specs.get(id)?.record ?? emptySpec()) : emptySpec());
  /** @type {import("./figure-buttons.js").Open} */
  const openFigure = (title, figure, told) => openWorking(title, figure, { ...about, told });
  const terms = { spec: () => spec, changed: () => showRestSoon(), open: openFigure };
  const charge = chargeFold({ ...terms, opened: () => follow() });
  const strength = strengthFold(terms);
  const cautions = cautionsFold();
  const parts = make("div", { class: "parts-below" }, strength.element, cautions.element);
  charge.element.hidden = parts.hidden = true;
  const late = make("p", { class: "small", hidden: true }, priceWords.notLoaded);
  const total = answerLine(glassWords.hint, (figure, doubtFirst) => openWorking(spec.name || glassWords.heading, figure, { ...about, doubtFirst }));
  write(total.lead, clauses.cost(true));
  const without = make("p", { class: "without", hidden: true });
  total.element.append(without);
  const picture = make("div", { class: "picture-place" });
  const list = make("ol", { class: "lines" });
  const starters = make("div", { class: "also" },
    make("button", { type: "button", class: "quiet adds", click: () => add(fromShelf()) }, glassWords.addBottle),
    ...glassWords.small.map(([label, thing, measure, unit, holds]) =>
      make("button", { type: "button", class: "quiet adds", click: () => add(smallThing(thing, measure, unit, holds)) }, label)));
  const keep = make("button", { type: "button", class: "wide", hidden: true, click: keepSpec }, glassWords.keep);
  const example = make("p", { class: "small", hidden: true }, glassWords.example);
  /** The spec as the shelf had it when it was opened: another tab's change is merged against it. @type {Spec | null} */
  let before = null;
  const fresh = make("button", { type: "button", class: "quiet", click: startNew }, glassWords.fresh);
  const sends = make("button", { type: "button", class: "quiet", hidden: true, click: send }, sendWords.open);
  /** What lies over the glass. @type {import("./over.js").Laid | null} */
  let laid = null;

  const element = make(
    "section", { class: "place glass", "aria-labelledby": heading.id },
    heading,
    clause(glassWords.a, [name]),
    total.element,
    charge.element, late, picture, list, starters, keep, example, parts, sends, fresh,
  );

  /** Which line a part of a doubt stands in. @param {{ line: number | null, bottle: string }} part */
  const lineOf = ({ line, bottle }) => (line === null ? lines.find((each) => each.line.bottle === bottle) : lines[line]);
  /** @type {import("./doubt.js").About} */
  const about = {
    named: (part) => lineOf(part)?.name() ?? "",
    measure(part) {
      const own = lineOf(part)?.line.own;
      if (own) measure(own, part.of, { changed: () => kept.keepDraft("glass", spec), closed: reckon });
      else measureOnShelf(lineOf(part)?.line.bottle ?? "", part.of);
    },
  };

  /** @returns {import("./blanks.js").Likely[]} */
  function likelySpecs() {
    const kinds = [...kept.specs.values()].slice(0, 20).map(({ record }) => ({ label: record.name || glassWords.unnamed, text: record.name, unit: record.id }));
    return kinds;
  }

  /** @returns {Line} */
  const fromShelf = () => ({ bottle: "", own: null, measure: { text: "", unit: "ml" }, charge: "poured", note: "" });

  /** @param {string} thing @param {string} text @param {string} unit @param {string} holds @returns {Line} */
  function smallThing(thing, text, unit, holds) {
    const own = emptyBottle();
    own.name = thing;
    own.holds.unit = holds;
    return { bottle: "", own, measure: { text, unit }, charge: "poured", note: "" };
  }

  /** @param {Line} line @param {number} [at] */
  function add(line, at = spec.lines.length) {
    spec.lines.splice(at, 0, line);
    layLines();
    settled();
    lines[at]?.open();
  }

  /** @param {Line} line */
  function remove(line) {
    const at = spec.lines.indexOf(line);
    const gone = lines[at]?.name() ?? "";
    spec.lines.splice(at, 1);
    activate(name);
    layLines();
    settled();
    note("undo", glassWords.removed(gone), [[sumWords.undo, () => {
      spec.lines.splice(Math.min(at, spec.lines.length), 0, line);
      layLines();
      settled();
    }]]);
  }

  /** @param {Line} line @param {-1 | 1} step */
  function move(line, step) {
    const at = spec.lines.indexOf(line);
    const to = at + step;
    if (to < 0 || to >= spec.lines.length) return;
    spec.lines.splice(at, 1);
    spec.lines.splice(to, 0, line);
    const [moved] = lines.splice(at, 1);
    lines.splice(to, 0, moved);
    list.replaceChildren(...lines.map((each) => each.element));
    settled();
    moved.element.querySelector("button")?.focus();
  }

  function layLines() {
    const before = new Map(lines.map((each) => [each.line, each]));
    lines = spec.lines.map((line) => before.get(line) ?? glassLine(line, {
      changed, remove: () => remove(line), move: (step) => move(line, step),
      open: openFigure, looked: () => follow(),
      ask: (bottle) => askSwapped(line, bottle), swap: (bottle) => swap(line, bottle),
      openWorking: (figure) => openWorking(glassWords.lineCost, figure, { ...about, measure: ({ of }) => about.measure?.({ of, line: spec.lines.indexOf(line), bottle: line.bottle }) }),
    }));
    list.replaceChildren(...lines.map((each) => each.element));
  }

  /** After something else than a key. */
  function settled() {
    reckon();
    kept.keepDraft("glass", spec);
  }

  const showRestSoon = soon(() => {
    showRest();
    kept.keepDraft("glass", spec);
  });

  /** At a key: what it costs at once, the rest a moment later. */
  function changed() {
    ask();
    showTotal();
    showRestSoon();
  }

  function reckon() {
    ask();
    showTotal();
    showRest();
  }

  /** The bottles that these glasses name, no others. @param {Spec[]} specs */
  function bottlesOf(...specs) {
    const wanted = new Set(specs.flatMap((each) => each.lines.map((line) => line.bottle)));
    return [...wanted].flatMap((id) => kept.bottles.get(id)?.record ?? []);
  }

  function ask() {
    whole = core.answer({ house: kept.house, bottles: bottlesOf(spec), pours: [], specs: [spec] });
    reply = whole?.specs[0] ?? null;
  }

  /** What follows from the cost: its price, its strength, its lines by themselves. */
  async function follow() {
    clearTimeout(following);
    for (const part of [charge.element, parts, sends]) part.hidden = spec.lines.length === 0;
    const isThere = await core.loadMore();
    late.hidden = isThere || !charge.isOpen();
    if (!isThere || spec.lines.length === 0) return;
    const trimmed = lines.filter((each) => each.trim.isOpen());
    const found = core.facts({ house: kept.house, bottles: bottlesOf(spec), specs: [spec], in_full: charge.isOpen() || trimmed.length > 0 });
    const facts = found?.specs[0] ?? null;
    const problems = found?.problems ?? [];
    tellAll(new Map([...charge.places, ...strength.places]), problems);
    charge.show(facts, problems);
    strength.show(facts);
    cautions.show(facts);
    const nameOf = (/** @type {number} */ at) => lines[at]?.name() ?? "";
    if (facts) for (const each of trimmed) each.trim.show(facts, lines.indexOf(each), nameOf);
    if (charge.element.contains(document.activeElement)) say(charge.spoken);
  }

  /** @param {Line} line @param {string} bottle @returns {import("./trim.js").Swapped | null} */
  function askSwapped(line, bottle) {
    const at = spec.lines.indexOf(line);
    const other = structuredClone(spec);
    Object.assign(other.lines[at] ?? {}, { bottle, own: null });
    const found = core.facts({ house: kept.house, bottles: bottlesOf(spec, other), specs: [spec, other], in_full: true });
    const [was, is] = found?.specs ?? [];
    return was && is ? { was, is, at, problem: found?.problems.find(({ place }) => place.startsWith(`specs[1].lines[${at}]`)) } : null;
  }

  /** @param {Line} line @param {string} bottle */
  function swap(line, bottle) {
    const row = lines.find((each) => each.line === line);
    const was = { bottle: line.bottle, own: line.own };
    const before = row?.name() ?? "";
    /** @param {Pick<Line, "bottle" | "own">} given */
    const become = (given) => {
      row?.become(given);
      row?.trim.clear();
      settled();
    };
    become({ bottle, own: null });
    note("undo", trimWords.swapped(before, row?.name() ?? ""), [[sumWords.undo, () => become(was)]]);
  }

  function showRest() {
    const places = new Map([["specs[0].name", name], ...lines.flatMap((line, at) => line.places(at))]);
    const left = tellAll(/** @type {any} */ (places), whole?.problems ?? []);
    note("glass", left[0] ? problemWords(left[0]) : null);
    lines.forEach((line, at) => line.show(reply?.lines[at]));
    const text = total.spoken();
    say(() => (text ? `${spec.name || glassWords.unnamed}: ${text} ${without.hidden ? "" : without.textContent}` : ""));
    showPicture();
    clearTimeout(following);
    following = setTimeout(follow, FOLLOWS_MS);
    const onShelf = kept.specs.get(spec.id)?.record;
    const ofExample = isOfExample();
    example.hidden = !ofExample;
    keep.hidden = spec.lines.length === 0 || (!ofExample && same(onShelf, spec) && !kept.isUnkept(spec.id));
    write(keep, ofExample ? glassWords.keepExample : onShelf ? glassWords.keepChange : glassWords.keep);
  }

  const isOfExample = () => spec.lines.some((line) => kept.isExample(line.bottle));

  function showTotal() {
    total.show(reply?.cost);
    without.hidden = !reply?.missing || !reply.cost;
    write(without, glassWords.without(reply?.missing ?? 0));
  }

  function showPicture() {
    const layers = lines.flatMap((line, at) => {
      const share = reply?.lines[at]?.share_percent;
      return share ? [{ name: line.name(), share, label: amount(String(share), "percent") }] : [];
    });
    const now = layers.map(({ name, share }) => `${share} ${name}`).join("\n");
    if (now === drawn) return;
    drawn = now;
    picture.replaceChildren(...(layers.length > 1 ? [glassPicture(layers)] : []));
  }

  function keepSpec() {
    const done = isOfExample() ? kept.adopt(spec) : kept.keep("spec", before, structuredClone(spec));
    const now = kept.specs.get(spec.id)?.record;
    if (now) open(structuredClone(now));
    if (done) note("done", glassWords.kept(spec.name || glassWords.unnamed));
  }

  /** @param {Spec} given */
  function open(given) {
    // What was typed before there were terms and notes has none.
    spec = { ...emptySpec(given.id), ...given, lines: given.lines.map((line) => ({ ...line, note: line.note ?? "" })) };
    before = structuredClone(kept.specs.get(spec.id)?.record ?? null);
    lines = [];
    name.set(spec.name);
    charge.refill();
    strength.refill();
    layLines();
    settled();
    activate(name);
  }

  function startNew() {
    const was = spec;
    open(emptySpec());
    note("undo", glassWords.started, [[sumWords.undo, () => open(was)]]);
  }

  async function send() {
    sends.disabled = true;
    try {
      const { openSend } = await import("./send.js");
      laid = await openSend({ glass: () => ({ spec, bottles: bottlesOf(spec) }), closed: () => (laid = null) });
    } finally {
      sends.disabled = false;
    }
  }

  /** What was being written, or the first glass of the shelf. */
  function begin() {
    const first = kept.specs.values().next().value?.record;
    if (!kept.takeUp("glass", open)) open(first ? structuredClone(first) : emptySpec());
  }
  begin();

  /** After something else changed what is kept: a glass that nobody is changing here follows the shelf. */
  function refill() {
    const now = kept.specs.get(spec.id)?.record;
    if (kept.draft.glass === null) begin();
    else if (now && before && same(before, spec) && !same(now, before)) open(structuredClone(now));
    else reckon();
    laid?.refill();
  }

  return { element, open, refill, arrive: () => activate(name) };
}
