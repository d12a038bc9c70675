// What goes wrong around the page: storage, the worker, other pages, codes. A plain message, the rest
// goes on, nothing is lost.
import { SEAT, answered, assert, host, journey, runs } from "./lib.mjs";

const ANSWERS = "scopewright.answers";
const ABSENT = /computes by itself/;

async function go(visitor, where) {
  await visitor.page.evaluate((hash) => (location.hash = hash), where);
  await visitor.until("the page is there", () => document.activeElement?.id === "title");
}

const told = (visitor, says) =>
  visitor.until(`it says ${says}`, (text) => [...document.querySelectorAll(".notice__in")].some((each) => new RegExp(text, "u").test(each.textContent)), says.source);

/** As at an earlier visit, once: whatever the page does with it afterwards stays. */
const seeded = (visitor, kept) =>
  visitor.page.evaluateOnNewDocument((given) => {
    try {
      if (sessionStorage.getItem("seeded")) return;
      sessionStorage.setItem("seeded", "yes");
      for (const [key, value] of Object.entries(given)) localStorage.setItem(key, value);
    } catch {
      // The blank page before the site has no storage.
    }
  }, kept);

journey("storage that becomes full half way is told once, keeps what it has, and goes on when there is room", {}, async (visitor) => {
  await visitor.page.evaluateOnNewDocument(() => {
    const set = Storage.prototype.setItem;
    Storage.prototype.setItem = function (key, value) {
      if (window.isFull) throw new DOMException("full", "QuotaExceededError");
      set.call(this, key, value);
    };
  });
  const kept = () => visitor.page.evaluate((key) => localStorage.getItem(key), ANSWERS);
  await visitor.open("#/question/quarry");
  await visitor.tap('label[for="uses-roe_deer"]');
  await visitor.page.evaluate(() => (window.isFull = true));
  await visitor.tap('label[for="uses-red_fox"]');
  await told(visitor, /no room left/);
  await visitor.tap('label[for="uses-wild_boar"]');
  assert.equal(await visitor.page.$$eval(".notice__in", (all) => all.length), 1);
  assert.match(await kept(), /roe_deer/);
  assert.doesNotMatch(await kept(), /red_fox|wild_boar/);
  // Everything is still there, and in the link.
  await go(visitor, "#/check");
  assert.match(await visitor.text(".told__row"), /roe.*fox.*boar/is);
  await visitor.axe();
  await visitor.page.evaluate(() => (window.isFull = false));
  await go(visitor, "#/question/eye");
  await visitor.tap('label[for="glasses-varifocal"]');
  await visitor.until("all is kept", (key) => ["roe_deer", "red_fox", "wild_boar", "varifocal"].every((part) => localStorage.getItem(key).includes(part)), ANSWERS);
  await visitor.reload();
  await go(visitor, "#/check");
  assert.match(await visitor.text(".told__row"), /roe.*fox.*boar/is);
});

const DEEP = "[".repeat(40_000);
for (const [what, rubbish] of [
  ["no JSON", "<!doctype html>"],
  ["other JSON", '[{"a":1},null,7]'],
  ["deep", DEEP],
  ["long", `{"version":1,"uses":"${"x".repeat(300_000)}"}`],
  ["empty", ""],
]) {
  journey(`whatever else is stored under the page's names (${what}) is told or passed over`, {}, async (visitor) => {
    await seeded(visitor, Object.fromEntries(["answers", "typed", "theme", "shelf", "set-aside"].map((name) => [`scopewright.${name}`, rubbish])));
    await visitor.open("#/shelf");
    await told(visitor, /could not be read/);
    await go(visitor, "#/question/quarry");
    await visitor.tap('label[for="uses-red_fox"]');
    await go(visitor, "#/advice");
    await visitor.seen(".needs");
    await visitor.keptOffline();
    await visitor.reload();
    await visitor.seen(".needs");
    assert.equal(await visitor.page.$(".notice__in"), null, "told once");
  });
}

journey("a browser that forbids the offline copy runs the page without it", {}, async (visitor) => {
  await visitor.page.evaluateOnNewDocument(() => {
    if (!navigator.serviceWorker) return;
    navigator.serviceWorker.register = async () => {
      throw new DOMException("not here", "SecurityError");
    };
  });
  await answered(visitor);
  await visitor.open("#/advice");
  await visitor.seen(".needs");
  await go(visitor, "#/about");
  await visitor.tap("#forget");
  await visitor.tap(".sure .button--primary");
  await visitor.until("nothing is left", () => localStorage.length === 0);
});

const SCRIPT = "text/javascript";
for (const [what, body] of [
  ["throws at its first line", "throw new Error('broken for a test');"],
  ["is no script", "<!doctype html><title>Not found</title>"],
  ["cannot load the module", "await import('./nowhere.js');"],
  ["breaks at its first job", "postMessage('ready'); onmessage = () => { throw new Error('broken for a test'); };"],
  ["never comes up", "await new Promise(() => {});"],
  ["never answers", "postMessage('ready');"],
  ["answers rubbish", "postMessage('ready'); onmessage = () => { for (const each of [7, null, {}, 'x', new Uint8Array(0), new Uint8Array([255, 255, 255, 255, 255, 255, 255, 255, 255]), new Uint8Array([1, 2, 3])]) postMessage(each); };"],
]) {
  journey(`a worker that ${what} leaves the advice to the page, and says so`, {}, async (visitor) => {
    visitor.allow(/broken for a test|worker|nowhere|404|Failed|SyntaxError|disallowed MIME|error loading|expected expression/i);
    visitor.host.pages["/worker.js"] = { type: SCRIPT, body };
    await visitor.page.evaluateOnNewDocument(() => {
      // Whoever waits for long, waits for less.
      const wait = window.setTimeout;
      window.setTimeout = (then, ms, ...more) => wait.call(window, then, ms >= 5000 ? 500 : ms, ...more);
    });
    await answered(visitor);
    await visitor.open("#/advice");
    await told(visitor, ABSENT);
    await visitor.seen(".needs");
    // The next answer is advised on too.
    await go(visitor, "#/question/quarry");
    await visitor.tap('label[for="uses-red_fox"]');
    await go(visitor, "#/advice");
    await visitor.until("it is advised on", () => /Changed by your last answer/.test(document.querySelector("main").textContent));
    assert.equal(await visitor.page.$$eval(".notice__in", (all) => all.length), 1);
  });
}

/** The worker is asked for nothing until the journey calls what then stands in `window.jobs`. */
const holdJobs = (visitor) =>
  visitor.page.evaluateOnNewDocument(() => {
    const post = Worker.prototype.postMessage;
    window.jobs = [];
    Worker.prototype.postMessage = function (job) {
      window.jobs.push(() => post.call(this, job));
    };
  });

journey("whoever waits for the advice at its heading is at the heading when it comes", {}, async (visitor) => {
  await answered(visitor);
  await holdJobs(visitor);
  await visitor.open("#/check");
  await visitor.page.evaluate(() => (location.hash = "#/advice"));
  await visitor.until("the keyboard is at the heading of who waits", () => location.hash === "#/advice" && document.activeElement.id === "title" && !document.querySelector(".needs"));
  await visitor.until("the advice is asked for", () => window.jobs.length > 0);
  await visitor.page.evaluate(() => window.jobs.forEach((ask) => ask()));
  await visitor.seen(".needs");
  await visitor.until("it is at the heading of the advice", () => document.activeElement.id === "title");
});

journey("what a last answer changed is never said of advice that came too late", {}, async (visitor) => {
  await answered(visitor);
  await holdJobs(visitor);
  await visitor.open("#/advice");
  await go(visitor, "#/question/quarry");
  await visitor.tap('label[for="uses-red_fox"]');
  await visitor.page.evaluate(() => (location.hash = "#/advice"));
  // The first advice arrives only after the next answer was given.
  await visitor.until("both are asked for", () => window.jobs.length === 2);
  await visitor.page.evaluate(() => window.jobs[0]());
  await visitor.seen(".needs");
  await visitor.until("the late advice is there", () => document.querySelector(".stale"));
  await visitor.page.evaluate(() => window.jobs[1]());
  await visitor.until("the advice of the answers is there", () => document.querySelector(".needs") && !document.querySelector(".stale"));
  assert.doesNotMatch(await visitor.text("main"), /Changed by your last answer/);
});

// ---------------------------------------------------------------- other pages

/** A page of another origin that frames the advisor, and stands in the visitor's tab. */
async function around(visitor, body, more = {}) {
  visitor.allow(/request to another origin/);
  const site = visitor.site.replace(/\/$/, "");
  const page = await host({
    pages: { "/club": { body: `<!doctype html><html lang="en"><link rel="icon" href="data:,"><title>Club</title><main><h1>Club</h1>${body.replaceAll("SITE", site)}</main></html>` }, ...more },
  });
  await visitor.page.goto(`${page.origin}/club`, { waitUntil: "load" });
  return page;
}

async function frameOf(visitor, id) {
  const frame = await (await visitor.page.evaluateHandle((name) => document.getElementById(name).shadowRoot.querySelector("iframe"), id)).contentFrame();
  // The opening stands in the page before the module has read the address.
  await runs(frame);
  return frame;
}

journey("a page around that sends rubbish changes nothing, and goes on being answered", { size: "desk" }, async (visitor) => {
  const page = await around(visitor, '<script src="SITE/embed.js"></script><scopewright-advisor id="one" units="metric" quarry="roe_deer"></scopewright-advisor>');
  try {
    const one = await frameOf(visitor, "one");
    await one.evaluate(() => (location.hash = "#/question/eye"));
    await one.waitForSelector("#field-age");
    await one.$eval("#glasses-varifocal", (radio) => radio.click());
    await visitor.page.evaluate(() => {
      const frame = document.getElementById("one").shadowRoot.querySelector("iframe").contentWindow;
      const hello = (more) => JSON.stringify({ scopewright: 1, kind: "hello", ...more });
      const ring = {};
      ring.ring = ring;
      for (const rubbish of [
        "", "{", "null", "[]", '"hello"', "\u0000", "x".repeat(2_000_000), "[".repeat(100_000), 7, NaN, null, undefined, true, { a: 1 }, ring, [1, [2]], new Date(), new Map([[1, 2]]), new ArrayBuffer(9), new Uint8Array(3), new Blob(["x"]), 10n,
        { scopewright: 1, kind: "hello", colours: { ink: "#000000" } },
        hello({ colours: null }), hello({ colours: [] }), hello({ colours: "red" }), hello({ colours: { ink: 7 } }), hello({ colours: { ink: null } }), hello({ colours: { ink: "url(x)" } }),
        hello({ colours: { accent: "#20487a; background: url(x)" } }), hello({ colours: { "accent: red; --x": "#20487a" } }), hello({ colours: Object.fromEntries(Array.from({ length: 5000 }, (_, at) => [`c${at}`, "#20487a"])) }),
        hello({ colours: { ink: "#fefefe" } }), hello({ kind: 7 }), hello({ scopewright: "1" }), hello({ scopewright: 1.5 }), hello({ scopewright: 2 }), hello({ kind: "advice", advice: {} }), hello({ kind: "forget" }),
      ]) frame.postMessage(rubbish, "*");
    });
    // A colour that can be read, sent last, is worn: so all before it were heard.
    await visitor.page.evaluate(() => {
      const element = document.getElementById("one");
      element.shadowRoot.querySelector("iframe").contentWindow.postMessage(JSON.stringify({ scopewright: 1, kind: "hello", colours: { accent: "#20487a" } }), "*");
    });
    await one.waitForFunction(() => document.documentElement.style.getPropertyValue("--accent") === "#20487a");
    assert.deepEqual(await one.evaluate(() => [...document.documentElement.style]), ["--accent"]);
    assert.ok(await one.$eval("#glasses-varifocal", (radio) => radio.checked));
    assert.equal(await one.$(".notice__in"), null);
    const heard = visitor.page.evaluate(() => new Promise((done) => document.addEventListener("advice", ({ detail }) => done(detail), { once: true })));
    await one.$eval("#glasses-no_glasses", (radio) => radio.click());
    // As README documents it.
    const detail = await heard;
    assert.deepEqual(Object.entries(detail).map(([key, value]) => `${key} ${typeof value}`).sort(), ["mag_high number", "mag_low number", "objective_mm number", "served number", "tube_mm number", "words string"]);
    assert.ok(detail.served >= 0 && detail.served <= 1 && detail.mag_low <= detail.mag_high && detail.objective_mm > 10 && detail.tube_mm > 20, JSON.stringify(detail));
  } finally {
    await page.close();
  }
});

journey("a frame listens to the page around it alone, and the page to its own frames", { size: "desk" }, async (visitor) => {
  const forged = "<!doctype html><title>x</title><script>parent.postMessage(JSON.stringify({ scopewright: 1, kind: 'advice', advice: { words: 'forged' } }), '*'); parent.postMessage(JSON.stringify({ scopewright: 1, kind: 'height', px: 9000 }), '*'); parent.postMessage('over', '*');</script>";
  const page = await around(visitor, '<script src="SITE/embed.js"></script><scopewright-advisor id="one"></scopewright-advisor><scopewright-advisor id="two"></scopewright-advisor><iframe id="stranger" title="x" src="/stranger"></iframe>', {
    "/stranger": { body: "<!doctype html><title>x</title>" },
    "/forged": { body: forged },
  });
  try {
    const one = await frameOf(visitor, "one");
    const two = await frameOf(visitor, "two");
    // A frame beside it greets as the page around would.
    const stranger = await (await visitor.page.$("#stranger")).contentFrame();
    await stranger.evaluate(() => parent.frames[0].postMessage(JSON.stringify({ scopewright: 1, kind: "hello", colours: { accent: "#20487a" } }), "*"));
    await visitor.page.evaluate(() => document.getElementById("one").shadowRoot.querySelector("iframe").contentWindow.postMessage(JSON.stringify({ scopewright: 1, kind: "hello", colours: { accent: "#1c5030" } }), "*"));
    await one.waitForFunction(() => document.documentElement.style.getPropertyValue("--accent") !== "");
    assert.equal(await one.evaluate(() => document.documentElement.style.getPropertyValue("--accent")), "#1c5030");
    // A frame that was led away to another origin is no advisor any more.
    const heard = await visitor.page.evaluate(() => new Promise((done) => {
      const all = [];
      document.addEventListener("advice", (event) => all.push(event.detail));
      addEventListener("message", (event) => event.data === "over" && done([all, document.getElementById("two").shadowRoot.querySelector("iframe").height]));
      document.getElementById("two").shadowRoot.querySelector("iframe").src = "/forged";
    }));
    assert.deepEqual(heard[0], []);
    assert.notEqual(heard[1], "9000");
  } finally {
    await page.close();
  }
});

journey("every preset arrives, and one that is set anew leads back to what was answered", { size: "desk" }, async (visitor) => {
  const page = await around(visitor, `<script src="SITE/embed.js"></script><scopewright-advisor id="one" language="en" units="imperial" quarry="red_fox wild_boar" nearest="20" usual="60" farthest="150"
    power-most="6" lit-marks="forbidden" latitude="47.5" longitude="12.25" label="Our advice"></scopewright-advisor>`);
  try {
    const one = await frameOf(visitor, "one");
    assert.equal(await visitor.page.$eval("#one", (each) => each.shadowRoot.querySelector("iframe").title), "Our advice");
    await one.evaluate(() => (location.hash = "#/check"));
    for (const part of ["fox", "boar", "22.yd", "66.yd", "164.yd", "47\\.5", "12\\.[23]"]) {
      await one.waitForFunction((text) => location.hash === "#/check" && new RegExp(text, "iu").test(document.querySelector("main").textContent), {}, part).catch(async (error) => assert.fail(`${part}: ${error.message}: ${await one.$eval("main", (main) => main.textContent)}`));
    }
    await one.evaluate(() => (location.hash = "#/question/eye"));
    await one.waitForSelector("#glasses-varifocal");
    await one.$eval("#glasses-varifocal", (radio) => radio.click());
    await visitor.page.evaluate(() => document.getElementById("one").setAttribute("quarry", "chamois"));
    await one.waitForSelector(".notice__in .button:not(.button--quiet)");
    await one.$eval(".notice__in .button:not(.button--quiet)", (back) => back.click());
    await one.evaluate(() => (location.hash = "#/check"));
    await one.waitForFunction(() => /boar/i.test(document.querySelector("main").textContent) && /varifocal/i.test(document.querySelector("main").textContent));
  } finally {
    await page.close();
  }
});

journey("an address with presets opened by itself leads back to one's own answers", {}, async (visitor) => {
  await visitor.open("#/question/quarry");
  await visitor.tap('label[for="uses-red_fox"]');
  await visitor.page.evaluate(() => (location.hash = `#/embed/questions/${encodeURIComponent('{"version":1,"uses":[{"what":"chamois","share":4}]}')}/`));
  await visitor.tap(".notice__in .button:not(.button--quiet)");
  await go(visitor, "#/check");
  assert.match(await visitor.text(".told__row"), /fox/i);
});

// ---------------------------------------------------------------- sub-paths and codes

journey("the whole of it stands under a sub-path: advice, link, code, club's lines", { site: { under: "/a/b/" }, size: "desk" }, async (visitor) => {
  await answered(visitor);
  await visitor.open("#/advice");
  await visitor.seen(".needs");
  assert.equal(await visitor.page.$(".notice__in"), null, "the worker runs");
  await visitor.page.evaluate(() => document.getElementById("keep").setAttribute("open", ""));
  const link = await visitor.page.$eval("#share-address", (input) => input.value);
  assert.ok(link.startsWith(`${visitor.site}#/open/`), link);
  // The code is read by another reader than the one that wrote it, from the screen.
  const code = await visitor.seen(".share__code");
  const shot = await code.screenshot({ encoding: "base64" });
  const pixels = await visitor.page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const pen = canvas.getContext("2d");
    pen.drawImage(picture, 0, 0);
    return [[...pen.getImageData(0, 0, picture.width, picture.height).data], picture.width, picture.height];
  }, shot);
  const { default: read } = await import("jsqr");
  assert.equal(read(Uint8ClampedArray.from(pixels[0]), pixels[1], pixels[2])?.data, link);
  await visitor.page.evaluate(() => localStorage.clear());
  await go(visitor, "#/club");
  assert.ok((await visitor.text("#club-code")).includes(`${visitor.site}embed.js`));
  await visitor.until("the preview has its size", () => Number(document.querySelector("scopewright-advisor")?.shadowRoot?.querySelector("iframe")?.height) > 641);
  const strayed = visitor.host.requests.filter((asked) => !asked.startsWith("/a/b/") && asked !== "/favicon.ico");
  assert.deepEqual(strayed, [], "requests outside the sub-path");
});

journey("a code of something else before the camera is told, and the rest stands", { size: "tablet" }, async (visitor) => {
  await visitor.page.evaluateOnNewDocument(() => {
    window.BarcodeDetector = class { async detect() { return window.sees ? [{ rawValue: window.sees }] : []; } };
    const canvas = document.createElement("canvas");
    canvas.getContext("2d");
    const stream = canvas.captureStream?.(5) ?? new MediaStream();
    Object.defineProperty(navigator, "mediaDevices", { value: { getUserMedia: async () => stream.clone() } });
    HTMLMediaElement.prototype.play = async () => {};
  });
  await visitor.open("#/counter");
  await visitor.tap("label:has(#counter-band-C)");
  await visitor.tap("#counter-open");
  for (const [text, says] of [["WIFI:T:WPA;S=Inn;P=secret;;", /not a link made here/], ["https://shop.example/item/12", /not a link made here/], ["4006381333931", /not a link made here/], ["\u{1f98c}\u0000\u202e", /not a link made here/], [`https://a.example/#/open/s1${"A".repeat(9000)}`, /altered|missing|not a link|no answers/]]) {
    await visitor.page.evaluate((seen) => (window.sees = seen), text);
    await visitor.tap(".counter__ways .button:last-child");
    await visitor.seen("#counter-link-error");
    assert.match(await visitor.text("#counter-link-error"), says);
    await visitor.until("the camera is off", () => document.querySelector("video").hidden);
    await visitor.page.evaluate(() => (window.sees = null));
    // Typing clears what was said.
    await visitor.type("#counter-link", "x");
    await visitor.gone("#counter-link-error");
  }
  assert.ok(await visitor.page.$eval("#counter-band-C", (input) => input.checked));
  await visitor.axe();
});
