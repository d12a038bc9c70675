// Takes a picture of every page: node shots.mjs [part of a name] [--size phone] [--theme dark]
// They are called as in advice-360-day.png.
import { mkdirSync } from "node:fs";
import path from "node:path";
import { ROOT, SIZES, Visitor, host, launch } from "./lib.mjs";
import { pages } from "./pages.mjs";

const arguments_ = process.argv.slice(2);
const option = (name, usual) => (arguments_.includes(name) ? [arguments_.splice(arguments_.indexOf(name), 2)[1]] : usual);
const sizes = option("--size", ["phone", "tablet", "desk"]);
const themes = option("--theme", ["light", "dark"]);
const part = arguments_[0] ?? "";

/** The most that a picture in a document may weigh. */
const README_BYTES = 150_000;

const folder = path.join(ROOT, "target", "shots");
const docs = path.join(ROOT, "docs");
mkdirSync(folder, { recursive: true });

const site = await host();
const browser = await launch("chromium");
let failed = 0;
for (const page of pages.filter(({ name }) => name.includes(part))) {
  for (const size of page.sizes ?? sizes) {
    for (const theme of themes) {
      const context = await browser.createBrowserContext();
      const name = `${page.name}-${SIZES[size].width}-${theme === "dark" ? "night" : "day"}.png`;
      const file = path.join(folder, name);
      try {
        const visitor = await Visitor.arrive(context, "chromium", { size, theme, site: site.address });
        visitor.host = site;
        await page.arrive(visitor);
        // The line above a question's buttons is part of the picture once it has formed.
        if (/^(question|sharpen)-/u.test(page.name)) {
          await visitor.page.waitForFunction(() => /\d/u.test(document.querySelector(".forming__line")?.textContent ?? ""));
        }
        await visitor.page.screenshot({ path: file, fullPage: page.whole ?? true });
        for (const shown of page.readme ?? []) {
          if (path.parse(shown.name).name.split("-").slice(1).join("-") !== path.parse(name).name.slice(page.name.length + 1)) continue;
          // Documents show one screen, or one part of it, in a file that loads at once.
          const whole = shown.part ? await visitor.page.$(shown.part) : visitor.page;
          mkdirSync(docs, { recursive: true });
          const bytes = await whole.screenshot({ path: path.join(docs, shown.name), quality: 85 });
          if (bytes.length > README_BYTES) throw new Error(`docs/${shown.name} has ${bytes.length} bytes, more than ${README_BYTES}`);
        }
        console.log(`  ${path.relative(ROOT, file)}`);
      } catch (error) {
        failed += 1;
        console.log(`  ✗ ${page.name}, ${size}, ${theme}: ${error.message}`);
      }
      await context.close();
    }
  }
}
await browser.close();
await site.close();
process.exit(failed > 0 ? 1 : 0);
