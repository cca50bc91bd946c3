// @ts-check
/**
 * The picture of what spoils: the cost of a pour, up, against glasses a week. Two lines differ by
 * their dashes and carry a letter; colour says nothing that these do not.
 */

import { draw } from "./page.js";
/** @typedef {import("./records.js").KeepingPoint} Point */

const WIDE = 340;
const TALL = 236;
/** The ground that the lines are drawn on. */
const LEFT = 8;
const RIGHT = 322;
const TOP = 26;
const FLOOR = 168;
const NAME_LETTERS = 34;
const DASHES = ["", "8 6"];

/**
 * @param {object} shows
 * @param {Point[]} shows.points
 * @param {string} shows.crossing the pace at which both cost the same, if there is one
 * @param {string} shows.crossed how that is called
 * @param {string} shows.axis
 * @param {string} shows.top what the highest cost is
 * @param {{ letter: string, name: string }[]} shows.lines
 */
export function keepingPicture({ points, crossing, crossed, axis, top, lines }) {
  const first = points[0].a_week;
  const most = points[points.length - 1].a_week;
  const across = (/** @type {number} */ pace) => LEFT + ((RIGHT - LEFT) * (pace - first)) / (most - first);
  const up = (/** @type {number} */ height) => FLOOR - ((FLOOR - TOP) * height) / 1000;
  const picture = draw("svg", { class: "picture", viewBox: `0 0 ${WIDE} ${TALL}`, direction: "ltr", "aria-hidden": "true" },
    draw("path", { d: `M${LEFT} ${TOP - 8}V${FLOOR}H${RIGHT}`, class: "glass-edge" }),
    draw("text", { x: LEFT, y: 13 }, top),
    draw("text", { x: LEFT, y: FLOOR + 18 }, String(first)),
    draw("text", { x: RIGHT, y: FLOOR + 18, "text-anchor": "end" }, `${most} ${axis}`));
  if (crossing) {
    const at = across(Number(crossing));
    // The words stand where there is more room.
    const isRight = at > (LEFT + RIGHT) / 2;
    if (at >= LEFT) picture.append(draw("path", { d: `M${at} ${TOP}V${FLOOR}`, class: "leader", "stroke-dasharray": "2 4" }),
      draw("text", { x: isRight ? at - 5 : at + 5, y: TOP + 4, "text-anchor": isRight ? "end" : "start" }, crossed));
  }
  lines.forEach(({ letter, name }, line) => {
    const d = points.map(({ a_week, heights }, at) => `${at ? "L" : "M"}${across(a_week)} ${up(heights[line])}`).join("");
    const dashes = DASHES[line];
    const legend = FLOOR + 38 + 20 * line;
    const end = points[points.length - 1].heights;
    // Of two ends side by side the upper letter stands above its line, the lower one below.
    const isLower = lines.length > 1 && (end[line] < end[1 - line] || (end[line] === end[1 - line] && line === 1));
    picture.append(draw("path", { d, class: "pace-line", "stroke-dasharray": dashes || null }),
      draw("text", { x: RIGHT + 3, y: up(end[line]) + (lines.length < 2 ? 5 : isLower ? 12 : -1) }, letter),
      draw("path", { d: `M${LEFT} ${legend - 5}h40`, class: "pace-line", "stroke-dasharray": dashes || null }),
      draw("text", { x: LEFT + 48, y: legend }, `${letter} ${shortened(name)}`));
  });
  return picture;
}

/** @param {string} name */
function shortened(name) {
  const letters = [...name];
  return letters.length > NAME_LETTERS ? `${letters.slice(0, NAME_LETTERS - 1).join("")}…` : name;
}
