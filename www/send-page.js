// @ts-check
/** A glass for a page of one's own: what is pasted there, and beside it what its readers will see. */

import { activate, choice } from "./blanks.js";
import * as core from "./core.js";
import { locale } from "./figures.js";
import { ROOM } from "./glass-room.js";
import { copyOut } from "./over.js";
import { make, write } from "./page.js";
import { clause } from "./sentence.js";
import { over as overWords } from "./words-menu.js";
import { sendPage as words } from "./words-send.js";
/** @typedef {{ name: string, lines: string[], attributes: [name: string, value: string][] }} Snippet */

/** How high a frame is before it tells: a glass of five lines on a phone. */
const FRAME_HEIGHT = "30rem";

/** @param {string} text */
const escaped = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** @param {string} file */
const addressOf = (file) => escaped(new URL(file, document.baseURI).href);

/** As an element; a division around it, because some editors put a paragraph around what they do not know. @param {Snippet} glass */
const asElement = ({ name, lines, attributes }) => `<script type="module" src="${addressOf("farthing-glass.js")}"></script>
<div><farthing-glass style="display: block; padding-block-end: ${ROOM}" ${attributes.map(([key, value]) => `${key}="${escaped(value)}"`).join(" ")}>
${name && `  <h3>${escaped(name)}</h3>\n`}  <ul>
${lines.map((line) => `    <li>${escaped(line)}</li>`).join("\n")}
  </ul>
</farthing-glass></div>`;

/** As a frame, for a page that allows no script of others. @param {Snippet} glass */
const asFrame = ({ name, lines, attributes }) => {
  const locales = attributes.map(([key, value]) => [key === "lang" ? "locale" : key, value]);
  const fields = new URLSearchParams([["v", "1"], ...(name ? [["name", name]] : []), ...locales, ...lines.map((line) => ["line", line])]);
  return `<iframe sandbox="allow-scripts" src="${addressOf(`frame.html#${fields}`)}" title="${escaped(words.title(name))}" loading="lazy" style="inline-size: 100%; block-size: ${FRAME_HEIGHT}; border: 0"></iframe>`;
};

export function pagePart() {
  /** @type {Snippet} */
  let snippet = { name: "", lines: [], attributes: [] };
  let framed = false;
  const area = make("textarea", { class: "by-hand", readonly: true, rows: 8, dir: "ltr", "aria-label": words.code, focus: () => activate(null) });
  const place = make("div");
  const about = make("p", { class: "small" });
  const shown = make("div", { class: "shown-there" });
  const stands = choice(words.choice, words.choices, "element", (value) => ((framed = value === "frame"), code()));
  const missing = make("p", { class: "small", hidden: true }, words.notHere);
  const element = make("div", {}, make("h2", {}, words.heading), clause(words.stands, [], stands.element), about, area,
    make("button", { type: "button", class: "quiet", click: () => copyOut(area.value, null, place) }, overWords.copy), place,
    make("h3", {}, words.shown), missing, shown);

  function code() {
    area.value = framed ? asFrame(snippet) : asElement(snippet);
    write(about, words[framed ? "frame" : "element"]);
    place.replaceChildren();
  }

  // The script that a page would name; without a network it does not come. A browser that cannot adopt
  // styles would put them into the page, which this page's own policy forbids.
  const adopts = "replaceSync" in CSSStyleSheet.prototype;
  if (adopts) import("./farthing-glass.js").catch(() => (missing.hidden = false));
  else missing.hidden = false;

  return {
    element,
    /** @param {import("./send.js").Glass} glass */
    show(glass) {
      const { page_lines: lines = [], page_prices: prices = "" } = core.recipeOut(glass) ?? {};
      const { spec, house } = glass;
      /** @type {[string, string][]} */
      const all = [["lang", locale], ["currency", house.currency], ["kitchen", house.kitchen], ["method", spec.method === "none" ? "" : spec.method], ["prices", prices]];
      snippet = { name: spec.name, lines, attributes: all.filter(([, value]) => value) };
      code();
      const there = make(/** @type {any} */ ("farthing-glass"), { ...Object.fromEntries(snippet.attributes), keep: "no" },
        spec.name ? make("h4", {}, spec.name) : null, make("ul", {}, ...lines.map((line) => make("li", {}, line))));
      shown.replaceChildren(there);
    },
  };
}
