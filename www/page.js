// @ts-check
/** What every view does to the page: make an element, say a thing aloud, leave a note. */

import { words } from "./words.js";

/** Whether the page is one file, opened from a folder: everything came with it, the core too. */
export const isOneFile = "farthingCore" in globalThis;

/** @typedef {Record<string, string | number | boolean | null | undefined | ((event: any) => void)>} Attributes */

/**
 * @param {Element} element
 * @param {Attributes} attributes a function is heard on the event its name says
 * @param {(Node | string | null)[]} children
 */
function dress(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name, value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(name, String(value));
  }
  for (const child of children) if (child !== null) element.append(child);
}

/**
 * An element with its attributes, listeners and children. Text is always text, never markup.
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Attributes} [attributes]
 * @param {(Node | string | null)[]} children
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  dress(element, attributes, children);
  return element;
}

/**
 * The same for a drawing.
 * @param {string} tag
 * @param {Attributes} [attributes]
 * @param {(Node | string | null)[]} children
 */
export function draw(tag, attributes = {}, ...children) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  dress(element, attributes, children);
  return element;
}

/**
 * Writes text only where it differs, so that an unchanged figure costs nothing.
 * @param {Element} element @param {string} text
 */
export function write(element, text) {
  const only = element.firstChild;
  if (text && only instanceof Text && only === element.lastChild) {
    // The same text node in other words costs a tenth of a new one.
    if (only.data !== text) only.data = text;
  } else if (element.textContent !== text) element.textContent = text;
}

/**
 * The same for an attribute.
 * @param {Element} element @param {string} name @param {string} value
 */
export function mark(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

let lastNumber = 0;
/** An id that no other element has. */
export const freshId = () => `n${++lastNumber}`;

/** Three frames: the answer to a key is painted by then. */
const SOON_MS = 50;

/**
 * Does a thing soon, and once however often it was wished for till then: what stands around an
 * answer must not hold up the answer.
 * @param {() => void} act @returns {() => void}
 */
export function soon(act) {
  let waits = false;
  return () => {
    if (waits) return;
    waits = true;
    setTimeout(() => ((waits = false), act()), SOON_MS);
  };
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let speaking;
/** How long nothing is typed before a figure counts as settled. */
export const SETTLED_MS = 800;

/**
 * Says a settled answer to a screen reader: once, after the last key.
 * @param {() => string} text asked for only then
 */
export function say(text) {
  clearTimeout(speaking);
  speaking = setTimeout(() => {
    const spoken = document.getElementById("spoken");
    if (spoken) write(spoken, text());
  }, SETTLED_MS);
}

/** How long a confirmation stands, and one that can be undone. @type {Record<string, number>} */
const STANDS_MS = { done: 6000, undo: 30_000 };
/** What each note says, by name; also once it was shut. @type {Map<string, string>} */
const said = new Map();

/**
 * Leaves a quiet line above the thumb bar. Another note of the same name takes its place.
 * @param {string} name "done" and "undo" confirm something and go by themselves
 * @param {string | null} text nothing takes the note away; what stands, or was shut, is not said twice
 * @param {[string, () => void][]} [actions]
 */
export function note(name, text, actions = []) {
  const notes = document.getElementById("notes");
  if (!notes || ((said.get(name) ?? null) === text && actions.length === 0)) return;
  // Of what was just done, the latest is enough.
  for (const old of name in STANDS_MS ? Object.keys(STANDS_MS) : [name]) notes.querySelector(`[data-note="${old}"]`)?.remove();
  said.delete(name);
  if (text === null) return;
  if (!(name in STANDS_MS)) said.set(name, text);
  const line = make("div", { class: "note", "data-note": name }, make("p", {}, text));
  for (const [label, act] of actions) {
    line.append(make("button", { type: "button", click: () => (line.remove(), act()) }, label));
  }
  line.append(make("button", { type: "button", class: "shut", "aria-label": words.shut, click: () => line.remove() }, "×"));
  notes.append(line);
  if (name in STANDS_MS) setTimeout(() => line.remove(), STANDS_MS[name]);
}
