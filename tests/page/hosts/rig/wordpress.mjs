// @ts-check
/**
 * Debian's WordPress with its own theme and database, for as long as the tests run.
 *
 * Everything lies in one room: the data of a MariaDB that listens on a socket only, and a site
 * whose files are links to the package's. PHP's own server serves it on loopback. No service of
 * the system is started or changed, and the room goes with whatever runs in it.
 */

import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, readdirSync, symlinkSync } from "node:fs";
import { userInfo } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { clearRoom, freePort, openRoom, start } from "../../processes.mjs";

/** Where Debian's packages put them. */
const PACKAGE = "/usr/share/wordpress";
const DATABASE = "/usr/sbin/mariadbd";

const OWN = fileURLToPath(new URL("wordpress/", import.meta.url));

const STARTS_WITHIN_MS = 30_000;
const CALL_LIMIT_MS = 60_000;

/** The answers of PHP's server come one by one from each of these. */
const WORKERS = 3;

/** @typedef {{ title: string, content: string, by: "admin" | "author" }} Post */
/** @typedef {{ address: string, kept: string, isUnfiltered: boolean }} Published */

export class WordPress {
  #room = openRoom();
  #site = join(this.#room, "site");
  #socket = join(this.#room, "database.sock");
  #port = 0;

  static async start() {
    const blog = new WordPress();
    try {
      await blog.#startDatabase();
      await blog.#startSite();
      return blog;
    } catch (error) {
      blog.stop();
      throw error;
    }
  }

  stop() {
    clearRoom(this.#room);
  }

  get address() {
    return `http://127.0.0.1:${this.#port}/`;
  }

  get feed() {
    return `${this.address}?feed=rss2`;
  }

  /** @param {Post} post @returns {Published} */
  publish(post) {
    return JSON.parse(this.#php("publish.php", JSON.stringify(post)));
  }

  async #startDatabase() {
    const data = join(this.#room, "data");
    const user = `--user=${userInfo().username}`;
    call("mariadb-install-db", [
      "--no-defaults", `--datadir=${data}`, user, "--auth-root-authentication-method=normal", "--skip-test-db",
    ]);
    start(this.#room, DATABASE, [
      "--no-defaults", `--datadir=${data}`, user, `--socket=${this.#socket}`, `--pid-file=${this.#room}/database.pid`,
      "--skip-networking", "--skip-log-bin", "--innodb-flush-log-at-trx-commit=0",
    ]);
    await until(() => existsSync(this.#socket), "MariaDB");
  }

  async #startSite() {
    this.#port = await freePort();
    this.#link();
    this.#php("install.php");
    const args = ["-d", "opcache.enable_cli=1", "-S", `127.0.0.1:${this.#port}`, "-t", this.#site];
    start(this.#room, "php", args, { ...this.#environment(), PHP_CLI_SERVER_WORKERS: `${WORKERS}` });
    await until(() => fetch(this.address).then((answer) => answer.ok, () => false), "WordPress");
  }

  /**
   * The site's own files stand in it, so that WordPress takes the folder for its own and finds
   * our settings; everything behind them is the package's.
   */
  #link() {
    mkdirSync(join(this.#site, "wp-content/mu-plugins"), { recursive: true });
    for (const name of readdirSync(PACKAGE).filter((each) => each.endsWith(".php"))) {
      copyFileSync(join(PACKAGE, name), join(this.#site, name));
    }
    for (const folder of ["wp-admin", "wp-includes", "wp-content/themes"]) {
      symlinkSync(join(PACKAGE, folder), join(this.#site, folder));
    }
    for (const name of ["wp-config.php", "install.php", "publish.php"]) {
      copyFileSync(join(OWN, name), join(this.#site, name));
    }
    copyFileSync(join(OWN, "quiet.php"), join(this.#site, "wp-content/mu-plugins/quiet.php"));
  }

  #environment() {
    return { BLOG_SOCKET: this.#socket, BLOG_ADDRESS: this.address.replace(/\/$/, "") };
  }

  /** @param {string} script @param {string} input */
  #php(script, input = "") {
    return call("php", [join(this.#site, script)], this.#environment(), input);
  }
}

/** @param {string} program @param {string[]} args @param {Record<string, string>} env @param {string} input */
function call(program, args, env = {}, input = "") {
  const options = { env: { ...process.env, ...env }, input, timeout: CALL_LIMIT_MS, encoding: /** @type {const} */ ("utf8") };
  const { status, error, stdout, stderr } = spawnSync(program, args, options);
  if (error) throw error;
  if (status !== 0) throw new Error(`${program} ${args[0]}: ${stderr || stdout}`);
  return stdout;
}

/** @param {() => boolean | Promise<boolean>} holds @param {string} what */
async function until(holds, what) {
  const end = Date.now() + STARTS_WITHIN_MS;
  while (Date.now() < end) {
    if (await holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`${what} does not start`);
}
