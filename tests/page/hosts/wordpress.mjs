// @ts-check
/** Posts in Debian's WordPress, under its own theme. One site serves all of them. */

import assert from "node:assert/strict";
import { after } from "node:test";
import { becomes } from "../scenarios/page/places.mjs";
import { costs, fetched, frame, frameScript, laysGlass, SCRIPT, seen, showsFrame, snippet, TEXTS, textsIn } from "./rig/glass.mjs";
import { WordPress } from "./rig/wordpress.mjs";

/** @type {Promise<WordPress> | null} */
let starting = null;
after(async () => (await starting)?.stop());

/** @param {"admin" | "author"} by @param {string} content */
async function publish(by, content) {
  const blog = await (starting ??= WordPress.start());
  return blog.publish({ by, title: "The drink of the house", content });
}

/** What the editor makes of its block for markup. @param {string} markup */
const block = (markup) => `<!-- wp:html -->\n${markup}\n<!-- /wp:html -->`;

/** @param {string} words */
const paragraph = (words) => `<!-- wp:paragraph -->\n<p>${words}</p>\n<!-- /wp:paragraph -->`;

/** The post among others in the feed. @param {string} address */
async function inFeed(address) {
  const feed = await (await fetch((await /** @type {Promise<WordPress>} */ (starting)).feed)).text();
  return feed.split("<item>").find((item) => item.includes(`<link>${address}</link>`)) ?? "";
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a glass in a block of WordPress's editor is laid, and its feed holds the list",
    async play(stage) {
      const content = [paragraph("The last boat is through."), block(snippet(stage.site)), paragraph("Mind the step.")];
      const { address } = await publish("admin", content.join("\n"));
      await laysGlass(stage, address);
      assert.deepEqual(textsIn(await inFeed(address)), TEXTS);
    },
  },
  {
    name: "a glass in WordPress's classic editor is laid, among the paragraphs that it puts in",
    async play(stage) {
      const content = ["The last boat is through.", snippet(stage.site), "Mind the step."];
      const { address } = await publish("admin", content.join("\n\n"));
      assert.match(await (await fetch(address)).text(), /<farthing-glass [^>]*><\/p>/);
      await laysGlass(stage, address);
      assert.deepEqual(textsIn(await inFeed(address)), TEXTS);
    },
  },
  {
    name: "an author whom WordPress lets write no script still publishes the list",
    async play({ session, site }) {
      for (const content of [snippet(site), block(snippet(site))]) {
        const { address, kept, isUnfiltered } = await publish("author", content);
        assert.ok(!isUnfiltered);
        assert.doesNotMatch(kept, /<script|<farthing-glass|prices=/);
        assert.deepEqual(textsIn(kept), TEXTS);
        await session.go(address);
        await becomes(() => seen(session), TEXTS);
        assert.deepEqual(await costs(session), []);
        assert.equal(fetched(site, SCRIPT), 0);
        assert.deepEqual(textsIn(await inFeed(address)), TEXTS);
      }
    },
  },
  {
    name: "a frame in WordPress shows the cost, and is as high as it tells",
    async play(stage) {
      const { address } = await publish("admin", block(frameScript(stage.site) + frame(stage.site)));
      await showsFrame(stage, address);
    },
  },
];
