// @ts-check
/** A glass on somebody's page, laid out once and written anew at every change. */

import { stepLine } from "./arithmetic.js";
import { embed } from "./embed-core.js";
import { changes, ownPrice, ownPrices, setOwn } from "./embed-own.js";
import { recipeOf } from "./embed-recipe.js";
import { dress } from "./embed-style.js";
import { amount, around, likelyKitchen, locale, markOf, number, payIn, shown } from "./figures.js";
import { SETTLED_MS, freshId, make, mark, write } from "./page.js";
import { roughNamed, sources, steps, terms, working as workingWords } from "./words.js";
import { embed as words } from "./words-embed.js";
/** @typedef {import("./records.js").EmbedReply} EmbedReply */
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {{ refresh: (isLatest: () => boolean) => Promise<void>, hear: () => void, leave: () => void }} Laid */

/** @type {("lines" | "prices" | "strength" | "working")[]} */
const PANELS = ["lines", "prices", "strength", "working"];

/** ISO 4217: no currency is involved. */
const NO_CURRENCY = "XXX";

/** A locale that `Intl` knows. @param {string | null} tag */
function localeOf(tag) {
  try {
    return tag ? new Intl.NumberFormat(tag).resolvedOptions().locale : locale;
  } catch {
    return locale;
  }
}

/** The locale in which the writer writes: as the figures are to be shown, or the language of the page. @param {HTMLElement} host */
const writtenIn = (host) => localeOf(host.getAttribute("locale") ?? (host.closest("[lang]")?.getAttribute("lang") || "en"));

/**
 * Lays a glass; it is seen once it was first refreshed.
 * @param {HTMLElement} host @param {HTMLElement} room
 * @param {() => Promise<void>} again has it refreshed, once for all that changed in one go
 * @returns {Laid}
 */
export function layGlass(host, room, again) {
  // A key changes the costs of many glasses; the one that is typed in says its own aloud.
  const output = make("output", { part: "cost", "aria-live": "off" });
  const spoken = make("p", { class: "unseen", role: "status" });
  const of = make("span");
  const range = make("p", { part: "range" });
  const whose = make("p", { class: "small", part: "whose" });
  const wrong = make("p", { class: "small", part: "trouble", role: "status" });
  const tabs = make("div", { class: "tabs", part: "tabs" });
  /** @type {Record<"lines" | "prices" | "strength" | "working", { element: HTMLElement, button: HTMLElement }>} */
  const panels = { lines: panel("lines"), prices: panel("prices"), strength: panel("strength"), working: panel("working") };
  const prices = pricePanel(panels.prices.element, (own) => changed(own));
  const mat = make("section", { class: "mat", part: "glass", lang: "en" },
    make("p", { class: "cost" }, output, of), range, whose, wrong, tabs, ...Object.values(panels).map(({ element }) => element), spoken);
  let currency = "";
  /** @type {EmbedReply | null} */
  let reply = null;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let speaking;

  /** @param {"lines" | "prices" | "strength" | "working"} name */
  function panel(name) {
    const element = make("div", { class: `panel ${name}`, id: freshId(), part: name, hidden: true });
    const button = make("button", { type: "button", "aria-expanded": "false", "aria-controls": element.id, click: () => open(name) }, words.panels[name]);
    tabs.append(button);
    return { element, button };
  }

  /** One is open at a time. @param {string} name */
  function open(name) {
    for (const [own, each] of Object.entries(panels)) unfold(each, own === name && each.element.hidden);
  }

  /** @param {typeof panels["lines"]} panel @param {boolean} isOpen */
  function unfold({ element, button }, isOpen) {
    element.hidden = !isOpen;
    mark(button, "aria-expanded", String(isOpen));
  }

  /** @param {() => boolean} isLatest */
  async function refresh(isLatest) {
    reply = null;
    const recipe = await recipeOf(host);
    const said = (/** @type {string} */ name) => host.getAttribute(name);
    const tag = localeOf(said("locale"));
    const pays = (said("currency") ?? recipe.currency ?? "").trim().toUpperCase();
    const method = said("method") ?? recipe.method ?? "";
    const found = await embed({
      currency: pays, decimal_mark: markOf(writtenIn(host)), own_decimal_mark: markOf(tag), kitchen: said("kitchen") ?? likelyKitchen(writtenIn(host)),
      lines: recipe.lines, part: said("part") ?? recipe.part ?? "", method, prices: said("prices") ?? recipe.prices ?? "", own: ownPrices(pays),
    });
    if (!isLatest()) return;
    [reply, currency] = [found, pays];
    // Money of no known currency has no sign.
    payIn(found.problems.some(({ place }) => place === "currency") ? NO_CURRENCY : currency, tag);
    const name = said("name") ?? recipe.name ?? "";
    mark(mat, "aria-label", words.region(name));
    // Where the element holds no list, nothing else on the page may say what is in the glass.
    const isAlone = !host.querySelector("li");
    write(of, found.glass.cost ? words.glass(isAlone ? name : "") : words.noPrice);
    show(found);
    const wanted = said("show")?.split(/\s+/) ?? PANELS;
    for (const [each, { element, button }] of /** @type {[typeof PANELS[number], typeof panels["lines"]][]} */ (Object.entries(panels))) {
      button.hidden = !wanted.includes(each) || (each === "strength" && !found.strength);
      unfold({ element, button }, !element.hidden && !button.hidden);
    }
    prices.show(found, currency);
    panels.lines.element.replaceChildren(...lineRows(found));
    panels.strength.element.replaceChildren(...strengthRows(found, method));
    panels.working.element.replaceChildren(...workingRows(found));
    if (mat.parentNode === room) return;
    room.replaceChildren(mat);
    if (isAlone && wanted.includes("lines")) open("lines");
  }

  /** @param {EmbedReply} reply */
  function show({ glass, bottles, problems }) {
    const { cost, missing } = glass;
    write(output, cost ? shown(cost) : "");
    write(range, cost ? around(cost) : "");
    range.hidden = !range.textContent;
    const owners = new Set(bottles.map((bottle) => bottle.whose).filter(Boolean));
    const at = owners.size === 2 ? words.whose.both : words.whose[owners.has("reader") ? "reader" : "writer"];
    write(whose, cost ? [at, missing ? words.without(missing) : ""].filter(Boolean).join(", ") : "");
    const told = problems.map(({ place }) => words.wrongs[place]).find(Boolean);
    write(wrong, told ?? "");
    wrong.hidden = !told;
  }

  /** @param {import("./records.js").OwnPrice} own */
  async function changed(own) {
    prices.tell(setOwn(currency, own, host.getAttribute("keep") !== "no"));
    clearTimeout(speaking);
    speaking = setTimeout(() => write(spoken, [output, of, range, whose].map((each) => each.textContent).filter(Boolean).join(", ")), SETTLED_MS);
    const detail = { bottle: own.name, price: own.price, holds: own.holds, currency };
    await again();
    host.dispatchEvent(new CustomEvent("farthing-price", { bubbles: true, composed: true, detail: { ...detail, cost: reply?.glass.cost?.value ?? null } }));
  }

  dress(/** @type {ShadowRoot} */ (host.shadowRoot));
  return { refresh, hear: () => changes.addEventListener("change", again), leave: () => changes.removeEventListener("change", again) };
}

/**
 * What a reader pays, bottle by bottle.
 * @param {HTMLElement} place @param {(own: import("./records.js").OwnPrice) => void} changed
 */
function pricePanel(place, changed) {
  const kept = make("p", { class: "small", role: "status" });
  const list = make("ul");
  /** @type {Map<string, ReturnType<typeof row>>} */
  let rows = new Map();

  /** @param {string} name */
  function row(name) {
    const wrong = make("p", { class: "small", id: freshId(), hidden: true });
    const blank = (/** @type {string} */ label, /** @type {string} */ mode) => make("input", {
      class: "blank", type: "text", inputmode: mode, "aria-label": label, "aria-describedby": wrong.id, autocomplete: "off", autocapitalize: "none", spellcheck: "false", maxlength: 40,
      input: () => changed({ name, price: price.value, holds: holds.value }),
    });
    const price = blank(words.price(name), "decimal");
    const holds = blank(words.holds(name), "text");
    return { element: make("li", {}, make("div", { class: "row" }, make("span", { dir: "auto" }, name), make("span", {}, price, ` ${words.forHow} `, holds)), wrong), price, holds, wrong };
  }

  place.append(make("p", { class: "small" }, words.pays), list, kept);
  return {
    tell: (/** @type {boolean} */ is) => write(kept, is ? words.kept : words.unkept),
    /** @param {EmbedReply} reply @param {string} currency */
    show({ bottles, problems }, currency) {
      const before = rows;
      rows = new Map(bottles.map(({ name }) => [name, before.get(name) ?? row(name)]));
      const same = before.size === rows.size && [...rows.keys()].every((name) => before.has(name));
      if (!same) list.replaceChildren(...[...rows.values()].map(({ element }) => element));
      for (const [index, { name, price, holds, whose }] of bottles.entries()) {
        const each = /** @type {ReturnType<typeof row>} */ (rows.get(name));
        const own = ownPrice(currency, name);
        for (const [blank, mine, theirs, hint] of /** @type {[HTMLInputElement, string, string, string][]} */ ([[each.price, own?.price ?? "", price, words.priceHint], [each.holds, own?.holds ?? "", holds, words.holdsHint]])) {
          if (blank.value !== mine) blank.value = mine;
          if (!mine) blank.placeholder = whose && theirs ? theirs : hint;
        }
        const at = problems.find((problem) => problem.place.startsWith(`bottles[${index}].`))?.place.split(".").pop() ?? "";
        write(each.wrong, words.wrong[at] ?? "");
        each.wrong.hidden = !words.wrong[at];
        for (const field of /** @type {("price" | "holds")[]} */ (["price", "holds"])) mark(each[field], "aria-invalid", String(at === field));
      }
    },
  };
}

/** @param {EmbedReply} reply */
const lineRows = ({ lines, glass, problems }) => [make("ul", {}, ...lines.map(({ text, line }, index) => {
  const own = line === null ? null : glass.lines[line];
  const unread = problems.some(({ place }) => place === `lines[${index}]`);
  return make("li", { class: "row", part: "line" }, make("span", { dir: "auto" }, text),
    own ? make("span", { class: "costs" }, make("b", {}, own.cost ? shown(own.cost) : unread ? words.unread : words.noCost), " ",
      own.cost && own.share_percent !== null ? make("i", {}, words.share(own.share_percent)) : null) : null);
}))];

/** @param {EmbedReply} reply @param {string} method */
function strengthRows({ strength }, method) {
  if (!strength) return [];
  const { percent, low, high, alcohol_g, missing } = strength;
  return [
    words.strength(number(percent), number(low), number(high)), words.alcohol(number(alcohol_g)), words.methods[method || "none"] ?? "",
    missing ? words.unknown(missing) : "", words.care,
  ].filter(Boolean).map((text) => make("p", {}, text));
}

/** No heading: how deep the page is there, only its writer knows. @param {string} text */
const head = (text) => make("p", { class: "head", dir: "auto" }, text);

/** @param {EmbedReply} reply */
function workingRows({ lines, glass }) {
  const rows = lines.flatMap(({ text, line }) => {
    const cost = line === null ? null : glass.lines[line]?.cost;
    return cost ? [head(text), arithmetic(cost), ...taken(cost)] : [];
  });
  return glass.cost ? [...rows, head(words.sum), arithmetic(glass.cost)] : [];
}

/** @param {Figure} figure */
const arithmetic = (figure) => make("ol", {}, ...figure.working.map((step) => stepLine(step, steps, terms)));

/** What was assumed, and its source. @param {Figure} figure */
function taken({ working }) {
  const step = working.find((each) => each.terms.some((term) => term.is === "rough_assumed"));
  const term = step?.terms.find((each) => each.is === "rough_assumed");
  const rough = step?.terms[0]?.unit ?? "";
  return term ? [make("p", { class: "small" }, workingWords.taken(roughNamed(rough), amount(term.shown, term.unit)), " ", sources[rough] ?? "")] : [];
}
