import { Visitor, host, launch } from "./lib.mjs";
const site = await host(); const browser = await launch("chromium");
const context = await browser.createBrowserContext();
const v = await Visitor.arrive(context, "chromium", { size: "phone", site: site.address });
await v.open("#/pictures"); await v.seen(".view__picture"); await new Promise(r=>setTimeout(r,700));
console.log(await v.page.evaluate(() => [innerWidth, document.documentElement.scrollWidth, [...document.querySelectorAll("main *")].filter(e => e.getBoundingClientRect().right > 362 && !e.closest("svg svg")).slice(0,14).map(e => `${e.tagName}.${e.getAttribute("class")} ${Math.round(e.getBoundingClientRect().width)} ${e.textContent.slice(0,30)}`)]));
await browser.close(); await site.close();
