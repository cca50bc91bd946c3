// @ts-check
/** Whether anything left for another host. */

/** Addresses that the page fetched from elsewhere; WebKit tells only of those that answered. @param {import("../webdriver.mjs").Session} session @returns {Promise<string[]>} */
export const otherHosts = (session) => session.runAsync(async () => {
  // An entry comes a moment after its answer.
  await new Promise((resolve) => setTimeout(resolve, 150));
  return performance.getEntriesByType("resource")
    .map((entry) => entry.name)
    .filter((name) => !name.startsWith(location.origin) && !/^(data|blob):/.test(name));
});
