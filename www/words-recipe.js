// @ts-check
/** The words of a recipe that is pasted. */

/** @typedef {string} T */

export const recipe = {
  heading: "Paste a recipe",
  text: "The recipe: its lines, or the recipe data of a page",
  about: "As you found it: title, lines and method, or the whole source of a page. Nothing is kept until you keep the glass.",
  file: "open a file",
  hint: "60 ml gin\n2 dashes bitters",
  part: "a part is",
  partLabel: "How large one part is",
  a: "a",
  name: "Name of the drink",
  nameHint: "glass of anything",
  is: "is it",
  isThis: "it is",
  choice: (/** @type {T} */ line) => `What “${line}” is on the shelf`,
  asks: (/** @type {T} */ name) => `${name || "a bottle without a name"}?`,
  fresh: "something new, without a price",
  stands: "a note, as it stands",
  out: "leave it out",
  heads: "a heading: nothing is poured",
  /** What a line is that pours nothing, by the name the core has for it. @type {{ [aside: string]: string }} */
  aside: { title: "the name of the drink", method: "what is said", makes: "how many it makes" },
  optional: "may be left out",
  optionalNote: "optional",
  garnish: "garnish",
  row: (/** @type {T} */ measure, /** @type {T} */ name) => [measure, name].filter(Boolean).join(" of "),
  parts: (/** @type {T} */ count, /** @type {boolean} */ single) => `${count} ${single ? "part" : "parts"}`,
  tally: (/** @type {number} */ lines, /** @type {number} */ unread) =>
    `${lines === 1 ? "1 line" : `${lines} lines`}.${unread ? ` ${unread} could not be read wholly.` : ""}`,
  makes: (/** @type {T} */ count) => ` It makes ${count}: this glass is all of them together.`,
  make: "Make a glass of it",
  made: "That is the glass. It is not kept yet.",
  clear: "start over",
  cleared: "The recipe is gone.",
};
