// @ts-check
/** Whether controls can be told from the ground when the device puts its own colours in place of ours. */

/** Shown controls whose border and underline have the colour of the ground, or none at all. @param {import("../webdriver.mjs").Session} session @param {string} css @returns {Promise<string[]>} */
export const borderless = (session, css) => session.run((/** @type {string} */ wanted) => {
  const ground = getComputedStyle(document.documentElement).backgroundColor;
  const isSeen = (/** @type {Element} */ element) => {
    const style = getComputedStyle(element);
    const edges = ["Top", "Right", "Bottom", "Left"].map((side) => [
      style.getPropertyValue(`border-${side.toLowerCase()}-width`), style.getPropertyValue(`border-${side.toLowerCase()}-style`),
      style.getPropertyValue(`border-${side.toLowerCase()}-color`),
    ]);
    return edges.some(([width, kind, colour]) => parseFloat(String(width)) > 0 && kind !== "none" && colour !== ground && colour !== "rgba(0, 0, 0, 0)");
  };
  return [...document.querySelectorAll(wanted)].filter((element) => element.getClientRects().length > 0 && !isSeen(element))
    .map((element) => `${element.localName}.${element.className} “${(element.getAttribute("aria-label") ?? element.textContent ?? "").trim().slice(0, 30)}”`);
}, css);
