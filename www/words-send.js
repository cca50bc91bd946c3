// @ts-check
/** The words of a glass that is sent, and of one that was. */

/** @typedef {string} T */

export const send = {
  open: "send it",
  heading: (/** @type {T} */ name) => `Send ${name}`,
  goes: "goes",
  choice: "Whether its prices go along",
  /** @type {[code: T, name: T][]} */
  choices: [["with", "with its prices"], ["without", "without prices"]],
  with: "Whoever gets it sees what you paid for these bottles, and nothing else of your shelf.",
  without: "Whoever gets it sees what goes in, not what you paid for it.",
  noLink: "This page is a file on your device: no link leads to it. As text the glass goes all the same.",
  share: "Share the link",
  copy: "Copy the link",
  text: "As text",
  costs: (/** @type {T} */ cost, /** @type {T} */ between, /** @type {T} */ without, /** @type {T} */ day) =>
    `Costs ${cost} to make${[between, without].filter(Boolean).map((each) => `, ${each}`).join("")}. ${day}`,
  shareText: "share it",
  recipe: "As recipe data",
  recipeAbout: "For other programs to read (schema.org), in a page’s own code.",
};

export const sendPage = {
  heading: "On a page of yours",
  stands: "as",
  choice: "How it stands on the page",
  /** @type {[code: T, name: T][]} */
  choices: [["element", "a part of the page"], ["frame", "a frame"]],
  element: "Paste this where the recipe stands. The list stays as your page shows it; readers see what a glass costs, and may put in their own prices.",
  frame: "For a page that allows no script of others. What is put in there is not kept.",
  code: "What is pasted into the page",
  shown: "What readers see",
  notHere: "To be seen here, it needs a network, and a browser from 2023 or later.",
  title: (/** @type {T} */ name) => (name ? `What a glass of ${name} costs` : "What a glass costs"),
};

export const sent = {
  heading: "A glass was sent to you",
  line: "Which bottle is meant",
  is: "is",
  mine: (/** @type {T} */ name) => `my ${name}`,
  theirs: "the one that was sent",
  costs: (/** @type {T} */ cost, /** @type {T} */ between) => `It costs ${[cost, between].filter(Boolean).join(", ")}.`,
  priced: (/** @type {T} */ currency) => `At the sender’s prices, in ${currency}.`,
  unpriced: "It came without prices.",
  otherCurrency: (/** @type {T} */ mine) => `Your own prices are in ${mine}, so these are left out when you take it.`,
  becomes: (/** @type {T} */ theirs) => `Your shelf is empty, so your prices will be in ${theirs} too.`,
  here: (/** @type {T} */ cost, /** @type {T} */ without) => `With you it costs ${[cost, without].filter(Boolean).join(", ")}.`,
  put: "Put it on my shelf",
  look: "Look at it in Glass",
  leave: "Leave it",
  isThere: (/** @type {T} */ name) => `${name} is on the shelf already.`,
  looked: "That is the glass. It is not kept yet.",
};
