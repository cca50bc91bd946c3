// @ts-check
/** Starts the page: the sum first, then its core, then everything that can come later. */

import * as core from "./core.js";
import { date, payIn, today } from "./figures.js";
import * as kept from "./kept.js";
import { isOneFile, make, note, write } from "./page.js";
import { go, startPlaces } from "./places.js";
import { sumView } from "./sum.js";
import { example as exampleWords, gone as goneWords, problemWords, sum as sumWords, words } from "./words.js";
/** @typedef {{ element: HTMLElement, refill: () => void, arrive?: () => void }} View */

const main = /** @type {HTMLElement} */ (document.getElementById("main"));
const dock = /** @type {HTMLElement} */ (document.getElementById("dock"));
const topNote = /** @type {HTMLElement} */ (document.getElementById("top-note"));
const SLOW_MS = 2500;

/** @type {Partial<Record<string, View>>} */
const views = {};
/** @type {Promise<void> | null} */
let styles = isOneFile ? Promise.resolve() : null;
/** The styles of what loads late; what did not come is asked for again. */
const lateStyles = () => (styles ??= new Promise((done, fail) => {
  const missed = (/** @type {Event} */ event) => ((styles = null), fail(event));
  document.head.append(make("link", { rel: "stylesheet", href: "more.css", load: () => done(), error: missed }));
}));
/** A module that loads late: no view of it is laid before its styles are there. @template T @param {Promise<T>} module @returns {Promise<T>} */
const dressed = async (module) => (await Promise.all([module, lateStyles()]))[0];
/** @param {string} title @param {import("./records.js").Figure} figure @param {import("./doubt.js").About} [about] */
const openWorking = async (title, figure, about) => (await dressed(import("./mat.js"))).openMat(title, figure, about);
/** Measures with the bottle of the sum. @param {import("./records.js").Bottle} bottle @param {string} code @param {{ changed: () => void, closed: () => void }} does */
const measure = async (bottle, code, does) => (await dressed(import("./measuring.js"))).openMeasuring(bottle, code, { ...does, openWorking });

// The core is compiled while the sum is built.
const slow = setTimeout(() => note("core", goneWords.slow), SLOW_MS);
const loading = core.load((reason) => {
  clearTimeout(slow);
  note("core", goneWords[reason], [[goneWords.again, reload]]);
});

const sum = sumView({ openWorking, measure });
views.sum = sum;
main.replaceChildren(sum.element);
followKeyboard();
followKeys();
kept.whenRefused((problems) => {
  if (problems.length === 0) note("storage_full", null);
  for (const problem of problems) {
    note(problem.code, null);
    note(problem.code, problemWords(problem));
  }
});
kept.whenClashed((stands, fields, mine) => {
  const price = stands && "paid" in stands ? stands.paid.price : "";
  note("clash", stands && words.clash(stands.name, fields, mine, price));
});

const begun = loading.then(async (alive) => {
  clearTimeout(slow);
  if (alive) note("core", null);
  await begin();
});
startPlaces(/** @type {HTMLElement} */ (document.getElementById("places")), showPlace);
begun.then(listen).then(openSent).then(later);

/** Takes up what was kept: the draft, or on a first visit the worked example. */
async function begin() {
  const typedAlready = !sum.isEmpty();
  const returning = kept.open();
  kept.takeTabDraft();
  payIn(kept.house.currency);
  // The example is never mixed with what is one's own, as after a file was brought in beside it.
  const own = kept.bottles.size + kept.specs.size > 0;
  const shown = !own && (!returning || kept.draft.example) ? await showExample() : null;
  if (typedAlready) sum.refill();
  else if (!kept.takeUp("sum", sum.start)) sum.start(shown?.sum);
  kept.whenChanged(() => {
    sum.refill();
    for (const view of Object.values(views)) if (view !== sum) view?.refill();
    if (!kept.example) topNote.replaceChildren();
  });
}

/** Puts the worked example on the shelf, and says so. */
async function showExample() {
  const { workedExample } = await import("./example.js");
  const digits = core.tables()?.currencies.find((each) => each.code === kept.house.currency)?.digits ?? 2;
  const shown = workedExample(digits > 0);
  kept.showExample(shown);
  kept.keepDraft("example", true);
  const clear = make("button", { type: "button", click: clearExample }, exampleWords.clear);
  topNote.replaceChildren(make("p", {}, exampleWords.line), clear);
  return shown;
}

function clearExample() {
  const was = sum.current();
  kept.clearExample();
  sum.start();
  note("undo", exampleWords.cleared, [[sumWords.undo, () => showExample().then(() => sum.start(was))]]);
}

/** @param {import("./places.js").Place} place */
async function showPlace(place) {
  const view = (views[place] ??= await openView(place));
  if (!view || view.element.parentNode === main) return;
  main.replaceChildren(view.element);
  view.arrive?.();
}

/** @param {string} place @returns {Promise<View | undefined>} */
async function openView(place) {
  await begun;
  if (place === "glass") return (await dressed(import("./glass.js"))).glassView({ openWorking, measure, measureOnShelf });
  if (place === "shelf") return (await dressed(import("./shelf.js"))).shelfView({ useBottle, openGlass, openWorking });
  if (place === "house") return (await dressed(import("./house.js"))).houseView();
  return undefined;
}

/** A bottle of the shelf is wanted for a sum. @param {import("./records.js").Bottle} bottle */
function useBottle(bottle) {
  go("sum");
  sum.start({ bottle: structuredClone(bottle), measure: { text: "", unit: "dash" } });
}

/** A glass of the shelf is to be opened. @param {import("./records.js").Spec} spec */
async function openGlass(spec) {
  const view = /** @type {any} */ ((views.glass ??= await openView("glass")));
  view.open(structuredClone(spec));
  go("glass");
}

/** A rough measure of a bottle of the shelf is to be measured. @param {string} id @param {string} code */
async function measureOnShelf(id, code) {
  go("shelf");
  await showPlace("shelf");
  /** @type {any} */ (views.shelf).measure(id, code);
}

/** A glass may have come in the address. It is shown, and nothing is touched before a choice. */
async function openSent() {
  if (!location.hash.startsWith("#glass=")) return;
  try {
    await (await dressed(import("./sent.js"))).openSent(openGlass);
  } catch {
    note("core", goneWords.not_loaded);
  }
}

/** What the first answer does not wait for. */
async function later() {
  const { startChips } = await import("./chips.js");
  startChips(/** @type {HTMLElement} */ (document.getElementById("chips")));
  const { startUpdates } = await import("./update.js");
  startUpdates(reload);
  // All of one version is at hand before another can be: nothing is loaded late into an older page.
  await Promise.all([core.loadMore(), lateStyles(), import("./mat.js"), import("./measuring.js"), import("./glass.js"), import("./shelf.js"), import("./house.js")]);
}

function listen() {
  const printed = make("p", { class: "printed" });
  document.querySelector(".top")?.append(printed);
  addEventListener("beforeprint", () => write(printed, words.printed(date(today()), kept.house.currency, kept.house.reclaims_tax)));
  addEventListener("hashchange", openSent);
  addEventListener("storage", (event) => kept.hear(event.key));
  addEventListener("pageshow", (event) => event.persisted && kept.hear(null));
  addEventListener("pagehide", kept.keepDraftNow);
  document.addEventListener("visibilitychange", () => document.hidden && kept.keepDraftNow());
}

function reload() {
  kept.keepDraftNow();
  location.reload();
}

/** Where the keys lead is shown while somebody goes by keys: not all browsers know it by themselves. */
function followKeys() {
  const root = document.documentElement;
  addEventListener("keydown", ({ key }) => key === "Tab" && (root.dataset.goes = "by-keys"), true);
  addEventListener("pointerdown", () => delete root.dataset.goes, true);
}

/** Where the keypad lies over the page instead of making it smaller, the dock rises above it. */
function followKeyboard() {
  const { classList, style } = document.documentElement;
  const seen = window.visualViewport;
  const follow = () => {
    if (!seen) return;
    const hidden = Math.max(0, innerHeight - seen.height - seen.offsetTop);
    style.setProperty("--keypad", `${hidden > 80 && seen.scale === 1 ? Math.round(hidden) : 0}px`);
    classList.toggle("typing", seen.height < 500);
  };
  // The blank at hand stays above the answer, which rises with the dock.
  const keepInView = () => document.activeElement?.matches("input") && document.activeElement.scrollIntoView({ block: "nearest" });
  new ResizeObserver(() => {
    style.setProperty("--dock", `${dock.offsetHeight}px`);
    follow();
    keepInView();
  }).observe(dock);
  seen?.addEventListener("resize", () => (follow(), keepInView()));
  seen?.addEventListener("scroll", follow);
  // A phone on its side is as low as one with its keypad up, and still has its places.
  const writes = () => classList.toggle("writing", Boolean(document.activeElement?.matches("input")));
  addEventListener("focusin", writes);
  // What was tapped stands still until the tap is over.
  addEventListener("focusout", () => setTimeout(writes, 300));
}
