// Lighthouse as a phone sees the page, from a host that sends Brotli and from one that sends gzip.
import * as chromeLauncher from "chrome-launcher";
import lighthouse from "lighthouse";
import { readdirSync } from "node:fs";
import path from "node:path";
import { DIST, compressed, host, programOf } from "../lib.mjs";

const FLOORS = { performance: 95, accessibility: 100, "best-practices": 100, seo: 100 };
let missed = 0;

for (const compress of ["br", "gzip"]) {
  // Compressed beforehand: what is measured is the page, not the compressing.
  for (const name of readdirSync(DIST)) compressed(path.join(DIST, name), compress);
  const site = await host({ compress });
  const chrome = await chromeLauncher.launch({
    chromePath: programOf("chromium"),
    chromeFlags: ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-background-networking"],
  });
  const { lhr } = await lighthouse(site.address, { port: chrome.port, logLevel: "silent", onlyCategories: Object.keys(FLOORS) });
  const scores = Object.entries(FLOORS).map(([name, floor]) => {
    const score = Math.round((lhr.categories[name].score ?? 0) * 100);
    // A host that only has gzip is told about, not held to the floor.
    if (compress === "br" && score < floor) missed += 1;
    return `${name} ${score}${score < floor ? ` (below ${floor})` : ""}`;
  });
  const paint = (id) => lhr.audits[id]?.displayValue ?? "?";
  console.log(`  ${compress}: ${scores.join(", ")}`);
  console.log(`      first paint ${paint("first-contentful-paint")}, largest ${paint("largest-contentful-paint")}, blocked ${paint("total-blocking-time")}, shift ${paint("cumulative-layout-shift")}, ${paint("total-byte-weight")}`);
  if (compress === "br") {
    for (const audit of Object.values(lhr.audits)) {
      const weighty = audit.score !== null && audit.score < 0.9 && ["binary", "numeric", "metricSavings"].includes(audit.scoreDisplayMode);
      if (weighty) console.log(`      ${audit.id}: ${audit.title} ${audit.displayValue ?? ""}`);
    }
  }
  await chrome.kill();
  await site.close();
}
process.exit(missed > 0 ? 1 : 0);
