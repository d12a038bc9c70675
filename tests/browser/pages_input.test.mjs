// What people type and what browsers do to stored answers: a message, and nothing lost.
import { assert, journey } from "./lib.mjs";

const NEXT = ".bar .button--primary";
const ANSWERS = "scopewright.answers";

/** Metric units, whatever the browser's language suggests. */
const metric = (visitor) =>
  visitor.page.evaluateOnNewDocument((key) => {
    try {
      localStorage.getItem(key) ?? localStorage.setItem(key, '{"version":1,"units":"metric"}');
    } catch {
      // Storage is denied in some journeys.
    }
  }, ANSWERS);

async function go(visitor, where) {
  await visitor.page.evaluate((hash) => (location.hash = hash), where);
  await visitor.until("the page is there", () => document.activeElement?.id === "title");
}

const kept = (visitor) => visitor.page.evaluate((key) => JSON.parse(localStorage.getItem(key) ?? "null"), ANSWERS);
const leave = (visitor) => visitor.page.evaluate(() => document.activeElement?.blur());

async function wrong(visitor, field, text, says) {
  await visitor.type(field, text);
  await leave(visitor);
  await visitor.seen(`${field}-error`);
  const said = await visitor.text(`${field}-error`);
  for (const part of says) assert.ok(said.includes(part), `“${said}” should say ${part}`);
  assert.equal(await visitor.page.$eval(field, (input) => input.value), text, "what was typed stands as typed");
}

async function right(visitor, field, text) {
  await visitor.type(field, text);
  await leave(visitor);
  await visitor.gone(`${field}-error`);
}

journey("ages of 3 and 300 are told, and lose no other answer", {}, async (visitor) => {
  await visitor.open("#/question/eye");
  await visitor.tap('label[for="glasses-varifocal"]');
  await wrong(visitor, "#field-age", "3", ["3", "8", "95"]);
  await wrong(visitor, "#field-age", "300", ["300", "8", "95"]);
  await visitor.axe();
  await visitor.tap(NEXT);
  await visitor.seen("#errors");
  await visitor.until("the summary has the focus", () => document.activeElement?.id === "errors");
  await visitor.axe();
  await visitor.tap("#errors a");
  assert.equal(await visitor.page.evaluate(() => document.activeElement?.id), "field-age");
  assert.ok(await visitor.page.$eval("#glasses-varifocal", (radio) => radio.checked));
  await right(visitor, "#field-age", "46");
  const answers = await kept(visitor);
  assert.equal(answers.eye.age_years, 46);
  assert.equal(answers.eye.glasses, "varifocal");
});

journey("a farthest range nearer than the nearest is told", {}, async (visitor) => {
  await metric(visitor);
  await visitor.open("#/question/ranges");
  const first = await visitor.page.$eval(".ranges__field input", (input) => `#${input.id}`);
  const stem = first.replace(/nearest$/, "");
  await right(visitor, `${stem}nearest`, "80");
  await visitor.type(`${stem}farthest`, "60");
  await leave(visitor);
  await visitor.seen(`${stem}farthest-error`);
  const said = await visitor.text(`${stem}farthest-error`);
  assert.match(said, /60.*80/u);
  const tops = await visitor.page.$eval(".ranges__fields", (row) => [...row.querySelectorAll(".ranges__steps")].map((one) => Math.round(one.getBoundingClientRect().top)));
  assert.equal(new Set(tops).size, 1, `the steps stand at ${tops.join(", ")}`);
  await right(visitor, `${stem}farthest`, "150");
});

journey("commas, points, units and words are read or told", {}, async (visitor) => {
  await metric(visitor);
  await visitor.open("#/question/rifle");
  for (const text of ["3,2", "3.2", "3.2 kg"]) {
    await right(visitor, "#field-rifle_mass", text);
    assert.equal((await kept(visitor)).rifle.mass_kg, 3.2, text);
  }
  await wrong(visitor, "#field-rifle_mass", "light", ["light"]);
  await wrong(visitor, "#field-rifle_mass", "150 yd", ["yd"]);
  // What could not be read stands there after a reload too.
  await visitor.reload();
  await visitor.seen("#field-rifle_mass-error");
  assert.equal(await visitor.page.$eval("#field-rifle_mass", (input) => input.value), "150 yd");

  await go(visitor, "#/question/ranges");
  await visitor.seen(".ranges__field input");
  const far = await visitor.page.$eval(".ranges__field:last-child input", (input) => `#${input.id}`);
  await right(visitor, far, "150 yd");
  const ranges = (await kept(visitor)).manners?.find((each) => each.ranges)?.ranges ?? (await kept(visitor)).ranges;
  assert.ok(Math.abs(ranges.farthest_m - 137.16) < 1e-6, `150 yd are ${ranges.farthest_m} m`);
});

for (const [what, text, says] of [
  ["damaged", '{"version":1,"eye"', /could not be read/],
  ["of a later version", '{"version":7,"units":"metric","eye":{"age_years":50}}', /later version/],
  ["with one field that makes no sense", '{"version":1,"eye":{"age_years":50},"zoom":"sideways"}', /open again/],
]) {
  journey(`stored answers that are ${what} are told and set aside`, {}, async (visitor) => {
    await visitor.page.evaluateOnNewDocument((key, value) => {
      try {
        if (sessionStorage.getItem("seeded")) return;
        sessionStorage.setItem("seeded", "yes");
        localStorage.setItem(key, value);
      } catch {
        // The blank page before the site has no storage.
      }
    }, ANSWERS, text);
    await visitor.open();
    await visitor.seen(".notice__in");
    assert.match(await visitor.text(".notice__in"), says);
    assert.equal(await visitor.page.evaluate(() => localStorage.getItem("scopewright.set-aside")), text);
    await visitor.axe();
    await go(visitor, "#/question/quarry");
    await visitor.tap('label[for="uses-red_fox"]');
    assert.ok(await visitor.page.$eval("#uses-red_fox", (box) => box.checked));
  });
}

for (const [what, breakIt] of [
  ["full", () => { Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }; }],
  ["forbidden", () => { Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } }); }],
]) {
  journey(`storage that is ${what} is told, and the rest goes on`, {}, async (visitor) => {
    await visitor.page.evaluateOnNewDocument(breakIt);
    await visitor.open("#/question/quarry");
    await visitor.tap('label[for="uses-roe_deer"]');
    await visitor.seen(".notice__in");
    await visitor.tap(NEXT);
    await visitor.until("the next question", () => location.hash === "#/question/manner");
    await visitor.page.goBack();
    await visitor.until("back", () => location.hash === "#/question/quarry");
    await visitor.seen("#uses-roe_deer");
    assert.ok(await visitor.page.$eval("#uses-roe_deer", (box) => box.checked));
  });
}

journey("one link after another: each step leads back to what was before it", {}, async (visitor) => {
  await visitor.open("#/question/quarry");
  const links = [];
  for (const key of ["red_fox", "wild_boar"]) {
    await visitor.tap(`label[for="uses-${key}"]`);
    await go(visitor, "#/advice");
    await visitor.seen("#share-address");
    links.push(await visitor.page.$eval("#share-address", (input) => input.value.slice(input.value.indexOf("#"))));
    await go(visitor, "#/question/quarry");
    await visitor.tap(`label[for="uses-${key}"]`);
  }
  await visitor.tap('label[for="uses-roe_deer"]');
  for (const [link, says] of [[links[0], /fox/i], [links[1], /boar/i]]) {
    await visitor.page.evaluate((hash) => (location.hash = hash), link);
    await visitor.until("it is open", (text) => location.hash === "#/check" && new RegExp(text, "i").test(document.querySelector(".told__row")?.textContent), says.source);
  }
  assert.equal(await visitor.page.$$eval(".notice__in", (all) => all.length), 2);
  await visitor.tap(".notice__in:last-child .button:not(.button--quiet)");
  await visitor.until("the first link's again", () => /fox/i.test(document.querySelector(".told__row").textContent));
  await visitor.tap(".notice__in .button:not(.button--quiet)");
  await visitor.until("one's own again", () => /roe/i.test(document.querySelector(".told__row").textContent));
  await visitor.gone(".notice__in");
});

journey("a link opens its answers, one that is cut says so", {}, async (visitor) => {
  await visitor.open("#/question/quarry");
  await visitor.tap('label[for="uses-chamois"], details:has(#uses-chamois) summary');
  if (!(await visitor.page.$eval("#uses-chamois", (box) => box.checked))) await visitor.tap('label[for="uses-chamois"]');
  await go(visitor, "#/advice");
  await visitor.seen("#share-address");
  const link = await visitor.page.$eval("#share-address", (input) => input.value);
  const whole = link.slice(link.indexOf("#"));
  await visitor.page.evaluate(() => localStorage.clear());
  await visitor.page.goto("about:blank");
  await visitor.open(whole);
  await visitor.until("all answers", () => location.hash === "#/check");
  assert.match(await visitor.text(".told__row"), /chamois/i);
  await visitor.page.evaluate((cut) => (location.hash = cut), whole.slice(0, -6));
  await visitor.until("it says so", () => [...document.querySelectorAll(".notice__in")].some((each) => /missing|altered/i.test(each.textContent)));
  assert.match(await visitor.text(".told__row"), /chamois/i, "one's own answers are untouched");
});

for (const [what, link, says] of [
  ["altered at its end", (link) => `${link.slice(0, -2)}${link.endsWith("A") ? "BB" : "AA"}`, /altered/i],
  ["altered in its middle", (link) => { const at = Math.floor((link.indexOf("/s1") + link.length) / 2); return `${link.slice(0, at)}${link[at] === "A" ? "B" : "A"}${link.slice(at + 1)}`; }, /altered/i],
  ["broken in two by a mail", (link) => link.slice(0, Math.floor(link.length / 2)), /missing/i],
  ["from elsewhere", () => "#/open/hello-there", /not a link made here/i],
  ["of a later version", (link) => link.replace("/s1", "/s9"), /later/i],
]) {
  journey(`a link that is ${what} says so and leaves one's own answers`, {}, async (visitor) => {
    await visitor.open("#/question/quarry");
    await visitor.tap('label[for="uses-red_fox"]');
    await go(visitor, "#/advice");
    await visitor.seen("#share-address");
    const whole = await visitor.page.$eval("#share-address", (input) => input.value);
    await visitor.page.evaluate((hash) => (location.hash = hash), link(whole.slice(whole.indexOf("#"))));
    await visitor.seen(".notice__in");
    assert.match(await visitor.text(".notice__in"), says);
    await visitor.seen(".told__row");
    assert.match(await visitor.text(".told__row"), /fox/i);
    await visitor.axe();
  });
}

journey("whoever starts again, or opens a link and answers on, has the own answers back in one tap", {}, async (visitor) => {
  await visitor.open("#/question/quarry");
  await visitor.tap('label[for="uses-red_fox"]');
  await go(visitor, "#/advice");
  await visitor.seen("#share-address");
  const link = await visitor.page.$eval("#share-address", (input) => input.value);
  await go(visitor, "#/question/quarry");
  await visitor.tap('label[for="uses-wild_boar"]');
  await visitor.until("both are kept", (key) => /wild_boar/.test(localStorage.getItem(key)), ANSWERS);
  const own = await kept(visitor);
  await visitor.page.evaluate((hash) => (location.hash = hash), link.slice(link.indexOf("#")));
  await visitor.seen(".notice__in");
  await go(visitor, "#/question/eye");
  await visitor.tap('label[for="glasses-varifocal"]');
  await visitor.tap(".notice__in .button:not(.button--quiet)");
  await visitor.until("what was one's own is kept again", (key, wanted) => JSON.stringify(JSON.parse(localStorage.getItem(key))) === wanted, ANSWERS, JSON.stringify(own));
  await go(visitor, "#/");
  await visitor.tap(".opening__start .button--quiet");
  await visitor.until("nothing is kept", (key) => localStorage.getItem(key) === null, ANSWERS);
  await visitor.axe();
  await visitor.tap(".opening__start .button--primary");
  await visitor.tap('label[for="uses-red_deer"]');
  await visitor.tap(".notice__in .button:not(.button--quiet)");
  await visitor.until("all is back", () => document.querySelector("#uses-wild_boar").checked && document.querySelector("#uses-red_fox").checked && !document.querySelector("#uses-red_deer").checked);
});

// Each tab goes on with its own answers; what the other has kept can be taken, and given back.
const ELSEWHERE = ".notice__in:has(> .button:not(.button--quiet))";

journey("two tabs at once: neither loses an answer, and one can take the other's and go back", {}, async (visitor) => {
  await visitor.open("#/question/quarry");
  const other = await visitor.another();
  await other.open("#/question/quarry");
  await other.tap('label[for="uses-wild_boar"]');
  await visitor.page.bringToFront();
  await visitor.seen(".notice__in");
  assert.match(await visitor.text(".notice__in"), /another tab/);
  // Answering on here keeps these answers in the place of the other tab's, which stay to be taken.
  await visitor.tap('label[for="uses-red_fox"]');
  await visitor.until("it is kept", (key) => /red_fox/.test(localStorage.getItem(key)), ANSWERS);
  assert.ok(await visitor.page.$eval("#uses-red_fox", (box) => box.checked));
  await other.page.bringToFront();
  await other.seen(".notice__in");
  assert.ok(await other.page.$eval("#uses-wild_boar", (box) => box.checked), "what was said here stands");
  await other.page.close();
  await visitor.page.bringToFront();
  await visitor.tap(`${ELSEWHERE} .button`);
  await visitor.until("the other tab's answer is here", () => document.querySelector("#uses-wild_boar").checked && !document.querySelector("#uses-red_fox").checked);
  await visitor.axe();
  await visitor.tap(`${ELSEWHERE} .button`);
  await visitor.until("one's own are back", () => document.querySelector("#uses-red_fox").checked && !document.querySelector("#uses-wild_boar").checked);
});

journey("two tabs in turns: one notice, of the latest; what was typed comes too; forgotten is gone", {}, async (visitor) => {
  await metric(visitor);
  await visitor.open("#/question/quarry");
  const other = await visitor.another();
  await other.open("#/question/quarry");
  for (const key of ["wild_boar", "red_fox", "roe_deer"]) await other.tap(`label[for="uses-${key}"]`);
  await go(other, "#/question/rifle");
  await other.type("#field-rifle_mass", "heavy");
  await leave(other);
  await other.seen("#field-rifle_mass-error");
  await visitor.page.bringToFront();
  await visitor.seen(".notice__in");
  assert.equal(await visitor.page.$$eval(".notice__in", (all) => all.length), 1);
  await visitor.tap(`${ELSEWHERE} .button`);
  await visitor.until("all three are here", () => ["wild_boar", "red_fox", "roe_deer"].every((key) => document.querySelector(`#uses-${key}`).checked));
  await go(visitor, "#/question/rifle");
  assert.equal(await visitor.page.$eval("#field-rifle_mass", (input) => input.value), "heavy", "what could not be read comes as it was typed");
  // What the other tab forgets cannot be taken from here any more.
  await other.page.bringToFront();
  await go(other, "#/question/quarry");
  await other.tap('label[for="uses-red_deer"]');
  await visitor.page.bringToFront();
  await visitor.until("it is offered", () => /another tab/.test(document.querySelector(".notice").textContent));
  await other.page.bringToFront();
  await go(other, "#/about");
  await other.tap("#forget");
  await other.tap(".sure .button--primary");
  await other.until("nothing is left", () => localStorage.length === 0);
  await visitor.page.bringToFront();
  await visitor.until("it is offered no longer", () => !/another tab/.test(document.querySelector(".notice").textContent));
  await go(visitor, "#/question/quarry");
  assert.ok(await visitor.page.$eval("#uses-red_fox", (box) => box.checked), "what was said here stands");
});

for (const [what, prepare] of [
  ["is missing from the browser", (visitor) => visitor.page.evaluateOnNewDocument(() => { delete window.Worker; })],
  ["is forbidden", (visitor) => visitor.page.evaluateOnNewDocument(() => { window.Worker = class { constructor() { throw new DOMException("no", "SecurityError"); } }; })],
  ["does not arrive", (visitor) => { visitor.host.broken.add("worker.js"); visitor.allow(/503|worker|Failed to load/i); }],
]) {
  journey(`a worker that ${what} leaves the advice to the page, and says so`, {}, async (visitor) => {
    await prepare(visitor);
    await visitor.open("#/question/quarry");
    await visitor.tap('label[for="uses-roe_deer"]');
    await go(visitor, "#/advice");
    await visitor.seen(".line__glass");
    await visitor.until("it says so", () => [...document.querySelectorAll(".notice__in")].some((each) => /computes by itself/.test(each.textContent)));
  });
}

journey("without a worker the page itself says how sure the line is, and is of use meanwhile", {}, async (visitor) => {
  visitor.host.broken.add("worker.js");
  visitor.allow(/503|worker|Failed to load/i);
  await visitor.page.evaluateOnNewDocument((key) => {
    try {
      localStorage.setItem(key, '{"version":1,"units":"metric","uses":[{"what":"roe_deer","share":4}],"light":{"until":"half_hour_after_sunset"},"eye":{"age_years":46}}');
    } catch {
      // The blank page before the site has no storage.
    }
    // What happens, in its order: the worlds are being tried, a tap was handled, all are tried.
    window.order = [];
    const note = (what) => window.order.at(-1) !== what && window.order.push(what);
    new MutationObserver((changes) => {
      if (changes.some((each) => each.type === "attributes" && each.attributeName === "data-theme")) note("handled");
      const said = document.querySelector("main")?.textContent ?? "";
      if (/Tried \d+ times with/.test(said)) note("tried");
      else if (/Being tried with/.test(said)) note("trying");
    }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true, attributeFilter: ["data-theme"] });
  }, ANSWERS);
  await visitor.open("#/advice");
  await visitor.seen(".line__glass");
  const all = () => visitor.page.evaluate(() => window.order);
  for (let taps = 0; taps < 400 && !(await all()).includes("tried"); taps += 1) await visitor.tap(".mast__links button");
  const order = await all();
  const tried = order.indexOf("tried");
  assert.ok(order.indexOf("trying") >= 0 && tried > 0, `${order}`);
  assert.ok(order.slice(order.indexOf("trying"), tried).includes("handled"), `${order}`);
  await visitor.axe();
});

journey("everything stored is listed, and one button forgets it", {}, async (visitor) => {
  await visitor.open("#/question/quarry");
  await visitor.tap('label[for="uses-roe_deer"]');
  await go(visitor, "#/shelf");
  await visitor.tap("#shelf-demo");
  await visitor.until("it is kept", () => localStorage.getItem("scopewright.shelf"));
  await go(visitor, "#/about");
  await visitor.tap('label:has([name=colours][value=night])');
  await visitor.until("it is kept", () => localStorage.getItem("scopewright.theme"));
  const kept = await visitor.page.evaluate(() => Object.keys(localStorage).sort());
  const listed = await visitor.page.$$eval("[data-kept]", (all) => all.map((each) => each.dataset.kept));
  assert.deepEqual(kept.filter((key) => !listed.includes(key)), [], "stored, but not on the list");
  await visitor.axe();
  await visitor.tap("#forget");
  await visitor.tap(".sure .button--primary");
  await visitor.until("nothing is left", () => localStorage.length === 0);
});
