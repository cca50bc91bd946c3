// @ts-check
/**
 * Bytes that were written as characters, so that they can stand in a page: two in each character of
 * UTF-16, the lower one first. A character that a browser, an editor or a mail program might change is
 * barred: another stands in for it. That one may mean itself too, so a bit tells; a character behind the
 * first of fifteen such tells of them all.
 */

const STAND_IN = 0x8000;
const THEMSELVES = 0x3000;
const TOLD_AT_ONCE = 15;

/** @param {number} character */
const isBarred = (character) =>
  character < 0xa0 || (character >= 0x2000 && character < 0x2070) || (character >= 0xd800 && character < 0xe000) || character >= 0xfdd0;

/** The polynomial of CRC-32, from the lowest bit up. */
const CHECK = 0xedb88320;

/** Line ends and spaces that came in on the way mean nothing. @param {string} text @returns {Uint8Array} */
export function bytesOf(text) {
  const characters = text.replace(/[\0-\x9f]/g, "");
  const view = new DataView(new ArrayBuffer(characters.length * 2));
  let count = 0;
  let bits = 0;
  let left = 0;
  for (let at = 0; at < characters.length; at += 1) {
    let character = characters.charCodeAt(at);
    if (isBarred(character ^ STAND_IN)) {
      if (left === 0) {
        bits = characters.charCodeAt((at += 1)) - THEMSELVES;
        left = TOLD_AT_ONCE;
      }
      if (bits & 1) character ^= STAND_IN;
      bits >>= 1;
      left -= 1;
    }
    view.setUint16(count, character, true);
    count += 2;
  }
  return new Uint8Array(view.buffer, 0, count);
}

/** The CRC-32 of bytes: it differs when any one of them does. @param {Uint8Array} bytes @returns {number} */
export function checksum(bytes) {
  let check = ~0;
  for (const byte of bytes) {
    check ^= byte;
    for (let bit = 0; bit < 8; bit += 1) check = (check >>> 1) ^ (check & 1 ? CHECK : 0);
  }
  return ~check >>> 0;
}
