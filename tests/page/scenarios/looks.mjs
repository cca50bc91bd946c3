// @ts-check
import assert from "node:assert/strict";
import { PHONE } from "../engines.mjs";
import { axe, contrast } from "../look/axe.mjs";
import { borderless } from "../look/borders.mjs";
import { otherHosts } from "../look/hosts.mjs";
import { installErrors } from "../look/install.mjs";
import { missed, walk } from "../look/keyboard.mjs";
import { enterFramed, reflow } from "../look/reflow.mjs";
import { smallTargets } from "../look/targets.mjs";
import { KEYS } from "../webdriver.mjs";
import { faults, listensForFaults } from "./page/early.mjs";
import { answered, begun, EDITOR, MAT, OPEN_WORKING, openPlace, PLACES, SEARCH, SHELF_ROW, tap, tapOn } from "./page/places.mjs";
import { BITTERS, openWith } from "./page/records.mjs";
import { STATES } from "./page/states.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */
/** @typedef {import("../scenarios.mjs").Stage} Stage */

const ONLY_CHROMIUM = "its window does not become as narrow as a phone; the reflow scenario looks at a narrow frame";

/** Opens the page as on a first visit. @param {Stage} stage */
async function firstVisit({ session, site }) {
  await session.go(site.address);
  await answered(session);
  await begun(session);
}

/** Looks at every state of the page. @param {Session} session @param {(session: Session) => Promise<unknown[]>} look */
async function inEveryState(session, look) {
  /** @type {Record<string, unknown[]>} */
  const found = {};
  for (const { name, open } of STATES) {
    await open(session);
    const here = await look(session);
    if (here.length > 0) found[name] = here;
  }
  assert.deepEqual(found, {});
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "no state breaks WCAG 2.2 AA or a good habit",
    async play({ session, site }) {
      // So tall that nothing which stays in sight lies over a control.
      await enterFramed(session, site, 1000, 6000);
      await begun(session);
      await inEveryState(session, axe);
      await session.leaveFrame();
    },
  },
  {
    name: "text stands out at 7:1 in the dark scheme",
    wishes: { scheme: "dark" },
    leavesOut: { wpe: "it has no switch for a scheme" },
    async play(stage) {
      await firstVisit(stage);
      assert.ok(await stage.session.run(() => matchMedia("(prefers-color-scheme: dark)").matches));
      await inEveryState(stage.session, contrast);
    },
  },
  {
    name: "text stands out at 7:1 in the light scheme",
    async play(stage) {
      await firstVisit(stage);
      // What every engine shows when nobody asks for another.
      assert.ok(await stage.session.run(() => matchMedia("(prefers-color-scheme: light)").matches));
      await inEveryState(stage.session, contrast);
    },
  },
  {
    name: "in the device's own colours every control has an edge and text stands out, and nothing moves",
    wishes: { forcedColours: true, lessMotion: true },
    leavesOut: { webkitgtk: "it has no switch for forced colours", wpe: "it has no switch for forced colours" },
    async play(stage) {
      const { session } = stage;
      await firstVisit(stage);
      assert.ok(await session.run(() => matchMedia("(forced-colors: active)").matches));
      await inEveryState(session, (shown) => borderless(shown, ".blank input, .choice, .chip, .wide, .mat .stitched"));
      await inEveryState(session, contrast);
      const moving = () => session.run(() => [...document.querySelectorAll("body *")].filter((element) => {
        const { transitionDuration, animationName, animationDuration } = getComputedStyle(element);
        return parseFloat(transitionDuration) > 0 || (animationName !== "none" && parseFloat(animationDuration) > 0);
      }).map((element) => element.className));
      await inEveryState(session, moving);
      // The place where one is is told by more than a colour.
      const edges = await session.run(() => [...document.querySelectorAll("#places a")].map((each) =>
        `${each.hasAttribute("aria-current")} ${getComputedStyle(each).borderTopColor} ${getComputedStyle(each).fontWeight}`));
      const current = edges.find((/** @type {string} */ edge) => edge.startsWith("true"))?.slice(5);
      assert.ok(current && !edges.includes(`false ${current}`), edges.join());
    },
  },
  {
    name: "a thumb hits every control on a phone",
    wishes: { phone: true },
    leavesOut: { firefox: ONLY_CHROMIUM, webkitgtk: ONLY_CHROMIUM, wpe: ONLY_CHROMIUM },
    async play(stage) {
      await firstVisit(stage);
      assert.equal(await stage.session.run(() => innerWidth), PHONE.width);
      await inEveryState(stage.session, smallTargets);
    },
  },
  {
    name: "every state fits 320 pixels: with large text, with wide spacing, and from right to left",
    async play({ session, site }) {
      const ready = { name: "as it begins", open: begun };
      assert.deepEqual(await reflow(session, site, { states: [ready, ...STATES] }), []);
    },
  },
  {
    name: "the Tab key reaches every control, and shows where it is",
    async play(stage) {
      const { session } = stage;
      await firstVisit(stage);
      await inEveryState(session, async () => {
        const stops = await walk(session);
        return [...stops.filter(({ isShown }) => !isShown).map(({ name }) => `unseen: ${name}`), ...(await missed(session)).map((name) => `missed: ${name}`)];
      });
    },
  },
  {
    name: "Esc and Back close what lies over the page",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [BITTERS], draft: { sum: { bottle: BITTERS, measure: { text: "2", unit: "dash" } } } });
      const gone = (/** @type {string} */ css) => session.waitFor((/** @type {string} */ wanted) => !document.querySelector(wanted), `${css} to close`, css);
      for (const close of [() => session.press(KEYS.escape), () => session.back()]) {
        await session.click(OPEN_WORKING);
        await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the mat", MAT);
        await close();
        await gone(MAT);
        // The step back in the browser's own list of pages comes a moment later.
        await session.waitFor(() => history.state?.depth === 0, "the step back");
        assert.equal(await session.run(() => location.hash), "");
      }
      // By real taps: a browser skips pages that no person asked for.
      await tap(session, "Shelf", "#places");
      await tapOn(session, SHELF_ROW);
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the bottle", EDITOR);
      await session.back();
      await gone(EDITOR);
      assert.ok(await session.find(SEARCH));
      await session.back();
      await session.waitFor(() => document.querySelector("main .place.sum"), "the sum, one step back");
    },
  },
  {
    name: "nothing is fetched from another host, and the page's policy refuses nothing",
    async play(stage) {
      const { session, site } = stage;
      listensForFaults(site);
      await firstVisit(stage);
      await inEveryState(session, faults);
      assert.deepEqual(await otherHosts(session), []);
      const hosts = new Set(site.log.map(({ host }) => `http://${host}`));
      assert.deepEqual([...hosts], [site.origin]);
      assert.equal(await session.run(() => document.cookie), "");
      // What listens can hear.
      await session.run(() => {
        const script = document.createElement("script");
        try {
          script.textContent = "window.ran = true";
          document.body.append(script);
        } catch {
          // Where the policy knows trusted types, it refuses even sooner.
        }
        document.body.insertAdjacentElement("beforeend", Object.assign(document.createElement("img"), { src: "http://localhost:1/x.png" }));
      });
      await session.waitFor(() => /** @type {any} */ (window).heard.some((/** @type {string} */ fault) => fault.startsWith("policy: img-src")), "a refusal to be heard");
      assert.equal(await session.run(() => "ran" in window), false);
    },
  },
  {
    name: "a phone offers to install it",
    leavesOut: Object.fromEntries(["firefox", "webkitgtk", "wpe"].map((engine) => [engine, "it has no command that tells"])),
    async play(stage) {
      await firstVisit(stage);
      assert.deepEqual(await installErrors(stage.session), []);
    },
  },
  {
    name: "every place has one heading of the first level, and a name",
    async play(stage) {
      await firstVisit(stage);
      for (const place of PLACES) {
        await openPlace(stage.session, place);
        assert.equal(await stage.session.run(() => document.querySelectorAll("h1").length), 1, place);
      }
    },
  },
];
