// @ts-check
/** Builds the blog beside this file with Eleventy, into a folder of its own. */

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { installed } from "../../paths.mjs";

const SOURCE = fileURLToPath(new URL("eleventy/", import.meta.url));
const GENERATOR = join(installed, "@11ty/eleventy/cmd.cjs");
const BUILDS_WITHIN_MS = 60_000;

/** @param {string} farthing where the page of these sums is published */
export function builtBlog(farthing) {
  const folder = mkdtempSync(join(tmpdir(), "farthing-blog-"));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  const { status, stdout, stderr } = spawnSync(process.execPath, [GENERATOR, `--output=${folder}`, "--quiet"], {
    cwd: SOURCE, env: { ...process.env, FARTHING_PUBLISHED_AT: farthing }, timeout: BUILDS_WITHIN_MS, encoding: "utf8",
  });
  if (status === 0) return { folder, remove };
  remove();
  throw new Error(`Eleventy built nothing: ${stderr || stdout}`);
}
