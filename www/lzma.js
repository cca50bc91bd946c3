// @ts-check
/**
 * Unpacks what was packed by LZMA, in the form of a `.lzma` file that tells its length, after the
 * LZMA specification (I. Pavlov, 2015, public domain), whose names stand in brackets.
 *
 * A bit is told by where a code lies in a range: below a bound it is 0, else 1. The bound lies as
 * high as 0 was likely, in 2048ths, and each bit corrects how likely it was. Nothing is checked:
 * who unpacks knows by a checksum that this is what was packed.
 */

const LIKELY_OF = 2048;
const LEARNS_BITS = 5;
/** A range that is narrower takes in another byte. */
const NARROW = 1 << 24;

/** What came before, as far as it makes the next likely: 7 states after a byte, 5 after a match. */
const AFTER_BYTE = 7;
const STATES = 12;
/** Places that differ by these bits may differ in what is likely there (pos_state). */
const MOST_PLACES = 16;

const SHORTEST_MATCH = 2;
/** Distances are told by one of 64 slots; from slot 14 on, all bits but the last four are as likely 0 as 1. */
const LENGTHS_WITH_OWN_SLOTS = 4;
const SLOT_BITS = 6;
const FIRST_EVEN_SLOT = 14;
const LOW_BITS = 4;

const HEADER_BYTES = 13;
const LENGTH_AT = 5;

/** @param {number} count */
const likelies = (count) => new Uint16Array(count).fill(LIKELY_OF / 2);

/** @param {Uint8Array} packed @returns {Uint8Array} */
export function unpacked(packed) {
  const literalBits = packed[0] % 9;
  const literalPlaceBits = Math.floor(packed[0] / 9) % 5;
  const placeBits = Math.floor(packed[0] / 45);
  const header = new DataView(packed.buffer, packed.byteOffset);
  const out = new Uint8Array(header.getUint32(LENGTH_AT, true));
  // The first byte of the code is always 0.
  let code = header.getUint32(HEADER_BYTES + 1);
  let range = 0xffffffff;
  let from = HEADER_BYTES + 5;

  function widen() {
    if (range >= NARROW) return;
    range *= 256;
    code = code * 256 + packed[from++];
  }

  /** @param {Uint16Array} likely @param {number} at @returns {number} */
  function bit(likely, at) {
    const bound = (range >>> 11) * likely[at];
    const is = code < bound ? 0 : 1;
    if (is) {
      range -= bound;
      code -= bound;
      likely[at] -= likely[at] >> LEARNS_BITS;
    } else {
      range = bound;
      likely[at] += (LIKELY_OF - likely[at]) >> LEARNS_BITS;
    }
    widen();
    return is;
  }

  /** Bits that are as likely 0 as 1. @param {number} count */
  function evenBits(count) {
    let value = 0;
    for (; count > 0; count -= 1) {
      range >>>= 1;
      const is = code < range ? 0 : 1;
      if (is) code -= range;
      value = value * 2 + is;
      widen();
    }
    return value;
  }

  /** Bits from the highest down, each as likely as after those before it. @param {Uint16Array} likely @param {number} count */
  function tree(likely, count) {
    let node = 1;
    for (let i = 0; i < count; i += 1) node = node * 2 + bit(likely, node);
    return node - (1 << count);
  }

  /** The same from the lowest up. @param {Uint16Array} likely @param {number} count */
  function upwards(likely, count) {
    let node = 1;
    let value = 0;
    for (let i = 0; i < count; i += 1) {
      const is = bit(likely, node);
      node = node * 2 + is;
      value += is << i;
    }
    return value;
  }

  function lengths() {
    const choice = likelies(2);
    const low = Array.from({ length: MOST_PLACES }, () => likelies(8));
    const middle = Array.from({ length: MOST_PLACES }, () => likelies(8));
    const high = likelies(256);
    return (/** @type {number} */ place) => {
      if (!bit(choice, 0)) return tree(low[place], 3);
      return bit(choice, 1) ? 16 + tree(high, 8) : 8 + tree(middle[place], 3);
    };
  }

  const literals = Array.from({ length: 1 << (literalBits + literalPlaceBits) }, () => likelies(0x300));
  const isMatch = likelies(STATES * MOST_PLACES);
  const isRepeat = likelies(STATES);
  const isOtherThanLast = likelies(STATES);
  const isLong = likelies(STATES * MOST_PLACES);
  const isThirdOrFourth = likelies(STATES);
  const isFourth = likelies(STATES);
  const slots = Array.from({ length: LENGTHS_WITH_OWN_SLOTS }, () => likelies(1 << SLOT_BITS));
  const near = Array.from({ length: FIRST_EVEN_SLOT }, () => likelies(32));
  const far = likelies(1 << LOW_BITS);
  const matchLength = lengths();
  const repeatLength = lengths();

  /** How far back each of the last four matches lay, the last one first (rep0 to rep3). */
  let distances = [1, 1, 1, 1];
  let state = 0;
  let at = 0;

  function literal() {
    const before = (out[at - 1] ?? 0) >> (8 - literalBits);
    const likely = literals[((at & ((1 << literalPlaceBits) - 1)) << literalBits) + before];
    let node = 1;
    if (state >= AFTER_BYTE) {
      // Where a match ended, the byte differs from the one that would have gone on with it.
      let expected = out[at - distances[0]];
      let wanted = 0;
      let is = 0;
      do {
        wanted = (expected >> 7) & 1;
        expected <<= 1;
        is = bit(likely, ((1 + wanted) << 8) + node);
        node = node * 2 + is;
      } while (is === wanted && node < 0x100);
    }
    while (node < 0x100) node = node * 2 + bit(likely, node);
    out[at++] = node;
    state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
  }

  /** @param {number} length */
  function distance(length) {
    const slot = tree(slots[Math.min(length, LENGTHS_WITH_OWN_SLOTS - 1)], SLOT_BITS);
    if (slot < 4) return slot + 1;
    const bits = (slot >> 1) - 1;
    const start = (2 + (slot & 1)) * 2 ** bits;
    if (slot < FIRST_EVEN_SLOT) return start + upwards(near[slot], bits) + 1;
    return start + evenBits(bits - LOW_BITS) * (1 << LOW_BITS) + upwards(far, LOW_BITS) + 1;
  }

  /** @param {number} place @returns {number} how much of what lies the first distance back comes next */
  function match(place) {
    const afterByte = state < AFTER_BYTE;
    if (!bit(isRepeat, state)) {
      const length = matchLength(place);
      distances = [distance(length), ...distances.slice(0, 3)];
      state = afterByte ? 7 : 10;
      return length + SHORTEST_MATCH;
    }
    if (bit(isOtherThanLast, state)) {
      const which = bit(isThirdOrFourth, state) ? 2 + bit(isFourth, state) : 1;
      distances.unshift(...distances.splice(which, 1));
    } else if (!bit(isLong, state * MOST_PLACES + place)) {
      state = afterByte ? 9 : 11;
      return 1;
    }
    const length = repeatLength(place);
    state = afterByte ? 8 : 11;
    return length + SHORTEST_MATCH;
  }

  while (at < out.length) {
    const place = at & ((1 << placeBits) - 1);
    if (!bit(isMatch, state * MOST_PLACES + place)) literal();
    else for (let left = match(place); left > 0; left -= 1, at += 1) out[at] = out[at - distances[0]];
  }
  return out;
}
