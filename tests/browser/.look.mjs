import { SIZES, Visitor, host, launch } from "./lib.mjs";
import { pages } from "./pages.mjs";
const [what, out, ...rest] = process.argv.slice(2);
SIZES.w320 = SIZES.small; SIZES.desk1 = SIZES.desk;
const site = await host();
const browser = await launch("chromium");
const list = (process.env.AT ?? "phone:light,desk:dark").split(",");
for (const at of list) {
  const [size, theme] = at.split(":");
  const context = await browser.createBrowserContext();
  const visitor = await Visitor.arrive(context, "chromium", { size, theme, site: site.address });
  visitor.host = site;
  if (what === "demo") { await visitor.open("#/pictures"); } else if (what === "own") { await pages.find((p) => p.name === "advice").arrive(visitor); await visitor.page.evaluate(() => { location.hash = "#/pictures"; }); await visitor.seen(".gallery .view__picture"); }
  else await pages.find((p) => p.name === what).arrive(visitor);
  await visitor.page.waitForSelector(".view__picture, .rifle");
  if (process.env.DO) await visitor.page.evaluate(process.env.DO);
  await new Promise((r) => setTimeout(r, 600));
  const sel = process.env.SEL;
  const file = `/tmp/look/${out}-${SIZES[size].width}-${theme}.png`;
  if (sel) { const els = await visitor.page.$$(sel); await els[Number(process.env.N ?? 0)].screenshot({ path: file }); }
  else await visitor.page.screenshot({ path: file, fullPage: true });
  console.log(file, visitor.problems.join(" | "));
  await context.close();
}
await browser.close(); await site.close();
