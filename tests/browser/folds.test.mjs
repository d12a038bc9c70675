// The advice folded: short while closed, everything one tap away, on paper and for a link it opens.
import { SEAT, answered, assert, journey, until } from "./lib.mjs";

async function advice(visitor, change = {}) {
  await answered(visitor, { ...SEAT, ...change });
  await visitor.open("#/advice");
  await visitor.seen(".needs");
}

const isOpen = (visitor, fold) => visitor.page.$eval(fold, (details) => details.open);

journey("the advice on a phone is short while it is folded, and says in numbers what is in it", {}, async (visitor) => {
  await advice(visitor);
  await visitor.seen("#sure .fold__sum");
  const screens = await visitor.page.evaluate(() => document.documentElement.scrollHeight / innerHeight);
  assert.ok(screens <= 7, `${screens.toFixed(1)} screens`);
  await until("every fold says in a line with numbers what is in it", async () => {
    const bare = await visitor.page.$$eval(".fold", (folds) =>
      folds.filter((fold) => !/\d/u.test(fold.querySelector(".fold__sum").textContent)).map((fold) => fold.id));
    return bare.join() === "keep";
  });
  await visitor.axe();
});

journey("a fold opens by key, and the share button opens what it leads to", {}, async (visitor) => {
  await advice(visitor);
  await visitor.tabTo("#reasons > summary", 120);
  assert.ok(!(await isOpen(visitor, "#reasons")));
  await visitor.keys("Enter");
  await visitor.seen(".reason");
  await visitor.keys("Tab");
  assert.ok(await visitor.page.evaluate(() => document.activeElement.closest("#reasons .fold__in") !== null), "the next stop is in it");
  await visitor.keys("Escape");
  assert.ok(!(await isOpen(visitor, "#keep")));
  await visitor.tap(".bar__buttons .button:last-child");
  await until("the code stands open and has the keyboard", async () =>
    (await isOpen(visitor, "#keep")) && (await visitor.page.evaluate(() => document.activeElement.id === "share")));
  await visitor.axe();
});

journey("paper shows what is folded, and the screen folds it again", { size: "desk" }, async (visitor) => {
  await advice(visitor);
  await visitor.tap("#others > summary");
  const open = () => visitor.page.$$eval(".fold[open]", (folds) => folds.map((fold) => fold.id));
  assert.deepEqual(await open(), ["others"]);
  await visitor.page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  assert.equal((await open()).length, await visitor.page.$$eval(".fold", (folds) => folds.length));
  await visitor.page.evaluate(() => dispatchEvent(new Event("afterprint")));
  assert.deepEqual(await open(), ["others"]);
});

journey("who is out in the morning sees it from dark to light", {}, async (visitor) => {
  await advice(visitor);
  assert.equal(await visitor.page.$(".advice__dawn"), null, "nobody asked for a morning");
  await visitor.open("#/question/light");
  await visitor.tap('label[for="morning-yes"]');
  assert.ok(await visitor.page.evaluate(() => JSON.parse(localStorage.getItem("scopewright.answers")).light.morning));
  await advice(visitor, { light: { ...SEAT.light, morning: true } });
  await visitor.seen(".advice__dawn .strip");
  const said = await visitor.text(".advice__dawn .strip .unseen");
  for (const part of [/sunrise \d\d:\d\d/u, /bare eye: from about \d+\smin.*before sunrise/u, /this sight: from about \d+\smin.*before sunrise/u]) assert.match(said, part);
  // The Sun rises later than the first twilight, and the sight begins before the bare eye.
  const bars = await visitor.page.$$eval(".advice__dawn rect.pick-fill, .advice__dawn rect.soft-fill", (all) =>
    all.map((bar) => [Number(bar.getAttribute("x")), Number(bar.getAttribute("x")) + Number(bar.getAttribute("width"))]));
  const [[bare, end], [sight, same]] = bars;
  assert.ok(sight < bare && Math.abs(end - same) < 0.2, JSON.stringify(bars));
  const lightness = await visitor.page.$$eval(".advice__dawn linearGradient stop", (stops) =>
    [stops[0], stops.at(-1)].map((stop) => Number.parseInt(stop.getAttribute("stop-color").slice(1, 3), 16)));
  assert.ok(lightness[0] < lightness[1], `from dark to light: ${lightness}`);
  await visitor.fits();
  await visitor.axe();
});

journey("who stops by day sees lengths instead of a dusk", {}, async (visitor) => {
  await advice(visitor, { light: { until: "daylight" } });
  await visitor.seen(".advice__day");
  assert.equal(await visitor.page.$(".advice__strip"), null);
  assert.match(await visitor.text(".advice__day"), /Aiming circle.*cm/u);
  await visitor.fits();
  await visitor.axe();
});
