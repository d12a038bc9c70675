// Times pieces of the core as wasm in Chromium: node bench.mjs folder/with/parity.js [native.tsv]
import { existsSync, readFileSync } from "node:fs";
import { host, launch } from "./lib.mjs";

const BATCHES = 15;
const BATCH_MS = 20;

const blank = { "/blank": { body: "<!doctype html><title>bench</title>" } };
const site = await host({ folder: process.argv[2], pages: blank });
const browser = await launch("chromium");
const page = await browser.newPage();
await page.goto(`${site.origin}/blank`);
const { medians, memoryBytes } = await page.evaluate(
  async (batches, batchMs) => {
    const core = await import("/parity.js");
    const { memory } = await core.default({ module_or_path: "/parity_bg.wasm" });
    const batch = (name, times) => {
      const start = performance.now();
      if (!core.repeat(name, times)) throw new Error(`${name} is not known`);
      return performance.now() - start;
    };
    const medians = core
      .repeatable()
      .split("\n")
      .map((name) => {
        let times = 1;
        while (batch(name, times) < batchMs) times *= 2;
        // What takes long is repeated less often.
        const rounds = batch(name, times) > 10 * batchMs ? 3 : batches;
        const each = Array.from({ length: rounds }, () => (batch(name, times) * 1e6) / times);
        each.sort((a, b) => a - b);
        return [name, each[Math.floor(rounds / 2)]];
      });
    // Memory of a module never shrinks: this is the most that all of the above has taken.
    return { medians, memoryBytes: memory.buffer.byteLength };
  },
  BATCHES,
  BATCH_MS,
);
const native = new Map();
if (process.argv[3] && existsSync(process.argv[3])) {
  for (const line of readFileSync(process.argv[3], "utf8").trim().split("\n")) native.set(...line.split("\t"));
}
for (const [name, ns] of medians) {
  const told = ns < 1e3 ? `${ns.toFixed(0)} ns` : ns < 1e6 ? `${(ns / 1e3).toFixed(1)} µs` : `${(ns / 1e6).toFixed(2)} ms`;
  const ratio = native.has(name) ? `  (${(ns / Number(native.get(name))).toFixed(2)} times native)` : "";
  console.log(`${told.padStart(14)}  ${name}${ratio}`);
}
console.log(`${(memoryBytes / 2 ** 20).toFixed(1).padStart(11)} MB  of the module's memory after whole advices with all their worlds`);
await browser.close();
await site.close();
