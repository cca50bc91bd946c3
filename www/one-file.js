// @ts-check
/** The page as one file: where it can be had, and within it what it is. */

import { isOneFile, make, note } from "./page.js";
import { oneFile as oneFileWords } from "./words-one-file.js";

/** @param {(file: Blob, name: string) => void} save */
export function oneFileOffer(save) {
  const about = make("div", { class: "one-file-about" }, make("p", { class: "small" }, isOneFile ? oneFileWords.here : oneFileWords.about));
  return isOneFile ? [about] : [make("button", { type: "button", class: "quiet", click: () => fetchFile(save) }, oneFileWords.keep), about];
}

/** The offline worker does not keep the file, which most never ask for. @param {(file: Blob, name: string) => void} save */
async function fetchFile(save) {
  const file = await fetch("one-file.html").then((reply) => (reply.ok ? reply.blob() : null), () => null);
  if (file) save(file, oneFileWords.name);
  else note("done", oneFileWords.gone);
}
