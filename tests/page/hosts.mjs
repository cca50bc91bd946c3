// @ts-check
/** Plays every scenario of the folder `hosts`: the built page embedded in pages of others. */

import { playFolder } from "./scenarios.mjs";

await playFolder(new URL("hosts/", import.meta.url));
