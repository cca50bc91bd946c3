// @ts-check
/** Serves a built page as hosts do, good ones and bad ones. */

import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { gzipSync } from "node:zlib";
import { builtPage } from "./paths.mjs";

/** @type {Record<string, string>} */
const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

/** A page for tests that shows the built page in a frame of a given width. */
const FRAME = "frame-for-tests";

/** @typedef {{ method: string, path: string, status: number, host: string }} Asked */

/** @param {string} folder @param {Partial<Pick<Site, "prefix" | "headers" | "wasmType">>} switches */
export async function startSite(folder = builtPage, switches = {}) {
  const site = Object.assign(new Site(folder), switches);
  await site.start();
  return site;
}

export class Site {
  /** The folder that it lies in on its host, such as `/bar/tools/`. */
  prefix = "/";
  /** Headers besides those of the page's own `_headers`. @type {Record<string, string>} */
  headers = {};
  /** A careless host has another one. */
  wasmType = "application/wasm";
  /** Files that are not found. @type {Set<string>} */
  missing = new Set();
  /** Files with another content than the built one: a new version. @type {Map<string, string | Buffer>} */
  replaced = new Map();
  /** Everything that was asked for. @type {Asked[]} */
  log = [];
  /** Every port that a site of these tests ever had. @type {Set<number>} */
  static #ports = new Set();
  /** @type {import("node:http").Server | null} */
  #server = null;
  #port = 0;

  /** @param {string} folder */
  constructor(folder) {
    this.folder = folder;
  }

  get origin() {
    return `http://127.0.0.1:${this.#port}`;
  }

  /** The same files from another origin. */
  get otherOrigin() {
    return `http://localhost:${this.#port}`;
  }

  get address() {
    return this.origin + this.prefix;
  }

  /** Starts, or starts again on the port it had. @returns {Promise<void>} */
  async start() {
    const server = createServer((ask, reply) => this.#answer(ask, reply));
    await new Promise((resolve, reject) => {
      server.once("error", reject);
      server.listen(this.#port, "127.0.0.1", () => resolve(null));
    });
    const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());
    if (this.#port === 0 && Site.#ports.has(port)) {
      // Another site had it: a browser that is still open keeps things under that address.
      server.close();
      return this.start();
    }
    Site.#ports.add(port);
    this.#server = server;
    this.#port = port;
  }

  /** Gone, as when there is no network. */
  async stop() {
    const server = this.#server;
    this.#server = null;
    if (!server) return;
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
  }

  /** @param {string} path @param {string | Buffer} content */
  replace(path, content) {
    this.replaced.set(path, content);
  }

  /** @param {string} path @returns {string} */
  read(path) {
    return String(this.replaced.get(path) ?? readFileSync(join(this.folder, path)));
  }

  /** Another version of the page: the worker's own text differs, and so do the files that are given. @param {Record<string, string>} files */
  playNewVersion(files = {}) {
    for (const [path, content] of Object.entries(files)) this.replace(path, content);
    const worker = this.read("offline.js");
    const next = worker.replace(/^const VERSION = "(.*)";$/m, (_, old) => `const VERSION = "${old}-next";`);
    if (next === worker) throw new Error("offline.js has no line for its version");
    this.replace("offline.js", next);
  }

  /** A page that shows the built one in a frame. @param {number} width @param {number} height @param {string} path */
  frameAddress(width, height, path = "") {
    return `${this.address}${FRAME}?${new URLSearchParams({ width: `${width}`, height: `${height}`, path })}`;
  }

  /** @param {import("node:http").IncomingMessage} ask @param {import("node:http").ServerResponse} reply */
  #answer(ask, reply) {
    const address = new URL(ask.url ?? "/", this.origin);
    const path = this.#fileOf(address.pathname);
    const { status, head, body } = path === FRAME ? frame(address.searchParams) : this.#file(path);
    this.log.push({ method: ask.method ?? "", path: path ?? address.pathname, status, host: ask.headers.host ?? "" });
    const takesGzip = /\bgzip\b/.test(String(ask.headers["accept-encoding"]));
    const packed = takesGzip ? gzipSync(body) : null;
    const isShorter = packed !== null && packed.length < Buffer.byteLength(body);
    const how = isShorter ? { "content-encoding": "gzip" } : {};
    reply.writeHead(status, { "cache-control": "no-cache", vary: "accept-encoding", ...how, ...head });
    reply.end(isShorter ? packed : body);
  }

  /** @param {string} pathname @returns {string | null} */
  #fileOf(pathname) {
    if (!pathname.startsWith(this.prefix)) return null;
    const path = normalize(decodeURIComponent(pathname.slice(this.prefix.length)));
    if (path.startsWith("..")) return null;
    if (path === "." || path === "") return "index.html";
    return path.endsWith("/") ? `${path}index.html` : path;
  }

  /** @param {string | null} path @returns {{ status: number, head: Record<string, string>, body: string | Buffer }} */
  #file(path) {
    const content = path === null || this.missing.has(path) ? null : this.replaced.get(path) ?? read(join(this.folder, path));
    if (path === null || content === null) return { status: 404, head: { "content-type": "text/plain" }, body: "not found" };
    const type = extname(path) === ".wasm" ? this.wasmType : TYPES[extname(path)] ?? "application/octet-stream";
    return { status: 200, head: { "content-type": type, ...this.#listedHeaders(path), ...this.headers }, body: content };
  }

  /** What `_headers` lists, so that every test runs under the page's own policy. @param {string} path */
  #listedHeaders(path) {
    const asked = path === "index.html" ? ["/", "/index.html"] : [`/${path}`];
    const fits = (/** @type {string} */ rule) => asked.some((one) => rule.endsWith("*") ? one.startsWith(rule.slice(0, -1)) : one === rule);
    /** @type {Record<string, string>} */
    const found = {};
    let counts = false;
    for (const line of String(read(join(this.folder, "_headers")) ?? "").split("\n")) {
      if (!line.trim() || line.startsWith("#")) continue;
      if (!/^\s/.test(line)) counts = fits(line.trim());
      else if (counts) {
        const [name, ...value] = line.trim().split(":");
        found[String(name).toLowerCase()] = value.join(":").trim();
      }
    }
    return found;
  }
}

/** @param {URLSearchParams} wanted */
function frame(wanted) {
  const size = `width="${Number(wanted.get("width"))}" height="${Number(wanted.get("height"))}"`;
  const source = encodeURI(wanted.get("path") || "./");
  const body = `<!DOCTYPE html><title>Frame</title><style>body{margin:0}iframe{border:0}</style><iframe src="${source}" ${size}></iframe>`;
  return { status: 200, head: { "content-type": "text/html; charset=utf-8" }, body };
}

/** @param {string} path */
function read(path) {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}
