// @ts-check
/** Posts of a static-site generator, Eleventy, as it builds them from Markdown. */

import assert from "node:assert/strict";
import { becomes } from "../scenarios/page/places.mjs";
import { startSite } from "../site.mjs";
import { builtBlog } from "./rig/eleventy.mjs";
import { COST, costs, laysGlass, publishedAt, showsFrame, staysStill, TEXTS, textsIn } from "./rig/glass.mjs";

const COUNTS_NONE = "it counts no shifts of a layout";

/** @param {import("../scenarios.mjs").Stage} stage @param {(blog: import("../site.mjs").Site) => Promise<void>} act */
async function withBlog({ site }, act) {
  const built = builtBlog(publishedAt(site));
  const blog = await startSite(built.folder);
  try {
    await act(blog);
  } finally {
    await blog.stop();
    built.remove();
  }
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a glass in a Markdown post of Eleventy is laid, and its feed holds the list",
    play: (stage) => withBlog(stage, async (blog) => {
      await laysGlass(stage, `${blog.address}posts/lock-keeper/`);
      assert.deepEqual(textsIn(blog.read("feed.xml")), TEXTS);
    }),
  },
  {
    name: "on a phone, nothing of a post moves when its glass is laid",
    wishes: { phone: true },
    leavesOut: { firefox: COUNTS_NONE, webkitgtk: COUNTS_NONE, wpe: COUNTS_NONE },
    play: (stage) => withBlog(stage, async ({ address }) => {
      await stage.session.go(`${address}posts/lock-keeper/`);
      await becomes(() => costs(stage.session), [COST]);
      await staysStill(stage.session);
    }),
  },
  {
    name: "a frame in a Markdown post of Eleventy shows the cost, and is as high as it tells",
    play: (stage) => withBlog(stage, (blog) => showsFrame(stage, `${blog.address}posts/framed/`)),
  },
];
