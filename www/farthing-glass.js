// @ts-check
/** The script that a page names for its glasses. A second copy of it, of whatever version, changes nothing. */

import { FarthingGlass } from "./glass-element.js";

const NAME = "farthing-glass";
if (!customElements.get(NAME)) customElements.define(NAME, FarthingGlass);
