// @ts-check
/** A glass is sent in a link, and a link that was sent is opened. */
import assert from "node:assert/strict";
import { gzipSync } from "node:zlib";
import { asOnPaper, uselessOnPaper } from "../look/print.mjs";
import { faults, listensForFaults } from "./page/early.mjs";
import { answered, becomes, begun, blank, fill, GLASS_NAME, noted, openPlace, openRow, pick, says, settled, tap, textOf, texts, TOTAL } from "./page/places.mjs";
import { BITTERS, bottle, bottleKey, house, HOUSE_KEY, line, LOCK_GATE, openWith, RYE, SODA, spec, specKey, stored, storedRecord } from "./page/records.mjs";
import { openLink, openSend, SENT, SENT_WITHOUT } from "./page/states.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const SHELF = { bottles: [RYE, BITTERS, SODA], specs: [LOCK_GATE] };
const GOES = ".send select[aria-label='Whether its prices go along']";
const AS_TEXT = ".send textarea[aria-label='As text']";
const AS_RECIPE = ".send textarea[aria-label='As recipe data']";
const QUESTION = "main > .over.sent";
const WHICH = ".sent .offer select";

/** Which lines, what it costs, and what is said of that. @param {Session} session */
const told = async (session) => [...await texts(session, ".sent .row"), ...await texts(session, ".sent :is(.finding, .small p)")];

/** Everything that is kept, but for what is being typed. @param {Session} session */
const shelf = async (session) => Object.fromEntries(Object.entries(await stored(session)).filter(([key]) => key !== "farthing:draft"));

/** @param {Session} session */
const address = (session) => session.run(() => location.pathname + location.hash);

/** Where a link is opened with nothing before it. @param {Session} session @param {string} link */
async function follow(session, link) {
  await session.go("about:blank");
  await session.go(link);
  await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "what was sent", QUESTION);
}

/** A fragment as another program would pack it: without the pieces that make it shorter. @param {object} sent */
function packed(sent) {
  const text = Buffer.from(JSON.stringify(sent));
  // Gzip has the same check near its end, its lowest byte first.
  const check = gzipSync(text).subarray(-8, -4).reverse();
  return `#glass=1.${Buffer.concat([text, check]).toString("base64url")}`;
}

/** What anybody can read in a link. @param {string} link */
const readable = (link) => Buffer.from(String(link.split("#glass=1.")[1]), "base64url").toString("latin1");

/** @param {object} changes */
const glass = (changes) => ({ format: 3, has_prices: true, house: { currency: "GBP", decimal_mark: ".", kitchen: "uk" }, bottles: [RYE, BITTERS], spec: LOCK_GATE, ...changes });

/** Puts something in the place of what a browser has, and remembers what it was given. @param {Session} session @param {"shares" | "copies" | "aborts" | "refuses"} how */
const stub = (session, how) => session.run((/** @type {string} */ way) => {
  const given = /** @type {any[]} */ ([]);
  Object.assign(window, { given });
  const share = async (/** @type {any} */ data) => {
    given.push(data);
    if (way === "aborts") throw new DOMException("shut", "AbortError");
    if (way === "refuses") throw new DOMException("no", "NotAllowedError");
  };
  const writeText = async (/** @type {string} */ text) => {
    if (way === "refuses") throw new DOMException("no", "NotAllowedError");
    given.push(text);
  };
  Object.defineProperty(navigator, "share", { configurable: true, value: way === "copies" ? undefined : share });
  Object.defineProperty(navigator, "clipboard", { configurable: true, value: { writeText } });
}, how);

/** @param {Session} session @returns {Promise<any[]>} */
const given = (session) => session.run(() => /** @type {any} */ (window).given);

/** The link of the glass at hand. @param {Session} session @returns {Promise<string>} */
async function copyLink(session) {
  await stub(session, "copies");
  await openSend(session);
  await tap(session, "Copy the link", ".send");
  await noted(session, "Copied.");
  return (await given(session))[0];
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a link that is made in one browser opens in another that was never here, and stands on its shelf",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      const link = await copyLink(session);
      assert.ok(link.startsWith(`${site.address}#glass=1.`) && link.length < 400, `${link.length} characters`);
      // Of the shelf, this glass is in it and nothing else.
      assert.match(readable(link), /rye whisky.*31\.40.*orange bitters.*18\.50.*Lock Gate/s);
      assert.doesNotMatch(readable(link), /soda/);
      await follow(session, link.replace(site.origin, site.otherOrigin));
      await becomes(() => texts(session, ".sent .row"), ["50 ml of rye whisky£2.24", "2 dashes of orange bitters34p"]);
      await becomes(() => textOf(session, ".sent .finding"), "It costs £2.58, between £2.30 and £2.70.");
      await tap(session, "Put it on my shelf", ".sent");
      await noted(session, "Lock Gate is on the shelf.");
      await becomes(() => texts(session, ".shelf .row .what"), ["Lock Gate", "orange bitters", "rye whisky"]);
      assert.equal((await storedRecord(session, bottleKey(RYE))).record.paid.price, "31.40");
      await session.reload();
      await begun(session);
      await openPlace(session, "glass");
      await says(session, TOTAL, "£2.58");
    },
  },
  {
    name: "a link asks before it touches anything, and once: left alone, it leaves nothing",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await openPlace(session, "glass");
      const [before, place] = [await shelf(session), await address(session)];
      await openLink(session, SENT);
      await becomes(() => texts(session, ".sent .name"), ["Towpath Sour"]);
      await session.reload();
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the question again", QUESTION);
      assert.deepEqual(await shelf(session), before);
      await tap(session, "Leave it", ".sent");
      await session.waitFor(() => !document.querySelector(".sent"), "the question to go");
      assert.equal(new URL(await address(session), site.address).hash, "");
      await session.reload();
      await begun(session);
      assert.equal(await session.run(() => document.querySelector(".sent")), null);
      assert.deepEqual(await shelf(session), before);
      assert.ok(place.endsWith("#glass"));
    },
  },
  {
    name: "Back leaves what was sent, and a second link takes the place of the first",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await openPlace(session, "glass");
      const place = await address(session);
      const before = await shelf(session);
      await openLink(session, SENT);
      await openLink(session, packed(glass({})));
      await becomes(() => texts(session, ".sent .name"), ["Lock Gate"]);
      await session.run(() => history.back());
      await session.waitFor(() => document.querySelector("main > .place.glass"), "the glass");
      assert.equal(await address(session), place);
      await openLink(session, SENT_WITHOUT);
      await becomes(() => texts(session, ".sent .small p"), ["It came without prices.", "With you it costs £2.58, without 3 lines."]);
      // Another place is a choice too.
      await openPlace(session, "shelf");
      await session.waitFor(() => !document.querySelector(".sent"), "the question to go");
      assert.ok((await address(session)).endsWith("#shelf"));
      assert.deepEqual(await shelf(session), before);
    },
  },
  {
    name: "what was sent never writes over what is on the shelf, and one's own bottles are offered in its place",
    async play({ session, site }) {
      const mine = { bottles: [bottle("rye", "cellar rye", "99", "700"), bottle("b2", "Orange Bitters", "9.25", "100")], specs: [spec("lockgate", "Sluice", [line("rye", "10", "ml")])] };
      await openWith(session, site, mine);
      const before = await shelf(session);
      await openLink(session, packed(glass({})));
      await becomes(() => texts(session, ".sent .face"), ["my cellar rye", "my Orange Bitters"]);
      await pick(session, `.sent .offer:nth-child(1) select`, "");
      await becomes(() => texts(session, ".sent .small p"), ["At the sender’s prices, in GBP.", "With you it costs £2.41."]);
      await tap(session, "Put it on my shelf", ".sent");
      await becomes(async () => (await texts(session, ".shelf .row .what")).sort(), ["Lock Gate", "Orange Bitters", "Sluice", "cellar rye", "rye whisky"]);
      const after = await shelf(session);
      for (const [key, text] of Object.entries(before)) assert.equal(after[key], text, key);
      const fresh = Object.keys(after).filter((key) => !(key in before));
      assert.equal(fresh.length, 2);
      const kept = JSON.parse(String(after[String(fresh.find((key) => key.startsWith("farthing:spec:")))])).record;
      assert.notEqual(kept.id, "lockgate");
      assert.equal(kept.lines[1].bottle, "b2");
      assert.ok(after[`farthing:bottle:${kept.lines[0].bottle}`]);
      await tap(session, "Undo", "#notes");
      await becomes(() => shelf(session), before);
    },
  },
  {
    name: "a glass that is on the shelf already is not put there twice",
    async play({ session, site }) {
      const straw = { bottle: "", own: bottle("", "straw", "4", "200", "piece"), measure: { text: "1", unit: "piece" }, charge: "poured" };
      const withStraw = { ...LOCK_GATE, lines: [...LOCK_GATE.lines, straw] };
      await openWith(session, site, { ...SHELF, specs: [Object.assign({}, withStraw, { price: "9.50", a_week: "20" })] });
      const before = await shelf(session);
      await openLink(session, packed(glass({ spec: withStraw })));
      await becomes(() => texts(session, ".sent .face"), ["my rye whisky", "my orange bitters"]);
      await tap(session, "Put it on my shelf", ".sent");
      await noted(session, "Lock Gate is on the shelf already.");
      assert.deepEqual(await shelf(session), before);
    },
  },
  {
    name: "what was sent is looked at in Glass without a trace on the shelf",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [BITTERS], specs: [] });
      await openPlace(session, "glass");
      await fill(session, { [GLASS_NAME]: "Half written" });
      const before = await shelf(session);
      await openLink(session, packed(glass({})));
      await tap(session, "Look at it in Glass", ".sent");
      await becomes(() => session.value(GLASS_NAME), "Lock Gate");
      await becomes(() => texts(session, ".glass .line .what"), ["50 ml of rye whisky", "2 dashes of orange bitters"]);
      await says(session, TOTAL, "£2.58");
      assert.ok((await address(session)).endsWith("#glass"));
      assert.deepEqual(await shelf(session), before);
      await noted(session, "That is the glass. It is not kept yet.");
      await tap(session, "Undo", "#notes");
      await becomes(() => session.value(GLASS_NAME), "Half written");
    },
  },
  {
    name: "prices of another currency are left out, unless nothing is on the shelf",
    async play({ session, site }) {
      const euros = packed(glass({ house: { currency: "EUR", decimal_mark: ",", kitchen: "metric", tax_percent: "19" } }));
      await openWith(session, site, { bottles: [SODA] });
      await openLink(session, euros);
      await becomes(() => told(session), ["50 ml of rye whisky€2.24", "2 dashes of orange bitters34 ct", "It costs €2.58, between €2.30 and €2.70.", "At the sender’s prices, in EUR.", "Your own prices are in GBP, so these are left out when you take it."]);
      await tap(session, "Put it on my shelf", ".sent");
      await becomes(() => texts(session, ".shelf .row"), ["Lock Gateno price yet", "orange bittersno price yet", "rye whiskyno price yet", "soda water0.6p a ml"]);
      assert.equal((await storedRecord(session, HOUSE_KEY)).record.currency, "GBP");
      await openWith(session, site, {});
      for (const key of Object.keys(await shelf(session))) if (key !== HOUSE_KEY) await session.run((/** @type {string} */ name) => localStorage.removeItem(name), key);
      await follow(session, site.address + euros);
      await becomes(async () => (await texts(session, ".sent .small p"))[1], "Your shelf is empty, so your prices will be in EUR too.");
      await tap(session, "Put it on my shelf", ".sent");
      await becomes(async () => (await texts(session, ".shelf .row"))[0], "Lock Gate€2.58");
      await tap(session, "Undo", "#notes");
      await becomes(() => texts(session, ".shelf .row"), []);
      assert.equal((await storedRecord(session, HOUSE_KEY)).record.currency, "GBP");
    },
  },
  {
    name: "a link that is damaged, newer or too large is refused whole, with a reason",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      const before = await shelf(session);
      const damaged = "That link is cut off or damaged, so nothing of it was taken. Ask for it once more.";
      for (const [fragment, sentence] of [
        [SENT.slice(0, -5), damaged],
        [`${SENT.slice(0, 60)}${SENT[60] === "A" ? "B" : "A"}${SENT.slice(61)}`, damaged],
        [`${SENT}AAAA`, damaged],
        ["#glass=", damaged],
        [packed(glass({ more: 1 })), damaged],
        [SENT.replace("=1.", "=2."), "That link was made by a newer version. Load the page again, then open the link once more."],
        [packed(glass({ format: 99 })), "That link was made by a newer version. Load the page again, then open the link once more."],
        [`#glass=1.${Buffer.alloc(17_000).toString("base64url")}`, "That is more than a link can carry. Save it to a file instead, under Shelf."],
        [`#glass=1.${"A".repeat(1_000_000)}`, "That is more than a link can carry. Save it to a file instead, under Shelf."],
      ]) {
        await openLink(session, String(fragment));
        await says(session, ".sent .finding", String(sentence));
        assert.deepEqual(await texts(session, ".sent .wide"), []);
        await tap(session, "Leave it", ".sent");
        await session.waitFor(() => !document.querySelector(".sent"), "the question to go");
      }
      assert.deepEqual(await shelf(session), before);
      assert.equal(new URL(await address(session), site.address).hash, "");
    },
  },
  {
    name: "hostile names in a link are text, and nothing of it becomes a part of the page",
    async play({ session, site }) {
      listensForFaults(site);
      await openWith(session, site, SHELF);
      const hostile = "<img src=x onerror=alert(1)>\u202e";
      const names = glass({ bottles: [{ ...RYE, id: "__proto__", name: hostile }, { ...BITTERS, id: "example-bitters" }], spec: { ...LOCK_GATE, id: "constructor", name: `"><script>${hostile}`, lines: [line("__proto__", hostile, "ml"), line("example-bitters", "2", "dash")] } });
      await openLink(session, packed(names));
      await becomes(() => texts(session, ".sent .name"), [`"><script>${hostile}`]);
      await tap(session, "Put it on my shelf", ".sent");
      await becomes(async () => (await texts(session, ".shelf .row .what"))[0], `"><script>${hostile}`);
      assert.equal(await session.run(() => document.querySelectorAll("main :is(img, script)").length), 0);
      assert.equal(await session.run(() => /** @type {any} */ ({}).name), null);
      assert.equal((await stored(session))["farthing:bottle:example-bitters"], undefined);
      assert.deepEqual(await faults(session), []);
    },
  },
  {
    name: "a link opens without a network after one visit",
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      await settled(session);
      await site.stop();
      await follow(session, site.address + SENT);
      await becomes(() => texts(session, ".sent .name"), ["Towpath Sour"]);
      await becomes(async () => (await texts(session, ".sent .row")).length, 5);
    },
  },
  {
    name: "a glass is sent with its prices or without, as a link, as text and as recipe data",
    async play({ session, site }) {
      await openWith(session, site, { ...SHELF, house: house({ tax_percent: "20" }) });
      await stub(session, "shares");
      await openSend(session);
      const [lines, cost] = (await session.value(AS_TEXT)).split("\n\n");
      assert.equal(lines, "Lock Gate\n50 ml rye whisky\n2 dashes orange bitters");
      assert.match(String(cost), new RegExp(`^Costs £2\\.58 to make, between £2\\.30 and £2\\.70\\. .*${new Date().getFullYear()}`));
      assert.deepEqual(JSON.parse(await session.value(AS_RECIPE)).estimatedCost, { "@type": "MonetaryAmount", currency: "GBP", value: "2.58" });
      await tap(session, "share it", ".send");
      await tap(session, "Share the link", ".send");
      await becomes(async () => (await given(session)).length, 2);
      const [asText, withPrices] = await given(session);
      assert.equal(asText.text, await session.value(AS_TEXT));
      assert.equal(withPrices.title, "Lock Gate");
      await pick(session, GOES, "without");
      await becomes(() => session.value(AS_TEXT), "Lock Gate\n50 ml rye whisky\n2 dashes orange bitters");
      assert.equal(JSON.parse(await session.value(AS_RECIPE)).estimatedCost, undefined);
      await tap(session, "Share the link", ".send");
      await becomes(async () => (await given(session)).length, 3);
      const { url } = (await given(session))[2];
      assert.ok(url.length < withPrices.url.length);
      assert.match(readable(url), /rye whisky/);
      assert.doesNotMatch(readable(url), /31\.40|18\.50/);
      await asOnPaper(session);
      await becomes(() => uselessOnPaper(session), []);
    },
  },
  {
    name: "where nothing can be shared a link is copied, and where nothing can be copied it stands there",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await stub(session, "aborts");
      await openSend(session);
      await tap(session, "Share the link", ".send");
      await becomes(async () => (await given(session)).length, 1);
      assert.deepEqual(await texts(session, ".by-link textarea"), []);
      await stub(session, "refuses");
      await tap(session, "Share the link", ".send");
      await session.waitFor(() => document.querySelector(".by-link textarea"), "the link to select");
      assert.equal(await session.value(".by-link textarea"), (await given(session))[0].url);
      await stub(session, "copies");
      await tap(session, "copy it", ".by-link");
      await noted(session, "Copied.");
      assert.deepEqual(await texts(session, ".by-link textarea"), []);
    },
  },
  {
    name: "a link too long for some is told, and one too long for any is not made",
    async play({ session, site }) {
      const many = (/** @type {number} */ count) => Array.from({ length: count }, (_, at) => bottle(`${at}x${(at * 7919).toString(36)}`, `bottle ${[3, 5, 7, 11].map((by) => ((at + by) ** by * 104729).toString(36)).join(" ")}`, `${at + 1}.50`, "700"));
      const bottles = many(40);
      await openWith(session, site, { bottles, specs: [spec("long", "Everything", bottles.map(({ id }) => line(id, "5", "ml")))] });
      await openSend(session);
      await says(session, ".send .flag", "Some apps cut off a link of more than 2000 characters, and this one has more. Send it without its prices, or as text.");
      const wide = { ...LOCK_GATE, method: Array.from({ length: 20_000 }, (_, at) => String.fromCharCode(0x4e00 + ((at * 7919) % 20_000))).join("") };
      await openWith(session, site, { ...SHELF, specs: [wide] });
      await openPlace(session, "shelf");
      await openRow(session, "Lock Gate");
      await openSend(session);
      await says(session, ".send .flag", "That is more than a link can carry. Save it to a file instead, under Shelf.");
      assert.ok(await session.run(() => /** @type {HTMLButtonElement} */ (document.querySelector(".by-link .wide")).disabled));
    },
  },
];
