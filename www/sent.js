// @ts-check
/** A glass came in a link: it is shown with what it costs, and nothing is touched before a choice. */

import { choice } from "./blanks.js";
import * as core from "./core.js";
import { around, payIn, shown, written } from "./figures.js";
import { folded } from "./find.js";
import { emptyBottle, emptySpec, freshName, same } from "./fresh.js";
import * as kept from "./kept.js";
import { make, note, write } from "./page.js";
import { sheet } from "./over.js";
import { addressOf, currentPlace, go, shut } from "./places.js";
import { clause } from "./sentence.js";
import { glass as glassWords, gone as goneWords, problemWords } from "./words.js";
import { over as overWords } from "./words-menu.js";
import { sent as sentWords } from "./words-send.js";
/** @typedef {import("./records.js").Bottle} Bottle */
/** @typedef {import("./records.js").Spec} Spec */
/** @typedef {import("./records.js").SentGlass} SentGlass */

/** The bottle as it was sent, as against one of the shelf. */
const THEIRS = "";

/**
 * Asks what is to become of the glass in the address, which is the page's own again after any choice.
 * @param {(spec: Spec) => void} openGlass
 */
export async function openSent(openGlass) {
  const { hash: fragment, href } = location;
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded);
  // Another link may have come meanwhile.
  if (location.hash !== fragment) return;
  const { sent, problems: [problem] } = core.linked({ fragment }) ?? { sent: null, problems: [] };
  const view = sheet("sent", sentWords.heading, () => {
    if (location.hash === fragment) history.replaceState(history.state, "", addressOf(currentPlace()));
  });
  const leave = make("button", { type: "button", class: "quiet", click: () => shut() }, sentWords.leave);
  view.element.append(...(sent ? offered(sent, openGlass) : [make("p", { class: "finding" }, problem ? problemWords(problem) : goneWords.trapped)]), leave);
  // Back leads to the place that the link found; until a choice a page that is loaded again asks again.
  go(currentPlace());
  history.replaceState({ depth: 0 }, "", addressOf(currentPlace()));
  view.lay();
  if (sent) history.replaceState(history.state, "", href);
}

/**
 * What was sent, and what can be done with it.
 * @param {SentGlass} sent @param {(spec: Spec) => void} openGlass
 */
function offered({ has_prices, house, bottles, spec }, openGlass) {
  // The example is nobody's shelf.
  const own = kept.example ? [] : [...kept.bottles.values()].map(({ record }) => record);
  const isEmpty = kept.example || kept.bottles.size + kept.specs.size === 0;
  const isForeign = has_prices && house.currency !== kept.house.currency;
  const takesCurrency = isForeign && isEmpty;
  const leavesPrices = isForeign && !isEmpty;
  const name = spec.name || glassWords.unnamed;
  const theirs = core.answer({ house: { ...kept.house, ...house }, bottles, pours: [], specs: [spec] })?.specs[0];
  const cost = theirs?.cost;

  /** Which bottle of the shelf each of them is. @type {Map<string, string>} */
  const chosen = new Map();
  for (const bottle of bottles) {
    const mine = own.find((each) => folded(each.name.trim()) === folded(bottle.name.trim())) ?? own.find(({ id }) => id === bottle.id);
    chosen.set(bottle.id, mine?.id ?? THEIRS);
  }
  const asks = new Set([...chosen].filter(([, mine]) => mine !== THEIRS).map(([id]) => id));
  const here = make("p", {});

  /** A bottle of the link, as it is taken. @param {Bottle} bottle @returns {Bottle} */
  const taken = (bottle) => ({ ...bottle, paid: leavesPrices ? emptyBottle().paid : bottle.paid });

  /** The bottle of the shelf that a person says it is. @param {string} id */
  const mineOf = (id) => kept.bottles.get(chosen.get(id) ?? THEIRS)?.record;

  /** The glass with its bottles in its lines: nothing of it needs a shelf. @returns {Spec} */
  function byItself() {
    const lines = spec.lines.map((line) => {
      const bottle = line.own ?? bottles.find(({ id }) => id === line.bottle);
      const mine = mineOf(line.bottle);
      return { ...line, bottle: mine?.id ?? "", own: mine || !bottle ? null : taken(bottle) };
    });
    return { ...spec, id: freshName(), lines };
  }

  function showHere() {
    const asTaken = byItself();
    const mine = asTaken.lines.flatMap(({ bottle }) => kept.bottles.get(bottle)?.record ?? []);
    const reply = core.answer({ house: kept.house, bottles: [...new Set(mine)], pours: [], specs: [asTaken] })?.specs[0];
    const differs = reply?.cost && !takesCurrency && (!cost || shown(reply.cost) !== inTheirs(() => shown(cost)));
    const says = reply?.cost && differs ? sentWords.here(shown(reply.cost), reply.missing ? glassWords.without(reply.missing) : "") : "";
    write(here, says);
    here.hidden = !says;
  }

  /** In the currency of the link. @param {() => string} say */
  function inTheirs(say) {
    payIn(house.currency);
    const text = say();
    payIn(kept.house.currency);
    return text;
  }

  function takeCurrency() {
    const was = kept.house.currency;
    if (takesCurrency) kept.keepHouse({ currency: house.currency });
    return () => takesCurrency && kept.keepHouse({ currency: was });
  }

  function look() {
    const first = kept.specs.values().next().value?.record;
    const was = structuredClone(kept.draft.glass ?? first ?? emptySpec());
    const giveBack = takeCurrency();
    openGlass(byItself());
    note("undo", sentWords.looked, [[overWords.undo, () => (giveBack(), openGlass(was))]]);
  }

  /** Puts it on the shelf: beside what stands there, never over it. */
  function put() {
    const giveBack = takeCurrency();
    /** @type {Map<string, string>} */
    const ids = new Map();
    /** @type {(() => void)[]} */
    const undoes = [giveBack];
    let done = true;
    for (const bottle of bottles) {
      const mine = mineOf(bottle.id);
      const fresh = { ...taken(bottle), id: freeId(kept.bottles, bottle.id) };
      ids.set(bottle.id, mine?.id ?? fresh.id);
      if (mine) continue;
      done = kept.keep("bottle", null, fresh) && done;
      undoes.push(() => kept.remove("bottle", fresh.id));
    }
    const lines = spec.lines.map((line) => ({ ...line, bottle: ids.get(line.bottle) ?? "", own: line.own && taken(line.own) }));
    go("shelf");
    // What a link does not carry may have been added to it here.
    const known = kept.specs.get(spec.id)?.record;
    if (known && same({ ...known, price: "", target_percent: "", a_week: "" }, { ...spec, lines })) return note("done", sentWords.isThere(name));
    const record = { ...spec, id: freeId(kept.specs, spec.id), lines };
    done = kept.keep("spec", null, record) && done;
    undoes.push(() => kept.remove("spec", record.id));
    if (done) note("undo", glassWords.kept(name), [[overWords.undo, () => undoes.reverse().forEach((undo) => undo())]]);
  }

  const rows = spec.lines.map((line, at) => {
    const bottle = line.own ?? bottles.find(({ id }) => id === line.bottle);
    const told = theirs?.lines[at];
    const said = written({ text: line.measure.text.trim(), unit: told?.unit || line.measure.unit });
    const lineCost = told?.cost;
    const asked = asks.delete(line.bottle) ? chosen.get(line.bottle) : undefined;
    const what = glassWords.row(said, bottle?.name ?? "");
    const which = asked === undefined ? null : clause(sentWords.is, [], choice(`${sentWords.line}: ${what}`, [
      [asked, sentWords.mine(kept.bottles.get(asked)?.record.name ?? "")], [THEIRS, sentWords.theirs],
    ], asked, (is) => (chosen.set(line.bottle, is), showHere())).element);
    return make("li", { class: "offer" },
      make("p", { class: "row" }, make("span", { class: "what", dir: "auto" }, what), ...(lineCost ? [make("span", { class: "dots" }), make("span", { class: "row-cost" }, inTheirs(() => shown(lineCost)))] : [])),
      which);
  });
  showHere();
  return [
    make("h2", { class: "name", dir: "auto" }, name),
    cost ? make("p", { class: "finding" }, inTheirs(() => sentWords.costs(shown(cost), around(cost)))) : "",
    make("div", { class: "small" },
      make("p", {}, has_prices ? sentWords.priced(house.currency) : sentWords.unpriced),
      isForeign ? make("p", {}, takesCurrency ? sentWords.becomes(house.currency) : sentWords.otherCurrency(kept.house.currency)) : null, here),
    make("ul", {}, ...rows),
    make("div", { class: "thumb" },
      make("button", { type: "button", class: "wide", click: put }, sentWords.put),
      make("button", { type: "button", class: "wide", click: look }, sentWords.look)),
  ];
}

/** The id that a record came with, unless something else has it. @param {Map<string, unknown>} place @param {string} id */
const freeId = (place, id) => (place.has(id) || id.startsWith("example-") ? freshName() : id);
