// @ts-check
/// <reference lib="webworker" />
/**
 * The offline worker: keeps every file of one version and answers from that version alone.
 * A new version waits until the person asks for it. The build fills in the two lines below.
 */

const VERSION = "development";
/** @type {string[]} */
const FILES = [];

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
/** Other pages of this host have caches too: ours begin with our own address. */
const OURS = `farthing ${worker.registration.scope} `;
const CACHE = OURS + VERSION;

/** The page is asked for as a folder, so that no host answers with a redirection. @param {string} file */
const addressOf = (file) => new URL(file === "index.html" ? "./" : file, worker.registration.scope).href;

worker.addEventListener("install", (event) => event.waitUntil(keepAll()));
worker.addEventListener("activate", (event) => event.waitUntil(clearOld().then(() => worker.clients.claim())));
worker.addEventListener("message", (event) => event.data === "take over" && worker.skipWaiting());

/** All files or none: a half-kept version never replaces a whole one. */
async function keepAll() {
  const cache = await caches.open(CACHE);
  try {
    await cache.addAll(FILES.map((file) => new Request(addressOf(file), { cache: "no-cache" })));
  } catch (failure) {
    await caches.delete(CACHE);
    throw failure;
  }
}

async function clearOld() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
}

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(worker.registration.scope)) return;
  const page = addressOf("index.html");
  const bare = request.url.split(/[?#]/)[0];
  const wanted = request.mode === "navigate" && (bare === page || bare === `${page}index.html`) ? page : bare;
  event.respondWith(answer(request, wanted));
});

/** @param {Request} request @param {string} wanted */
async function answer(request, wanted) {
  const cache = await caches.open(CACHE);
  return (await cache.match(wanted)) ?? fetch(request);
}
