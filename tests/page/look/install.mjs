// @ts-check
/** Whether a phone offers to install the page. Only Chromium says. */

/** @param {import("../webdriver.mjs").Session} session @returns {Promise<string[]>} */
export async function installErrors(session) {
  const { errors } = await session.cdp("Page.getAppManifest");
  const { installabilityErrors } = await session.cdp("Page.getInstallabilityErrors");
  return [
    ...errors.map((/** @type {any} */ error) => `manifest: ${error.message}`),
    ...installabilityErrors.map((/** @type {any} */ error) => error.errorId),
  ];
}
