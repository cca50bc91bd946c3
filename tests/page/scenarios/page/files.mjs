// @ts-check
/** Files that the page saves, and files that a person chooses for it. */

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { tap } from "./places.mjs";

/** @typedef {import("../../webdriver.mjs").Session} Session */

const folder = mkdtempSync(join(tmpdir(), "farthing-files-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));

/** What one tap saves: its name and its text. No engine says where it put a file, so the page's own hands are watched. @param {Session} session @param {string} words @returns {Promise<{ name: string, text: string }>} */
export async function savedBy(session, words) {
  await session.run(() => {
    if ("savedFiles" in window) return void (/** @type {any} */ (window).savedFiles.length = 0);
    /** @type {{ name: string, blob: Blob | undefined }[]} */
    const files = [];
    /** @type {Map<string, Blob>} */
    const made = new Map();
    const create = URL.createObjectURL;
    URL.createObjectURL = (blob) => {
      const address = create(blob);
      made.set(address, /** @type {Blob} */ (blob));
      return address;
    };
    const click = HTMLElement.prototype.click;
    HTMLAnchorElement.prototype.click = function () {
      const name = this.getAttribute("download");
      if (name) files.push({ name, blob: made.get(this.href) });
      else click.call(this);
    };
    Object.assign(window, { savedFiles: files });
  });
  await tap(session, words);
  await session.waitFor(() => /** @type {any} */ (window).savedFiles.length > 0, `a file from “${words}”`);
  return session.runAsync(async () => {
    const [{ name, blob }] = /** @type {any} */ (window).savedFiles;
    return { name, text: await blob.text() };
  });
}

let count = 0;

/** Chooses a file with this text, where the page asks for one. @param {Session} session @param {string} text @param {string} [asks] the view that does */
export async function choose(session, text, asks = ".shelf") {
  const path = join(folder, `chosen-${count += 1}.json`);
  writeFileSync(path, text);
  await session.type(`${asks} input[type=file]`, path);
}
