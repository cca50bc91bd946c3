// @ts-check
/**
 * Bytes that were written as characters, so that they can stand in a page: two in each character of
 * UTF-16, the lower one first. Characters that a browser, an editor or a mail program might change
 * stand after a mark, moved to where none of them is.
 */

const MARK = 0x21;
const MOVED_BY = 0x5000;
/** Nothing below is written but the mark: line ends and spaces that came in on the way mean nothing. */
const FIRST_WRITTEN = 0xa0;

/** The polynomial of CRC-32, from the lowest bit up. */
const CHECK = 0xedb88320;

/** @param {string} text @returns {Uint8Array} */
export function bytesOf(text) {
  const pairs = new Uint16Array(text.length);
  let count = 0;
  for (let at = 0; at < text.length; at += 1) {
    const character = text.charCodeAt(at);
    if (character === MARK) pairs[count++] = text.charCodeAt((at += 1)) - MOVED_BY;
    else if (character >= FIRST_WRITTEN) pairs[count++] = character;
  }
  const bytes = new Uint8Array(count * 2);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < count; at += 1) view.setUint16(at * 2, pairs[at], true);
  return bytes;
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
