import { mkdirSync } from "node:fs";
import { host, launch, Visitor, SIZES } from "./lib.mjs";
const ANSWERS = JSON.parse(process.env.ANSWERS ?? '{"version":1,"units":"metric","uses":[{"what":"roe_deer","share":4},{"what":"wild_boar","share":2}],"manners":[{"manner":"seat_rail","share":4}],"ranges":{"nearest_m":30,"usual_m":80,"farthest_m":150},"light":{"until":"half_hour_after_sunset","cover":[{"cover":"edge","share":4}]},"eye":{"age_years":46,"glasses":"distance"},"load":{"cartridge":"308_win_10_7_g"},"mount":{"rings_kept_mm":30,"base":"slotted_rail"}}');
const where = process.argv[2] ?? "#/advice", size = process.argv[3] ?? "phone", theme = process.argv[4] ?? "light", name = process.argv[5] ?? "x", open = process.argv[6], sel = process.argv[7];
mkdirSync("/tmp/shots", { recursive: true });
const site = await host(); const browser = await launch("chromium"); const context = await browser.createBrowserContext();
const v = await Visitor.arrive(context, "chromium", { size, theme, site: site.address });
await v.page.evaluateOnNewDocument((t) => { try { localStorage.setItem("scopewright.answers", t) } catch {} }, JSON.stringify(ANSWERS));
await v.open(where); await v.seen(where === "#/advice" ? ".needs" : "h1");
if (where === "#/after") { await v.open("#/advice"); await v.seen(".needs"); await v.page.evaluate(() => { location.hash = "#/after" }); await v.seen("#sheet"); }
if (open) await v.page.evaluate((o) => document.querySelectorAll(o).forEach((d) => { d.open = true }), open);
await new Promise(r => setTimeout(r, 500));
if (sel) { const el = await v.page.$(sel); await el.screenshot({ path: `/tmp/shots/${name}.png` }); }
else await v.page.screenshot({ path: `/tmp/shots/${name}.png`, fullPage: true });
await context.close(); await browser.close(); await site.close();
