// @ts-check
/**
 * A client for the W3C WebDriver protocol, as small as these tests need it.
 *
 * Every call has a time limit: a driver that lost its browser would otherwise never answer.
 */

const CALL_LIMIT_MS = 40_000;
const START_LIMIT_MS = 25_000;
const SCRIPT_LIMIT_MS = 30_000;
/** A page answers at once; a machine that plays two engines and serves their sites may not. */
const WAITS_MS = 20_000;
const POLL_MS = 50;

/** The name under which the protocol hands out elements. */
const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

/** The protocol's characters for keys that write nothing. */
export const KEYS = {
  backspace: "\uE003",
  tab: "\uE004",
  enter: "\uE007",
  shift: "\uE008",
  control: "\uE009",
  escape: "\uE00C",
  space: " ",
  end: "\uE010",
  home: "\uE011",
  left: "\uE012",
  up: "\uE013",
  right: "\uE014",
  down: "\uE015",
  delete: "\uE017",
};

/** @param {string} method @param {string} address @param {unknown} [body] @returns {Promise<any>} */
export async function call(method, address, body, limit_ms = CALL_LIMIT_MS) {
  const { value } = await ask(method, address, body, limit_ms).catch((error) => {
    throw new Error(`the driver did not answer ${method} ${new URL(address).pathname}: ${error.message}`);
  });
  if (value?.error) throw new Error(`${value.error}: ${value.message}`);
  return value;
}

/** @param {string} method @param {string} address @param {unknown} body @param {number} limit_ms @returns {Promise<any>} */
async function ask(method, address, body, limit_ms) {
  const answer = await fetch(address, {
    method,
    headers: { "content-type": "application/json" },
    body: method === "POST" ? JSON.stringify(body ?? {}) : undefined,
    signal: AbortSignal.timeout(limit_ms),
  });
  return answer.json();
}

/** One browser, as its driver shows it. */
export class Session {
  #address;

  /** @param {string} address of the session at its driver @param {string} engine */
  constructor(address, engine) {
    this.#address = address;
    this.engine = engine;
  }

  /** @param {string} driver @param {object} capabilities @param {string} engine */
  static async open(driver, capabilities, engine) {
    const wanted = { capabilities: { alwaysMatch: capabilities } };
    const { sessionId } = await call("POST", `${driver}/session`, wanted, START_LIMIT_MS);
    const session = new Session(`${driver}/session/${sessionId}`, engine);
    await session.#post("/timeouts", { script: SCRIPT_LIMIT_MS, pageLoad: SCRIPT_LIMIT_MS, implicit: 0 });
    return session;
  }

  #get = (/** @type {string} */ path) => call("GET", this.#address + path);
  #post = (/** @type {string} */ path, /** @type {object} */ body = {}) => call("POST", this.#address + path, body);

  // Pages

  /** @param {string} url */
  go = (url) => this.#post("/url", { url });
  address = () => this.#get("/url");
  title = () => this.#get("/title");
  back = () => this.#post("/back");

  /** The driver's own refresh. In Firefox it passes the offline worker by; see `reload`. */
  refresh = () => this.#post("/refresh");

  /** Reloads as a person does, through the offline worker. */
  async reload() {
    await this.run(() => {
      Object.assign(window, { isOldPage: true });
      setTimeout(() => location.reload(), 0);
    });
    await this.waitFor(() => !("isOldPage" in window) && document.readyState === "complete", "the page to load again");
  }

  end = () => call("DELETE", this.#address);

  // Scripts

  /** Runs a function in the page; it sees nothing of this file. @param {Function | string} script @param {unknown[]} args */
  run(script, ...args) {
    const body = typeof script === "string" ? script : `return (${script}).apply(null, arguments)`;
    return this.#post("/execute/sync", { script: body, args });
  }

  /** Runs a function in the page and waits for its promise. @param {Function} script @param {unknown[]} args */
  async runAsync(script, ...args) {
    const body = `
      const all = Array.from(arguments), done = all.pop();
      Promise.resolve().then(() => (${script}).apply(null, all)).then(
        (value) => done({ value: value === undefined ? null : value }),
        (error) => done({ error: String(error && error.stack || error) }));`;
    const reply = await this.#post("/execute/async", { script: body, args });
    if (reply.error) throw new Error(`in the page: ${reply.error}`);
    return reply.value;
  }

  /**
   * Waits until a function in the page returns something true, and returns that.
   * @param {Function} script @param {string} what for the message @param {unknown[]} args
   */
  async waitFor(script, what, ...args) {
    const end = Date.now() + WAITS_MS;
    let last = "";
    while (Date.now() < end) {
      // A page that is just being replaced cannot run anything; the next one can.
      const value = await this.run(script, ...args).catch((error) => void (last = String(error)));
      if (value) return value;
      await new Promise((resolve) => setTimeout(resolve, POLL_MS));
    }
    throw new Error(`waited in vain for ${what}${last && `; last: ${last}`}`);
  }

  // Elements, by CSS selector

  /** @param {string} css @returns {Promise<string>} */
  async find(css) {
    return (await this.#post("/element", { using: "css selector", value: css }))[ELEMENT];
  }

  /** @param {string} css @returns {Promise<string[]>} */
  async findAll(css) {
    const found = await this.#post("/elements", { using: "css selector", value: css });
    return found.map((/** @type {any} */ element) => element[ELEMENT]);
  }

  /** @param {string} css */
  click = async (css) => this.#post(`/element/${await this.find(css)}/click`);
  /** @param {string} css */
  clear = async (css) => this.#post(`/element/${await this.find(css)}/clear`);
  /** Types at the end of a field, key by key. @param {string} css @param {string} text */
  type = async (css, text) => this.#post(`/element/${await this.find(css)}/value`, { text });
  /** The text as a person sees it. @param {string} css */
  text = async (css) => this.#get(`/element/${await this.find(css)}/text`);
  /** What a field holds. @param {string} css */
  value = async (css) => this.#get(`/element/${await this.find(css)}/property/value`);
  /** What assistive technology calls it; WPE's driver does not know. @param {string} css */
  label = async (css) => this.#get(`/element/${await this.find(css)}/computedlabel`);
  /** What assistive technology takes it for; WPE's driver does not know. @param {string} css */
  role = async (css) => this.#get(`/element/${await this.find(css)}/computedrole`);
  /** An element as a script's argument. @param {string} css */
  element = async (css) => ({ [ELEMENT]: await this.find(css) });

  // Keys and pointers

  /** Presses keys one after another where the focus is. @param {string[]} keys */
  press(...keys) {
    const actions = keys.flatMap((value) => [{ type: "keyDown", value }, { type: "keyUp", value }]);
    return this.#post("/actions", { actions: [{ type: "key", id: "keys", actions }] });
  }

  /** Holds one key while another is pressed. @param {string} held @param {string} value */
  pressWith(held, value) {
    const actions = [
      { type: "keyDown", value: held }, { type: "keyDown", value },
      { type: "keyUp", value }, { type: "keyUp", value: held },
    ];
    return this.#post("/actions", { actions: [{ type: "key", id: "keys", actions }] });
  }

  /** @param {object[]} actions as the protocol describes them */
  act = (actions) => this.#post("/actions", { actions });

  // Windows and frames

  windows = () => this.#get("/window/handles");
  window = () => this.#get("/window");
  /** Opens a tab and returns its handle; the session stays where it was. @returns {Promise<string>} */
  openWindow = async () => (await this.#post("/window/new", { type: "tab" })).handle;
  /** @param {string} handle */
  switchTo = (handle) => this.#post("/window", { handle });
  closeWindow = () => call("DELETE", `${this.#address}/window`);
  /** @param {string} css */
  enterFrame = async (css) => this.#post("/frame", { id: await this.element(css) });
  leaveFrame = () => this.#post("/frame", { id: null });
  rect = () => this.#get("/window/rect");
  /** @param {number} width @param {number} height */
  resize = (width, height) => this.#post("/window/rect", { width, height });

  // Pictures

  /** @returns {Promise<Buffer>} a PNG */
  screenshot = async () => Buffer.from(await this.#get("/screenshot"), "base64");
  /** Chromium and Firefox only. @returns {Promise<Buffer>} a PDF */
  print = async () => Buffer.from(await this.#post("/print"), "base64");

  /** A command of Chromium's own protocol. @param {string} cmd @param {object} params */
  cdp(cmd, params = {}) {
    if (this.engine !== "chromium") throw new Error(`${this.engine} has no such protocol: ${cmd}`);
    return this.#post("/goog/cdp/execute", { cmd, params });
  }
}
