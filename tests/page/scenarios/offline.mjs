// @ts-check
import assert from "node:assert/strict";
import { ANSWER, answered, MEASURE } from "./page/places.mjs";

/** @param {import("../webdriver.mjs").Session} session */
const kept = (session) => session.waitFor(() => navigator.serviceWorker?.controller, "the offline worker");

/** @param {import("../webdriver.mjs").Session} session */
async function answersTyping(session) {
  const before = await session.text(ANSWER);
  await session.type(MEASURE, "0");
  await session.waitFor((/** @type {string} */ css, /** @type {string} */ old) =>
    document.querySelector(css)?.textContent !== old, "another answer", ANSWER, before);
}

/** @param {import("../scenarios.mjs").Stage} stage */
async function withoutNetwork({ session, site }) {
  await session.go(site.address);
  await answered(session);
  await kept(session);
  await site.stop();
  await session.reload();
  await answered(session);
  await answersTyping(session);
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  { name: "answers without a network after one visit", play: (stage) => withoutNetwork(stage) },
  {
    name: "does the same in a folder of its host",
    play(stage) {
      stage.site.prefix = "/bar/tools/farthing/";
      return withoutNetwork(stage);
    },
  },
  {
    name: "answers when the host sends wasm with a wrong type",
    async play({ session, site }) {
      site.wasmType = "application/octet-stream";
      await session.go(site.address);
      await answered(session);
    },
  },
  {
    name: "a new version waits, and a failed one leaves the old one whole",
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      await kept(session);
      site.playNewVersion();
      site.missing.add("farthing_bg.wasm");
      await session.runAsync(async () => {
        const { serviceWorker } = navigator;
        const held = await serviceWorker.getRegistration();
        await held?.update().catch(() => {});
      });
      await site.stop();
      await session.reload();
      await answered(session);
      await answersTyping(session);
      assert.ok(await session.run(() => navigator.serviceWorker.controller !== null));
    },
  },
];
