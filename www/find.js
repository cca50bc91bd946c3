// @ts-check
/** How a name is found, whatever its accents and capitals. */

/** Letters that are no accented ones, but are typed without their stroke. @type {Record<string, string>} */
const PLAIN = { ı: "i", ł: "l", ø: "o", đ: "d", ß: "ss", æ: "ae", œ: "oe" };

/** Accents and capitals do not matter to a search. @param {string} text */
export const folded = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[ıłøđßæœ]/g, (letter) => PLAIN[letter]);
