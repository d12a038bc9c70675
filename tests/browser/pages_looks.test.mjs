// What holds on every page: nothing scrolls sideways, and trade terms explain themselves.
import { assert, journey, until } from "./lib.mjs";
import { pages } from "./pages.mjs";

const ofName = (name) => pages.find((page) => page.name === name);

for (const size of ["small", "phone"]) {
  for (const { name, arrive } of pages) {
    journey(`${name} at once and at twice the text size`, { size, browsers: ["chromium"] }, async (visitor) => {
      await arrive(visitor);
      await visitor.fits();
      const covers = () => visitor.page.evaluate(() => {
        scrollTo(0, 0);
        const bar = document.querySelector(".bar")?.getBoundingClientRect();
        return bar ? Math.max(0, Math.min(bar.bottom, innerHeight) - Math.max(bar.top, 0)) / innerHeight : 0;
      });
      assert.ok((await covers()) < 0.2, "what is held to the edge leaves the screen to the page");
      await visitor.page.evaluate(() => {
        document.documentElement.style.fontSize = "200%";
        for (const folded of document.querySelectorAll("details")) folded.open = true;
      });
      await until("the page fits at twice the text size", async () => {
        await visitor.fits();
        return true;
      }, 4_000);
      assert.ok((await covers()) < 0.2, "neither at twice the text size");
      const broken = await visitor.page.$$eval(".choice__name", (all) => all.filter((one) => one.checkVisibility() && one.getBoundingClientRect().width < 4 * parseFloat(getComputedStyle(one).fontSize)).map((one) => one.textContent));
      assert.deepEqual(broken, [], "no answer is broken letter by letter");
    });
  }
}

journey("a trade term is explained on a tap, in place, once on a page", {}, async (visitor) => {
  await ofName("advice").arrive(visitor);
  const TERM = "button[data-term]";
  await visitor.seen(TERM);
  await visitor.until(
    "each term is explained where it stands first",
    (selector) => {
      const keys = [...document.querySelectorAll(selector)].map((button) => button.dataset.term);
      return keys.length > 4 && new Set(keys).size === keys.length;
    },
    TERM,
  );
  const tube = 'button[data-term="tube"]';
  await visitor.tap(tube);
  assert.equal(await visitor.page.$eval(tube, (button) => button.getAttribute("aria-expanded")), "true");
  const means = await visitor.page.$eval(tube, (button) => document.getElementById(button.getAttribute("aria-controls")).textContent);
  assert.match(means, /^Tube: .*rings/u);
  await visitor.fits();
  await visitor.axe();
  await visitor.tap(tube);
  assert.equal(await visitor.page.$eval(tube, (button) => button.getAttribute("aria-expanded")), "false");

  // By keyboard, on a question whose options hold the words.
  await ofName("question-mount").arrive(visitor);
  const rail = 'button[data-term="rail"]';
  await visitor.tabTo(rail);
  await visitor.keys("Enter");
  await visitor.seen(".means");
  assert.match(await visitor.text(".means"), /^Slotted rail: /u);
  await visitor.axe();
});

journey("a question promises a tap only for words that can be tapped", { browsers: ["chromium"] }, async (visitor) => {
  let rows = 0;
  for (const { name, arrive } of pages.filter(({ name }) => /^(question|sharpen)-/u.test(name))) {
    await arrive(visitor);
    await visitor.until("the terms are given out", () => {
      const promised = [...document.querySelectorAll("main > p.small")].find((one) => one.textContent.startsWith("Tap a word"));
      return !promised || promised.textContent.split(" · ").length === promised.querySelectorAll("button[data-term]").length;
    }).catch((error) => { throw new Error(`${name}: ${error.message}`); });
    rows += await visitor.page.$$eval("main > p.small", (all) => all.filter((one) => one.textContent.startsWith("Tap a word")).length);
  }
  assert.ok(rows > 0, "some question has such a row");
});

journey("what is chosen can be read on paper", { size: "desk", browsers: ["chromium"] }, async (visitor) => {
  for (const [name, chosen] of [["zero", ".chip:has(:checked) span"], ["question-quarry", ".segment:has(:checked) span"]]) {
    await ofName(name).arrive(visitor);
    await visitor.seen(chosen);
    await visitor.page.emulateMediaType("print");
    // A printer leaves grounds out: the words alone must tell.
    assert.deepEqual(await visitor.page.$$eval(chosen, (all) => [...new Set(all.map((one) => getComputedStyle(one).color))]), ["rgb(0, 0, 0)"], name);
    await visitor.page.emulateMediaType("screen");
  }
  await ofName("pictures").arrive(visitor);
  await visitor.page.emulateMediaType("print");
  const [title, lead] = await visitor.page.$$eval("main > h1, main > h1 + p", (all) => all.map((one) => one.getBoundingClientRect()).map(({ top, bottom }) => [top, bottom]));
  assert.ok(title[1] <= lead[0], `the title ends at ${title[1]}, the words under it begin at ${lead[0]}`);
});

journey("the advice prints on one page", { size: "desk", browsers: ["chromium"] }, async (visitor) => {
  await ofName("advice").arrive(visitor);
  await until("how sure it is stands there", () => visitor.page.$("#sure .fold__sum"));
  const printed = Buffer.from(await visitor.page.pdf({ format: "A4" })).toString("latin1");
  assert.equal(printed.match(/\/Type\s*\/Page\b/gu)?.length, 1);
});
