// @ts-check
/** Starts each browser with its driver, as a person would have it or as a hostile place would. */

import { globSync } from "./paths.mjs";
import { clearRoom, freePort, killAll, openRoom, start } from "./processes.mjs";
import { call, Session } from "./webdriver.mjs";

const DRIVER_STARTS_WITHIN_MS = 20_000;

/** On a busy computer a browser may start too late for its driver, which then waits for ever. */
const STARTS = 3;

/** The phone that the page is made for, in CSS pixels. */
export const PHONE = { width: 360, height: 740 };

/** A window without wishes. Chromium's own is as low as a phone whose keypad is up. */
const WINDOW = { width: 1000, height: 900 };

/**
 * What a test may wish of a browser. An engine that cannot grant a wish refuses to start.
 * @typedef {object} Wishes
 * @property {boolean} [phone] a window like a phone's; only Chromium goes below 447 px
 * @property {"dark" | "light"} [scheme]
 * @property {boolean} [forcedColours]
 * @property {boolean} [lessMotion]
 * @property {string} [language] such as `de-DE`
 * @property {boolean} [noWasm] as in a hardened browser
 * @property {boolean} [storageBlocked]
 * @property {boolean} [scriptsOff]
 * @property {string} [profile] a folder that outlives the browser
 * @property {Record<string, unknown>} [prefs]
 * @property {string[]} [args]
 * @property {Record<string, string>} [env]
 */

/** @typedef {{ prefs: Record<string, unknown>, args: string[], env: Record<string, string> }} Switches */

/**
 * @typedef {object} Engine
 * @property {(port: number, other: number) => string[]} driver
 * @property {Record<string, (wish: any) => Partial<Switches>>} grants
 * @property {(switches: Switches, room: string, wishes: Wishes) => object} capabilities
 * @property {boolean} [needsDisplay]
 */

const WEBKIT_WITHOUT_WASM = { env: { JSC_useWasm: "0", JSC_useWebAssembly: "0" } };

/** @type {Record<string, Engine>} */
const ENGINES = {
  chromium: {
    driver: (port) => ["chromedriver", `--port=${port}`],
    grants: {
      phone: () => ({}),
      scheme: (scheme) => ({ args: scheme === "dark" ? ["--force-dark-mode"] : [] }),
      forcedColours: () => ({ args: ["--force-high-contrast"] }),
      lessMotion: () => ({ args: ["--force-prefers-reduced-motion"] }),
      language: (language) => ({ args: [`--accept-lang=${language}`, `--lang=${language}`] }),
      storageBlocked: () => ({ prefs: { "profile.default_content_setting_values.cookies": 2 } }),
      scriptsOff: () => ({ prefs: { "profile.managed_default_content_settings.javascript": 2 } }),
      profile: () => ({}),
    },
    capabilities: ({ prefs, args }, room, { phone, profile }) => ({
      browserName: "chrome",
      "goog:chromeOptions": {
        binary: "/usr/bin/chromium",
        prefs,
        args: [
          "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
          "--disable-background-networking", "--disable-component-update", "--disable-sync",
          `--window-size=${WINDOW.width},${WINDOW.height}`,
          `--user-data-dir=${profile ?? `${room}/profile`}`, ...args,
        ],
        ...(phone && { mobileEmulation: { deviceMetrics: { ...PHONE, pixelRatio: 2, touch: true } } }),
      },
    }),
  },

  firefox: {
    driver: (port, other) => ["geckodriver", `--port=${port}`, `--websocket-port=${other}`],
    grants: {
      phone: () => ({}),
      scheme: (scheme) => ({ prefs: { "layout.css.prefers-color-scheme.content-override": scheme === "dark" ? 0 : 1 } }),
      forcedColours: () => ({ prefs: { "browser.display.document_color_use": 2 } }),
      lessMotion: () => ({ prefs: { "ui.prefersReducedMotion": 1 } }),
      language: (language) => ({ prefs: { "intl.accept_languages": language } }),
      noWasm: () => ({ prefs: { "javascript.options.wasm": false } }),
      storageBlocked: () => ({ prefs: { "network.cookie.cookieBehavior": 2 } }),
      profile: (folder) => ({ args: ["-profile", folder] }),
    },
    capabilities: ({ prefs, args }) => ({
      browserName: "firefox",
      "moz:firefoxOptions": {
        binary: "/usr/bin/firefox-esr",
        // The driver relaxes how files may load each other; a person's browser does not.
        prefs: { "security.fileuri.strict_origin_policy": true, ...prefs },
        args: ["-headless", ...args],
      },
    }),
  },

  webkitgtk: {
    driver: (port) => ["WebKitWebDriver", `--port=${port}`],
    needsDisplay: true,
    grants: {
      phone: () => ({}),
      scheme: (scheme) => ({ env: { GTK_THEME: scheme === "dark" ? "Adwaita:dark" : "Adwaita" } }),
      noWasm: () => WEBKIT_WITHOUT_WASM,
    },
    capabilities: ({ args }) => ({
      browserName: "MiniBrowser",
      "webkitgtk:browserOptions": {
        binary: newest("/usr/lib/*/webkit2gtk-4.?/MiniBrowser"),
        args: ["--automation", ...args],
      },
    }),
  },

  wpe: {
    driver: (port) => ["WPEWebDriver", `--port=${port}`],
    grants: {
      noWasm: () => WEBKIT_WITHOUT_WASM,
    },
    capabilities: ({ args }) => ({
      browserName: "MiniBrowser",
      "wpe:browserOptions": {
        binary: newest("/usr/lib/*/wpe-webkit-1.?/MiniBrowser"),
        args: ["--headless", "--automation", ...args],
      },
    }),
  },
};

/** Every engine, or the ones that `ENGINE=firefox,wpe` names. */
export const engines = process.env.ENGINE?.split(",") ?? Object.keys(ENGINES);

/** @param {string} name @param {Wishes} wishes @returns {Promise<Browser>} */
export async function startEngine(name, wishes = {}) {
  const engine = ENGINES[name];
  if (!engine) throw new Error(`there is no engine ${name}`);
  const switches = granted(name, engine, wishes);
  /** @type {unknown} */
  let last;
  for (let count = 0; count < STARTS; count += 1) {
    try {
      return await startOnce(name, engine, switches, wishes);
    } catch (error) {
      last = error;
    }
  }
  throw new Error(`${name} did not start ${STARTS} times; last: ${last}`);
}

/** @param {string} name @param {Engine} engine @param {Switches} switches @param {Wishes} wishes */
async function startOnce(name, engine, switches, wishes) {
  const room = openRoom();
  try {
    const display = engine.needsDisplay ? await startDisplay(room) : {};
    const driver = await startDriver(engine, room, { ...display, ...switches.env });
    const session = await Session.open(driver, engine.capabilities(switches, room, wishes), name);
    if (wishes.phone && name !== "chromium") await session.resize(PHONE.width, PHONE.height);
    return new Browser(session, room);
  } catch (error) {
    clearRoom(room);
    throw error;
  }
}

/** A running browser. */
export class Browser {
  #room;

  /** @param {Session} session @param {string} room */
  constructor(session, room) {
    this.session = session;
    this.#room = room;
  }

  /** Closes it as a person does, so that it writes its profile; then clears up. */
  async stop() {
    await this.session.end().catch(() => {});
    clearRoom(this.#room);
  }

  /** Ends it without a chance to write anything. */
  crash() {
    killAll(this.#room);
    clearRoom(this.#room);
  }
}

/** @param {string} name @param {Engine} engine @param {Wishes} wishes @returns {Switches} */
function granted(name, engine, wishes) {
  const { prefs = {}, args = [], env = {}, ...named } = wishes;
  const all = { prefs: { ...prefs }, args: [...args], env: { ...env } };
  for (const [wish, value] of Object.entries(named)) {
    if (value === undefined || value === false) continue;
    const grant = engine.grants[wish];
    if (!grant) throw new Error(`${name} cannot grant \`${wish}\``);
    const more = grant(value);
    Object.assign(all.prefs, more.prefs);
    Object.assign(all.env, more.env);
    all.args.push(...(more.args ?? []));
  }
  return all;
}

/** @param {Engine} engine @param {string} room @param {Record<string, string>} env */
async function startDriver(engine, room, env) {
  const port = await freePort();
  const [program, ...args] = engine.driver(port, await freePort());
  const child = start(room, String(program), args, env);
  const address = `http://127.0.0.1:${port}`;
  const end = Date.now() + DRIVER_STARTS_WITHIN_MS;
  while (Date.now() < end && child.exitCode === null) {
    if (await call("GET", `${address}/status`, null, 1000).catch(() => null)) return address;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`${program} does not answer`);
}

/** WebKitGTK draws to a screen even when nobody looks. @param {string} room */
async function startDisplay(room) {
  // Without `-noreset` it starts anew whenever its last window closes, which a browser may not survive.
  const args = ["-displayfd", "1", "-noreset", "-screen", "0", "1280x1024x24", "-nolisten", "tcp"];
  const child = start(room, "Xvfb", args, {}, "pipe");
  const number = await new Promise((resolve, reject) => {
    let written = "";
    // It writes the number and the end of the line apart, and dies when nobody reads the second.
    child.stdout?.on("data", (data) => {
      written += data;
      if (written.endsWith("\n")) resolve(written.trim());
    });
    child.once("exit", () => reject(new Error("Xvfb found no free display")));
  });
  child.stdout?.destroy();
  return { DISPLAY: `:${number}` };
}

/** @param {string} pattern */
function newest(pattern) {
  const found = globSync(pattern).sort().pop();
  if (!found) throw new Error(`nothing is at ${pattern}`);
  return found;
}
