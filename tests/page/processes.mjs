// @ts-check
/**
 * Starts drivers and makes sure that nothing they started outlives a test.
 *
 * A browser leaves its driver's process group, and its parts leave the browser's, so a group or
 * a parent is not enough to find them all. Each start therefore has a room of its own: a folder
 * whose path stands in the environment of every process that descends from it.
 */

import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const ROOM = "FARTHING_TEST_ROOM";

/** @type {Set<string>} */
const rooms = new Set();

process.on("exit", () => rooms.forEach(clearRoom));
for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"])) {
  process.on(signal, () => process.exit(1));
}

/** A fresh folder for one browser and its driver. */
export function openRoom() {
  const room = mkdtempSync(join(tmpdir(), "farthing-page-"));
  rooms.add(room);
  return room;
}

/**
 * @param {string} room @param {string} program @param {string[]} args @param {Record<string, string>} env
 * @param {"ignore" | "pipe"} output
 */
export function start(room, program, args, env = {}, output = "ignore") {
  const child = spawn(program, args, {
    detached: true,
    env: { ...process.env, HOME: room, XDG_RUNTIME_DIR: room, ...env, [ROOM]: room },
    stdio: ["ignore", output, process.env.SHOW_DRIVERS ? "inherit" : "ignore"],
  });
  child.on("error", (error) => {
    throw new Error(`${program} does not start: ${error.message}`);
  });
  // A forgotten driver must not keep the tests from ending; the exit clears its room.
  child.unref();
  return child;
}

/** Kills everything that was started in a room, then removes it. @param {string} room */
export function clearRoom(room) {
  killAll(room);
  rooms.delete(room);
  rmSync(room, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 });
}

/** Ends every process of a room at once, as a dead battery would. @param {string} room */
export function killAll(room) {
  const ids = new Set([...withMark(`${ROOM}=${room}`)]);
  for (const id of [...ids]) descendants(id).forEach((child) => ids.add(child));
  for (const id of ids) kill(id);
}

/** @returns {Promise<number>} a port that nobody listens on */
export function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());
      server.close(() => resolve(port));
    });
  });
}

const processIds = () => readdirSync("/proc").filter((name) => /^\d+$/.test(name)).map(Number);

/** @param {string} mark */
function* withMark(mark) {
  for (const id of processIds()) {
    if (read(`/proc/${id}/environ`).split("\0").includes(mark)) yield id;
  }
}

/** @param {number} parent @returns {number[]} */
function descendants(parent) {
  const children = processIds().filter((id) => parentOf(id) === parent);
  return [...children, ...children.flatMap(descendants)];
}

/** The parent's number is the second field after the name, which may hold any character. @param {number} id */
const parentOf = (id) => Number(read(`/proc/${id}/stat`).split(")").pop()?.trim().split(" ")[1]);

/** A process may be gone between two looks. @param {string} path */
function read(path) {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
}

/** @param {number} id */
function kill(id) {
  try {
    process.kill(id, "SIGKILL");
  } catch {
    // It is gone already.
  }
}
