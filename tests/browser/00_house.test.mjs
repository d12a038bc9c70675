// The shell: loads clean, stands anywhere, works without network, changes over whole.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
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

/** The same page as another version: one changed byte in index.html and in sw.js. */
function nextVersion() {
  const folder = mkdtempSync(path.join(os.tmpdir(), "scopewright-next-"));
  cpSync(DIST, folder, { recursive: true });
  const index = path.join(folder, "index.html");
  writeFileSync(index, readFileSync(index, "utf8").replace("<body>", '<body data-version="next">'));
  const worker = path.join(folder, "sw.js");
  writeFileSync(worker, readFileSync(worker, "utf8").replace(/VERSION = "[0-9a-f]+"/, 'VERSION = "0123456789abcdef"'));
  return folder;
}

const version = (visitor) => visitor.page.evaluate(() => document.body.dataset.version ?? "first");

journey("a new version announces itself and is used when asked", {}, async (visitor) => {
  const folder = nextVersion();
  try {
    await visitor.open("#/question/quarry");
    await visitor.keptOffline();
    visitor.host.folder = folder;
    await visitor.tap('label[for="uses-red_fox"]');
    await visitor.page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await visitor.seen("#update button");
    assert.equal(await version(visitor), "first");
    await visitor.tap("#update button");
    await visitor.until("the new version stands", () => document.body?.dataset.version === "next");
    await visitor.running();
    await visitor.seen("#uses-red_fox");
    assert.ok(await visitor.page.$eval("#uses-red_fox", (box) => box.checked), "no answer is dropped");
  } finally {
    rmSync(folder, { recursive: true });
  }
});

journey("a version that arrives by halves leaves the old one working", {}, async (visitor) => {
  const folder = nextVersion();
  try {
    await visitor.open();
    await visitor.keptOffline();
    visitor.host.folder = folder;
    visitor.host.broken.add("boot.js");
    await visitor.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update().catch(() => {});
    });
    await until("the half version was asked for", () => visitor.host.requests.filter((asked) => asked === "/boot.js").length > 1);
    await visitor.until("it was given up", async () => {
      const registration = await navigator.serviceWorker.ready;
      return !registration.installing && !registration.waiting;
    });
    await visitor.host.close();
    await visitor.reload();
    assert.equal(await version(visitor), "first");
  } finally {
    rmSync(folder, { recursive: true });
  }
});

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
  const name = readFileSync(path.join(DIST, "index.html"), "utf8").match(/data-wasm="\.\/([^"]+)"/)[1];
  visitor.host.broken.add(name);
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
