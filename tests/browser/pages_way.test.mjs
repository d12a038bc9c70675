// The whole way from the opening to the moving view, by pointer and by keyboard alone.
import { assert, journey, until } from "./lib.mjs";

const NEXT = ".bar .button--primary";
const label = (id) => `label[for="${id}"]`;
const chip = (name, at) => `.chip:nth-of-type(${at}):has(input[name="${name}"])`;

/** What is tapped on each question; "select" counts as two taps: open the list, choose. */
const WAY = [
  ["quarry", [label("uses-roe_deer")]],
  ["manner", [label("manners-seat_rail")]],
  ["light", [label("until-half_hour_after_sunset"), label("covers-edge")]],
  ["ranges", []],
  ["money", [label("band-C"), label("attitude-what_it_is_worth")]],
  ["rifle", [["#field-cartridge", "308_win_10_7_g"], chip("rifle_mass", 3)]],
  ["eye", [chip("age", 4), label("glasses-no_glasses")]],
  ["mount", [chip("rings", 1), label("base-slotted_rail")]],
];

async function at(visitor, key) {
  await visitor.until(
    `the page ${key} with the focus at its heading`,
    (wanted) => location.hash === wanted && document.activeElement?.id === "title",
    `#/question/${key}`,
  );
  await visitor.seen("h1");
}

async function choose(visitor, what) {
  if (Array.isArray(what)) {
    visitor.counted += 2;
    await visitor.page.select(what[0], what[1]);
  } else {
    await visitor.tap(what);
  }
}

for (const size of ["phone", "tablet", "desk"]) {
  journey("from the first question to the moving view by pointer", { size }, async (visitor) => {
    await visitor.open();
    visitor.counted = 0;
    await visitor.tap(".opening__start .button--primary");
    for (const [key, taps] of WAY) {
      await at(visitor, key);
      for (const what of taps) await choose(visitor, what);
      await visitor.fits().catch((error) => assert.fail(`${key}: ${error.message}`));
      if (size === "phone") await visitor.axe();
      await visitor.tap(NEXT);
    }
    await visitor.until("all answers", () => location.hash === "#/check");
    await visitor.seen(".told__row");
    if (size === "phone") await visitor.axe();
    await visitor.tap(NEXT);
    await visitor.seen(".needs");
    assert.match(await visitor.text(".line__glass"), /^[\d.]+(–[\d.]+)?\s×\s[\d.]+$/u);
    const [powers, lens] = (await visitor.text(".line__glass")).split(/\s×\s/u);
    assert.equal((await visitor.text(".line__means")).replace(/\s/gu, " "), `${powers} times larger, front lens ${lens} mm`);
    await visitor.fits();
    await visitor.axe();

    // The power handle moves the view.
    const before = await visitor.page.$eval(".view", (view) => view.innerHTML);
    const slider = await visitor.seen('.view [role="slider"]');
    const spoken = await slider.evaluate((node) => node.getAttribute("aria-valuetext"));
    await slider.evaluate((node) => node.scrollIntoView({ block: "center", behavior: "instant" }));
    const { x, y, width, height } = await slider.boundingBox();
    visitor.counted += 1;
    if (size === "desk") await visitor.page.mouse.click(x + 0.1 * width, y + height / 2);
    else await visitor.page.touchscreen.tap(x + 0.1 * width, y + height / 2);
    await visitor.until(
      "the view has moved",
      (old) => document.querySelector('.view [role="slider"]').getAttribute("aria-valuetext") !== old,
      spoken,
    );
    assert.notEqual(await visitor.page.$eval(".view", (view) => view.innerHTML), before);
    assert.ok(visitor.counted <= 30, `${visitor.counted} taps from the opening to the moving view`);
  });

  journey("from the first question to the moving view by keyboard alone", { size }, async (visitor) => {
    await visitor.open();
    await visitor.tabTo(".opening__start .button--primary");
    await visitor.keys("Enter");
    await at(visitor, "quarry");
    await visitor.tabTo("#uses-roe_deer");
    await visitor.keys(" ");
    await visitor.tabTo(NEXT);
    await visitor.keys("Enter");
    await at(visitor, "manner");
    // "Not sure" is an answer to every question.
    for (const key of ["manner", "light", "ranges", "money", "rifle", "eye", "mount"]) {
      await at(visitor, key);
      await visitor.tabTo(`#unsure-${key}`);
      await visitor.keys(" ");
      await visitor.tabTo(NEXT);
      await visitor.keys("Enter");
    }
    await visitor.until("all answers", () => location.hash === "#/check" && document.activeElement?.id === "title");
    await visitor.tabTo(NEXT);
    await visitor.keys("Enter");
    await visitor.seen(".line__glass");
    await visitor.seen('.view [role="slider"]');
    await visitor.tabTo('.view [role="slider"]', 120);
    const spoken = await visitor.page.evaluate(() => document.activeElement.getAttribute("aria-valuetext"));
    await visitor.keys("Home");
    await visitor.keys("ArrowRight");
    await visitor.until(
      "the view has moved",
      (old) => document.activeElement.getAttribute("aria-valuetext") !== old,
      spoken,
    );
  });
}

journey("answers survive a reload, back and forth lose nothing", {}, async (visitor) => {
  await visitor.open("#/question/quarry");
  await visitor.tap(label("uses-wild_boar"));
  await visitor.tap(NEXT);
  await at(visitor, "manner");
  await visitor.tap(label("manners-driven"));
  await visitor.reload();
  await visitor.seen("#manners-driven");
  assert.ok(await visitor.page.$eval("#manners-driven", (box) => box.checked));
  await visitor.tap(".bar .button:not(.button--primary)");
  await at(visitor, "quarry");
  assert.ok(await visitor.page.$eval("#uses-wild_boar", (box) => box.checked));
});

for (const size of ["phone", "desk"]) {
  journey("the strip answers when one stops, by pointer and by keyboard", { size }, async (visitor) => {
    const light = () => visitor.page.evaluate(() => JSON.parse(localStorage.getItem("scopewright.answers") ?? "{}").light ?? {});
    const minute = () => visitor.page.$eval(STRIP, (way) => Number(way.getAttribute("aria-valuenow")));
    const STRIP = '.stop [role="slider"]';
    await visitor.open("#/question/light");
    const strip = await visitor.seen(STRIP);
    await visitor.tap(label("until-sunset"));
    await until("the handle follows what was tapped", async () => (await minute()) === 0);

    const { x, y, width } = await strip.boundingBox();
    if (size === "desk") {
      await visitor.page.mouse.move(x + 0.2 * width, y + 30);
      await visitor.page.mouse.down();
      await visitor.page.mouse.move(x + 0.45 * width, y + 30, { steps: 5 });
      await visitor.page.mouse.up();
    } else {
      await visitor.page.touchscreen.tap(x + 0.45 * width, y + 30);
    }
    await until("what was dragged is kept", async () => (await light()).minutes_after_sunset !== undefined);
    const dragged = (await light()).minutes_after_sunset;
    assert.ok(Math.abs(dragged - (-20 + 0.45 * 150)) <= 2, `${dragged} min at 45 % of a strip from −20 to 130`);
    assert.equal((await light()).until, undefined, "one answer at a time");
    assert.ok(!(await visitor.page.$eval("#until-sunset", (radio) => radio.checked)));
    assert.match(await visitor.text(".stop p[aria-live]"), new RegExp(`${dragged}\\s?min after sunset`, "u"));

    await strip.focus();
    for (const [key, at] of [["Home", 0], ["ArrowRight", 1], ["PageUp", 11], ["ArrowLeft", 10], ["PageDown", 0], ["End", 130]]) {
      await visitor.keys(key);
      await until(`${key} leads to ${at}`, async () => (await minute()) === at && (await light()).minutes_after_sunset === at);
    }
    await visitor.axe();
    await visitor.fits();
    await until("the line is ranked", async () => (await visitor.text(".forming__line")).includes("×"));
    await visitor.reload();
    await until("it stands there after a reload", async () => (await minute()) === 130);
    await visitor.tap(label("until-half_hour_after_sunset"));
    await until("a tapped answer takes its place", async () => (await minute()) === 30 && (await light()).minutes_after_sunset === undefined);
  });
}

journey("metres or yards are chosen where ranges are asked, and what was said keeps its length", {}, async (visitor) => {
  await visitor.open("#/question/ranges");
  const field = "main input[id$=-farthest]";
  const choose = async (units) => {
    const tapped = await visitor.page.evaluateHandle((value) => document.querySelector(`input[name="units"][value="${value}"]`).closest("label"), units);
    await visitor.tap(tapped.asElement());
  };
  await choose("metric");
  await visitor.type(field, "150");
  await choose("imperial");
  const read = () => visitor.page.$eval(field, (one) => one.value);
  // 150 m are 164.04 yd.
  await until("the same length in yards", async () => /^164/.test(await read()));
  await choose("metric");
  await until("and back", async () => (await read()) === "150");
});
