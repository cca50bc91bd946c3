// @ts-check
/** The core of the glasses on somebody's page: one for all of them, loaded when the first is near. */

/** @typedef {import("./farthing-embed.js")} Glue */

/** @type {Promise<Glue> | null} */
let coming = null;
let isGone = false;

/** What engines say of a policy that forbids to compile. */
const FORBIDDEN = /unsafe-eval|content security policy|\bCSP\b/i;

async function bring() {
  if (typeof WebAssembly !== "object") throw new Error("no_wasm");
  try {
    const loaded = await import("./farthing-embed.js");
    await loaded.default({ module_or_path: new URL("farthing-embed_bg.wasm", import.meta.url) });
    return loaded;
  } catch (error) {
    coming = null;
    throw FORBIDDEN.test(String(error)) ? new Error("policy") : error;
  }
}

/**
 * What a glass costs. One that trapped may hold half a thought, so it is never asked again.
 * @param {import("./records.js").EmbedAsk} record
 * @returns {Promise<import("./records.js").EmbedReply>}
 */
export async function embed(record) {
  const glue = await (coming ??= bring());
  if (!isGone) {
    try {
      return JSON.parse(glue.embed(JSON.stringify(record)));
    } catch {
      isGone = true;
    }
  }
  throw new Error("trapped");
}
