// @ts-check
/** The offline worker: registers it, and says quietly when a new version is ready. Nothing reloads by itself. */

import { isOneFile, note } from "./page.js";
import { update as updateWords } from "./words.js";

/** @param {() => void} reload keeps what is typed, then loads the page again */
export async function startUpdates(reload) {
  if (isOneFile || !("serviceWorker" in navigator)) return;
  try {
    const workers = navigator.serviceWorker;
    const hadWorker = workers.controller !== null;
    const registration = await workers.register(/** @type {any} */ (trusted("offline.js")), { updateViaCache: "none" });
    let asked = false;
    const offer = () => {
      const waiting = registration.waiting;
      if (!waiting || !workers.controller) return;
      note("update", updateWords.ready, [[updateWords.take, () => ((asked = true), waiting.postMessage("take over"))]]);
    };
    workers.addEventListener("controllerchange", () => {
      if (asked) reload();
      else if (hadWorker) note("update", updateWords.taken, [[updateWords.take, reload]]);
    });
    registration.addEventListener("updatefound", () => {
      const found = registration.installing;
      // The first of all is no new version.
      if (!registration.active) return;
      found?.addEventListener("statechange", () => found.state === "installed" && offer());
    });
    if (hadWorker) offer();
    document.addEventListener("visibilitychange", () => document.hidden || registration.update().catch(() => {}));
  } catch {
    // A browser that refuses workers still does the sums while there is signal.
  }
}

/** A worker's address is a script's: where the browser asks for it, by a policy that knows only ours. @param {string} address */
function trusted(address) {
  const types = /** @type {any} */ (globalThis).trustedTypes;
  if (!types) return address;
  return types.createPolicy("farthing", { createScriptURL: () => address }).createScriptURL(address);
}
