// @ts-check
/** Where things are. */

import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));

export const builtPage = join(here, "../../target/page");
/** What the page and the core are built from. */
export const pageSource = join(here, "../../www");
export const coreSource = join(here, "../../src");
export const goldenCases = join(here, "../golden");
export const installed = join(here, "node_modules");

/** Paths that fit a pattern of names with `*` and `?`; node has its own only from version 22. @param {string} pattern */
export function globSync(pattern) {
  const names = pattern.split("/").filter(Boolean);
  let found = ["/"];
  for (const name of names) {
    const fits = new RegExp(`^${name.replace(/[.+]/g, "\\$&").replace("*", ".*").replace("?", ".")}$`);
    found = found.flatMap((folder) => entries(folder).filter((entry) => fits.test(entry)).map((entry) => join(folder, entry)));
  }
  return found.filter((path) => existsSync(path));
}

/** @param {string} folder */
function entries(folder) {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
