// @ts-check
/** What the build packed into one file comes out again as it was, and its policy knows it. */

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { builtPage, pageSource } from "./paths.mjs";

/** Modules of the page; node takes a file without a package for another kind of module. @param {string} file */
const module = (file) => import(`data:text/javascript;base64,${readFileSync(join(pageSource, file)).toString("base64")}`);
const { unpacked } = await module("lzma.js");
const { bytesOf, checksum } = await module("packed.js");

const file = readFileSync(join(builtPage, "one-file.html")).toString("utf16le");
const [, check, lengths, characters] = /** @type {string[]} */ (/data-check="(\d+)" data-lengths="([\d ]+)">([^<]*)<\/script>/.exec(file));

/** @param {string | Uint8Array} text */
const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

/** Every part as it comes out: the style, the scripts, the core. @returns {Uint8Array[]} */
function parts() {
  const everything = unpacked(bytesOf(characters));
  let from = 0;
  return String(lengths).split(" ").map((length) => everything.subarray(from, (from += Number(length))));
}

test("the parts come out as they went in, and the policy names them and nothing else", () => {
  assert.equal(checksum(bytesOf(characters)), Number(check));
  const [style, script, core] = /** @type {[Uint8Array, Uint8Array, Uint8Array]} */ (parts());
  const styles = ["page.css", "more.css"].map((name) => readFileSync(join(builtPage, name)));
  assert.ok(Buffer.from(style).equals(Buffer.concat(styles)));
  assert.ok(WebAssembly.validate(Buffer.from(core)));
  const [, unpacker] = /** @type {string[]} */ (/<script type="module">(.*?)<\/script>/s.exec(file));
  const policy = String(/Content-Security-Policy" content="([^"]*)"/.exec(file)?.[1]);
  assert.ok(policy.includes(`; script-src ${hash(String(unpacker))} ${hash(script)} 'wasm-unsafe-eval'; style-src ${hash(style)}; `));
  assert.ok(policy.startsWith("default-src 'none'; ") && policy.includes("; connect-src 'none'; "));
});

test("what comes in between on the way means nothing, and what is changed is noticed", () => {
  const text = String(characters);
  const spaced = text.replace(/([\u4e00-\u9fff]{2})/g, "$1\r\n ");
  assert.equal(checksum(bytesOf(spaced)), Number(check));
  assert.notEqual(spaced, text);
  for (const changed of [text.slice(1), text.slice(0, -1), text + text.at(-1), text.replace(/[\u4e00-\u9fff]/, "\ufffd")]) {
    assert.notEqual(checksum(bytesOf(changed)), Number(check));
  }
  assert.equal(checksum(new TextEncoder().encode("123456789")), 0xcbf43926);
});
