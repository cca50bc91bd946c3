// @ts-check
/** The tasting table: offers side by side, what a pour of each costs and the most one may pay for it. */

import { activate, blank, choice } from "./blanks.js";
import * as core from "./core.js";
import { currencySign, decimalMark, shown, written } from "./figures.js";
import { emptyBottle, freshName } from "./fresh.js";
import * as kept from "./kept.js";
import { freshId, make, note, say, soon, write } from "./page.js";
import { cell, copyOut, fact, listTools, sheet, table, tellBlanks } from "./over.js";
import { clause } from "./sentence.js";
import { gone as goneWords, problemWords, units, usualSizes } from "./words.js";
import { over as overWords, tasting as tastingWords } from "./words-menu.js";
/** @typedef {import("./records.js").Offer} Offer */
/** @typedef {import("./records.js").OfferReply} OfferReply */
/** @typedef {import("./blanks.js").Blank} Blank */
/** @typedef {{ measure: import("./records.js").Written, rest: string, price: string, target_percent: string }} Wanted */

const MOST_OFFERS = 8;
const LEAST_OFFERS = 2;

/** @returns {Wanted} */
const emptyWanted = () => ({ measure: { text: "50", unit: "ml" }, rest: "", price: "", target_percent: "" });

/** A new offer stands as the one before it is priced: one seller writes all prices alike. @param {Offer} [last] @returns {Offer} */
const emptyOffer = (last) => ({
  id: freshName(), name: "", price: "", case: "", tax: last?.tax ?? "in", holds: { text: last?.holds.text ?? "700", unit: last?.holds.unit ?? "ml" },
  deal: "", strength: "", note: "", keep: "",
});

/**
 * What was typed, with every blank there is and no other: the core refuses unknown ones.
 * @template {Record<string, any>} T @param {T} whole @param {any} typed @returns {T}
 */
function mended(whole, typed) {
  /** @type {Record<string, any>} */
  const made = {};
  for (const [name, usual] of Object.entries(whole)) {
    const said = typed?.[name];
    if (typeof usual === "object") made[name] = mended(usual, said);
    else made[name] = typeof said === "string" ? said : usual;
  }
  return /** @type {T} */ (made);
}

/**
 * @param {object} does
 * @param {import("./over.js").OpenWorking} does.openWorking
 * @param {() => void} does.closed
 * @returns {Promise<import("./over.js").Laid | null>}
 */
export async function openTasting({ openWorking, closed }) {
  if (!(await core.loadMore())) return note("core", goneWords.not_loaded), null;
  let wanted = emptyWanted();
  /** @type {Offer[]} */
  let offers = [];
  kept.takeUp("tasting", (typed) => {
    wanted = mended(wanted, typed.wanted);
    offers = [...typed.offers].map((each) => mended(emptyOffer(), each));
  });
  while (offers.length < LEAST_OFFERS) offers.push(emptyOffer(offers[offers.length - 1]));
  /** @type {ReturnType<typeof offerView>[]} */
  let views = [];
  /** @type {import("./records.js").OffersReply | null} */
  let reply = null;

  const view = sheet("tasting", tastingWords.heading, () => (keepNow(false), closed()));
  const { labels } = tastingWords;
  const measure = blank({
    label: labels.measure, text: wanted.measure.text, unit: wanted.measure.unit, offered: "measure",
    likely: () => ["25", "30", "35", "40", "50", "60"].map((text) => ({ label: `${text} ${tastingWords.unit}`, text, unit: "ml" })),
    changed: (text, unit) => ((wanted.measure = { text, unit }), changed()),
  });
  const rest = blank({ label: labels.rest, text: wanted.rest, changed: (text) => ((wanted.rest = text), changed()) });
  const price = blank({ label: labels.price, text: wanted.price, changed: (text) => ((wanted.price = text), changed()) });
  const target = blank({
    label: labels.target, text: wanted.target_percent, hint: kept.house.target_percent?.replace(".", decimalMark) || "75",
    likely: () => ["65", "70", "75", "80"].map((text) => ({ label: `${text} %`, text })),
    changed: (text) => ((wanted.target_percent = text), changed()),
  });
  const sign = () => make("span", { class: "sign" }, currencySign());
  const list = make("ol", { class: "offers" });
  const add = make("button", { type: "button", class: "wide", click: addOne }, tastingWords.add);
  const full = make("p", { class: "small" }, tastingWords.full);
  const shelve = make("button", { type: "button", class: "wide", click: putOnShelf });
  const byHand = make("div");
  const tools = listTools(() => copyOut(asRows().map((row) => row.map(cell).join("\t")).join("\n"), asTable(), byHand));
  tools.append(make("button", { type: "button", class: "quiet", click: clearTable }, tastingWords.clear));
  const sentence = make("div", { class: "sentence" },
    clause(tastingWords.goesIn, [measure]), clause(tastingWords.rest, [rest]), clause(tastingWords.sells, [price]),
    clause(tastingWords.keeps, [target], make("span", { class: "tail" }, tastingWords.percent)));
  for (const each of [rest, price]) each.element.before(sign());
  view.element.append(sentence, list, add, full, shelve, tools, byHand);

  function addOne() {
    const offer = emptyOffer(offers[offers.length - 1]);
    offers.push(offer);
    layOffers();
    settled();
    views[views.length - 1].open();
  }

  /** @param {Offer} offer */
  function remove(offer) {
    const at = offers.indexOf(offer);
    offers.splice(at, 1);
    activate(null);
    layOffers();
    settled();
    note("undo", tastingWords.removed(offer.name || tastingWords.unnamed(at + 1)), [[overWords.undo, () => {
      offers.splice(at, 0, offer);
      layOffers();
      settled();
    }]]);
  }

  function clearTable() {
    const was = { wanted, offers };
    const set = (/** @type {{ wanted: Wanted, offers: Offer[] }} */ next) => {
      ({ wanted, offers } = next);
      views = [];
      measure.set(wanted.measure.text, wanted.measure.unit);
      rest.set(wanted.rest);
      price.set(wanted.price);
      target.set(wanted.target_percent);
      layOffers();
      settled();
    };
    set({ wanted: { ...wanted }, offers: [emptyOffer(), emptyOffer()] });
    activate(null);
    note("undo", tastingWords.cleared, [[overWords.undo, () => set(was)]]);
  }

  function layOffers() {
    const before = new Map(views.map((each) => [each.offer, each]));
    views = offers.map((offer, at) => before.get(offer) ?? offerView(offer, { changed, settled, folded: rank, remove: () => remove(offer), openWorking, at: () => offers.indexOf(offer) }));
    list.replaceChildren(...views.map((each) => each.element));
    add.hidden = offers.length >= MOST_OFFERS;
    full.hidden = !add.hidden;
  }

  /** The cheapest pour first; nothing moves under a thumb that is filling one in. */
  function rank() {
    if (views.some((each) => each.isOpen())) return;
    const at = document.activeElement;
    const place = (/** @type {number} */ index) => reply?.offers[index]?.rank ?? MOST_OFFERS + 1;
    const order = views.map((each, index) => ({ each, index })).sort((a, b) => place(a.index) - place(b.index) || a.index - b.index);
    if (order.every(({ each }, index) => list.children[index] === each.element)) return;
    list.append(...order.map(({ each }) => each.element));
    if (at instanceof HTMLElement && list.contains(at)) at.focus({ preventScroll: true });
  }

  const keepNow = (open = true) => kept.keepDraft("tasting", { wanted, offers, open });
  const showRestSoon = soon(() => {
    if (!view.element.isConnected) return;
    showRest();
    keepNow();
  });

  /** At a key: the rows at once, the rest a moment later. */
  function changed() {
    ask();
    showRestSoon();
  }

  /** After something else than a key. */
  function settled() {
    ask();
    showRest();
    rank();
    keepNow();
  }

  function ask() {
    // Blank offers are no problem yet.
    reply = core.offers({ house: kept.house, offers, ...wanted });
    const isWanted = (wanted.target_percent || (kept.house.target_percent ?? "75")).trim() !== "";
    views.forEach((each, at) => each.show(reply?.offers[at], isWanted));
  }

  function showRest() {
    /** @type {[string, Blank][]} */
    const places = [["measure", measure], ["rest", rest], ["price", price], ["target_percent", target], ...views.flatMap((each, at) => each.places(at))];
    const left = tellBlanks(places, reply?.problems ?? []);
    note("tasting", left[0] ? problemWords(left[0]) : null);
    views.forEach((each, at) => each.showRest(reply?.offers[at]));
    const count = shelvable().length;
    shelve.hidden = count === 0;
    write(shelve, tastingWords.shelve(count));
    const spoken = views.find((each) => each.element.contains(document.activeElement));
    if (spoken) say(() => spoken.spoken());
  }

  const shelvable = () => offers.flatMap((offer, at) => {
    const paid = reply?.offers[at]?.paid;
    return offer.keep === "yes" && offer.name.trim() && offer.price.trim() && paid ? [{ offer, paid }] : [];
  });

  /** Each under the same name as the offer: kept once more, it is the same bottle. */
  function putOnShelf() {
    const all = shelvable();
    const done = all.map(({ offer: { id, name, holds, strength }, paid }) => {
      const before = kept.bottles.get(id)?.record ?? null;
      return kept.keep("bottle", before, { ...(before ?? emptyBottle(id)), name: name.trim(), paid, holds: { ...holds }, strength });
    });
    if (done.every(Boolean)) note("done", tastingWords.shelved(all.length));
  }

  const asRows = () => [...list.children].flatMap((element) => {
    const at = views.findIndex((each) => each.element === element);
    const [offer, known] = [offers[at], reply?.offers[at]];
    if (!offer?.name && !offer?.price) return [];
    const bought = [offer.case && `${offer.case} ×`, written(offer.holds)].filter(Boolean).join(" ");
    return [[
      offer.name || tastingWords.unnamed(at + 1), [offer.price, tastingWords.taxes[/** @type {"in"} */ (offer.tax)], offer.deal].filter(Boolean).join(", "), bought,
      known?.measure ? shown(known.measure) : "", known?.at_most ? shown(known.at_most) : "",
      [offer.keep === "yes" ? tastingWords.kept : offer.keep === "no" ? tastingWords.dropped : "", offer.note].filter(Boolean).join(": "),
    ]];
  });
  const asTable = () => table(tastingWords.columns, asRows());

  view.lay();
  layOffers();
  settled();
  if (offers.every((offer) => !offer.name && !offer.price)) views[0].unfold(true);
  return { refill: () => (ask(), showRest()) };
}

/**
 * One offer: a row that tells what a pour costs and whether it fits, and unfolds into its sentence.
 * @param {Offer} offer changed in place
 * @param {object} does
 * @param {() => void} does.changed at a key
 * @param {() => void} does.settled after something else
 * @param {() => void} does.folded
 * @param {() => void} does.remove
 * @param {() => number} does.at
 * @param {import("./over.js").OpenWorking} does.openWorking
 */
function offerView(offer, { changed, settled, folded, remove, at, openWorking }) {
  const { labels } = tastingWords;
  const what = make("span", { class: "what", dir: "auto" });
  const cost = make("span", { class: "row-cost" });
  const fits = make("span", { class: "flag plain" });
  const under = make("span", { class: "row-under", dir: "auto" });
  const foldId = freshId();
  const row = make("button", { type: "button", class: "row", "aria-expanded": "false", "aria-controls": foldId, click: () => (unfold(fold.hidden), folded()) },
    what, make("span", { class: "dots" }), cost, fits, under);

  const typed = (/** @type {Partial<Offer>} */ part) => (Object.assign(offer, part), changed());
  const name = blank({ label: labels.name, text: offer.name, kind: "words", hint: tastingWords.nameHint, changed: (text) => typed({ name: text }) });
  const price = blank({ label: labels.asked, text: offer.price, changed: (text) => typed({ price: text }) });
  const tax = choice(labels.tax, Object.entries(tastingWords.taxes), offer.tax, (value) => (Object.assign(offer, { tax: value }), settled()));
  const lot = blank({
    label: labels.case, text: offer.case, hint: "1", likely: () => ["6", "12", "24"].map((text) => ({ label: text, text })), changed: (text) => typed({ case: text }),
  });
  const holds = blank({
    label: labels.holds, text: offer.holds.text, unit: offer.holds.unit || "ml", offered: "holds",
    likely: () => usualSizes.map(([text, unit]) => ({ label: `${text} ${units[unit][1]}`, text, unit })),
    changed: (text, unit) => typed({ holds: { text, unit } }),
  });
  const deal = blank({
    label: labels.deal, text: offer.deal, kind: "words", hint: tastingWords.dealHint,
    likely: () => tastingWords.deals.map((text) => ({ label: text, text })), changed: (text) => typed({ deal: text }),
  });
  const strength = blank({
    label: labels.strength, text: offer.strength, likely: () => ["0", "20", "37.5", "40", "43"].map((text) => ({ label: `${text.replace(".", decimalMark)} %`, text: text.replace(".", decimalMark) })),
    changed: (text) => typed({ strength: text }),
  });
  const noted = blank({ label: labels.note, text: offer.note, kind: "words", hint: tastingWords.noteHint, changed: (text) => typed({ note: text }) });
  name.next = () => (price.input.value ? undefined : price);

  const facts = make("div", { class: "facts" });
  const word = (/** @type {"yes" | "no"} */ value, /** @type {string} */ label) => {
    const button = make("button", { type: "button", class: "wide toggle", "aria-pressed": "false" }, label);
    button.addEventListener("click", () => (Object.assign(offer, { keep: offer.keep === value ? "" : value }), settled()));
    return button;
  };
  const words = { yes: word("yes", tastingWords.keep), no: word("no", tastingWords.drop) };
  const tail = (/** @type {string} */ text) => make("span", { class: "tail" }, text);
  const asked = clause("", [price], tax.element);
  price.element.before(make("span", { class: "sign" }, currencySign()));
  const fold = make("div", { class: "fold", id: foldId, hidden: true },
    clause("", [name]), asked,
    clause(tastingWords.for, [lot], tail(tastingWords.bottles)), clause(tastingWords.of, [holds]),
    clause(tastingWords.deal, [deal]), clause(tastingWords.strength, [strength], tail(tastingWords.vol)), clause(tastingWords.note, [noted]),
    make("div", { class: "toggles" }, words.yes, words.no), facts,
    make("div", { class: "line-tools" }, make("button", { type: "button", class: "quiet", click: remove }, tastingWords.remove)));
  const element = make("li", { class: "offer" }, row, fold);

  const called = () => offer.name.trim() || tastingWords.unnamed(at() + 1);

  /** @param {boolean} open */
  function unfold(open) {
    fold.hidden = !open;
    row.setAttribute("aria-expanded", String(open));
  }

  /** Whether it fits, in words. @param {OfferReply | undefined} reply @param {boolean} isWanted */
  function fitting(reply, isWanted) {
    if (!reply?.measure) return "";
    if (!reply.margin || !isWanted) return tastingWords.wants;
    if (!reply.at_most && reply.fits) return tastingWords.free;
    if (!reply.at_most) return tastingWords.never;
    return (reply.fits ? tastingWords.fits : tastingWords.fitsNot)(shown(reply.at_most));
  }

  return {
    element, offer,
    isOpen: () => !fold.hidden,
    unfold,
    open() {
      unfold(true);
      name.input.focus();
    },
    spoken: () => [called(), cost.textContent, fits.textContent].filter(Boolean).join(", "),
    /** At a key. @param {OfferReply | undefined} reply @param {boolean} isWanted whether a margin is */
    show(reply, isWanted) {
      write(what, [reply?.rank ? tastingWords.rank(reply.rank) : "", called()].filter(Boolean).join(" "));
      write(cost, reply?.measure ? tastingWords.aMeasure(shown(reply.measure)) : tastingWords.noPrice);
      write(fits, fitting(reply, isWanted));
      fits.hidden = !fits.textContent;
      fits.classList.toggle("fits", Boolean(reply?.fits && reply.at_most));
      fits.classList.toggle("plain", !reply?.margin);
    },
    /** @param {OfferReply | undefined} reply */
    showRest(reply) {
      const judged = offer.keep === "yes" ? tastingWords.kept : offer.keep === "no" ? tastingWords.dropped : "";
      write(under, [judged, reply?.bottle ? tastingWords.aBottle(shown(reply.bottle)) : "", reply && reply.buys > 1 ? tastingWords.buysAtOnce(reply.buys) : "", offer.note.trim()].filter(Boolean).join(" · "));
      under.hidden = !under.textContent;
      element.classList.toggle("dropped", offer.keep === "no");
      row.classList.toggle("missing", !reply?.measure);
      words.yes.setAttribute("aria-pressed", String(offer.keep === "yes"));
      words.no.setAttribute("aria-pressed", String(offer.keep === "no"));
      const all = /** @type {const} */ (["measure", "glass", "margin", "bottle", "at_most"]);
      facts.replaceChildren(...all.flatMap((is) => {
        const figure = reply?.[is];
        return figure ? [fact(tastingWords.facts[is], figure, `${called()}: ${tastingWords.facts[is]}`, openWorking)] : [];
      }));
      facts.hidden = facts.childElementCount === 0;
    },
    /** @param {number} index @returns {[string, Blank][]} */
    places(index) {
      const place = `offers[${index}]`;
      return [
        [`${place}.paid.price`, price], [`${place}.paid.bottles`, lot], [`${place}.paid`, price], [`${place}.paid.tax`, price], [`${place}.price`, price], [`${place}.case`, lot],
        [`${place}.holds`, holds], [`${place}.deal`, deal], [`${place}.strength`, strength], [`${place}.name`, name], [place, price],
      ];
    },
  };
}
