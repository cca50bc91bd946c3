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

/** Whether the policy of the page held back something of ours. */
let held = false;
document.addEventListener("securitypolicyviolation", ({ blockedURI }) => {
  held ||= blockedURI.startsWith("wasm") || blockedURI.startsWith(new URL(".", import.meta.url).origin);
});

export class FarthingGlass extends HTMLElement {
  static observedAttributes = ["currency", "keep", "kitchen", "locale", "method", "name", "part", "prices", "show", "src"];

  #room = document.createElement("div");
  #changes = new MutationObserver(() => this.#again());
  /** @type {import("./embed-view.js").Laid | null} */
  #laid = null;
  #isDue = false;

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
      this.#laid ??= await layGlass(this, this.#room);
      if (this.isConnected) this.#listen();
    } catch (error) {
      this.#tell(error);
    }
  }

  #listen() {
    this.#changes.observe(this, { childList: true, characterData: true, subtree: true });
    this.#laid?.hear();
    this.#again();
  }

  /** Shows it anew, once for all that changed in one go. */
  #again() {
    if (!this.#laid || this.#isDue) return;
    this.#isDue = true;
    queueMicrotask(async () => {
      this.#isDue = false;
      try {
        await this.#laid?.refresh();
      } catch (error) {
        this.#tell(error);
      }
    });
  }

  /** @param {unknown} error */
  async #tell(error) {
    await new Promise((resolve) => setTimeout(resolve, TOLD_WITHIN_MS));
    const why = error instanceof Error && error.message in trouble ? error.message : held ? "policy" : "not_loaded";
    const line = document.createElement("p");
    line.part.add("trouble");
    line.textContent = trouble[why];
    this.#room.replaceChildren(line);
    this.#room.style.minBlockSize = "";
  }
}
