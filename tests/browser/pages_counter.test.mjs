// The counter: three invented customers within fifteen taps and one screen each, nothing moves
// under a finger, nothing is left behind; and the shop's own shelf.
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { SHOTS, answered, assert, journey } from "./lib.mjs";

const chip = (group, key) => `label:has([id="counter-${group}-${key}"])`;
const face = (name) => `label:has(#counter-face-${name})`;
const on = (visitor, group, key) => visitor.page.$eval(`[id="counter-${group}-${key}"]`, (input) => input.checked);

const CUSTOMERS = [
  [["kind", "boar_by_night"], ["cartridge", "308_win_10_7_g"], ["age", "55"], ["glasses", "distance"], ["sight_line", "3-9x40"], ["annoys", "too_dark"], ["rings", "30"], ["base", "slotted_rail"], ["band", "D"], ["zoom", "never"]],
  [["cartridge", "9_3x62_18_5_g"], ["kind", "driven"], ["until", "sunset"], ["age", "35"], ["glasses", "no_glasses"], ["sight_line", "none"], ["rings", "none"], ["base", "wide_dovetail"], ["band", "C"], ["zoom", "before_sitting"]],
  [["kind", "rabbits"], ["age", "65"], ["glasses", "varifocal"], ["sight_line", "4x32"], ["annoys", "not_far_enough"], ["annoys", "too_dark"], ["rings", "25.4"], ["base", "small_dovetail"], ["band", "B"], ["zoom", "each_shot"]],
];

async function fitsOneScreen(visitor) {
  const [tall, room] = await visitor.page.evaluate(() => [document.documentElement.scrollHeight, innerHeight]);
  assert.ok(tall <= room, `${tall} px on a screen of ${room}`);
  const hidden = await visitor.page.$$eval(".counter__top input, .counter__asks input, .counter :is(.counter__top, .counter__acts, .counter__head) button, .counter__head label", (all) =>
    all.filter((each) => {
      const box = each.getBoundingClientRect();
      return box.bottom > innerHeight || box.top < 0 || box.height < 56 || box.width < 44;
    }).map((each) => each.id),
  );
  assert.deepEqual(hidden, [], "everything asked is on the screen and large enough");
  // The words of a chip stay within it, and the advice is seen to its end.
  const cut = await visitor.page.$$eval(".counter .segment span", (all) => all.filter((each) => each.scrollWidth > each.clientWidth || each.scrollHeight > each.clientHeight).map((each) => each.textContent));
  assert.deepEqual(cut, [], "no words are cut");
  const [inside, shown] = await visitor.page.$eval(".counter__body", (body) => [body.scrollHeight, body.clientHeight]);
  assert.ok(inside <= shown, `the advice is ${inside} px high in ${shown} px`);
}

/** Whatever moves the pictures is on the screen and under the finger, before anything is scrolled. */
async function picturesFitOneScreen(visitor) {
  const [touched, away] = await visitor.page.$eval(".counter__body", (body) => {
    const all = [...body.querySelectorAll("[role=slider], .view__toggles button, select, summary, .picture__keep button")].filter((one) => one.checkVisibility());
    const isAway = (one) => {
      const { left, right, top, bottom } = one.getBoundingClientRect();
      const under = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      return left < 0 || right > innerWidth || top < 0 || bottom > innerHeight || !(one.contains(under) || under?.contains(one));
    };
    return [all.map((one) => one.getAttribute("role") ?? one.localName), all.filter(isAway).map((one) => one.outerHTML.slice(0, 120))];
  });
  assert.deepEqual(away, []);
  // The dusk at least, one's range, through what one looks, the reticle.
  assert.ok(touched.filter((what) => what === "slider").length >= 2 && touched.filter((what) => what === "button").length >= 2 && touched.includes("select"), touched.join(" "));
  const [inside, shown] = await visitor.page.$eval(".counter__body", (body) => [body.scrollHeight, body.clientHeight]);
  assert.ok(inside <= shown, `the pictures are ${inside} px high in ${shown} px`);
}

/** Where every chip and button stands. */
const places = (visitor) =>
  visitor.page.$$eval(".counter label, .counter button, .picks tr", (all) => all.map((each) => { const { x, y, width, height } = each.getBoundingClientRect(); return [x, y, width, height].map(Math.round).join(" "); }));

/** Whatever storage holds, but for what belongs to the shop. */
const left = (visitor) => visitor.page.evaluate(() => Object.keys(localStorage).filter((key) => !["scopewright.theme", "scopewright.shelf"].includes(key)));

for (const theme of ["light", "dark"]) {
  journey(`three customers one after the other (${theme})`, { size: "tablet", theme }, async (visitor) => {
    await visitor.open("#/counter");
    await visitor.seen(chip("kind", "driven"));
    for (const taps of CUSTOMERS) {
      assert.equal(await visitor.page.$$eval(".counter :is(.crow) input:checked", (all) => all.length), 0, "nothing is left of the one before");
      visitor.counted = 0;
      for (const [group, key] of taps) await visitor.tap(chip(group, key));
      // A kind that was corrected is no longer that kind.
      const corrected = taps.some(([group]) => group === "until");
      for (const [group, key] of taps) if (group !== "kind" || !corrected) assert.ok(await on(visitor, group, key), `${group} ${key}`);
      await visitor.seen(".counter__advice .line__glass");
      assert.ok(visitor.counted <= 15, `${visitor.counted} taps`);
      await fitsOneScreen(visitor);
      await visitor.fits();
      await visitor.axe();
      // Reasons with their sentence, and the pictures, are one tap away.
      await visitor.tap(face("why"));
      await visitor.seen(".counter__reasons");
      const said = await visitor.page.$$eval(".counter__reasons li", (all) => all.map((each) => [each.querySelector(".reason__said").textContent.length, each.querySelectorAll(".steps svg").length]));
      assert.ok(said.length >= 1 && said.every(([words]) => words > 3) && said.some(([, graphic]) => graphic > 0), JSON.stringify(said));
      await visitor.tap(face("view"));
      await visitor.seen(".counter__body .view__picture");
      await picturesFitOneScreen(visitor);
      await visitor.axe();
      await visitor.tap("#counter-next");
      await visitor.until("nothing is left", () => !document.querySelector(".counter .crow input:checked") && !document.querySelector(".counter__advice"));
      assert.deepEqual(await left(visitor), [], "nothing is left on the device");
      assert.ok(await visitor.page.$eval("#counter-undo", (button) => button.disabled), "nothing can be taken back from the one before");
    }
  });
}

journey("the next customer never sees advice that was still on its way", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  for (const [group, key] of CUSTOMERS[0]) await visitor.tap(chip(group, key));
  await visitor.page.evaluate(() => {
    document.getElementById("counter-next").click();
    window.seen = [];
    new MutationObserver(() => window.seen.push(document.querySelector(".counter__body").textContent)).observe(document.querySelector(".counter"), { subtree: true, childList: true, characterData: true });
  });
  await visitor.tap(chip("kind", "paper_100"));
  await visitor.seen(".counter__advice .line__glass");
  const seen = await visitor.page.evaluate(() => window.seen.join("\n"));
  assert.doesNotMatch(seen, /boar|55/);
});

journey("nothing moves under a finger, and words change only after a rest", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(chip("kind", "seat_evening"));
  await visitor.seen(".counter__advice .line__glass");
  const before = await places(visitor);
  await visitor.page.evaluate(() => {
    window.times = [];
    addEventListener("pointerdown", () => (window.touched = performance.now()), true);
    new MutationObserver(() => window.times.push(performance.now() - window.touched)).observe(document.querySelector(".counter__advice"), { subtree: true, childList: true, characterData: true });
  });
  await visitor.tap(chip("kind", "hill"));
  await visitor.until("the words have changed", () => window.times.length > 0 && /chamois/i.test(document.querySelector(".counter__need").textContent));
  const soonest = await visitor.page.evaluate(() => Math.min(...window.times));
  assert.ok(soonest >= 600, `changed ${soonest} ms after the touch`);
  assert.ok(await visitor.page.$(".counter__need .changed"), "what changed is marked");
  assert.equal(await visitor.page.$eval(".counter__need .changed", (each) => getComputedStyle(each).animationDuration), "2s");
  await visitor.until("the mark goes", () => !getComputedStyle(document.querySelector(".counter__need span")).boxShadow.includes("2px"));
  assert.deepEqual(await places(visitor), before);
});

journey("upright, mark and rows share their edge", { size: "upright", browsers: ["chromium"] }, async (visitor) => {
  await visitor.open("#/counter");
  const edges = await visitor.page.$$eval(".mark, .counter__sheets, .crow__chips:first-of-type, .counter__acts", (all) => all.map((one) => Math.round(one.getBoundingClientRect().left)));
  assert.equal(Math.min(...edges), edges[0], edges.join(" "));
  await visitor.fits();
});

journey("undo and a second touch take back an answer", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(chip("age", "45"));
  await visitor.tap(chip("age", "65"));
  await visitor.tap("#counter-undo");
  assert.ok(await on(visitor, "age", "45"));
  await visitor.tap(chip("age", "45"));
  await visitor.until("it is open again", () => !document.querySelector("#counter-age-45").checked);
  await visitor.tap("#counter-undo");
  assert.ok(await on(visitor, "age", "45"));
  await visitor.tap(chip("kind", "driven"));
  await visitor.tap("#counter-undo");
  assert.ok(!(await on(visitor, "kind", "driven")));
  assert.match(await visitor.text(".counter__sheet"), /not said/);
});

journey("on a phone the line is seen while one answers, and hides nothing", {}, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(chip("kind", "boar_by_night"));
  await visitor.seen(".counter__advice .line__glass");
  await visitor.page.evaluate(() => scrollTo(0, 0));
  const line = () => visitor.page.$eval(".counter > .forming", (one) => {
    const { top, bottom, height } = one.getBoundingClientRect();
    return { words: one.textContent, top, bottom, height, screen: innerHeight };
  });
  const { words, bottom, height, screen } = await line();
  assert.match(words, /\d/u);
  assert.ok(Math.abs(bottom - screen) < 1 && height < 0.1 * screen, JSON.stringify({ bottom, height, screen }));
  // By keyboard: whatever has the focus stands clear of it.
  for (let step = 0; step < 40; step += 1) {
    await visitor.keys("Tab");
    const [low, edge] = await visitor.page.evaluate(() => [(document.activeElement.closest("label") ?? document.activeElement).getBoundingClientRect().bottom, document.querySelector(".counter > .forming").getBoundingClientRect().top]);
    if (await visitor.page.evaluate(() => document.activeElement.closest(".counter__says") !== null)) break;
    assert.ok(low <= edge, `step ${step}: the focus ends at ${low}, the line begins at ${edge}`);
  }
  // The figures of the picks stand at the edge that all share, the first pick has its bar.
  const edges = await visitor.page.$eval(".counter__advice", (advice) => {
    const of = (selector) => [...advice.querySelectorAll(selector)].map((one) => { const range = document.createRange(); range.selectNodeContents(one); return Math.round(range.getBoundingClientRect().right); });
    return [...of(".picks td:last-child"), Math.round(advice.getBoundingClientRect().right)];
  });
  assert.equal(new Set(edges).size, 1, edges.join(" "));
  assert.equal(await visitor.page.$eval(".picks__row--first th", (one) => getComputedStyle(one).borderLeftWidth), "4px");
  // Where the advice is reached, it has given way.
  await visitor.page.evaluate(() => document.querySelector(".counter__body").scrollIntoView({ block: "start", behavior: "instant" }));
  assert.ok((await line()).bottom <= (await visitor.page.$eval(".counter__says", (one) => one.getBoundingClientRect().top)));
  await visitor.axe();
  await visitor.fits();
});

journey("the counter shows a dusk only to whom it decides something", { size: "tablet", browsers: ["chromium"] }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(chip("kind", "paper_100"));
  await visitor.until("the advice is for paper", () => /paper/.test(document.querySelector(".counter__need")?.textContent ?? ""));
  assert.equal(await visitor.page.$(".counter__advice .strip"), null);
  await visitor.tap(chip("kind", "boar_by_night"));
  await visitor.seen(".counter__advice .strip");
  await fitsOneScreen(visitor);
  // On paper it is the customer's: what is advised, and nothing of the counter.
  await visitor.page.emulateMediaType("print");
  const paper = await visitor.page.$$eval(".counter input, .counter button, .counter .forming, .counter__advice p.line", (all) => all.filter((one) => one.checkVisibility()).map((one) => one.className));
  assert.deepEqual(paper, ["line"]);
});

journey("a kind fills four answers, and one is then corrected", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(chip("kind", "boar_by_night"));
  const told = () => visitor.page.$$eval(".counter__told", (all) => all.map((each) => each.textContent));
  const [quarry, manner, ranges] = await told();
  assert.match(quarry, /boar/i);
  assert.match(manner, /seat/i);
  assert.match(ranges, /66|60/);
  assert.ok(await on(visitor, "until", "end_of_seeing"));
  await visitor.tap(".counter__sheet");
  await visitor.tap('label[for="uses-red_fox"]');
  await visitor.tap(".counter__done");
  assert.match((await told())[0], /fox/i);
  await visitor.fits();
});

async function customersLink(visitor) {
  await visitor.page.evaluate(() => localStorage.setItem("scopewright.answers", '{"version":1,"units":"metric","uses":[{"what":"chamois","share":4}],"eye":{"age_years":33}}'));
  await visitor.page.goto("about:blank");
  await visitor.open("#/advice");
  await visitor.seen("#share-address");
  const link = await visitor.page.$eval("#share-address", (input) => input.value);
  await visitor.page.evaluate(() => localStorage.clear());
  await visitor.page.goto("about:blank");
  return link;
}

journey("a customer's link is pasted and goes on", { size: "tablet" }, async (visitor) => {
  await visitor.open();
  const link = await customersLink(visitor);
  await visitor.open("#/counter");
  await visitor.tap(chip("band", "C"));
  await visitor.tap("#counter-open");
  await visitor.until("the field is ready", () => document.activeElement?.id === "counter-link");
  const [ring, edge] = await visitor.page.$eval("#counter-link", (one) => [one.getBoundingClientRect().right + 5, one.closest(".counter__body").getBoundingClientRect().right]);
  assert.ok(ring <= edge, `the ring round the field ends at ${ring}, what is seen at ${edge}`);
  for (const [text, says] of [[link.slice(0, -5), /missing|whole/i], [`${link.slice(0, -4)}zzzz`, /altered|changed/i], ["https://example.org/#/open/AAAA", /not|no /i], ["", /no answers/i]]) {
    await visitor.type("#counter-link", text || " ");
    await visitor.tap(".counter__ways .button--primary");
    await visitor.page.evaluate(() => document.activeElement.blur());
    await visitor.seen("#counter-link-error");
    assert.match(await visitor.text("#counter-link-error"), says);
  }
  assert.ok(await on(visitor, "band", "C"), "what was answered is untouched");
  await visitor.axe();
  await visitor.type("#counter-link", link);
  await visitor.tap(".counter__ways .button--primary");
  await visitor.until("it is open", () => /chamois/i.test(document.querySelector(".counter__told").textContent));
  await visitor.tap(chip("glasses", "distance"));
  await visitor.until("the advice is for the customer", () => /chamois.*33/s.test(document.querySelector(".counter__need")?.textContent ?? ""));
});

journey("a code before the camera opens where the browser can read codes", { size: "tablet" }, async (visitor) => {
  await visitor.open();
  const link = await customersLink(visitor);
  await visitor.page.evaluateOnNewDocument((text) => {
    // A browser that reads codes and a camera that shows one.
    window.BarcodeDetector = class { async detect() { return window.sees ? [{ rawValue: text }] : []; } };
    const canvas = document.createElement("canvas");
    canvas.getContext("2d");
    const stream = canvas.captureStream?.(5) ?? new MediaStream();
    Object.defineProperty(navigator, "mediaDevices", { value: { getUserMedia: async () => { if (window.shut) throw new DOMException("no", "NotAllowedError"); window.track = stream.getTracks()[0]; return stream; } } });
    HTMLMediaElement.prototype.play = async () => {};
  }, link);
  await visitor.open("#/counter");
  await visitor.tap("#counter-open");
  await visitor.page.evaluate(() => (window.shut = true));
  await visitor.tap(".counter__ways .button:last-child");
  await visitor.until("it says why", () => /may not use/.test(document.querySelector(".counter__link").textContent));
  await visitor.page.evaluate(() => (window.shut = false));
  await visitor.tap(".counter__ways .button:last-child");
  await visitor.until("the camera is on", () => window.track?.readyState === "live");
  await visitor.page.evaluate(() => (window.sees = true));
  await visitor.until("it is open", () => /chamois/i.test(document.querySelector(".counter__told").textContent));
  await visitor.until("the camera is off", () => window.track.readyState === "ended");
});

journey("a browser that cannot read codes says so plainly", { size: "tablet" }, async (visitor) => {
  await visitor.page.evaluateOnNewDocument(() => delete window.BarcodeDetector);
  await visitor.open("#/counter");
  await visitor.tap("#counter-open");
  assert.match(await visitor.text(".counter__link"), /cannot read codes/);
});

journey("the screen is turned to the customer, without questions", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  for (const [group, key] of CUSTOMERS[0]) await visitor.tap(chip(group, key));
  await visitor.seen(".counter__advice .line__glass");
  await visitor.tap("#counter-turn");
  await visitor.gone(".counter__asks");
  await visitor.seen(".counter__advice .line__glass");
  await visitor.axe();
  await visitor.tap("#counter-across");
  assert.match(await visitor.page.$eval(".counter", (main) => getComputedStyle(main).transform), /^matrix\(-1, .*, -1, 0, 0\)$/);
  await visitor.fits();
  await visitor.tap("#counter-back");
  assert.ok(await on(visitor, "age", "55"));
});

journey("the pictures take the room of the questions, and give it back", { size: "desk" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(face("view"));
  assert.ok(await visitor.page.$eval(".counter__asks", (asks) => asks.checkVisibility()), "without advice there is nothing but questions");
  await visitor.tap(face("line"));
  await visitor.tap(chip("kind", "seat_evening"));
  await visitor.seen(".counter__advice .line__glass");
  const before = await places(visitor);
  await visitor.tap(face("view"));
  await visitor.seen(".counter__body .view__picture");
  await picturesFitOneScreen(visitor);
  assert.ok(!(await visitor.page.$eval(".counter__asks", (asks) => asks.checkVisibility())));
  // A link lies beside the questions again.
  await visitor.tap("#counter-open");
  await visitor.seen(".counter__asks");
  await visitor.tap(face("line"));
  await visitor.seen(".counter__advice .line__glass");
  assert.deepEqual(await places(visitor), before);
});

journey("turned round, the customer sees line and pictures, and the handles follow the finger", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(chip("kind", "boar_by_night"));
  await visitor.seen(".counter__advice .line__glass");
  await visitor.tap(face("view"));
  await visitor.seen(".counter__body .view__picture");
  await visitor.tap("#counter-turn");
  await visitor.seen("#counter-back");
  await visitor.seen(".counter__body .view__picture");
  assert.equal((await visitor.page.$$(".counter__faces label")).length, 2, "neither reasons to weigh nor the shop's list");
  await picturesFitOneScreen(visitor);
  await visitor.until("the keyboard is at the heading", () => document.activeElement.id === "title");
  await visitor.tap("#counter-across");
  await visitor.until("it is turned", () => document.querySelector(".counter--across .slide__track"));
  await picturesFitOneScreen(visitor);
  // Where the finger is, there is the handle, whichever way up.
  for (const share of [0.25, 0.7]) {
    const finger = await visitor.page.$eval(".slide__track", (track, at) => { const { left, width, top, height } = track.getBoundingClientRect(); return { x: left + at * width, y: top + height / 2 }; }, share);
    await visitor.page.touchscreen.tap(finger.x, finger.y);
    await visitor.until("the handle is under the finger", (x) => { const { left, width } = document.querySelector(".slide__thumb").getBoundingClientRect(); return Math.abs(left + width / 2 - x) < 12; }, finger.x);
  }
  await visitor.tap(face("line"));
  await visitor.seen(".counter__advice .line__glass");
  await visitor.tap("#counter-back");
  await visitor.seen(".counter__asks");
});

journey("a customer by keyboard alone", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tabTo("[name=counter-kind]");
  await visitor.keys(" ");
  await visitor.keys("ArrowRight");
  await visitor.until("the second kind", () => document.querySelector("#counter-kind-boar_by_night").checked);
  for (const group of ["cartridge", "age", "glasses", "annoys", "band"]) {
    await visitor.tabTo(`[name=counter-${group}]`);
    await visitor.keys(" ");
    await visitor.until(`${group} is answered`, (name) => document.querySelector(`[name=counter-${name}]:checked`), group);
  }
  await visitor.tabTo("#counter-undo");
  await visitor.keys("Enter");
  await visitor.until("taken back", () => !document.querySelector("[name=counter-band]:checked"));
  await visitor.seen(".counter__advice .line__glass");
});

journey("the next customer by keyboard alone", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tabTo("[name=counter-kind]");
  await visitor.keys(" ");
  await visitor.seen(".counter__advice .line__glass");
  await visitor.tabTo("#counter-next");
  await visitor.keys("Enter");
  await visitor.gone(".counter__advice");
  assert.deepEqual(await left(visitor), []);
});

journey("the next customer by keyboard alone, after a long way back and forth", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  // Drawn by a seed (Marsaglia's xorshift), the same at every run.
  let drawn = 20_260_301;
  const below = (most) => {
    for (const step of [13, -17, 5]) drawn = (drawn ^ (step > 0 ? drawn << step : drawn >>> -step)) >>> 0;
    return drawn % most;
  };
  const back = async () => {
    await visitor.page.keyboard.down("Shift");
    await visitor.keys("Tab");
    await visitor.page.keyboard.up("Shift");
  };
  for (const key of ["Enter", " ", "Enter"]) {
    await visitor.tabTo("[name=counter-kind]");
    await visitor.keys(" ");
    for (let step = 0; step < 40; step += 1) {
      // Nobody leaves the page at either end, turns the screen, or to the next one, on the way.
      const at = await visitor.page.evaluate(() => (document.activeElement.matches("#sheet, #sheet *, .counter__done") ? "end" : document.activeElement.matches(".counter__acts *, .counter__head *, .skip, .mast *, h1") ? "act" : "ask"));
      const next = at === "end" ? "back" : at === "act" ? "Tab" : ["Tab", "Tab", "Tab", " ", " ", "ArrowRight", "ArrowLeft", "back"][below(8)];
      await (next === "back" ? back() : visitor.keys(next));
    }
    if (await visitor.page.$(".counter__done")) {
      // Something else than the usual was chosen: its sheet is closed by its own button.
      await visitor.tabTo(".counter__done");
      await visitor.keys("Enter");
      await visitor.until("the keyboard is at the heading", () => document.activeElement.id === "title");
    }
    for (let step = 0; step < 60 && !(await visitor.page.evaluate(() => document.activeElement.id === "counter-next")); step += 1) {
      const isBehind = await visitor.page.evaluate(() => Boolean(document.activeElement.compareDocumentPosition(document.getElementById("counter-next")) & Node.DOCUMENT_POSITION_PRECEDING));
      await (isBehind ? back() : visitor.keys("Tab"));
    }
    await visitor.keys(key);
    await visitor.until("nothing is left", () => document.getElementById("counter-undo").disabled && !document.querySelector(".counter .crow input:checked") && !document.querySelector(".counter__advice"));
    assert.deepEqual(await left(visitor), []);
    await visitor.until("the keyboard is at the heading", () => document.activeElement.id === "title");
  }
});

journey("reasons and view by keyboard alone", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tabTo("[name=counter-kind]");
  await visitor.keys(" ");
  await visitor.seen(".counter__advice .line__glass");
  await visitor.tabTo("[name=counter-face]");
  await visitor.keys("ArrowRight");
  await visitor.seen(".counter__reasons");
  await visitor.keys("ArrowRight");
  await visitor.seen(".counter__body .view__picture");
});

journey("a stock list is read, judged, kept without network, and forgotten", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/shelf");
  await visitor.keptOffline();
  await visitor.until("it says that there is none", () => /No stock list/.test(document.querySelector(".shelf__judged").textContent));
  assert.equal(await visitor.page.$('.shelf__judged a[href="#/shelf"]'), null, "no link leads to where one is");
  await visitor.tap("#shelf-demo");
  await visitor.until("it says that it is invented", () => /invented, to try/.test(document.querySelector(".shelf__list").textContent));
  await visitor.until("all are judged", () => document.querySelectorAll(".shelf__item").length === 9);
  await visitor.axe();
  await visitor.fits();
  // A list of one's own, with two lines that cannot be.
  const list = "label;sight;price;mass_g\nA7;8x56, 30 mm;749;520\nA8;56x8;1;1\nA9;1-6x24;980;heavy\n";
  await visitor.type("#shelf-text", "");
  await visitor.page.$eval("#shelf-text", (area, text) => { area.value = text; area.dispatchEvent(new InputEvent("input", { bubbles: true })); }, list);
  await visitor.until("its lines are told", () => document.querySelectorAll(".shelf__problems li").length === 2);
  assert.match(await visitor.text(".shelf__problems"), /3.*56x8|Line 3/);
  await visitor.until("the rest is judged", () => { const all = document.querySelectorAll(".shelf__item"); return all.length >= 1 && all.length <= 2; });
  // What is no list at all is told, and the one that is kept stays.
  await visitor.page.$eval("#shelf-text", (area) => { area.value = "apples;pears\n1;2"; area.dispatchEvent(new InputEvent("input", { bubbles: true })); });
  await visitor.seen(".shelf__list [role=alert]");
  assert.match(await visitor.text(".shelf__list [role=alert]"), /apples.*pears/);
  // The kept one is judged on, and can be forgotten, also when nothing stands there.
  await visitor.page.$eval("#shelf-text", (area) => { area.value = ""; area.dispatchEvent(new InputEvent("input", { bubbles: true })); });
  await visitor.gone(".shelf__list [role=alert]");
  await visitor.until("the kept list is judged", () => /A7/.test(document.querySelector(".shelf__judged .shelf")?.textContent ?? ""));
  await visitor.seen("#shelf-forget");
  await visitor.host.close();
  await visitor.open("#/counter");
  await visitor.tap(chip("kind", "boar_by_night"));
  await visitor.seen(".counter__advice .line__glass");
  await visitor.tap(face("shelf"));
  await visitor.until("the shelf is judged for this customer", () => /8.×.56/.test(document.querySelector(".counter__body .shelf")?.textContent ?? ""));
  await visitor.tap("#counter-next");
  await visitor.open("#/shelf");
  assert.ok(await visitor.page.evaluate(() => localStorage.getItem("scopewright.shelf").includes("A7")), "the shop's list outlives its customers");
  await visitor.tap("#shelf-forget");
  await visitor.until("it is forgotten", () => localStorage.getItem("scopewright.shelf") === null);
});

journey("a list of 400 sights from a till, however it is written", { size: "upright" }, async (visitor) => {
  await answered(visitor);
  await visitor.open("#/shelf");
  const sights = ["3–12×50, 30 mm, lit", "8×56", "2,5–10×50, capped", "56×8"];
  const rows = Array.from({ length: 400 }, (_, at) => [`Für ${at}`, `"${sights[at % 4]}"`, at % 5 ? `"${300 + at},50 €"` : "on request", ""]);
  const list = (separator, end) => [["label", "sight", "price", "remark"], ...rows, []].map((row) => row.join(separator)).join(end);
  // The sign of the euro, the dash, the cross and the umlaut, as the older way of one byte writes them.
  const single = (text) => Buffer.from([...text].map((letter) => ({ "€": 0x80, "–": 0x96 })[letter] ?? letter.codePointAt(0)));
  const files = [
    ["till-one-byte.csv", single(`sep=;\r\n${list(";", "\r\n")}`)],
    ["till-two-bytes.txt", Buffer.from(`\ufeff${list("\t", "\r\n")}`, "utf16le")],
    ["till-marked.csv", Buffer.from(`\ufeff${list(",", "\n")}`)],
    ["till-old.csv", Buffer.from(list(";", "\r"))],
  ];
  mkdirSync(SHOTS, { recursive: true });
  for (const [name, bytes] of files) {
    const file = path.join(SHOTS, `${visitor.browserName}-${name}`);
    writeFileSync(file, bytes);
    await visitor.page.evaluate(() => localStorage.removeItem("scopewright.shelf"));
    const forget = await visitor.page.$("#shelf-forget");
    if (forget) await visitor.tap(forget);
    await visitor.until("the shelf is empty", () => !document.querySelector(".shelf__item") && document.querySelector("#shelf-file").value === "");
    await (await visitor.page.$("#shelf-file")).uploadFile(file);
    await visitor.until(`${name} is judged`, () => document.querySelectorAll(".shelf__item").length === 60);
    const told = await visitor.text(".shelf__list");
    assert.match(told, /300 sights were read/, name);
    assert.match(told, /remark/, name);
    assert.match(await visitor.text(".shelf"), /Für \d+.*price\s\d+[.,]50/s, name);
    // Every fourth cannot be, of the others every fifth has no price: each has its line.
    const problems = await visitor.page.$$eval(".shelf__problems li", (all) => all.map((one) => one.textContent));
    assert.equal(problems.length, 100 + 60, name);
    assert.match(problems.join("\n"), /is left out: 56x8.*Power first, as in 8x56/, name);
    assert.match(problems.join("\n"), /“on request” in price cannot be read and is left out/, name);
  }
  // Many lines of them do not push away what is advised.
  const tall = await visitor.page.$eval(".shelf__problems", (list) => list.getBoundingClientRect().height);
  assert.ok(tall <= 320, `${tall} px`);
  await visitor.axe();
  await visitor.fits();
});
