// What stands behind the line: panels that open in place, the mounting sheet, what does not fit.
import { SEAT, answered, assert, journey } from "./lib.mjs";

async function advice(visitor, answers) {
  await answered(visitor, answers);
  await visitor.open("#/advice");
  await visitor.seen(".needs");
}

for (const size of ["phone", "tablet"]) {
  journey("every panel behind the line opens in place with numbers, formula and source", { size }, async (visitor) => {
    await advice(visitor, SEAT);
    await visitor.tap("#behind-evening summary");
    const evening = await visitor.text("#behind-evening");
    for (const part of ["Landolt", "whole body", "ten years on", "km leaves", "wet by", "full Moon", "Blackwell", "Koschmieder"]) {
      assert.ok(evening.includes(part), `behind the evening stands nothing of “${part}”`);
    }
    assert.match(await visitor.text("#behind-evening"), /before sunrise/);

    await visitor.tap("#reasons > summary");
    await visitor.tap(".reasons + button");
    const reasons = await visitor.page.$$eval(".reason", (rows) => rows.length);
    assert.equal(reasons, 13, "a reason for every element of the line");
    await visitor.page.evaluate(() => document.querySelectorAll(".reason details").forEach((panel) => (panel.open = true)));
    const bare = await visitor.page.$$eval(".reason", (rows) =>
      rows.filter((row) => !row.querySelector(".formula") || !row.querySelector("table.figures")).map((row) => row.textContent.slice(0, 40)));
    assert.deepEqual(bare, [], "a reason without numbers or source");
    const all = await visitor.page.$eval(".reasons", (list) => list.textContent);
    for (const part of ["twilight number", "¼ MOA", "second plane", "usual cheek", "windage", "recoil", "per degree|field", "bare rifle"]) {
      assert.match(all, new RegExp(part), part);
    }

    await visitor.tap("#flight summary");
    const rows = await visitor.page.$$eval("#flight tbody tr", (list) => list.map((row) => row.textContent));
    assert.ok(rows.length >= 3 && rows.every((row) => /m\/s/.test(row) && /J/.test(row)), rows.join(" | "));
    assert.match(await visitor.text("#flight"), /cant/);
    await visitor.fits();
    await visitor.axe();
  });
}

journey("the mounting sheet stands on the page of what comes next", {}, async (visitor) => {
  await advice(visitor, SEAT);
  await visitor.tap("#rings > summary");
  await visitor.tap('#rings a[href="#/after"]');
  const sheet = await visitor.text("#sheet");
  for (const part of ["over the bore", "front ring", "MIL-STD-1913", "STANAG 4694", "N·m", "behind the eyepiece", "bolt", "comb", "kN", "maker"]) {
    assert.ok(sheet.includes(part), `the sheet says nothing of “${part}”`);
  }
  await visitor.fits();
  await visitor.axe();
});

journey("without answers the mounting sheet says where it comes from", {}, async (visitor) => {
  await visitor.open("#/after");
  await visitor.seen("h1");
  assert.match(await visitor.text("#sheet"), /Answer the questions|From the rail/);
});

for (const [what, change, says, where] of [
  ["rings that are too low", { mount: { rings_kept_mm: 30, rings_centre_height_mm: 10, rail_under_bell: true } }, /too low.*would do/, "mount"],
  ["a base that leaves no zero", { mount: { incline_mrad: 25 } }, /below the lower stop.*would do/, "mount"],
  ["a load that falls to the ground", { load: { cartridge: "4_5_mm_air_0_51_g_7_5_j" }, ranges: { nearest_m: 10, usual_m: 200, farthest_m: 1500 } }, /falls to the ground/, "rifle"],
  ["a Sun that does not set", { place: { latitude_deg: 71, longitude_deg_east: 25, first_month: 6, last_month: 6 } }, /does not set/, "place"],
  ["a Sun that does not rise, on the date line", { place: { latitude_deg: 71, longitude_deg_east: 180, first_month: 12, last_month: 12 } }, /does not rise/, "place"],
  ["grains that were typed as grams", { load: { cartridge: "223_rem_3_56_g", bullet_g: 55 } }, /gr/, "rifle"],
]) {
  journey(`${what}: told before the line, with the way to mend it`, {}, async (visitor) => {
    await advice(visitor, { ...SEAT, ...change });
    await visitor.seen(".troubles");
    assert.match(await visitor.text(".troubles"), says);
    assert.ok(await visitor.page.$(`.troubles a[href="#/question/${where}"]`), where);
    await visitor.seen(".dusk, .strip, .advice__strip");
    await visitor.fits();
    await visitor.axe();
  });
}

journey("a figure in another unit is asked about among all answers too", {}, async (visitor) => {
  await answered(visitor, { ...SEAT, load: { cartridge: "223_rem_3_56_g", bullet_g: 55 } });
  await visitor.open("#/check");
  await visitor.seen(".told__row");
  assert.match(await visitor.text(".caution"), /55/);
});

journey("a pupil of 0 or 15 mm is told with what would be right", {}, async (visitor) => {
  await answered(visitor, SEAT);
  await visitor.open("#/question/eye");
  await visitor.seen("h1");
  await visitor.page.evaluate(() => document.querySelectorAll("details").forEach((panel) => (panel.open = true)));
  for (const text of ["15", "0"]) {
    await visitor.type("#field-dark_pupil", text);
    await visitor.page.evaluate(() => document.activeElement?.blur());
    await visitor.seen("#field-dark_pupil-error");
    const said = await visitor.text("#field-dark_pupil-error");
    assert.ok(said.includes(text) && /mm/.test(said), said);
  }
});

for (const year of [1960, 2150]) {
  journey(`a clock of ${year} changes nothing`, { browsers: ["chromium"] }, async (visitor) => {
    await visitor.page.evaluateOnNewDocument((wrong) => {
      const Real = Date;
      const shift = Real.UTC(wrong, 5, 1) - Real.now();
      globalThis.Date = class extends Real {
        constructor(...given) {
          if (given.length === 0) super(Real.now() + shift);
          else super(...given);
        }
        static now() {
          return Real.now() + shift;
        }
      };
    }, year);
    await advice(visitor, { ...SEAT, place: { latitude_deg: 71, longitude_deg_east: 25, first_month: 6, last_month: 6 } });
    await visitor.seen(".troubles");
    assert.match(await visitor.text(".needs"), /roe deer/);
  });
}

journey("rings that are there are held against a tube", {}, async (visitor) => {
  await answered(visitor, SEAT);
  await visitor.open("#/rings");
  await visitor.tap("#rings-more summary");
  for (const [spacing, says] of [["75 mm", /too close/], ["110 mm", /fit/], ["260 mm", /cannot both hold.*missing/]]) {
    await visitor.type("#rings-apart", spacing);
    await visitor.until(`rings ${spacing} apart`, (wanted) => new RegExp(wanted).test(document.querySelector(".tool__along")?.textContent ?? ""), says.source);
  }
  await visitor.type("#rings-iron", "10 mm");
  await visitor.until("the iron sights decide", () => /iron sights decide/.test(document.querySelector(".tool__answer").textContent));
  await visitor.axe();
  await visitor.fits();
});
