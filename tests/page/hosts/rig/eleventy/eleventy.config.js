/** A recipe blog as its maker would set it up: posts in Markdown, one layout, an Atom feed. */

import { feedPlugin } from "@11ty/eleventy-plugin-rss";

/** @param {any} config */
export default function (config) {
  // Where the page of these sums is published; a person would write it out.
  config.addGlobalData("farthing", process.env.FARTHING_PUBLISHED_AT);
  config.addPlugin(feedPlugin, {
    type: "atom",
    outputPath: "/feed.xml",
    collection: { name: "post", limit: 0 },
    metadata: {
      language: "en",
      title: "Below the Lock",
      subtitle: "Drinks from a canal-side bar",
      base: "http://127.0.0.1/",
      author: { name: "The lock keeper" },
    },
  });
  return { markdownTemplateEngine: "njk", dir: { includes: "layouts" } };
}
