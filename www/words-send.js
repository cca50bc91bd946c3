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
  with: "Whoever opens the link sees what you paid for these bottles, and nothing else of your shelf.",
  without: "Whoever opens the link sees what goes in, not what you paid for it.",
  share: "Share the link",
  copy: "Copy the link",
  text: "As text",
  costs: (/** @type {T} */ cost, /** @type {T} */ between, /** @type {T} */ without, /** @type {T} */ day) =>
    `Costs ${cost} to make${[between, without].filter(Boolean).map((each) => `, ${each}`).join("")}. ${day}`,
  shareText: "share it",
  recipe: "As a recipe for a page of yours",
  recipeAbout: "Recipe data (schema.org), for the page’s own code.",
};

export const sent = {
  heading: "A glass was sent to you",
  line: "Which bottle is meant",
  is: "is",
  mine: (/** @type {T} */ name) => `my ${name}`,
  theirs: "the one that was sent",
  costs: (/** @type {T} */ cost, /** @type {T} */ between) => `It costs ${[cost, between].filter(Boolean).join(", ")}.`,
  priced: (/** @type {T} */ currency) => `At the prices of who sent it, in ${currency}.`,
  unpriced: "It came without prices.",
  otherCurrency: (/** @type {T} */ mine) => `Your own prices are in ${mine}, so these are left out when you take it.`,
  becomes: (/** @type {T} */ theirs) => `Nothing is on your shelf yet, so it will reckon in ${theirs}.`,
  here: (/** @type {T} */ cost, /** @type {T} */ without) => `With you it costs ${[cost, without].filter(Boolean).join(", ")}.`,
  put: "Put it on my shelf",
  look: "Look at it in Glass",
  leave: "Leave it",
  isThere: (/** @type {T} */ name) => `${name} is on the shelf already.`,
  looked: "That is the glass. It is not kept yet.",
};
