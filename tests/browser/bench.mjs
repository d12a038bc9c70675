// Times pieces of the core as wasm in Chromium: node bench.mjs folder/with/parity.js
import { host, launch } from "./lib.mjs";

const BATCHES = 15;
const BATCH_MS = 20;

const blank = { "/blank": { body: "<!doctype html><title>bench</title>" } };
const site = await host({ folder: process.argv[2], pages: blank });
const browser = await launch("chromium");
const page = await browser.newPage();
await page.goto(`${site.origin}/blank`);
const medians = await page.evaluate(
  async (batches, batchMs) => {
    const core = await import("/parity.js");
    await core.default({ module_or_path: "/parity_bg.wasm" });
    const batch = (name, times) => {
      const start = performance.now();
      if (!core.repeat(name, times)) throw new Error(`${name} is not known`);
      return performance.now() - start;
    };
    return core
      .repeatable()
      .split("\n")
      .map((name) => {
        let times = 1;
        while (batch(name, times) < batchMs) times *= 2;
        const each = Array.from({ length: batches }, () => (batch(name, times) * 1e6) / times);
        each.sort((a, b) => a - b);
        return [name, each[Math.floor(batches / 2)]];
      });
  },
  BATCHES,
  BATCH_MS,
);
for (const [name, ns] of medians) {
  const told = ns < 1e3 ? `${ns.toFixed(0)} ns` : ns < 1e6 ? `${(ns / 1e3).toFixed(1)} µs` : `${(ns / 1e6).toFixed(2)} ms`;
  console.log(`${told.padStart(14)}  ${name}`);
}
await browser.close();
await site.close();
