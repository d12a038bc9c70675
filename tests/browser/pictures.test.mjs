// The pictures: handles by mouse, touch and keyboard, values read out, drawings against their data.
import { SIZES, assert, journey } from "./lib.mjs";

const SLIDERS = "[role=slider]";

/** The name that a screen reader gives a handle. */
const named = (wanted) => {
  const name = (handle) => handle.getAttribute("aria-label") ?? document.getElementById(handle.getAttribute("aria-labelledby"))?.textContent;
  return [...document.querySelectorAll("[role=slider]")].find((handle) => name(handle) === wanted);
};

async function open(visitor) {
  await visitor.open("#/pictures");
  await visitor.seen(".view__picture");
}

async function handle(visitor, name) {
  const found = await visitor.page.evaluateHandle(named, name);
  assert.ok(found.asElement(), `no handle is called ${name}`);
  await found.asElement().evaluate((element) => element.scrollIntoView({ block: "center" }));
  return found.asElement();
}

const spoken = (element) => element.evaluate((node) => node.getAttribute("aria-valuetext"));

/** Which share of a picture's own width the gap between the bars takes, left slot and right. */
const gaps = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll(".view__picture")].map((picture) => {
      const centre = picture.viewBox.baseVal.width / 2;
      // The right bar begins where its line begins: the largest x of M before an H to the edge.
      const starts = [...picture.querySelectorAll(".view__reticle")].flatMap((path) =>
        [...(path.getAttribute("d") ?? "").matchAll(/M([\d.-]+) ([\d.-]+)H([\d.-]+)/g)]
          .filter((line) => Number(line[1]) > centre && Number(line[3]) > picture.viewBox.baseVal.width)
          .map((line) => Number(line[1]) - centre),
      );
      return Math.min(...starts);
    }),
  );

for (const size of ["phone", "tablet"]) {
  journey(`every picture is there and accessible, ${size}`, { size }, async (visitor) => {
    await open(visitor);
    assert.equal(await visitor.page.$$eval(".picture", (all) => all.length), 7);
    const silent = await visitor.page.$$eval(SLIDERS, (all) => all.filter((one) => !one.getAttribute("aria-valuetext")).length);
    assert.equal(silent, 0, "handles without a spoken value");
    await visitor.axe();
    await visitor.fits();
  });
}

journey("the power handle follows the keyboard, and the planes part", {}, async (visitor) => {
  await open(visitor);
  const power = await handle(visitor, "Magnification");
  await power.focus();
  await visitor.keys("End");
  assert.equal(await spoken(power), "10×");
  const [first10, second10] = await gaps(visitor.page);
  // At the magnification where the label holds both planes agree to a tenth of a pixel.
  assert.ok(Math.abs(first10 - second10) < 0.1, `${first10} ${second10}`);
  await visitor.keys("Home");
  assert.equal(await spoken(power), "2.5×");
  const [first2, second2] = await gaps(visitor.page);
  // First plane: shrinks with the picture, a quarter at 2.5× (the aim lies half a pixel right of the middle). Second plane: stays to the eye.
  assert.ok(Math.abs(first2 - ((first10 - 0.5) / 4 + 0.5)) < 0.1, `${first2} ${first10}`);
  assert.ok(Math.abs(second2 - second10) < 0.1, `${second2} ${second10}`);
  await visitor.keys("PageUp");
  assert.equal(await spoken(power), "3.5×");
  await visitor.until("the words follow", () => document.querySelector(".view__said").textContent.includes("3.5×"));
});

journey("words that were still to follow give way to a new reticle", {}, async (visitor) => {
  await open(visitor);
  const power = await handle(visitor, "Magnification");
  await power.focus();
  await visitor.keys("End");
  await visitor.page.select("#demo-reticle", "mrad");
  await new Promise((next) => setTimeout(next, 400));
  assert.match(await visitor.text(".view__said"), /one mark/);
  assert.doesNotMatch(await visitor.text(".view__said"), /centre to bar/);
});

journey("the strip is a handle, with Home at sunset", {}, async (visitor) => {
  await open(visitor);
  const strip = await handle(visitor, "Time of the evening");
  await strip.focus();
  await visitor.keys("Home");
  assert.match(await spoken(strip), /at sunset/);
  await visitor.keys("PageUp", "ArrowRight");
  assert.match(await spoken(strip), /11\smin after sunset/);
  await visitor.keys("End");
  assert.match(await spoken(strip), /this sight: told apart/);
  assert.match(await spoken(strip), /bare eye: no longer/);
});

journey("it grows dark through the sight", {}, async (visitor) => {
  await open(visitor);
  const luminance = () =>
    visitor.page.evaluate(() => {
      const fill = document.querySelector(".view__picture g > rect:nth-of-type(2)").getAttribute("fill");
      return [1, 3, 5].map((at) => parseInt(fill.slice(at, at + 2), 16)).reduce((a, b) => a + b);
    });
  const strip = await handle(visitor, "Time of the evening");
  await strip.focus();
  let before = Infinity;
  for (let step = 0; step < 5; step += 1) {
    const now = await luminance();
    assert.ok(now < before, `no darker than before: ${before} ${now}`);
    before = now;
    await visitor.keys("PageUp");
  }
});

journey("a handle follows the pointer", { size: "desk" }, async (visitor) => {
  await open(visitor);
  const range = await handle(visitor, "Range");
  const box = await range.boundingBox();
  const y = box.y + box.height / 2;
  await visitor.page.mouse.move(box.x + box.width / 2, y);
  await visitor.page.mouse.down();
  await visitor.page.mouse.move(box.x + box.width * 0.75, y, { steps: 4 });
  await visitor.page.mouse.move(box.x + box.width + 40, y, { steps: 4 });
  await visitor.page.mouse.up();
  assert.match(await spoken(range), /1500/);
  await visitor.page.mouse.move(box.x, y);
  assert.match(await spoken(range), /1500/, "moves without being held");
});

journey("a handle follows a thumb", { browsers: ["chromium"] }, async (visitor) => {
  await open(visitor);
  const power = await handle(visitor, "Magnification");
  const box = await power.boundingBox();
  await visitor.page.touchscreen.touchStart(box.x + 4, box.y + box.height / 2);
  await visitor.page.touchscreen.touchMove(box.x + box.width - 4, box.y + box.height / 2);
  await visitor.page.touchscreen.touchEnd();
  assert.match(await spoken(power), /^(10|9\.\d)×$/);
});

journey("extremes are drawn and said", {}, async (visitor) => {
  await open(visitor);
  for (const quarry of ["moose", "ground_squirrel_or_rat", "air_rifle_10_m"]) {
    await visitor.page.select("#demo-quarry", quarry);
    for (const reticle of ["fine", "grid", "circle-dot"]) {
      await visitor.page.select("#demo-reticle", reticle);
      const range = await handle(visitor, "Range");
      await range.focus();
      for (const key of ["Home", "End"]) {
        await visitor.keys(key);
        const bad = await visitor.page.evaluate(() => /NaN|Infinity|\binf\b/.exec(document.querySelector(".picture").innerHTML)?.[0] ?? false);
        assert.equal(bad, false, `${quarry} ${reticle} ${key}`);
      }
    }
  }
  await visitor.page.select("#demo-quarry", "moose");
  const range = await handle(visitor, "Range");
  await range.focus();
  await visitor.keys("Home");
  await visitor.until("larger than the field", () => document.querySelector(".view__said").textContent.includes("larger than the field"));
});

journey("what touches is said and shown", {}, async (visitor) => {
  await open(visitor);
  const saddle = await handle(visitor, "Height of the ring’s saddle over the rail");
  await saddle.focus();
  await visitor.keys("Home");
  await visitor.until("the bolt touches", () => document.body.textContent.includes("touches the lifted bolt"));
  assert.ok(await visitor.page.$(".rifle .fails-fill"));
  await visitor.keys("End");
  await visitor.until("all clears", () => !document.querySelector(".rifle .fails-fill"));
});

journey("the pictures stand on the smallest screen", { size: "small" }, async (visitor) => {
  await open(visitor);
  await visitor.fits();
  const wide = await visitor.page.$$eval(".picture svg", (all, width) => all.filter((one) => one.getBoundingClientRect().right > width).length, SIZES.small.width);
  assert.equal(wide, 0, "pictures wider than the screen");
});

journey("the bare eye sees it small and without a reticle, and the centre can be lit", {}, async (visitor) => {
  await open(visitor);
  const scale = () =>
    visitor.page.evaluate(() => Number(/scale\(([\d.]+)/.exec(document.querySelector(".view__picture g > g").getAttribute("transform"))[1]));
  const button = async (name) => {
    const found = await visitor.page.evaluateHandle((wanted) => [...document.querySelectorAll(".view__toggles button")].find((one) => one.textContent === wanted), name);
    return found.asElement();
  };
  const through = await scale();
  const bare = await button("bare eye");
  await visitor.tap(bare);
  assert.equal(await bare.evaluate((one) => one.getAttribute("aria-pressed")), "true");
  // Four times smaller than at 4×, and no line left.
  assert.ok(Math.abs((await scale()) * 4 - through) < 1e-3 * through);
  assert.equal(await visitor.page.$$eval(".view__reticle", (all) => all.filter((one) => one.getAttribute("d")).length), 0);
  await visitor.tap(bare);
  const red = () => visitor.page.$$eval(".view__reticle", (all) => all.filter((one) => (one.getAttribute("stroke") ?? one.getAttribute("fill")) === "#e83c2c").length);
  assert.equal(await red(), 0);
  await visitor.tap(await button("light the centre"));
  assert.ok((await red()) >= 2, "both planes glow");
});

journey("a kept picture is a drawing of its own", { size: "desk", browsers: ["chromium"] }, async (visitor) => {
  await open(visitor);
  const kept = await visitor.page.evaluate(async () => {
    const found = new Promise((done) => {
      HTMLAnchorElement.prototype.click = function click() {
        done({ href: this.href, name: this.download });
      };
    });
    document.querySelector(".picture__keep button").click();
    return found;
  });
  assert.equal(kept.name, "through-the-sight.svg");
  const svg = decodeURIComponent(kept.href.split(",").slice(1).join(","));
  assert.match(svg, /^<svg xmlns/);
  // Read in a page of its own, which no policy of the site governs.
  const reader = await visitor.page.browserContext().newPage();
  const parsed = await reader.evaluate((source) => {
    const read = new DOMParser().parseFromString(source, "image/svg+xml");
    return { error: read.querySelector("parsererror")?.textContent ?? null, drawings: read.documentElement.querySelectorAll("svg").length };
  }, svg);
  await reader.close();
  assert.equal(parsed.error, null);
  assert.ok(parsed.drawings >= 3, "both planes and the strip");
  const png = await visitor.page.evaluate(async () => {
    const found = new Promise((done) => {
      HTMLAnchorElement.prototype.click = function click() {
        done(this.href.slice(0, 22));
      };
    });
    document.querySelectorAll(".picture__keep button")[1].click();
    return found;
  });
  assert.equal(png, "data:image/png;base64,");
});
