// @ts-check
/** The page as one file: where it can be had, and within it what it is. */

import { isOneFile, make, note } from "./page.js";
import { oneFile as oneFileWords } from "./words-one-file.js";

/** @param {(file: Blob, name: string) => void} save */
export function oneFileOffer(save) {
  if (isOneFile) return make("div", { class: "file-about" }, make("p", {}, oneFileWords.here));
  const link = make("a", { class: "quiet", href: "one-file.html", download: oneFileWords.name }, oneFileWords.keep);
  // Fetched here, so that it can be said when it does not come: the offline worker does not keep it.
  link.addEventListener("click", async (event) => {
    event.preventDefault();
    const file = await fetch(link.href).then((reply) => (reply.ok ? reply.blob() : null), () => null);
    if (file) save(file, oneFileWords.name);
    else note("one_file", oneFileWords.gone);
  });
  return make("div", { class: "file-about" }, make("p", {}, link, ` ${oneFileWords.about}`));
}
