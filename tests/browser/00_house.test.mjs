// The shell: loads clean, stands anywhere, works without network, changes over whole.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { DIST, assert, journey, until } from "./lib.mjs";

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

journey("asks the network for nothing once the offline copy is complete", {}, async (visitor) => {
  await visitor.open();
  await visitor.keptOffline();
  const asked = visitor.host.requests.length;
  await visitor.reload();
  await visitor.seen("h1");
  const later = visitor.host.requests.slice(asked).filter((name) => name !== "/sw.js" && name !== "/favicon.ico");
  assert.deepEqual(later, [], "requests after the copy was complete");
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
    await visitor.open();
    await visitor.keptOffline();
    visitor.host.folder = folder;
    await visitor.page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await visitor.seen("#update button");
    assert.equal(await version(visitor), "first");
    await visitor.tap("#update button");
    await visitor.until("the new version stands", () => document.body?.dataset.version === "next");
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
