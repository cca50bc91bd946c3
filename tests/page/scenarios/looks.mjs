// @ts-check
import assert from "node:assert/strict";
import { PHONE } from "../engines.mjs";
import { axe, contrast } from "../look/axe.mjs";
import { otherHosts } from "../look/hosts.mjs";
import { installErrors } from "../look/install.mjs";
import { missed, walk } from "../look/keyboard.mjs";
import { reflow } from "../look/reflow.mjs";
import { smallTargets } from "../look/targets.mjs";
import { answered, openPlace, PLACES } from "./page/places.mjs";

const ONLY_CHROMIUM = "its window does not become as narrow as a phone; the reflow scenario looks at a narrow frame";

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "no place breaks WCAG 2.2 AA or a good habit",
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      for (const place of PLACES) {
        await openPlace(session, place);
        assert.deepEqual(await axe(session), [], place);
      }
    },
  },
  ...(/** @type {const} */ (["dark", "light"])).map((scheme) => ({
    name: `text stands out at 7:1 in the ${scheme} scheme`,
    wishes: { scheme },
    leavesOut: { wpe: "it has no switch for a scheme" },
    /** @param {import("../scenarios.mjs").Stage} stage */
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      for (const place of PLACES) {
        await openPlace(session, place);
        assert.deepEqual(await contrast(session), [], place);
      }
    },
  })),
  {
    name: "a thumb hits every control on a phone",
    wishes: { phone: true },
    leavesOut: { firefox: ONLY_CHROMIUM, webkitgtk: ONLY_CHROMIUM, wpe: ONLY_CHROMIUM },
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      assert.equal(await session.run(() => innerWidth), PHONE.width);
      for (const place of PLACES) {
        await openPlace(session, place);
        assert.deepEqual(await smallTargets(session), [], place);
      }
    },
  },
  ...PLACES.map((place) => ({
    name: `${place} fits 320 pixels, with large text and wide spacing too`,
    /** @param {import("../scenarios.mjs").Stage} stage */
    async play({ session, site }) {
      const prepare = async () => {
        await answered(session);
        await openPlace(session, place);
      };
      assert.deepEqual(await reflow(session, site, { prepare }), []);
    },
  })),
  {
    name: "the Tab key reaches every control, and shows where it is",
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      for (const place of PLACES) {
        await openPlace(session, place);
        const stops = await walk(session);
        assert.deepEqual(stops.filter(({ isShown }) => !isShown), [], place);
        assert.deepEqual(await missed(session), [], place);
      }
    },
  },
  {
    name: "nothing is fetched from another host",
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      for (const place of PLACES) await openPlace(session, place);
      assert.deepEqual(await otherHosts(session), []);
      const hosts = new Set(site.log.map(({ host }) => `http://${host}`));
      assert.deepEqual([...hosts], [site.origin]);
    },
  },
  {
    name: "a phone offers to install it",
    leavesOut: Object.fromEntries(["firefox", "webkitgtk", "wpe"].map((engine) => [engine, "it has no command that tells"])),
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      assert.deepEqual(await installErrors(session), []);
    },
  },
];
