// @ts-check
/**
 * `<farthing-glass>`: what a glass costs, under its recipe on any page.
 *
 * This is all that a page loads before a reader comes near; the rest, and the core, are one for all
 * glasses of the page. What the element holds stays as the host wrote and styled it, and is all there
 * is while nothing can be reckoned.
 */

import { ROOM } from "./glass-room.js";
import { trouble } from "./words-trouble.js";

/** How far off a reader may be when the rest is fetched: a screen of a phone. */
const NEAR = "740px";

/** @type {WeakMap<Element, () => void>} */
const waiting = new WeakMap();
const near = new IntersectionObserver((entries) => {
  for (const { isIntersecting, target } of entries) if (isIntersecting) waiting.get(target)?.();
}, { rootMargin: NEAR });

/** An engine tells of what a policy held back a moment after that failed. */
const TOLD_WITHIN_MS = 100;

/** Whether the policy of the page held back something of ours; one that only reports holds nothing back. */
let held = false;
document.addEventListener("securitypolicyviolation", ({ blockedURI, disposition }) => {
  if (disposition === "report") return;
  held ||= blockedURI.startsWith("wasm") || blockedURI.startsWith(new URL(".", import.meta.url).origin);
});

export class FarthingGlass extends HTMLElement {
  static observedAttributes = ["currency", "keep", "kitchen", "locale", "method", "name", "part", "prices", "show", "src"];

  #room = document.createElement("div");
  #changes = new MutationObserver(() => this.#again());
  /** @type {import("./embed-view.js").Laid | null} */
  #laid = null;
  /** @type {Promise<void> | null} */
  #due = null;
  #shows = 0;

  constructor() {
    super();
    this.#room.style.minBlockSize = ROOM;
    this.attachShadow({ mode: "open" }).append(document.createElement("slot"), this.#room);
  }

  connectedCallback() {
    // Room that the host kept before the script came is ours now.
    this.style.setProperty("padding-block-end", "0");
    if (this.#laid) return this.#listen();
    waiting.set(this, () => (near.unobserve(this), this.#lay()));
    near.observe(this);
  }

  disconnectedCallback() {
    near.unobserve(this);
    this.#changes.disconnect();
    this.#laid?.leave();
  }

  attributeChangedCallback() {
    this.#again();
  }

  async #lay() {
    try {
      const { layGlass } = await import("./embed-view.js");
      // It may have been moved meanwhile, and have come near a second time.
      this.#laid ??= layGlass(this, this.#room, () => this.#again());
      if (this.isConnected) this.#listen();
    } catch (error) {
      this.#tell(error, () => this.#laid === null);
    }
  }

  #listen() {
    this.#changes.observe(this, { childList: true, characterData: true, subtree: true });
    this.#laid?.hear();
    this.#again();
  }

  /** Shows it anew, once for all that changed in one go. */
  async #again() {
    if (this.#laid) await (this.#due ??= Promise.resolve().then(() => ((this.#due = null), this.#show())));
  }

  async #show() {
    const now = ++this.#shows;
    const isLatest = () => now === this.#shows;
    try {
      await this.#laid?.refresh(isLatest);
    } catch (error) {
      await this.#tell(error, isLatest);
    }
  }

  /** What went wrong stands there until it goes well. @param {unknown} error @param {() => boolean} holds whether that is still so */
  async #tell(error, holds) {
    await new Promise((resolve) => setTimeout(resolve, TOLD_WITHIN_MS));
    if (!holds()) return;
    const why = error instanceof Error && error.message in trouble ? error.message : held ? "policy" : "not_loaded";
    const line = document.createElement("p");
    line.part.add("trouble");
    line.textContent = trouble[why];
    this.#room.replaceChildren(line);
    this.#room.style.minBlockSize = "";
  }
}
