// Uses the page for a while and watches its memory: node soak.mjs [rounds]
import { assert, host, launch, Visitor } from "./lib.mjs";
import { pages } from "./pages.mjs";

const rounds = Number(process.argv[2] ?? 60);
const site = await host();
const browser = await launch("chromium");
const context = await browser.createBrowserContext();
const visitor = await Visitor.arrive(context, "chromium", { site: site.address });
visitor.host = site;
const session = await visitor.page.createCDPSession();

async function heap() {
  await session.send("HeapProfiler.collectGarbage");
  const { JSHeapUsedSize, Nodes } = await visitor.page.metrics();
  return { megabytes: JSHeapUsedSize / 1e6, nodes: Nodes };
}

// Answered from the first load on: the later pages show an advice.
await pages.find(({ name }) => name === "check").arrive(visitor);

const seen = [];
for (let round = 1; round <= rounds; round += 1) {
  for (const page of pages) await page.arrive(visitor);
  if (round % Math.max(1, Math.floor(rounds / 6)) === 0) {
    seen.push(await heap());
    const now = seen.at(-1);
    console.log(`  round ${round}: ${now.megabytes.toFixed(1)} MB of JavaScript heap, ${now.nodes} nodes`);
  }
}
await visitor.clean();
await browser.close();
await site.close();
// After warming up, a page that leaks grows by each round; one that does not, does not.
const [early, late] = [seen[Math.floor(seen.length / 2)], seen.at(-1)];
assert.ok(late.megabytes < early.megabytes * 1.25 + 1, "the heap grows from round to round");
assert.ok(late.nodes < early.nodes * 1.25 + 200, "the document grows from round to round");
