// @ts-check
/**
 * How a glass on somebody's page looks: the host's own ink and letters, on a stitched mat. Its buttons
 * stand four to a row, or two where that is too narrow, so that they never outgrow the room that is kept.
 */

const CSS = `
:host { display: block; padding-block-end: 0 !important; }
:host([hidden]) { display: none; }
:host([theme="dark"]) .mat { --ink: #ece2d0; --ground: #201912; --seam: #8a6a4f; --accent: #eba577; color-scheme: dark; }
:host([theme="light"]) .mat { --ink: #241a12; --ground: #fbf6ec; --seam: #a5774f; --accent: #7d3510; color-scheme: light; }
.mat {
  display: flow-root; position: relative; box-sizing: border-box; margin-block: 1em; padding: .8em min(1em, 5%); border-radius: 1em;
  color: var(--farthing-ink, var(--ink, inherit));
  background: var(--farthing-ground, var(--ground, transparent));
  border: 1px dashed var(--farthing-seam, var(--seam, currentColor));
  font-style: normal; font-weight: 400; letter-spacing: normal; word-spacing: normal; text-transform: none; text-align: start; text-indent: 0;
  white-space: normal; line-height: 1.4; font-variant-numeric: tabular-nums; overflow-wrap: anywhere;
}
p, ul, ol { margin: 0; padding: 0; list-style: none; }
[hidden] { display: none !important; }
.unseen { position: absolute; inline-size: 1px; block-size: 1px; overflow: hidden; clip-path: inset(50%); }
output { font-size: 2em; line-height: 1.1; color: var(--farthing-accent, var(--accent, inherit)); }
output:not(:empty) { margin-inline-end: .3em; }
.cost span, .row b, .row i { unicode-bidi: plaintext; }
.small { font-size: .875em; }
.tabs { display: grid; grid-template-columns: repeat(auto-fill, minmax(clamp(20%, (24em - 100%) * 99, 45%), 1fr)); gap: .5em; margin-block-start: .5em; }
button {
  font: inherit; font-size: .9375em; line-height: 1.15; color: inherit; background: none; border: 1px solid var(--farthing-seam, var(--seam, currentColor)); border-radius: 2em;
  min-block-size: max(44px, 2.75em); padding: .1em .2em; overflow-wrap: normal; cursor: pointer;
}
button[aria-expanded="true"] { border-color: currentColor; box-shadow: inset 0 0 0 2px currentColor; }
:focus-visible { outline: 3px solid var(--farthing-accent, var(--accent, currentColor)); outline-offset: 2px; }
.panel { margin-block-start: .8em; }
.panel > * + * { margin-block-start: .6em; }
.row { display: flex; flex-wrap: wrap; gap: 0 .8em; justify-content: space-between; padding-block: .3em; border-block-end: 1px solid color-mix(in srgb, currentColor 20%, transparent); }
.row > :first-child { flex: 1 1 9em; }
.costs { margin-inline-start: auto; white-space: nowrap; }
.row b { font-weight: 600; }
.row i { display: inline-block; font-style: normal; min-inline-size: 3.5em; text-align: end; }
.prices .row { border: 0; }
.prices .row > :last-child { display: flex; align-items: baseline; gap: .3em; min-inline-size: 0; overflow-wrap: normal; }
.blank { font: inherit; font-size: max(16px, 1em); color: inherit; background: transparent; inline-size: 5.5em; min-inline-size: 0; min-block-size: 2.75em; box-sizing: border-box; padding: .2em .3em; border: 0; border-block-end: 2px solid var(--farthing-accent, var(--accent, currentColor)); border-radius: 0; }
.blank::placeholder { color: inherit; opacity: 1; font-style: italic; }
.blank[aria-invalid="true"] { border-block-end-style: double; border-block-end-width: 4px; }
.finds, .said-of { font-size: .875em; display: block; }
.head { font-weight: 600; }
@media print { .tabs, .prices { display: none; } }
@media (forced-colors: active) { button[aria-expanded="true"] { border-width: 3px; } }
@media (prefers-contrast: more) { .mat, button { border-color: currentColor; } }
`;

/** @type {CSSStyleSheet | null} */
let sheet = null;

/** Adopted, because a strict policy of the page does not stand in the way of that. @param {ShadowRoot} root */
export function dress(root) {
  try {
    if (!sheet) {
      sheet = new CSSStyleSheet();
      sheet.replaceSync(CSS);
    }
    root.adoptedStyleSheets = [sheet];
  } catch {
    // An engine of before Safari 16.4 knows only this.
    const style = document.createElement("style");
    style.textContent = CSS;
    root.prepend(style);
  }
}
