// The shell: loads clean, stands anywhere, works without network, changes over whole.
import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { DIST, HASHED, assert, journey, until } from "./lib.mjs";

for (const size of ["phone", "tablet", "desk"]) {
  journey("loads clean and accessible", { size }, async (visitor) => {
    await visitor.open();
    await visitor.seen("h1");
    await visitor.axe();
    await visitor.fits();
  });
}

journey("works from a sub-path", { site: { under: "/club/advice/" } }, async (visitor) => {
  await visitor.open();
  await visitor.seen("h1");
  const strayed = visitor.host.requests.filter((asked) => !asked.startsWith("/club/advice/") && asked !== "/favicon.ico");
  assert.deepEqual(strayed, [], "requests outside the sub-path");
});

for (const under of ["/", "/deep/down/"]) {
  journey(`works without network after the first visit, at ${under}`, { site: { under } }, async (visitor) => {
    await visitor.open();
    await visitor.keptOffline();
    await visitor.host.close();
    await visitor.reload();
    await visitor.seen("h1");
  });
}

journey("everything works without network: questions, advice, pictures, counter, shelf", {}, async (visitor) => {
  await visitor.open();
  await visitor.keptOffline();
  await visitor.host.close();
  await visitor.reload();
  const go = (where) => visitor.page.evaluate((hash) => (location.hash = hash), where);
  await go("#/question/quarry");
  await visitor.tap('label[for="uses-roe_deer"]');
  await go("#/advice");
  await visitor.seen(".line__glass");
  await visitor.seen(".view__picture");
  await go("#/pictures");
  await visitor.seen(".view__picture");
  for (const where of ["compare", "rings", "zero", "shop", "after", "about", "shelf"]) {
    await go(`#/${where}`);
    await visitor.until(`the page ${where}`, (name) => location.hash === `#/${name}` && document.activeElement?.id === "title", where);
  }
  await go("#/counter");
  await visitor.seen(".counter__asks");
  // The frame of a club's page comes from the copy too.
  await go("#/club");
  await visitor.until("the preview has its size", () => Number(document.querySelector("scopewright-advisor")?.shadowRoot?.querySelector("iframe")?.height) > 641);
});

journey("can be installed", { browsers: ["chromium"] }, async (visitor) => {
  await visitor.open();
  await visitor.keptOffline();
  const session = await visitor.page.createCDPSession();
  const { errors } = await session.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
  // A window without a profile cannot install; nothing else may stand in the way.
  assert.deepEqual(installabilityErrors.map((each) => each.errorId).filter((id) => id !== "in-incognito"), []);
  assert.ok(visitor.host.requests.includes("/sw.js"));
});

journey("asks the network for nothing once the offline copy is complete", {}, async (visitor) => {
  await visitor.open();
  await visitor.keptOffline();
  const asked = visitor.host.requests.length;
  await visitor.reload();
  await visitor.seen("h1");
  const later = visitor.host.requests.slice(asked).filter((name) => name !== "/sw.js" && name !== "/favicon.ico");
  assert.deepEqual(later, [], "requests after the copy was complete");
  // The host does hear whoever asks: without the copy the same visit is seen.
  await visitor.page.evaluate(async () => {
    for (const each of await navigator.serviceWorker.getRegistrations()) await each.unregister();
    for (const name of await caches.keys()) await caches.delete(name);
  });
  await visitor.reload();
  assert.ok(visitor.host.requests.slice(asked).includes("/boot.js"), "the silence above could not have been heard");
});

journey("the offline copy takes from the browser what has just arrived", {}, async (visitor) => {
  await visitor.open();
  await visitor.keptOffline();
  const hashed = visitor.host.requests.filter((name) => HASHED.test(name));
  assert.ok(hashed.some((name) => name.endsWith(".wasm")));
  assert.deepEqual(hashed, [...new Set(hashed)], "asked for twice");
});

/** The files of a version and their seal, as sw.js names them. */
function sealed(folder) {
  const worker = readFileSync(path.join(folder, "sw.js"), "utf8");
  const files = JSON.parse(worker.match(/FILES = (\[[^\]]*\])/)[1]);
  const digest = createHash("sha256");
  for (const file of files) digest.update(readFileSync(path.join(folder, file)));
  return [worker.match(/VERSION = "([0-9a-f]+)"/)[1], digest.digest("hex").slice(0, 16)];
}

/** The name of the module of a version. */
const moduleOf = (folder) => readFileSync(path.join(folder, "index.html"), "utf8").match(/data-wasm="\.\/([^"]+)"/)[1];

/** The same page as another version: its module has another name, its body a mark. */
function nextVersion() {
  const folder = mkdtempSync(path.join(os.tmpdir(), "scopewright-next-"));
  cpSync(DIST, folder, { recursive: true });
  const change = (file, of) => writeFileSync(path.join(folder, file), of(readFileSync(path.join(folder, file), "utf8")));
  const old = moduleOf(folder);
  const name = old.replace(/[0-9a-f]{16}/, "0123456789abcdef");
  renameSync(path.join(folder, old), path.join(folder, name));
  change("index.html", (text) => text.replaceAll(old, name).replace("<body>", '<body data-version="next">'));
  change("boot.js", (text) => `${text}// next\n`);
  change("sw.js", (text) => text.replaceAll(old, name));
  const [was, is] = sealed(folder);
  change("sw.js", (text) => text.replace(was, is));
  return folder;
}

const version = (visitor) => visitor.page.evaluate(() => document.body.dataset.version ?? "first");

/** Lets the browser look for a new version, as it does by itself at a later visit. */
const look = (visitor) => visitor.page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update().catch(() => {})));

/** A journey with a next version at hand. */
function changing(name, run) {
  journey(name, {}, async (visitor) => {
    const folder = nextVersion();
    try {
      await run(visitor, folder);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
}

journey("a version is named by the digest of its files", {}, async () => {
  const [named, is] = sealed(DIST);
  assert.equal(named, is);
});

changing("a new version announces itself and is used when asked", async (visitor, folder) => {
  await visitor.open("#/question/quarry");
  await visitor.keptOffline();
  assert.ok(await visitor.page.$eval("#update", (notice) => notice.hidden), "the first version is no new one");
  visitor.host.folder = folder;
  await visitor.tap('label[for="uses-red_fox"]');
  await look(visitor);
  await visitor.seen("#update button");
  assert.equal(await version(visitor), "first");
  await visitor.axe();
  await visitor.tap("#update button");
  await visitor.until("the new version stands", () => document.body?.dataset.version === "next");
  await visitor.running();
  await visitor.seen("#uses-red_fox");
  assert.ok(await visitor.page.$eval("#uses-red_fox", (box) => box.checked), "no answer is dropped");
});

changing("a version that waits is announced at the next visit too", async (visitor, folder) => {
  await visitor.open();
  await visitor.keptOffline();
  visitor.host.folder = folder;
  await look(visitor);
  await visitor.seen("#update button");
  await visitor.reload();
  await visitor.seen("#update button");
  assert.equal(await version(visitor), "first");
});

changing("two tabs change over one after the other, and neither drops what was typed", async (visitor, folder) => {
  await visitor.open("#/question/rifle");
  await visitor.keptOffline();
  const other = await visitor.another();
  await other.open("#/question/rifle");
  await other.keptOffline();
  visitor.host.folder = folder;
  await look(other);
  await other.seen("#update button");
  await visitor.page.bringToFront();
  await visitor.tap("#update button");
  await visitor.until("the new version stands", () => document.body?.dataset.version === "next");
  await other.page.bringToFront();
  assert.equal(await version(other), "first");
  await other.type("#field-rifle_mass", "heavy");
  await other.tap("#update button");
  await other.until("the new version stands here too", () => document.body?.dataset.version === "next");
  await other.running();
  assert.equal(await other.page.$eval("#field-rifle_mass", (input) => input.value), "heavy");
});

const text = (folder, name) => readFileSync(path.join(folder, name));
for (const [how, spoil] of [
  ["lacks a file", (pages, folder) => (pages[`/${moduleOf(folder)}`] = { status: 404, body: "not found" })],
  ["meets a broken host", (pages) => (pages["/boot.js"] = { status: 503, body: "broken" })],
  ["breaks off", (pages, folder) => (pages[`/${moduleOf(folder)}`] = { type: "application/wasm", cut: true, body: text(folder, moduleOf(folder)) })],
  ["is cut short, and nobody says so", (pages, folder) => (pages["/index.html"] = { body: text(folder, "index.html").subarray(0, 3000) })],
  ["still has a page of the old", (pages) => (pages["/index.html"] = { body: text(DIST, "index.html") })],
  ["still has a script of the old", (pages) => (pages["/boot.js"] = { type: "text/javascript", body: text(DIST, "boot.js") })],
  ["gets a page of errors instead of the module", (pages, folder) => (pages[`/${moduleOf(folder)}`] = { body: "<!doctype html><title>Sorry</title>" })],
]) {
  changing(`a new version that ${how} leaves the old one working`, async (visitor, folder) => {
    // Chromium tells of what its service worker could not fetch.
    visitor.allow(/Failed to load resource|ERR_/);
    await visitor.open("#/question/quarry");
    await visitor.keptOffline();
    visitor.host.folder = folder;
    spoil(visitor.host.pages, folder);
    const asked = visitor.host.requests.length;
    await look(visitor);
    await until("the spoilt version was asked for", () => visitor.host.requests.slice(asked).includes("/boot.js"));
    await visitor.until("it was given up", async () => {
      const registration = await navigator.serviceWorker.ready;
      return !registration.installing && !registration.waiting;
    });
    assert.equal((await visitor.page.evaluate(() => caches.keys())).length, 1, "nothing of it is kept");
    await visitor.host.close();
    await visitor.reload();
    assert.equal(await version(visitor), "first");
    await visitor.tap('label[for="uses-red_fox"]');
    await visitor.page.evaluate(() => (location.hash = "#/advice"));
    await visitor.seen(".line__glass");
  });
}

journey("says so when the module stops, and starts again", {}, async (visitor) => {
  visitor.allow(/unreachable|RuntimeError/);
  await visitor.open();
  await visitor.page.evaluate(() => {
    // The smallest module that traps: one exported function holding `unreachable`.
    const bytes = [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 116, 0, 0, 10, 5, 1, 3, 0, 0, 11];
    const { exports } = new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array(bytes)));
    setTimeout(() => exports.t());
  });
  await visitor.seen("#stopped button");
  await visitor.axe();
  await visitor.tap("#stopped button");
  await visitor.until("the page runs again", () => document.documentElement.dataset.state === "running" && document.querySelector("#stopped").hidden);
});

journey("says so when the browser has no WebAssembly", {}, async (visitor) => {
  await visitor.page.evaluateOnNewDocument(() => delete window.WebAssembly);
  await visitor.page.goto(visitor.site);
  await visitor.seen("#cannot-run");
  await visitor.axe();
});

journey("shows its first words before the module arrives", {}, async (visitor) => {
  visitor.host.broken.add(moduleOf(DIST));
  visitor.allow(/503|Failed to load|WebAssembly/i);
  await visitor.page.goto(visitor.site);
  await visitor.seen("#app h1");
  await visitor.seen("#cannot-run");
});

/** Lets the module arrive only when told. */
async function holdModule(visitor) {
  let go;
  const held = new Promise((resolve) => (go = resolve));
  await visitor.page.setRequestInterception(true);
  visitor.page.on("request", (request) => (request.url().endsWith(".wasm") ? held.then(() => request.continue()) : request.continue()).catch?.(() => {}));
  return go;
}

journey("the first question is seen and answered before the module arrives", { browsers: ["chromium"] }, async (visitor) => {
  const go = await holdModule(visitor);
  await visitor.page.goto(visitor.site);
  await visitor.tap(".opening__start .button--primary");
  await visitor.seen("#uses-red_fox");
  await visitor.axe();
  await visitor.fits();
  const said = () => visitor.page.$$eval("#app main:not([hidden]) h1, #app .why, #app .progress, #app .choices--two:first-of-type .choice__name, #app .bar .button", (all) => all.filter((each) => each.checkVisibility()).map((each) => each.textContent.trim()).slice(0, 15));
  const early = await said();
  await visitor.tap('label[for="uses-red_fox"]');
  await visitor.tap(".early .bar .button--primary");
  await visitor.seen('[id="/question/manner"]');
  go();
  await visitor.running();
  await visitor.until("the next question", () => location.hash === "#/question/manner" && document.querySelector("#manners-seat_rail"));
  await visitor.page.goBack();
  await visitor.seen("#uses-red_fox");
  assert.ok(await visitor.page.$eval("#uses-red_fox", (box) => box.checked), "what was ticked early is kept");
  assert.ok((await visitor.page.evaluate(() => localStorage.getItem("scopewright.answers"))).includes("red_fox"));
  await visitor.tap('label[for="uses-red_fox"]');
  await visitor.until("nothing is ticked", () => !document.querySelector("#app input:checked"));
  for (const text of early) assert.ok((await said()).includes(text), `“${text}” was said before, and is not now`);
});

journey("what an address carries is not lost by a tap before the module arrives", { browsers: ["chromium"] }, async (visitor) => {
  const early = async (address) => {
    const tab = await visitor.another();
    await tab.page.setBypassServiceWorker(true);
    const go = await holdModule(tab);
    await tab.page.goto(address, { waitUntil: "load" });
    await tab.tap(".opening__start .button--primary");
    await tab.tap('.early label[for="uses-red_fox"]');
    await tab.tap(".early .bar .button--primary");
    await tab.seen('[id="/question/manner"]');
    go();
    await tab.running();
    await tab.until("the question asked for", () => location.hash === "#/question/manner" && document.querySelector("#manners-seat_rail"));
    const told = await tab.page.$$eval(".notice__in", (all) => all.length);
    await tab.page.evaluate(() => (location.hash = "#/check"));
    return [await tab.text(".told__row"), told];
  };
  const presets = encodeURIComponent('{"version":1,"uses":[{"what":"chamois","share":4}]}');
  const both = /chamois.*red fox|red fox.*chamois/i;
  assert.match((await early(`${visitor.site}#/embed/questions/${presets}/`))[0], both);
  await visitor.page.bringToFront();
  await visitor.page.goto(visitor.site);
  await visitor.page.evaluate(() => localStorage.clear());
  await visitor.open(`#/embed/questions/${presets}/`);
  await visitor.page.evaluate(() => (location.hash = "#/advice"));
  await visitor.seen(".needs");
  const link = await visitor.page.$eval("#share-address", (input) => input.value);
  await visitor.page.evaluate(() => localStorage.clear());
  assert.match((await early(link))[0], both);
  // A link that cannot be read is told, and what was ticked stays.
  await visitor.page.evaluate(() => localStorage.clear());
  const [told, notices] = await early(`${visitor.site}#/open/1zzzz`);
  assert.match(told, /red fox/i);
  assert.equal(notices, 1);
});
