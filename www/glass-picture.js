// @ts-check
/**
 * The picture of a glass: a layer for each line, as high as its share of the cost, told apart by
 * hatching and by a name beside it. Colour says nothing that they do not.
 */

import { draw, freshId } from "./page.js";

const WIDE = 340;
const TALL = 224;
/** The inside of the glass: a hundred percent from floor to brim. */
const BRIM = 14;
const FLOOR = 208;
const LABEL_STEP = 21;
const MOST_LABELS = 9;
const LABEL_LETTERS = 18;

/** Hatchings, each a path on a tile of 12 by 12. */
const HATCHES = [
  "M0 12 12 0M-3 3 3-3M9 15 15 9", "M6 6h.01M0 0h.01M12 0h.01M0 12h.01M12 12h.01", "M0 6h12", "M0 0 12 12M-3 9 3 15M9-3 15 3",
  "M6 0v12M0 6h12", "M0 9q3-6 6 0t6 0", "M6 0v12",
];

/**
 * @param {{ name: string, share: number, label: string }[]} layers from the floor up
 * @returns {SVGElement}
 */
export function glassPicture(layers) {
  const id = freshId();
  const clip = draw("clipPath", { id: `${id}c` }, draw("path", { d: `M22 ${BRIM} 150 ${BRIM} 138 ${FLOOR} 34 ${FLOOR}z` }));
  const defs = draw("defs", {}, clip, ...HATCHES.map((path, i) =>
    draw("pattern", { id: `${id}h${i}`, width: 12, height: 12, patternUnits: "userSpaceOnUse" }, draw("path", { d: path, class: "hatch" })),
  ));
  const liquid = draw("g", { "clip-path": `url(#${id}c)` });
  const picture = draw("svg", { class: "picture", viewBox: `0 0 ${WIDE} ${TALL}`, "aria-hidden": "true" }, defs, liquid);

  let top = FLOOR;
  const middles = layers.map(({ share }, i) => {
    const height = ((FLOOR - BRIM) * share) / 100;
    top -= height;
    const box = { x: 16, y: top, width: 140, height };
    liquid.append(draw("rect", { ...box, class: "layer" }), draw("rect", { ...box, fill: `url(#${id}h${i % HATCHES.length})` }));
    liquid.append(draw("path", { d: `M16 ${top}h140`, class: "surface" }));
    return top + height / 2;
  });
  picture.append(draw("path", { d: "M16 6 28 216h116L156 6", class: "glass-edge" }), ...labels(layers, middles));
  return picture;
}

/** Names beside the layers, the largest first if there are many, never one over another. @param {{ name: string, share: number, label: string }[]} layers @param {number[]} middles */
function labels(layers, middles) {
  const told = layers
    .map((layer, i) => ({ ...layer, at: middles[i], y: middles[i] }))
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_LABELS)
    .sort((a, b) => a.at - b.at);
  let lowest = 0;
  for (const label of told) label.y = lowest = Math.max(label.at, lowest + (lowest ? LABEL_STEP : 0), 12);
  let highest = TALL - 8;
  for (const label of told.reverse()) {
    label.y = Math.min(label.y, highest);
    highest = label.y - LABEL_STEP;
  }
  return told.flatMap(({ name, label, at, y }) => [
    draw("path", { d: `M${edgeAt(at)} ${at} 168 ${y}h8`, class: "leader" }),
    draw("text", { x: 182, y: y + 5 }, `${label} ${shortened(name)}`),
  ]);
}

/** Where the right wall of the glass stands at a height. @param {number} y */
const edgeAt = (y) => 150 - (12 * (y - BRIM)) / (FLOOR - BRIM);

/** @param {string} name */
function shortened(name) {
  const letters = [...name];
  return letters.length > LABEL_LETTERS ? `${letters.slice(0, LABEL_LETTERS - 1).join("")}…` : name;
}
