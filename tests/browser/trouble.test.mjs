// What goes wrong around the page: storage, the worker, other pages, codes. A plain message, the rest
// goes on, nothing is lost.
import { SEAT, answered, assert, host, journey } from "./lib.mjs";

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

journey("whoever waits for the advice at its heading is at the heading when it comes", {}, async (visitor) => {
  await answered(visitor);
  // The worker answers when told.
  await visitor.page.evaluateOnNewDocument(() => {
    const post = Worker.prototype.postMessage;
    const held = [];
    Worker.prototype.postMessage = function (job) {
      if (window.goes) post.call(this, job);
      else held.push(() => post.call(this, job));
    };
    window.go = () => {
      window.goes = true;
      for (const each of held) each();
    };
  });
  await visitor.open("#/check");
  await visitor.page.evaluate(() => (location.hash = "#/advice"));
  await visitor.until("the keyboard is at the heading of who waits", () => location.hash === "#/advice" && document.activeElement.id === "title" && !document.querySelector(".needs"));
  await visitor.page.evaluate(() => window.go());
  await visitor.seen(".needs");
  await visitor.until("it is at the heading of the advice", () => document.activeElement.id === "title");
});

journey("what a last answer changed is never said of advice that came too late", {}, async (visitor) => {
  await answered(visitor);
  await visitor.page.evaluateOnNewDocument(() => {
    // The first advice arrives only after the next answer was given.
    const post = Worker.prototype.postMessage;
    const held = [];
    Worker.prototype.postMessage = function (job) {
      held.push(() => post.call(this, job));
      if (held.length === 1) return;
      held[0]();
      window.asked = held[1];
    };
  });
  await visitor.open("#/advice");
  await go(visitor, "#/question/quarry");
  await visitor.tap('label[for="uses-red_fox"]');
  await visitor.page.evaluate(() => (location.hash = "#/advice"));
  await visitor.seen(".needs");
  await visitor.until("the late advice is there", () => document.querySelector(".stale") && window.asked);
  await visitor.page.evaluate(() => window.asked());
  await visitor.until("the advice of the answers is there", () => document.querySelector(".needs") && !document.querySelector(".stale"));
  assert.doesNotMatch(await visitor.text("main"), /Changed by your last answer/);
});
