// A club's page on another origin, strict, with two frames: presets, sizes, events, rubbish.
import { assert, host, journey } from "./lib.mjs";

journey("two frames on a strict page of another origin", { size: "desk" }, async (visitor) => {
  visitor.allow(/request to another origin/);
  const site = visitor.site.replace(/\/$/, "");
  const policy = `default-src 'none'; script-src ${site}; frame-src ${site}; img-src data:`;
  const club = await host({
    pages: {
      "/club": {
        headers: { "content-security-policy": policy },
        body: `<!doctype html><html lang="en"><link rel="icon" href="data:,"><title>Club</title><script src="${site}/embed.js"></script>
<main><h1>Our club</h1>
<scopewright-advisor id="one" label="Advice on a sight" quarry="roe_deer" units="metric" nearest="20" usual="60" farthest="120"><a href="${site}/">Advice on a sight</a></scopewright-advisor>
<scopewright-advisor id="two" label="Ring height" quarry="unicorn" door="rings" power-most="4"></scopewright-advisor></main></html>`,
      },
    },
  });
  try {
    await visitor.page.goto(`${club.address}club`.replace("//club", "/club"), { waitUntil: "load" });
    const frames = await visitor.until("both frames run", () =>
      [...document.querySelectorAll("scopewright-advisor")].every((each) => {
        const height = Number(each.shadowRoot.querySelector("iframe").height);
        return height !== 640 && height > 200;
      }) && "yes",
    );
    assert.ok(frames);
    const inner = async (id) => {
      const handle = await visitor.page.evaluateHandle((name) => document.getElementById(name).shadowRoot.querySelector("iframe"), id);
      return handle.contentFrame();
    };
    const one = await inner("one");
    const two = await inner("two");
    await two.waitForSelector(".notice__in");
    assert.match(await two.$eval(".notice__in", (node) => node.textContent), /unicorn/);
    assert.match(await two.$eval("h1", (node) => node.textContent), /ring/i);

    // The result comes as an event, of the frame that it belongs to.
    await visitor.page.evaluate(() => {
      window.heard = [];
      document.addEventListener("advice", (event) => window.heard.push([event.target.id, event.detail]));
    });
    await one.evaluate(() => (location.hash = "#/advice"));
    await one.waitForSelector(".needs");
    assert.match(await one.$eval(".needs", (node) => node.textContent), /roe deer.*60.*120/u);
    await one.evaluate(() => (location.hash = "#/question/zoom"));
    await one.waitForSelector('label[for="zoom-never"]');
    await one.$eval("#zoom-never", (radio) => radio.click());
    await visitor.until("an event", () => window.heard.some(([id, detail]) => id === "one" && detail.mag_high >= detail.mag_low && detail.words.length > 10));

    // Rubbish from the page around changes nothing.
    await visitor.page.evaluate(() => {
      const frame = document.getElementById("one").shadowRoot.querySelector("iframe").contentWindow;
      for (const rubbish of ["{", "null", 7, { a: 1 }, '{"scopewright":1,"kind":"hello","colours":{"ink":"url(x)"}}', '{"scopewright":9,"kind":"hello"}']) frame.postMessage(rubbish, "*");
    });
    await one.waitForSelector("#zoom-never:checked");
    // Nothing of one frame is in the other, and nothing is stored.
    assert.equal(await two.evaluate(() => localStorage.getItem("scopewright.answers")), null);
  } finally {
    await club.close();
  }
});
