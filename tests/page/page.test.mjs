// @ts-check
/** Plays every scenario of the folder `scenarios` on the built page. */

import { playFolder } from "./scenarios.mjs";

await playFolder(new URL("scenarios/", import.meta.url));
