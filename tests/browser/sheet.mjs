// Takes a picture of every .html and .svg in a folder: node sheet.mjs folder
import { readdirSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { launch } from "./lib.mjs";

const folder = process.argv[2];
const browser = await launch("chromium");
for (const name of readdirSync(folder).filter((file) => /\.(html|svg)$/.test(file)).sort()) {
  const page = await browser.newPage();
  await page.setViewport({ width: 1440, height: 900 });
  await page.goto(pathToFileURL(path.join(folder, name)).href);
  const file = path.join(folder, name.replace(/\.\w+$/, ".png"));
  await page.screenshot({ path: file, fullPage: true });
  console.log(`  ${file}`);
  await page.close();
}
await browser.close();
