// @ts-check
/** Everything in one file, and back: what a file would change is said before it does. */

import { today } from "./figures.js";
import * as kept from "./kept.js";
import { oneFileOffer } from "./one-file.js";
import { make, note } from "./page.js";
import { file as fileWords, problemWords } from "./words.js";

const MOST_NAMED = 30;

/** The two buttons, what a chosen file would change, what was set aside, and the page itself as a file. */
export function fileTools() {
  const about = make("div", { class: "file-about", "aria-live": "polite" });
  const picker = make("input", { type: "file", class: "unseen", tabindex: "-1", "aria-label": fileWords.bring, accept: ".json,.txt,application/json,text/plain" });
  picker.addEventListener("change", async () => {
    const chosen = picker.files?.[0];
    picker.value = "";
    if (chosen) offer(await chosen.text());
  });
  const setAside = make("button", { type: "button", class: "quiet", click: () => saveText(kept.asideFile(), fileWords.asideName) });
  const element = make("div", { class: "file-tools" },
    make("button", { type: "button", class: "quiet", click: () => saveText(kept.saveFile(), fileWords.name(today())) }, fileWords.save),
    make("button", { type: "button", class: "quiet", click: () => picker.click() }, fileWords.bring),
    setAside, picker, about, ...oneFileOffer(download));

  /** @param {string} text */
  function offer(text) {
    const read = kept.readFile(text);
    if (!read) return;
    const [problem] = read.problems;
    if (problem) return about.replaceChildren(make("p", {}, problemWords(problem)));
    const fresh = read.changes.filter((change) => change.change === "new");
    const changed = read.changes.filter((change) => change.change === "changed");
    const named = [...changed, ...fresh].slice(0, MOST_NAMED).map((each) =>
      make("li", {}, make("bdi", {}, each.name || fileWords.kinds[each.kind]), ` – ${fileWords.changes[each.change]}`));
    const nothing = fresh.length + changed.length === 0;
    about.replaceChildren(
      make("p", {}, nothing ? fileWords.nothing : fileWords.would(fresh.length, changed.length)),
      make("ul", {}, ...named),
      ...(nothing ? [] : [make("button", { type: "button", class: "wide", click: () => (kept.takeFile(text), about.replaceChildren(), note("done", fileWords.taken)) }, fileWords.take)]),
      make("button", { type: "button", class: "quiet", click: () => about.replaceChildren() }, fileWords.leave),
    );
    about.scrollIntoView({ block: "nearest" });
  }

  function refill() {
    const count = kept.asideCount();
    setAside.hidden = count === 0;
    setAside.textContent = fileWords.aside(count);
  }
  refill();
  return { element, refill };
}

/** @param {string | null} text @param {string} name */
function saveText(text, name) {
  if (text !== null) download(new Blob([text], { type: "application/json" }), name);
}

/** @param {Blob} file @param {string} name */
function download(file, name) {
  const address = URL.createObjectURL(file);
  const link = make("a", { href: address, download: name, hidden: true });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
