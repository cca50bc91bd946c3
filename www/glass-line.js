// @ts-check
/** One line of a glass: a row of a menu that opens into a sentence with blanks. */

import { blank, choice } from "./blanks.js";
import { amount, shown, written } from "./figures.js";
import { emptyBottle } from "./fresh.js";
import * as kept from "./kept.js";
import { freshId, make, write } from "./page.js";
import { bottleSentence, clause, likelyBottles } from "./sentence.js";
import { trimFold } from "./trim.js";
import { clauses, glass as glassWords, labels, usualMeasures } from "./words.js";
/** @typedef {import("./records.js").Line} Line */
/** @typedef {import("./records.js").LineReply} LineReply */
/** @typedef {import("./blanks.js").Blank} Blank */

/**
 * @param {Line} line changed in place
 * @param {object} does
 * @param {() => void} does.changed
 * @param {() => void} does.remove
 * @param {(step: -1 | 1) => void} does.move
 * @param {(figure: import("./records.js").Figure) => void} does.openWorking
 * @param {import("./figure-buttons.js").Open} does.open opens any other figure
 * @param {() => void} does.looked what follows from the line alone is wanted
 * @param {(bottle: string) => import("./trim.js").Swapped | null} does.ask what another bottle in its place would change
 * @param {(bottle: string) => void} does.swap
 */
export function glassLine(line, { changed, remove, move, openWorking, open, looked, ask, swap }) {
  const what = make("span", { class: "what", dir: "auto" });
  const cost = make("span", { class: "row-cost" });
  const share = make("span", { class: "row-share" });
  const foldId = freshId();
  const row = make(
    "button", { type: "button", class: "row", "aria-expanded": "false", "aria-controls": foldId, click: () => unfold(fold.hidden) },
    what, make("span", { class: "dots" }), cost, share,
  );

  const measure = blank({
    label: labels.measure, text: line.measure.text, unit: line.measure.unit || "ml", offered: "measure", likely: () => usualMeasures,
    changed: (text, unit) => ((line.measure = { text, unit }), changed()),
  });
  const name = blank({
    label: labels.name, text: nameOf(line), kind: "words", hint: glassWords.whichBottle,
    likely: () => likelyBottles(name.input.value),
    changed(text, id) {
      if (id) Object.assign(line, { bottle: id, own: null });
      else priceHere().name = text;
      layOwn();
      changed();
    },
  });
  name.fill = (text, id) => {
    name.set(text);
    if (id) Object.assign(line, { bottle: id, own: null });
    layOwn();
    changed();
  };
  const note = blank({
    label: labels.note, text: line.note, kind: "words", hint: glassWords.noteHint,
    changed: (text) => ((line.note = text), changed()),
  });
  const noteClause = clause(glassWords.note, [note]);
  noteClause.hidden = !line.note;
  measure.next = () => (name.input.value ? undefined : name);
  name.next = () => (measure.input.value ? undefined : measure);

  const own = make("div", { class: "own" });
  /** @type {ReturnType<typeof bottleSentence> | null} */
  let ownSentence = null;
  const charge = choice(labels.charge, Object.entries(glassWords.charges), line.charge, (value) => {
    line.charge = value === "whole" ? "whole" : "poured";
    changed();
  });
  const difference = make("span", { class: "tail" });
  const chargeClause = clause(glassWords.charged, [], charge.element, difference);
  const workingButton = make("button", { type: "button", class: "quiet", click: () => lastCost && openWorking(lastCost) }, glassWords.working);
  const trim = trimFold({ opened: looked, open, ask, swap, bottle: () => line.bottle });
  const fold = make(
    "div", { class: "fold", id: foldId, hidden: true },
    clause("", [measure]), clause(clauses.of, [name]), own, chargeClause, noteClause,
    make("div", { class: "line-tools" }, workingButton,
      make("button", { type: "button", class: "quiet", click: () => ((noteClause.hidden = false), note.input.focus()) }, glassWords.note),
      make("button", { type: "button", class: "quiet", click: () => move(-1) }, glassWords.up),
      make("button", { type: "button", class: "quiet", click: () => move(1) }, glassWords.down),
      make("button", { type: "button", class: "quiet", click: remove }, glassWords.remove)),
    trim.element,
  );
  const element = make("li", { class: "line" }, row, fold);
  /** @type {import("./records.js").Figure | null} */
  let lastCost = null;
  layOwn();

  /** The bottle priced on the spot, made if the line had one of the shelf. */
  function priceHere() {
    if (!line.own) {
      line.own = emptyBottle();
      line.own.holds.unit = line.measure.unit === "piece" ? "piece" : "ml";
    }
    line.bottle = "";
    return line.own;
  }

  function layOwn() {
    if (!line.own) {
      ownSentence = null;
      own.replaceChildren();
    } else if (!ownSentence) {
      ownSentence = bottleSentence(line.own, { changed, named: false });
      own.replaceChildren(...ownSentence.clauses, ownSentence.toggles);
      ownSentence.blanks.price.next = () => (ownSentence?.blanks.holds.input.value ? undefined : ownSentence?.blanks.holds);
    }
  }

  /** @param {boolean} open */
  function unfold(open) {
    fold.hidden = !open;
    row.setAttribute("aria-expanded", String(open));
  }

  return {
    element, line, trim,
    /** Takes what it is a measure of from another line. @param {Pick<Line, "bottle" | "own">} given */
    become(given) {
      Object.assign(line, given);
      name.set(nameOf(line));
      layOwn();
    },
    /** Opens it and goes to its first empty blank. */
    open() {
      unfold(true);
      const first = [measure, name, ownSentence?.blanks.price].find((each) => each && !each.input.value) ?? measure;
      first.input.focus();
    },
    /** @param {LineReply | undefined} reply */
    show(reply) {
      if (reply?.unit) measure.read(reply.unit);
      const said = written({ text: line.measure.text.trim(), unit: reply?.unit || line.measure.unit });
      write(what, glassWords.noted(glassWords.row(said, nameOf(line)), line.note.trim()));
      lastCost = reply?.cost ?? null;
      write(cost, lastCost ? shown(lastCost) : glassWords.noPrice);
      write(share, typeof reply?.share_percent === "number" ? amount(String(reply.share_percent), "percent") : "");
      workingButton.hidden = !lastCost;
      const apart = reply?.difference;
      chargeClause.hidden = !apart || (Number(apart.value) === 0 && line.charge === "poured");
      write(difference, apart ? glassWords.difference(line.charge, shown(apart)) : "");
      row.classList.toggle("missing", !lastCost);
    },
    /** @param {number} at @returns {[string, Blank][]} */
    places: (at) => [
      [`specs[0].lines[${at}].note`, note], [`specs[0].lines[${at}].measure`, measure], [`specs[0].lines[${at}].bottle`, name], [`specs[0].lines[${at}]`, measure],
      .../** @type {[string, Blank][]} */ (ownSentence?.places(`specs[0].lines[${at}].own`) ?? []),
    ],
    name: () => nameOf(line),
  };
}

/** @param {Line} line */
function nameOf(line) {
  return line.own ? line.own.name : kept.bottles.get(line.bottle)?.record.name ?? "";
}
