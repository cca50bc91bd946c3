// @ts-check
/** Whether a thumb hits what it aims at. */

/** One thumb, in a hurry. WCAG 2.2 asks for 24, its best level for 44. */
export const THUMB_PX = 48;

/**
 * Every visible control smaller than a thumb, as `name 40x20`. A link within a sentence is exempt,
 * as in WCAG 2.5.8: the line height sets its size. A label counts as part of its control.
 * @param {import("../webdriver.mjs").Session} session @returns {Promise<string[]>}
 */
export const smallTargets = (session, least_px = THUMB_PX) => session.run((/** @type {number} */ least) => {
  const CONTROLS = "a[href], button, input, select, textarea, summary, [role=button], [role=tab], [tabindex]";

  /** @param {ParentNode} root @returns {Element[]} */
  const all = (root) => {
    const hosts = [...root.querySelectorAll("*")].filter((element) => element.shadowRoot);
    const within = hosts.flatMap((host) => all(/** @type {ShadowRoot} */ (host.shadowRoot)));
    return [...root.querySelectorAll(CONTROLS), ...within];
  };
  const isInSentence = (/** @type {Element} */ link) => link.localName === "a"
    && getComputedStyle(link).display === "inline"
    && (link.parentElement?.textContent ?? "").trim() !== (link.textContent ?? "").trim();
  const isOff = (/** @type {Element} */ element) => element.matches("[tabindex='-1'], [type=hidden]")
    || getComputedStyle(element).visibility === "hidden";
  /** The area that reacts: the control and its labels together. @param {Element} element */
  const area = (element) => {
    const labels = [...(/** @type {HTMLInputElement} */ (element).labels ?? [])];
    const isMark = element.matches("[type=checkbox], [type=radio], [type=file]");
    const boxes = [element, ...(isMark ? labels : [])].map((part) => part.getBoundingClientRect());
    const span = (/** @type {"left" | "top"} */ from, /** @type {"right" | "bottom"} */ to) =>
      Math.max(...boxes.map((box) => box[to])) - Math.min(...boxes.map((box) => box[from]));
    return { width: span("left", "right"), height: span("top", "bottom") };
  };
  const name = (/** @type {Element} */ element) =>
    `${element.localName}${element.id && `#${element.id}`}${element.className && `.${element.className}`}`
    + ` “${(element.textContent || element.getAttribute("aria-label") || "").trim().slice(0, 30)}”`;

  const found = [];
  for (const element of all(document)) {
    const own = element.getBoundingClientRect();
    if (own.width === 0 || own.height === 0 || isOff(element) || isInSentence(element)) continue;
    const { width, height } = area(element);
    // Half a pixel is lost to rounding on scaled screens.
    if (width + 0.5 < least || height + 0.5 < least) found.push(`${name(element)} ${Math.round(width)}x${Math.round(height)}`);
  }
  return found;
}, least_px);
