// @ts-check
/** A glass: its name, its lines, what it costs, and a picture of what in it costs how much. */

import { activate, blank, tellAll } from "./blanks.js";
import * as core from "./core.js";
import { amount, shown } from "./figures.js";
import { emptyBottle, freshName, same } from "./fresh.js";
import { glassLine } from "./glass-line.js";
import { glassPicture } from "./glass-picture.js";
import * as kept from "./kept.js";
import { freshId, make, note, say, write } from "./page.js";
import { clause } from "./sentence.js";
import { clauses, glass as glassWords, problemWords, sum as sumWords } from "./words.js";
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").Line} Line */
/** @typedef {import("./records.js").SpecReply} SpecReply */

/** @returns {Spec} */
const emptySpec = () => ({ id: freshName(), name: "", lines: [] });

/** @param {object} does @param {(title: string, figure: import("./records.js").Figure) => void} does.openWorking */
export function glassView({ openWorking }) {
  /** @type {Spec} */
  let spec = emptySpec();
  /** @type {ReturnType<typeof glassLine>[]} */
  let lines = [];
  /** @type {SpecReply | null} */
  let reply = null;

  const heading = make("h1", { class: "unseen", id: freshId() }, glassWords.heading);
  const name = blank({
    label: glassWords.name, text: "", kind: "words", hint: glassWords.nameHint, likely: likelySpecs,
    changed(text, id) {
      spec.name = text;
      changed();
    },
  });
  name.fill = (text, id) => open(id ? structuredClone(kept.specs.get(id)?.record ?? emptySpec()) : emptySpec());
  const total = make("output", { class: "answer", "aria-live": "off" });
  const opens = make("button", { type: "button", class: "opens", hidden: true, click: () => reply?.cost && openWorking(spec.name || glassWords.heading, reply.cost) });
  const without = make("p", { class: "without", hidden: true });
  const picture = make("div", { class: "picture-place" });
  const list = make("ol", { class: "lines" });
  const starters = make("div", { class: "also" },
    make("button", { type: "button", class: "quiet", "aria-expanded": "false", click: () => add(fromShelf()) }, glassWords.addBottle),
    ...glassWords.small.map(([label, thing, measure, unit, holds]) =>
      make("button", { type: "button", class: "quiet", "aria-expanded": "false", click: () => add(smallThing(thing, measure, unit, holds)) }, label)));
  const keep = make("button", { type: "button", class: "wide", hidden: true, click: keepSpec }, glassWords.keep);
  const example = make("p", { class: "small", hidden: true }, glassWords.example);
  const fresh = make("button", { type: "button", class: "quiet", click: startNew }, glassWords.fresh);

  const element = make(
    "section", { class: "place glass", "aria-labelledby": heading.id },
    heading,
    clause(glassWords.a, [name]),
    make("div", { class: "clause cost" }, make("span", { class: "lead" }, clauses.cost(true)), make("span", { class: "said" }, total, opens), without),
    picture, list, starters, keep, example, fresh,
  );

  /** @returns {import("./blanks.js").Likely[]} */
  function likelySpecs() {
    const kinds = [...kept.specs.values()].slice(0, 20).map(({ record }) => ({ label: record.name || glassWords.unnamed, text: record.name, unit: record.id }));
    return kinds;
  }

  /** @returns {Line} */
  const fromShelf = () => ({ bottle: "", own: null, measure: { text: "", unit: "ml" }, charge: "poured" });

  /** @param {string} thing @param {string} text @param {string} unit @param {string} holds @returns {Line} */
  function smallThing(thing, text, unit, holds) {
    const own = emptyBottle();
    own.name = thing;
    own.holds.unit = holds;
    return { bottle: "", own, measure: { text, unit }, charge: "poured" };
  }

  /** @param {Line} line @param {number} [at] */
  function add(line, at = spec.lines.length) {
    spec.lines.splice(at, 0, line);
    layLines();
    changed();
    lines[at]?.open();
  }

  /** @param {Line} line */
  function remove(line) {
    const at = spec.lines.indexOf(line);
    const gone = lines[at]?.name() ?? "";
    spec.lines.splice(at, 1);
    activate(name);
    layLines();
    changed();
    note("undo", glassWords.removed(gone), [[sumWords.undo, () => {
      spec.lines.splice(Math.min(at, spec.lines.length), 0, line);
      layLines();
      changed();
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
    changed();
    moved.element.querySelector("button")?.focus();
  }

  function layLines() {
    const before = new Map(lines.map((each) => [each.line, each]));
    lines = spec.lines.map((line) => before.get(line) ?? glassLine(line, {
      changed, remove: () => remove(line), move: (step) => move(line, step),
      openWorking: (figure) => openWorking(glassWords.lineCost, figure),
    }));
    list.replaceChildren(...lines.map((each) => each.element));
  }

  function changed() {
    reckon();
    kept.keepDraft("glass", spec);
  }

  /** Asks about this glass and the bottles in it, no others. */
  function reckon() {
    const wanted = new Set(spec.lines.map((line) => line.bottle));
    const bottles = [...wanted].flatMap((id) => kept.bottles.get(id)?.record ?? []);
    const whole = core.answer({ house: kept.house, bottles, pours: [], specs: [spec] });
    reply = whole?.specs[0] ?? null;
    const places = new Map([["specs[0].name", name], ...lines.flatMap((line, at) => line.places(at))]);
    const left = tellAll(/** @type {any} */ (places), whole?.problems ?? []);
    note("glass", left[0] ? problemWords(left[0]) : null);
    lines.forEach((line, at) => line.show(reply?.lines[at]));
    showTotal();
    showPicture();
    const onShelf = kept.specs.get(spec.id)?.record;
    const ofExample = spec.lines.some((line) => kept.isExample(line.bottle));
    example.hidden = !ofExample;
    keep.hidden = ofExample || spec.lines.length === 0 || same(onShelf, spec);
    write(keep, onShelf ? glassWords.keepChange : glassWords.keep);
  }

  function showTotal() {
    const text = reply?.cost ? shown(reply.cost) : "";
    write(total, text);
    total.dataset.long = text.length > 9 ? "very" : text.length > 5 ? "rather" : "no";
    opens.hidden = !reply?.cost;
    opens.setAttribute("aria-label", sumWords.howReckoned(text));
    without.hidden = !reply?.missing || !reply.cost;
    write(without, glassWords.without(reply?.missing ?? 0));
    say(text ? `${spec.name || glassWords.unnamed}: ${text} ${without.hidden ? "" : without.textContent}` : "");
  }

  function showPicture() {
    const layers = lines.flatMap((line, at) => {
      const share = reply?.lines[at]?.share_percent;
      return share ? [{ name: line.name(), share, label: amount(String(share), "percent") }] : [];
    });
    picture.replaceChildren(...(layers.length > 1 ? [glassPicture(layers)] : []));
  }

  function keepSpec() {
    const before = kept.specs.get(spec.id)?.record ?? null;
    kept.keep("spec", before, structuredClone(spec));
    note("done", glassWords.kept(spec.name || glassWords.unnamed));
  }

  /** @param {Spec} given */
  function open(given) {
    spec = given;
    lines = [];
    name.set(spec.name);
    layLines();
    changed();
    activate(name);
  }

  function startNew() {
    const was = spec;
    open(emptySpec());
    note("undo", glassWords.started, [[sumWords.undo, () => open(was)]]);
  }

  /** What was being written, or the first glass of the shelf. */
  function begin() {
    const first = kept.specs.values().next().value?.record;
    open(kept.draft.glass ?? (first ? structuredClone(first) : emptySpec()));
  }
  begin();

  return { element, open, refill: () => (kept.draft.glass === null ? begin() : reckon()), arrive: () => activate(name) };
}
