// Walks every journey in every browser: node run.mjs [part of a name] [--only chromium|firefox]
//
// A journey that fails is walked once more when all others are through. One that then arrives is
// told as unsteady, with what stopped it at first; more than a few of these fail all the same.
import { readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { journeys, launch, walk } from "./lib.mjs";

/** As many journeys may need a second walk: a browser that stumbles, not a page that does. */
const UNSTEADY_AT_MOST = 2;

const arguments_ = process.argv.slice(2);
const only = arguments_.includes("--only") ? arguments_.splice(arguments_.indexOf("--only"), 2)[1] : null;
const part = arguments_[0] ?? "";

const here = path.dirname(fileURLToPath(import.meta.url));
for (const file of readdirSync(here).filter((name) => name.endsWith(".test.mjs")).sort()) {
  const before = journeys.length;
  await import(pathToFileURL(path.join(here, file)).href);
  for (const found of journeys.slice(before)) found.file = file;
}

/** What a journey is called in what is printed. */
const called = (found, browserName) => `${found.file}: ${found.name} (${browserName}, ${found.size})`;

/** What stopped a journey, with all that was heard of it. */
function stopped(error) {
  const lines = [error.stack ?? String(error)];
  for (const line of error.heard ?? []) lines.push(`    ${line}`);
  if (error.picture) lines.push(`    picture: ${error.picture}`);
  return lines.join("\n");
}

/** Walks one journey: what stopped it, or null. */
async function attempt(found, browser, browserName) {
  const start = Date.now();
  try {
    await walk(found, browser, browserName);
    console.log(`  ✓ ${found.name} (${found.size}) ${((Date.now() - start) / 1000).toFixed(1)} s`);
    return null;
  } catch (error) {
    console.log(`  ✗ ${called(found, browserName)}\n${stopped(error)}`);
    return error;
  }
}

let passed = 0;
const failed = [];
const unsteady = [];
for (const browserName of ["chromium", "firefox"].filter((name) => !only || name === only)) {
  const wanted = journeys.filter((found) => found.browsers.includes(browserName) && `${found.file} ${found.name}`.includes(part));
  if (wanted.length === 0) continue;
  let browser = await launch(browserName);
  console.log(`  ${await browser.version()}`);
  const again = [];
  for (const found of wanted) {
    const error = await attempt(found, browser, browserName);
    if (error) again.push([found, error]);
    else passed += 1;
  }
  if (again.length > 0 && again.length <= UNSTEADY_AT_MOST) {
    console.log(`  ${again.length} once more, in a browser of their own`);
    await browser.close().catch(() => {});
    browser = await launch(browserName);
    for (const [found, first] of again) {
      const error = await attempt(found, browser, browserName);
      if (error) failed.push([called(found, browserName), error]);
      else unsteady.push([called(found, browserName), first]);
    }
  } else {
    failed.push(...again.map(([found, error]) => [called(found, browserName), error]));
  }
  await browser.close().catch(() => {});
}
// More than a few in both browsers together are no stumble.
if (unsteady.length > UNSTEADY_AT_MOST) failed.push(...unsteady.splice(0));
passed += unsteady.length;

if (passed + failed.length === 0) console.log(`no journey is called "${part}"`);
// Once more at the end, where it is seen however long the list above is.
for (const [name, error] of unsteady) console.log(`  ~ unsteady, arrived at its second walk: ${name}\n${stopped(error)}`);
for (const [name, error] of failed) console.log(`  ✗ ${name}\n${stopped(error)}`);
console.log(`${passed} passed${unsteady.length > 0 ? ` (${unsteady.length} unsteady)` : ""}, ${failed.length} failed`);
process.exit(failed.length > 0 || passed === 0 ? 1 : 0);
