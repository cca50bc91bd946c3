// @ts-check
/**
 * For a page with frames of Farthing that may run this script: each frame gets the height that it tells.
 * A message counts only from a frame of this page whose address is ours.
 */

/** The highest that a frame may become, in pixels: a long recipe with everything open. */
const MOST_HEIGHT = 4000;

const ours = new URL("frame.html", import.meta.url).href;

addEventListener("message", ({ data, source }) => {
  if (data?.farthing !== "height" || !Number.isFinite(data.height)) return;
  for (const frame of document.querySelectorAll("iframe")) {
    if (frame.contentWindow === source && frame.src.split("#")[0] === ours) {
      frame.style.blockSize = `${Math.min(Math.max(data.height, 0), MOST_HEIGHT)}px`;
    }
  }
});
