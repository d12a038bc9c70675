// Times what dragging a handle costs the main thread, from the event to the end of painting, with
// the processor slowed four times: node drag.mjs [part of a handle's name] [--plain]
// With --plain the processor is left alone and the times are multiplied: slowing down counts time
// that other programs take, and so is fair on an idle machine only.
// The traces are kept in target/bench, to be opened in the browser's own viewer.
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { ROOT, Visitor, host, launch } from "./lib.mjs";
import { pages } from "./pages.mjs";

const SLOWED = 4;
const EVENTS = 100;
const ALLOWED_MS = 16.7;
const ALLOWED_SHARE = 0.95;
const QUIET_MS = 1500;

const plain = process.argv.includes("--plain");
const part = process.argv.slice(2).find((one) => one !== "--plain") ?? "";
const folder = path.join(ROOT, "target", "bench");
mkdirSync(folder, { recursive: true });

const site = await host();
const browser = await launch("chromium");
let late = 0;
if (plain) console.log(`  not slowed; times multiplied by ${SLOWED}`);
console.log("  95 % within   median   painted   layout of at most   handle");
for (const name of ["pictures", "advice"]) {
  const context = await browser.createBrowserContext();
  const visitor = await Visitor.arrive(context, "chromium", { size: "desk", site: site.address });
  visitor.host = site;
  await pages.find((one) => one.name === name).arrive(visitor);
  const { page } = visitor;
  await page.evaluate(() => document.querySelectorAll("details.view__eye").forEach((one) => (one.open = true)));
  await page.waitForSelector(".view__picture");
  // How sure the advice is follows a while later; that work is not the handle's.
  await page.evaluate(
    (quiet_ms) =>
      new Promise((settled) => {
        let waiting = setTimeout(settled, quiet_ms);
        new MutationObserver(() => {
          clearTimeout(waiting);
          waiting = setTimeout(settled, quiet_ms);
        }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
      }),
    QUIET_MS,
  );
  const session = await page.createCDPSession();
  const handles = await page.$$("[role=slider]");
  for (const handle of handles) {
    const called = await handle.evaluate((one) => {
      const of = one.closest(".picture, section")?.querySelector("h2")?.textContent ?? "";
      const own = one.getAttribute("aria-label") ?? document.getElementById(one.getAttribute("aria-labelledby"))?.textContent;
      return `${of}: ${own}`;
    });
    if (!called.includes(part)) continue;
    await handle.evaluate((one) => one.scrollIntoView({ block: "center", behavior: "instant" }));
    const box = await handle.boundingBox();
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + 2, y);
    await page.mouse.down();
    // Once there and back, so that nothing is done for the first time.
    for (let n = 0; n < 10; n += 1) await page.mouse.move(box.x + (box.width * n) / 10, y);
    await page.mouse.move(box.x + 2, y);
    await new Promise((rested) => setTimeout(rested, 400));
    const began = await handle.evaluate((one) => Number(one.getAttribute("aria-valuenow")));
    const file = path.join(folder, `${name}-${called.replace(/[^a-z0-9]+/gi, "-").toLowerCase()}.json`);
    await session.send("Emulation.setCPUThrottlingRate", { rate: plain ? 1 : SLOWED });
    await page.tracing.start({ path: file, categories: ["devtools.timeline"] });
    for (let n = 1; n <= EVENTS; n += 1) {
      await page.mouse.move(box.x + 2 + ((box.width - 4) * n) / EVENTS, y);
      await page.evaluate(() => new Promise(requestAnimationFrame));
    }
    await page.tracing.stop();
    await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
    await page.mouse.up();
    const moved = await handle.evaluate((one) => Number(one.getAttribute("aria-valuenow")));
    const told = read(JSON.parse(readFileSync(file, "utf8")).traceEvents);
    const within = told.times.filter((ms) => ms <= ALLOWED_MS).length / Math.max(told.times.length, 1);
    if (within < ALLOWED_SHARE || told.times.length < 0.9 * EVENTS) late += 1;
    if (moved === began) {
      late += 1;
      console.log(`  it does not move: ${called}`);
    }
    const ms = (value) => `${value.toFixed(1)} ms`.padStart(9);
    const at = (share) => told.times[Math.min(told.times.length - 1, Math.floor(share * told.times.length))] ?? NaN;
    console.log(`  ${ms(at(0.95))}  ${ms(at(0.5))}   ${String(told.painted).padStart(3)}/${told.times.length}   ${String(told.laidOut).padStart(5)} of ${told.objects}   ${name}, ${called}`);
  }
  await context.close();
}
await browser.close();
await site.close();
console.log(late === 0 ? `  all within ${ALLOWED_MS} ms` : `  ${late} handles over ${ALLOWED_MS} ms`);
process.exit(late === 0 ? 0 : 1);

/**
 * The time of the main thread (its own clock, which stands still while others run) from each
 * pointer event to the end of what it had painted; how many objects a layout had to touch.
 */
function read(events) {
  const moves = events.filter((one) => one.name === "EventDispatch" && one.args.data?.type === "pointermove");
  const thread = moves[0] && `${moves[0].pid}/${moves[0].tid}`;
  const own = events.filter((one) => `${one.pid}/${one.tid}` === thread).sort((a, b) => a.ts - b.ts);
  const ends = own.filter((one) => one.name === "Layerize");
  const layouts = own.filter((one) => one.name === "Layout" && one.args.beginData);
  const times = [];
  let painted = 0;
  moves.sort((a, b) => a.ts - b.ts);
  moves.forEach((move, n) => {
    const next = moves[n + 1]?.ts ?? Infinity;
    // The first painting after it; words that follow when the handle rests are another one.
    const last = ends.find((one) => one.ts >= move.ts && one.ts < next);
    if (!last) {
      // Nothing was painted: the value did not change.
      times.push((move.tdur ?? move.dur) / 1000);
      return;
    }
    painted += 1;
    times.push((last.tts + (last.tdur ?? 0) - move.tts) / 1000);
  });
  times.sort((a, b) => a - b);
  return {
    times: plain ? times.map((ms) => ms * SLOWED) : times,
    painted,
    laidOut: Math.max(0, ...layouts.map((one) => one.args.beginData.dirtyObjects)),
    objects: Math.max(0, ...layouts.map((one) => one.args.beginData.totalObjects)),
  };
}
