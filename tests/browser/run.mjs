// Walks every journey in every browser: node run.mjs [part of a name] [--only chromium|firefox]
import { readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { journeys, launch, walk } from "./lib.mjs";

const arguments_ = process.argv.slice(2);
const only = arguments_.includes("--only") ? arguments_.splice(arguments_.indexOf("--only"), 2)[1] : null;
const part = arguments_[0] ?? "";

const here = path.dirname(fileURLToPath(import.meta.url));
for (const file of readdirSync(here).filter((name) => name.endsWith(".test.mjs")).sort()) {
  const before = journeys.length;
  await import(pathToFileURL(path.join(here, file)).href);
  for (const found of journeys.slice(before)) found.file = file;
}

let passed = 0;
let failed = 0;
for (const browserName of ["chromium", "firefox"].filter((name) => !only || name === only)) {
  const wanted = journeys.filter((found) => found.browsers.includes(browserName) && `${found.file} ${found.name}`.includes(part));
  if (wanted.length === 0) continue;
  const browser = await launch(browserName);
  console.log(`  ${await browser.version()}`);
  for (const found of wanted) {
    const start = Date.now();
    try {
      await walk(found, browser, browserName);
      passed += 1;
      console.log(`  ✓ ${found.name} (${found.size}) ${((Date.now() - start) / 1000).toFixed(1)} s`);
    } catch (error) {
      failed += 1;
      console.log(`  ✗ ${found.file}: ${found.name} (${browserName}, ${found.size})\n${error.stack ?? error}`);
      for (const line of error.heard ?? []) console.log(`    ${line}`);
      if (error.picture) console.log(`    picture: ${error.picture}`);
    }
  }
  await browser.close();
}
if (passed + failed === 0) console.log(`no journey is called "${part}"`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 || passed === 0 ? 1 : 0);
