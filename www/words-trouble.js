// @ts-check
/** The words of a glass on somebody's page that cannot be reckoned. They come first, and alone. */

/** @type {Record<string, string>} */
export const trouble = {
  policy: "What this glass costs cannot be shown here: the policy of this page does not allow it. Its keeper can: script-src and connect-src must name the place that Farthing comes from, and script-src needs 'wasm-unsafe-eval'.",
  no_wasm: "What this glass costs cannot be shown: this browser does not run WebAssembly, or it is switched off.",
  not_loaded: "What this glass costs cannot be shown: a part of Farthing did not arrive. Load the page again.",
  trapped: "The sums of this glass have stopped. Load the page again.",
  no_lines: "Nothing tells what goes into this glass: it needs a list of lines, such as 50 ml rye whisky.",
  no_file: "What goes into this glass cannot be read: its file did not arrive, or is no recipe.",
};

/** What a frame says of its address. */
export const frameTrouble = {
  newer: "This glass was written for a newer version of this frame. Its link can be copied anew where it was made.",
  long: "What goes into this glass is too long to be read.",
};
