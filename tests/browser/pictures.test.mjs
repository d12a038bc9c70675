// The pictures: handles by mouse, touch and keyboard, values read out, drawings against their data.
import { SEAT, SIZES, answered, assert, journey, until } from "./lib.mjs";
import { pages } from "./pages.mjs";

const ofName = (name) => pages.find((page) => page.name === name);

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

/** What a handle says, with plain spaces. */
const spoken = (element) => element.evaluate((node) => node.getAttribute("aria-valuetext").replace(/\s/gu, " "));

/** Half the length of the thin line between the bars, px, in the first plane and the second. */
const gaps = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll(".view__picture")].map((picture) => {
      const lines = [...picture.querySelectorAll(".view__reticle")].flatMap((path) =>
        [...(path.getAttribute("d") ?? "").matchAll(/M([\d.-]+) [\d.-]+H([\d.-]+)/g)].map((line) => Math.abs(line[2] - line[1]) / 2),
      );
      return Math.min(...lines);
    }),
  );

/** Chooses a family of reticles by its place in the list; 0 is the sight's own. */
async function choose(visitor, place) {
  await visitor.page.evaluate((n) => {
    const select = document.querySelector(".view__choice select");
    select.selectedIndex = n;
    select.dispatchEvent(new Event("change", { bubbles: true }));
  }, place);
}

async function press(visitor, name) {
  const found = await visitor.page.evaluateHandle((wanted) => [...document.querySelectorAll(".view__toggles button")].find((one) => one.textContent.replace(/\s/gu, " ") === wanted.replace(/\s/gu, " ")), name);
  assert.ok(found.asElement(), `no button is called ${name}`);
  await visitor.tap(found.asElement());
  await visitor.until(`${name} is pressed`, (_page) => found.evaluate((one) => one.getAttribute("aria-pressed") === "true"));
}

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
  assert.equal(await spoken(power), "10 ×");
  const drawn = (power) => visitor.until(power, async (_page) => (await visitor.text(".view__said")).replace(/\s/gu, " ").includes(power));
  await drawn("10 ×");
  const [first10, second10] = await gaps(visitor.page);
  // At the magnification where the label holds both planes agree to a tenth of a pixel.
  assert.ok(Math.abs(first10 - second10) < 0.1, `${first10} ${second10}`);
  await visitor.keys("Home");
  assert.equal(await spoken(power), "2.5 ×");
  await drawn("2.5 ×");
  const [first2, second2] = await gaps(visitor.page);
  // First plane: shrinks with the picture, a quarter at 2.5×. Second plane: stays to the eye.
  assert.ok(Math.abs(first2 - first10 / 4) < 0.1, `${first2} ${first10}`);
  assert.ok(Math.abs(second2 - second10) < 0.1, `${second2} ${second10}`);
  await visitor.keys("PageUp");
  assert.equal(await spoken(power), "3.5 ×");
  await visitor.until("the words follow", () => /3\.5\s×/u.test(document.querySelector(".view__said").textContent));
});

journey("words that were still to follow give way to a new reticle", {}, async (visitor) => {
  await open(visitor);
  const power = await handle(visitor, "Magnification");
  await power.focus();
  await visitor.keys("End");
  await choose(visitor, 8);
  await new Promise((next) => setTimeout(next, 400));
  assert.match(await visitor.text(".view__said"), /one mark/);
  assert.doesNotMatch(await visitor.text(".view__said"), /centre to bar/);
});

journey("a reticle that counts in minutes of angle is told in minutes, its clicks with it", { browsers: ["chromium"] }, async (visitor) => {
  await open(visitor);
  const plain = (text) => text.replace(/\s+/gu, " ");
  const covers = () => visitor.page.$$eval(".view__covers", (all) => all.slice(0, 2).map((one) => one.textContent));
  const families = await visitor.page.$$eval(".view__choice option", (all) => all.map((one) => one.textContent));
  await choose(visitor, families.findIndex((name) => /minutes of angle/.test(name)));
  await visitor.until("minutes", async (_page) => (await covers()).every((text) => /: [\d.]+ MOA, /.test(plain(text))));
  // A minute is 2.909 cm at 100 m (π/10 800 rad): what is covered fits what is told.
  const [, first_moa, first_cm] = plain((await covers())[0]).match(/: ([\d.]+) MOA, ([\d.]+) cm/);
  const range_m = Number((await spoken(await handle(visitor, "Range"))).match(/\d+/)[0]);
  const cm = first_moa * 2.909 * range_m / 100;
  assert.ok(Math.abs(first_cm - cm) < 0.06 + 0.05 * 2.909 * range_m / 100, `${first_moa} MOA at ${range_m} m are ${cm} cm, told ${first_cm}`);
  // Who counts in minutes has the flight's clicks in quarters of one.
  await answered(visitor, { ...SEAT, distance: { habit: "dial", unit: "moa" } });
  await visitor.reload();
  await visitor.open("#/pictures");
  const told = await until("the flight's words", async () => plain(await visitor.text("#main")).match(/hold ([\d.]+) MOA, or (\d+) clicks of ¼ MOA/));
  assert.ok(Math.abs(told[2] - 4 * told[1]) <= 0.71, told[0]);
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
    const last = before;
    await visitor.until(`it is darker than ${last}`, async (_page) => (await luminance()) < last);
    before = await luminance();
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
  assert.match(await spoken(power), /^(10|9\.\d) ×$/);
});

journey("extremes are drawn and said", {}, async (visitor) => {
  await open(visitor);
  for (const quarry of ["moose", "ground_squirrel_or_rat", "air_rifle_10_m"]) {
    await visitor.page.select("#demo-quarry", quarry);
    for (const reticle of [1, 11, 7]) {
      await choose(visitor, reticle);
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
  const through = await scale();
  await press(visitor, "bare eye");
  // Four times smaller than at 4×, and no line left.
  await visitor.until("it is drawn small", async (_page) => Math.abs((await scale()) * 4 - through) < 1e-3 * through);
  assert.equal(await visitor.page.$$eval(".view__reticle", (all) => all.length), 0);
  await press(visitor, "2.5–10 × 50");
  const red = () => visitor.page.$$eval(".view__reticle", (all) => all.filter((one) => (one.getAttribute("stroke") ?? one.getAttribute("fill")) === "#e83c2c").length);
  assert.equal(await red(), 0);
  await press(visitor, "day strength");
  await visitor.until("both planes glow", async (_page) => (await red()) >= 2);
  // By the last light the veil is said, in per cent; by day the night strength is not seen.
  const strip = await handle(visitor, "Time of the evening");
  await strip.focus();
  for (let n = 0; n < 6; n += 1) await visitor.keys("PageUp");
  await visitor.until("its veil is said", () => /its veil adds [\d\s]+\s%/.test(document.querySelector(".view__said").textContent));
  await press(visitor, "night strength");
  await strip.focus();
  for (let n = 0; n < 12; n += 1) await visitor.keys("PageDown");
  await visitor.until("it is not seen by day", () => document.querySelector(".view__said").textContent.includes("it is not seen"));
});

journey("a second sight shows the same scene", {}, async (visitor) => {
  await open(visitor);
  const power = await handle(visitor, "Magnification");
  await power.focus();
  await visitor.keys("End");
  await press(visitor, "4 × 32");
  // It has no zoom: the handle is held to what it has.
  await visitor.until("its own magnification", () => /4\s×\s32, 4\s×/u.test(document.querySelector(".view__said").textContent));
});

journey("the eye off its place sees a shadow that is computed", {}, async (visitor) => {
  await open(visitor);
  await visitor.page.evaluate(() => (document.querySelector(".view__eye").open = true));
  const power = await handle(visitor, "Magnification");
  await power.focus();
  await visitor.keys("End");
  const aside = await handle(visitor, "Eye sideways");
  const shades = () => visitor.page.$$eval(".view__picture .view__shade", (all) => all.filter((one) => one.getAttribute("display") !== "none").map((one) => Number(one.getAttribute("fill-opacity"))));
  assert.deepEqual(await shades(), []);
  await aside.focus();
  await visitor.keys("PageUp", "PageUp");
  assert.match(await spoken(aside), /2\.0\smm right/);
  // At the eye point all darkens alike, in both pictures.
  await visitor.until("both darken", async (_page) => (await shades()).length === 2);
  const [even] = await shades();
  assert.ok(even > 0 && even < 1, `${even}`);
  const along = await handle(visitor, "Eye along the axis");
  await along.focus();
  await visitor.keys("PageUp", "PageUp");
  assert.match(await spoken(along), /10\smm back/);
  const centre = await visitor.page.$eval(".view__picture radialGradient", (one) => [Number(one.getAttribute("cx")), Number(one.getAttribute("r"))]);
  const width = await visitor.page.$eval(".view__picture", (one) => one.viewBox.baseVal.width);
  assert.ok(centre[0] < width / 2, "the light is left on the other side");
  await visitor.until("it is said", () => /%\sat the left edge/.test(document.querySelector(".view__eye").textContent));
  await aside.focus();
  await visitor.keys("End");
  await along.focus();
  await visitor.keys("Home", "End");
  assert.equal(await visitor.page.evaluate(() => /NaN|inf/i.exec(document.querySelector(".view__pair").innerHTML)?.[0] ?? false), false);
});

journey("every picture says its scale, what it leaves out, and where it comes from", {}, async (visitor) => {
  await open(visitor);
  const told = await visitor.page.$$eval(".picture", (all) =>
    all.map((one) => ({
      title: one.querySelector("h2").textContent,
      scale: [...one.querySelectorAll(".picture__scale")].map((words) => words.textContent).join(" "),
      sources: one.querySelector(".picture__source").textContent,
      handles: one.querySelectorAll("[role=slider]").length,
      keeps: one.querySelectorAll(".picture__keep button").length,
      drawings: [...one.querySelectorAll("svg[data-keep]")].filter((svg) => svg.closest("[aria-hidden], [role=slider]") === null && !(svg.getAttribute("aria-label") || svg.getAttribute("aria-labelledby"))).length,
    })),
  );
  for (const one of told) {
    assert.match(one.scale, /scale|Height is drawn|linear/, one.title);
    assert.match(one.sources, /Left out:/, one.title);
    assert.match(one.sources, /Computed from:/, one.title);
    assert.ok(one.handles >= 1, one.title);
    assert.equal(one.keeps, 2, one.title);
    assert.equal(one.drawings, 0, `${one.title}: a drawing without words`);
  }
});

for (const means of ["keys", "mouse", "thumb"]) {
  const options = means === "mouse" ? { size: "desk" } : means === "thumb" ? { browsers: ["chromium"] } : {};
  journey(`every handle of every picture answers to ${means}, speaks, and changes its picture`, options, async (visitor) => {
    await open(visitor);
    await visitor.page.evaluate(() => document.querySelectorAll(".view details").forEach((one) => (one.open = true)));
    const handles = await visitor.page.$$(".picture [role=slider]");
    const pictures = new Set();
    for (const one of handles) {
      await one.evaluate((node) => node.scrollIntoView({ block: "center", behavior: "instant" }));
      // All of the picture but the handles: where nothing is to be drawn anew, the words say so.
      const drawn = () =>
        one.evaluate((node) => {
          const copy = node.closest(".picture").cloneNode(true);
          copy.querySelectorAll(".slide").forEach((handle) => handle.remove());
          return copy.innerHTML;
        });
      const name = await one.evaluate((node) => `${node.closest(".picture").querySelector("h2").textContent}: ${node.getAttribute("aria-label") ?? document.getElementById(node.getAttribute("aria-labelledby")).textContent}`);
      const [said, before] = [await spoken(one), await drawn()];
      if (means === "keys") {
        await one.focus();
        await visitor.keys("PageUp");
        if ((await spoken(one)) === said) await visitor.keys("PageDown");
      } else {
        const box = await one.boundingBox();
        // Off the middle of the way, and off where the handle stands, on one of two places.
        const now = await one.evaluate((node) => (node.getAttribute("aria-valuenow") - node.getAttribute("aria-valuemin")) / (node.getAttribute("aria-valuemax") - node.getAttribute("aria-valuemin")));
        const to = box.x + box.width * (now > 0.5 ? 0.2 : 0.8);
        const y = box.y + box.height / 2;
        if (means === "mouse") {
          await visitor.page.mouse.move(box.x + box.width / 2, y);
          await visitor.page.mouse.down();
          await visitor.page.mouse.move(to, y, { steps: 3 });
          await visitor.page.mouse.up();
        } else {
          await visitor.page.touchscreen.touchStart(box.x + box.width / 2, y);
          await visitor.page.touchscreen.touchMove(to, y);
          await visitor.page.touchscreen.touchEnd();
        }
      }
      assert.notEqual(await spoken(one), said, `${name} says the same`);
      await visitor.until(`${name} changes its picture`, async (_page) => (await drawn()) !== before);
      pictures.add(name.split(":")[0]);
    }
    assert.equal(pictures.size, 7);
  });
}

journey("a tablet shows the view with all its handles beside the advice", { size: "tablet" }, async (visitor) => {
  await ofName("advice").arrive(visitor);
  const out = () => visitor.page.$$eval(".advice__seen :is(.view__picture, [role=slider])", (all) => {
    const column = document.querySelector(".advice__seen").getBoundingClientRect();
    return all.filter((one) => one.checkVisibility()).map((one) => one.getBoundingClientRect()).filter(({ height }) => height > 0)
      .map(({ top, bottom }) => [top - column.top, Math.min(column.bottom, innerHeight) - bottom]);
  });
  await visitor.until("two pictures and three handles", async (_page) => (await out()).length === 5);
  for (const scrolled of [0, 2_000]) {
    await visitor.page.evaluate((to) => scrollTo(0, to), scrolled);
    assert.ok((await out()).every(([above, below]) => above >= 0 && below >= 0), `${scrolled}: ${JSON.stringify(await out())}`);
  }
});

journey("the handle of the strip leaves its names legible", {}, async (visitor) => {
  await ofName("advice").arrive(visitor);
  await (await handle(visitor, "Time of the evening")).focus();
  await visitor.keys("Home");
  const told = await visitor.page.$eval(".advice__seen .strip__drawing", (drawing) => {
    const line = drawing.querySelector("path.halo").parentNode;
    const { x } = line.getBoundingClientRect();
    const ground = getComputedStyle(document.body).backgroundColor;
    return [...drawing.querySelectorAll(".strip__row, .strip__tick, .strip__name")].map((name) => {
      const { left, right } = name.getBoundingClientRect();
      const style = getComputedStyle(name);
      const above = Boolean(line.compareDocumentPosition(name) & Node.DOCUMENT_POSITION_FOLLOWING);
      return { crossed: left < x && x < right, clear: (above || name.matches(".strip__name")) && style.stroke === ground && style.paintOrder.startsWith("stroke") };
    });
  });
  assert.ok(told.some(({ crossed }) => crossed), "the handle stands on a name");
  assert.ok(told.every(({ clear }) => clear), JSON.stringify(told));
});

journey("an animal larger than the field does not hide how wide the field is", {}, async (visitor) => {
  await open(visitor);
  await visitor.page.select("#demo-quarry", "moose");
  const range = await visitor.page.evaluateHandle(() => document.querySelector(".crossing").closest(".picture").querySelectorAll("[role=slider]")[1]);
  await range.focus();
  await visitor.keys("Home");
  await visitor.until("it is said", () => document.querySelector(".crossing").closest(".picture").textContent.includes("larger than the field"));
  const order = await visitor.page.$eval(".crossing", (svg) => {
    const all = [...svg.querySelectorAll("*")];
    return all.indexOf(svg.querySelector("g[transform]")) < all.indexOf([...svg.querySelectorAll("text")].find((one) => one.textContent.includes("·")));
  });
  assert.ok(order, "the widths are drawn over the animal");
});

journey("two drawings of a picture are two", {}, async (visitor) => {
  await open(visitor);
  const same = await visitor.page.$$eval(".picture__row", (all) => all.filter((row) => new Set([...row.querySelectorAll("svg")].map((svg) => svg.innerHTML)).size < row.querySelectorAll("svg").length).length);
  assert.equal(same, 0);
});

journey("what one does at a range is drawn four ways", {}, async (visitor) => {
  await open(visitor);
  const names = await visitor.page.$$eval(".flight__means", (all) => all.map((one) => one.textContent));
  assert.deepEqual(names, ["dead on", "ring", "dial"]);
  await visitor.until("ring and mark are said", () => document.body.textContent.includes("A ring with a mark every 50"));
});

journey("while a handle moves only its own drawing is laid out", { browsers: ["chromium"], size: "desk" }, async (visitor) => {
  await open(visitor);
  const session = await visitor.page.createCDPSession();
  for (const one of await visitor.page.$$(".picture [role=slider]")) {
    if (await one.evaluate((node) => node.closest("details:not([open])") !== null)) continue;
    await one.evaluate((node) => node.scrollIntoView({ block: "center", behavior: "instant" }));
    const box = await one.boundingBox();
    const y = box.y + box.height / 2;
    await visitor.page.mouse.move(box.x + box.width / 2, y);
    await visitor.page.mouse.down();
    await visitor.page.mouse.move(box.x + box.width * 0.55, y);
    await visitor.page.evaluate(() => new Promise((rested) => setTimeout(rested, 300)));
    const events = [];
    const collect = ({ value }) => events.push(...value);
    session.on("Tracing.dataCollected", collect);
    const complete = new Promise((done) => session.once("Tracing.tracingComplete", done));
    await session.send("Tracing.start", { traceConfig: { includedCategories: ["devtools.timeline"] }, transferMode: "ReportEvents" });
    await visitor.page.mouse.move(box.x + box.width * 0.6, y);
    await visitor.page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
    await session.send("Tracing.end");
    await complete;
    session.off("Tracing.dataCollected", collect);
    await visitor.page.mouse.up();
    const name = await one.evaluate((node) => node.getAttribute("aria-label") ?? document.getElementById(node.getAttribute("aria-labelledby")).textContent);
    const layouts = events.filter((event) => event.name === "Layout" && event.args.beginData);
    assert.ok(layouts.length > 0, `${name}: nothing was laid out`);
    // The words follow when it rests: of the first layout, before that, nothing may be the page's.
    assert.equal(layouts[0].args.beginData.partialLayout, true, `${name}: the whole page is laid out`);
  }
});

journey("an animal runs only where motion is wanted", { browsers: ["chromium"], size: "desk" }, async (visitor) => {
  await open(visitor);
  const seen = () => visitor.page.$eval(".picture__run", (one) => getComputedStyle(one).display !== "none");
  assert.equal(await seen(), false);
  await visitor.page.emulateMediaFeatures([{ name: "prefers-reduced-motion", value: "no-preference" }]);
  assert.equal(await seen(), true);
  const place = () => visitor.page.$eval(".crossing g g", (one) => one.getAttribute("transform"));
  const still = await place();
  await visitor.tap(".picture__run button");
  const places = new Set();
  await visitor.until("it runs", async (_page) => places.add(await place()).size > 3);
  assert.ok(!places.has(still) || places.size > 3);
});

journey("the advice shows the person's own load in any reticle, and their own pictures", { browsers: ["chromium"] }, async (visitor) => {
  await ofName("advice").arrive(visitor);
  await visitor.seen(".view__picture");
  await visitor.until("holds are drawn", () => document.querySelectorAll(".view__holds").length === 2);
  assert.match(await visitor.text(".view__said"), /pointers? shows? where your bullet strikes/);
  // The pointer tells what the table of the flight tells.
  const plain = (text) => text.replace(/\s+/gu, " ");
  const [, at, low] = plain(await visitor.text(".view__hold-name")).match(/^(\d+ m): ([\d.]+ )cm low$/);
  assert.ok(plain(await visitor.text("#main")).includes(`At ${at}: ${low}± `), `${at}: ${low}`);
  await choose(visitor, 11);
  await visitor.until("the grid is drawn", () => document.querySelector(".view__said").textContent.includes("one mark"));
  await visitor.page.evaluate(() => (location.hash = "#/pictures"));
  await visitor.until("own pictures", () => document.querySelectorAll(".gallery .picture").length === 7);
  assert.match(await visitor.text(".gallery"), /Drawn for your answers/);
  await visitor.axe();
  await visitor.fits();
});

journey("on paper a picture has its words and what it leaves out, and no handles", { browsers: ["chromium"], size: "desk" }, async (visitor) => {
  await open(visitor);
  await visitor.page.emulateMediaType("print");
  const shown = await visitor.page.evaluate(() => {
    const seen = (selector) => [...document.querySelectorAll(selector)].map((one) => one.getBoundingClientRect().height > 0 && one.checkVisibility({ contentVisibilityAuto: true }));
    return { leftOut: seen(".picture__source summary + p"), sources: seen(".picture__source summary + p ~ p"), said: seen(".view__said"), handles: seen(".slide, .picture__keep, summary") };
  });
  assert.deepEqual(shown.leftOut, Array(7).fill(true));
  assert.deepEqual(shown.said, [true]);
  assert.ok(![...shown.sources, ...shown.handles].includes(true), JSON.stringify(shown));
  await visitor.page.emulateMediaType("screen");
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
    const said = [...read.documentElement.querySelectorAll(":scope > text")].map((line) => line.textContent).join(" ");
    return { error: read.querySelector("parsererror")?.textContent ?? null, drawings: read.documentElement.querySelectorAll("svg").length, said };
  }, svg);
  await reader.close();
  assert.equal(parsed.error, null);
  assert.ok(parsed.drawings >= 3, "both planes and the strip");
  for (const words of [/Through the sight/, /First focal plane/, /Second focal plane/, /To scale/, /Left out/]) assert.match(parsed.said, words);
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
