// A club's page on another origin, strict, with two frames: presets, sizes, events, rubbish.
import { assert, host, journey, runs } from "./lib.mjs";

/** The policy that README names for hosts of the advisor. */
const OURS = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; connect-src 'self'; frame-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'";

/** A club's page on another origin, as strict as can be. */
async function club(visitor, body, more = "") {
  visitor.allow(/request to another origin/);
  const site = visitor.site.replace(/\/$/, "");
  const policy = `default-src 'none'; script-src ${site}; frame-src ${site}; img-src data:${more}`;
  const page = await host({
    pages: {
      "/club": { headers: { "content-security-policy": policy }, body: `<!doctype html><html lang="en"><link rel="icon" href="data:,"><title>Club</title>${body.replaceAll("SITE", site)}</html>` },
      "/club.css": { type: "text/css", body: "#one { --scopewright-accent: #20487a; --scopewright-on-accent: #ffffff; } #two { --scopewright-ink: #dddddd; }" },
    },
  });
  return page;
}

async function inner(visitor, id) {
  const handle = await visitor.page.evaluateHandle((name) => document.getElementById(name).shadowRoot.querySelector("iframe"), id);
  const frame = await handle.contentFrame();
  await runs(frame);
  return frame;
}

const frames = (visitor) =>
  visitor.until("the frames run and have their size", () =>
    [...document.querySelectorAll("scopewright-advisor")].every((each) => {
      const height = Number(each.shadowRoot?.querySelector("iframe").height);
      return height !== 640 && height > 200;
    }) && "yes",
  );

journey("presets that make no sense are told, each in its frame", { size: "desk", site: { headers: { "content-security-policy": OURS } } }, async (visitor) => {
  const page = await club(visitor, `<script src="SITE/embed.js" async></script><main><h1>Club</h1>
<scopewright-advisor id="one" language="xx-nowhere" nearest="far" power-most="-3"></scopewright-advisor>
<scopewright-advisor id="two" quarry="red_fox" units="metric" language="en" lit-marks="forbidden" door="nonsense/../x"></scopewright-advisor></main>`);
  try {
    await visitor.page.goto(`${page.origin}/club`, { waitUntil: "load" });
    await frames(visitor);
    const one = await inner(visitor, "one");
    await one.waitForSelector(".notice__in");
    const said = await one.$$eval(".notice__in", (all) => all.map((each) => each.textContent).join(" | "));
    assert.match(said, /xx-nowhere/);
    assert.match(said, /left out/);
    // What makes no sense is left out, the rest goes on.
    await one.waitForSelector(".opening__start a");
    const two = await inner(visitor, "two");
    await two.waitForSelector(".opening__start a");
    assert.equal(await two.$$eval(".notice__in", (all) => all.length), 0);
    await two.evaluate(() => (location.hash = "#/check"));
    await two.waitForSelector(".told__row");
    assert.match(await two.$eval("main", (main) => main.textContent), /fox/i);
    // The named title comes from the frame, in its language.
    assert.match(await visitor.page.$eval("#one", (each) => each.shadowRoot.querySelector("iframe").title), /riflescope/);
  } finally {
    await page.close();
  }
});

journey("a frame wears colours that can be read, and grows and shrinks with what it says", { size: "upright" }, async (visitor) => {
  const page = await club(visitor, `<link rel="stylesheet" href="/club.css"><script src="SITE/embed.js"></script><main><h1>Club</h1>
<scopewright-advisor id="one"></scopewright-advisor><scopewright-advisor id="two" door="zero"></scopewright-advisor></main>`, "; style-src 'self'");
  try {
    await visitor.page.goto(`${page.origin}/club`, { waitUntil: "load" });
    await frames(visitor);
    const one = await inner(visitor, "one");
    const two = await inner(visitor, "two");
    const worn = (frame, name) => frame.evaluate((property) => getComputedStyle(document.documentElement).getPropertyValue(property).trim(), name);
    await one.waitForFunction(() => getComputedStyle(document.documentElement).getPropertyValue("--accent").trim() === "#20487a");
    assert.notEqual(await worn(two, "--ink"), "#dddddd", "ink that cannot be read on the ground is not taken");
    const height = () => visitor.page.$eval("#one", (each) => Number(each.shadowRoot.querySelector("iframe").height));
    const before = await height();
    await one.evaluate(() => (location.hash = "#/after"));
    await visitor.until("it has grown", (old) => Number(document.getElementById("one").shadowRoot.querySelector("iframe").height) > old, before);
    const inside = await one.evaluate(() => document.documentElement.scrollHeight - innerHeight);
    assert.ok(inside <= 1, `${inside} px scroll inside the frame`);
    await one.evaluate(() => (location.hash = "#/"));
    await visitor.until("it has shrunk again", (old) => Number(document.getElementById("one").shadowRoot.querySelector("iframe").height) <= old, before);
  } finally {
    await page.close();
  }
});

journey("a member starts from what the club has set, and comes back to it", { size: "phone" }, async (visitor) => {
  const page = await club(visitor, `<script src="SITE/embed.js"></script><main><h1>Club</h1>
<scopewright-advisor id="one" quarry="wild_boar" language="en" farthest="120" units="metric"></scopewright-advisor></main>`);
  try {
    await visitor.page.goto(`${page.origin}/club`, { waitUntil: "load" });
    await frames(visitor);
    const one = await inner(visitor, "one");
    // Nobody has stopped anywhere yet.
    await one.waitForSelector(".opening__start .button--primary");
    assert.match(await one.$eval(".opening__start", (all) => all.textContent), /^Start/);
    await one.evaluate(() => (location.hash = "#/question/eye"));
    await one.waitForSelector('input[name="glasses"]');
    await one.$eval('input[name="glasses"]', (radio) => radio.click());
    await one.evaluate(() => (location.hash = "#/"));
    await one.waitForSelector(".opening__start .button--quiet");
    await one.$eval(".opening__start .button--quiet", (again) => again.click());
    await one.waitForFunction(() => /^Start/.test(document.querySelector(".opening__start").textContent));
    // What the club has set is there, what was answered is not.
    await one.evaluate(() => (location.hash = "#/check"));
    await one.waitForSelector(".told__row");
    const told = await one.$$eval(".told__row", (all) => all.map((each) => each.textContent).join(" | "));
    assert.match(told, /boar/i);
    assert.doesNotMatch(told, /without glasses|No glasses/i);
  } finally {
    await page.close();
  }
});

journey("a dark site's colours go with the others of the night", { size: "phone", theme: "dark", browsers: ["chromium"] }, async (visitor) => {
  const page = await club(visitor, `<link rel="stylesheet" href="/dark.css"><script src="SITE/embed.js"></script><main><h1>Club</h1>
<scopewright-advisor id="one"></scopewright-advisor><scopewright-advisor id="two" door="zero"></scopewright-advisor></main>`, "; style-src 'self'");
  page.pages["/dark.css"] = { type: "text/css", body: "#one { --scopewright-accent: #9cc4ff; --scopewright-on-accent: #0b1a2e; } #two { --scopewright-ground: #202020; --scopewright-surface: #2a2a2a; }" };
  try {
    await visitor.page.goto(`${page.origin}/club`, { waitUntil: "load" });
    await frames(visitor);
    for (const [id, name, colour] of [["one", "--accent", "#9cc4ff"], ["two", "--ground", "#202020"]]) {
      const frame = await inner(visitor, id);
      await frame.waitForFunction((property, wanted) => getComputedStyle(document.documentElement).getPropertyValue(property).trim() === wanted, {}, name, colour);
      assert.equal(await frame.evaluate(() => document.documentElement.dataset.theme), "night");
    }
  } finally {
    await page.close();
  }
});

journey("messages of strangers are no results", { size: "desk" }, async (visitor) => {
  const page = await club(visitor, `<script src="SITE/embed.js"></script><main><h1>Club</h1><scopewright-advisor id="one"></scopewright-advisor></main>`);
  try {
    await visitor.page.goto(`${page.origin}/club`, { waitUntil: "load" });
    await frames(visitor);
    const height = await visitor.page.evaluate(() => {
      window.heard = [];
      document.addEventListener("advice", (event) => window.heard.push(event.detail));
      // From this window itself, not from the frame.
      for (const kind of ["advice", "height", "ready"]) postMessage(JSON.stringify({ scopewright: 1, kind, px: 5000, advice: { words: "forged" } }), "*");
      return document.getElementById("one").shadowRoot.querySelector("iframe").height;
    });
    await visitor.page.evaluate(() => new Promise((next) => setTimeout(next, 300)));
    assert.deepEqual(await visitor.page.evaluate(() => window.heard), []);
    assert.equal(await visitor.page.$eval("#one", (each) => each.shadowRoot.querySelector("iframe").height), height);
  } finally {
    await page.close();
  }
});

// Firefox's driver has no command to switch scripts off.
journey("without JavaScript the link remains", { size: "desk", browsers: ["chromium"] }, async (visitor) => {
  const page = await club(visitor, `<script src="SITE/embed.js"></script><main><h1>Club</h1><scopewright-advisor><a href="SITE/">Advice on a sight</a></scopewright-advisor></main>`);
  try {
    await visitor.page.setJavaScriptEnabled(false);
    await visitor.page.goto(`${page.origin}/club`, { waitUntil: "load" });
    const link = await visitor.seen("scopewright-advisor a");
    const box = await link.boundingBox();
    assert.ok(box.width > 20 && box.height > 8);
    await visitor.page.setJavaScriptEnabled(true);
  } finally {
    await page.close();
  }
});

journey("a club composes its lines and sees them live", { size: "desk" }, async (visitor) => {
  await visitor.open("#/club");
  await frames(visitor);
  await visitor.axe();
  await visitor.fits();
  await visitor.tap("summary");
  await visitor.tap('label:has(#club-quarry-roe_deer)');
  await visitor.type("#club-farthest", "120");
  await visitor.type("#club-power-most", "six");
  await visitor.keys("Tab");
  assert.match(await visitor.text("#club-power-most-error"), /six/);
  await visitor.type("#club-power-most", "6");
  // What lies nowhere is told at its field, and never reaches the lines; a comma is a decimal sign.
  await visitor.type("#club-latitude", "200");
  await visitor.type("#club-longitude", "16,4");
  await visitor.keys("Tab");
  assert.match(await visitor.text("#club-latitude-error"), /200.*90/);
  assert.match(await visitor.text("#club-code"), /longitude="16\.4"/);
  assert.doesNotMatch(await visitor.text("#club-code"), /latitude/);
  await visitor.type("#club-latitude", "");
  await visitor.tap('label:has(#club-lit)');
  await visitor.tap('label:has([name=club-door][value=rings])');
  await visitor.tap('label:has([name=club-language][value=en])');
  const code = await visitor.text("#club-code");
  for (const part of ["embed.js", 'door="rings"', 'quarry="roe_deer"', 'farthest="120"', 'power-most="6"', 'lit-marks="forbidden"', 'language="en"', "<a href="]) assert.ok(code.includes(part), `${part} in ${code}`);
  // Colours with their contrast checked.
  const colour = (name, value) => visitor.page.$eval(`#club-colour-${name}`, (input, given) => { input.value = given; input.dispatchEvent(new InputEvent("input", { bubbles: true })); }, value);
  await colour("accent", "#ffee88");
  await visitor.seen(".club__faint");
  await visitor.seen("#club-usual-colours");
  assert.deepEqual(await visitor.page.$$eval("main [id]", (all) => all.map((one) => one.id).filter((id, at, ids) => ids.indexOf(id) !== at)), [], "each id once");
  assert.match(await visitor.text(".club__faint"), /accent.*contrast of 1\.\d.*4\.5/);
  await colour("accent", "#20487a");
  await visitor.gone(".club__faint");
  assert.match(await visitor.text("#club-code"), /--scopewright-accent: #20487a;/);
  // The preview is the element itself.
  await visitor.until("the preview follows", () => document.querySelector(".club__preview scopewright-advisor")?.getAttribute("door") === "rings");
  await frames(visitor);
  const frame = await (await visitor.page.evaluateHandle(() => document.querySelector("scopewright-advisor").shadowRoot.querySelector("iframe"))).contentFrame();
  await frame.waitForFunction(() => getComputedStyle(document.documentElement).getPropertyValue("--accent").trim() === "#20487a");
  await frame.evaluate(() => (location.hash = "#/question/eye"));
  await frame.waitForSelector("#field-age");
  await frame.evaluate(() => document.querySelector('input[name="glasses"]').click());
  await visitor.until("the event is shown", () => /mag_low/.test(document.getElementById("club-heard").textContent));
  await visitor.axe();
});

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
    const one = await inner(visitor, "one");
    const two = await inner(visitor, "two");
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
