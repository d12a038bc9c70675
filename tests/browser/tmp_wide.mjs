import { host, launch, Visitor } from "./lib.mjs";
const SEAT = {version:1,units:"metric",uses:[{what:"roe_deer",share:4},{what:"wild_boar",share:2}],manners:[{manner:"seat_rail",share:4}],ranges:{nearest_m:30,usual_m:80,farthest_m:150},light:{until:"half_hour_after_sunset",cover:[{cover:"edge",share:4}]},eye:{age_years:46,glasses:"distance"},load:{cartridge:"308_win_10_7_g"},mount:{incline_mrad:25}};
const site = await host(); const browser = await launch(process.argv[2] ?? "firefox"); const context = await browser.createBrowserContext();
const v = await Visitor.arrive(context, process.argv[2] ?? "firefox", { size: "phone", site: site.address });
await v.page.evaluateOnNewDocument((t) => { try { localStorage.setItem("scopewright.answers", t) } catch {} }, JSON.stringify(SEAT));
await v.open("#/advice"); await v.seen(".needs");
console.log(await v.page.evaluate(() => { const w = document.documentElement.clientWidth; return [w, ...[...document.querySelectorAll("*")].filter(e => e.getBoundingClientRect().right > w + 1 && !e.closest(".tablewrap")).map(e => e.tagName + "." + e.className + " " + Math.round(e.getBoundingClientRect().right) + " " + e.textContent.slice(0, 60))].slice(0, 12) }));
await context.close(); await browser.close(); await site.close();
