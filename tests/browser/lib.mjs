// The harness: a plain static host, two real browsers, and what a person does in them.
import assert from "node:assert/strict";
import { createReadStream, existsSync, mkdirSync, readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import http from "node:http";
import path from "node:path";
import { fileURLToPath } from "node:url";
import zlib from "node:zlib";
import puppeteer from "puppeteer-core";

export { assert };

const HERE = path.dirname(fileURLToPath(import.meta.url));
export const ROOT = path.resolve(HERE, "../..");
export const DIST = process.env.DIST ?? path.join(ROOT, "dist");
export const SHOTS = path.join(ROOT, "target", "browser");
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** Nothing is measured by it: a machine with other work gets the time it needs. */
const PATIENCE_MS = 45_000;

/** The screens that the page is looked at on. */
export const SIZES = {
  phone: { width: 360, height: 740, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  small: { width: 320, height: 640, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  upright: { width: 768, height: 1024, hasTouch: true, isMobile: true, deviceScaleFactor: 1 },
  tablet: { width: 1180, height: 820, hasTouch: true, isMobile: true, deviceScaleFactor: 1 },
  desk: { width: 1440, height: 900, hasTouch: false, isMobile: false, deviceScaleFactor: 1 },
};

// ---------------------------------------------------------------- a plain static host

const TYPES = {
  html: "text/html; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  mjs: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
  wasm: "application/wasm",
  svg: "image/svg+xml",
  png: "image/png",
  json: "application/json",
  webmanifest: "application/manifest+json",
};

/** A file whose name changes with its content: README says how a host is to send it. */
export const HASHED = /-[0-9a-f]{16}/;

/**
 * Serves a folder on a free port of this machine.
 * `under`: the sub-path it stands at. `pages`: extra answers, path → { type, body, headers,
 * status, cut }; one that is cut breaks off in the middle.
 * `compress`: "br" or "gzip". The result's `folder` may be exchanged while it runs; `requests`
 * lists what was asked for; `broken` (a Set of file names) makes these answer 503.
 */
export async function host({ folder = DIST, under = "/", pages = {}, compress = null, headers = {} } = {}) {
  const state = { folder, pages, headers, requests: [], broken: new Set() };
  const server = http.createServer((request, response) => {
    const asked = decodeURIComponent(new URL(request.url, "http://host").pathname);
    state.requests.push(asked);
    const extra = state.pages[asked];
    if (extra?.cut) {
      // The connection breaks in the middle of the answer.
      response.writeHead(200, { "content-type": extra.type ?? TYPES.html, "content-length": extra.body.length });
      response.write(extra.body.subarray(0, extra.body.length / 2), () => response.destroy());
      return;
    }
    if (extra) {
      response.writeHead(extra.status ?? 200, { "content-type": extra.type ?? TYPES.html, ...extra.headers });
      response.end(extra.body);
      return;
    }
    const name = asked.startsWith(under) ? asked.slice(under.length) || "index.html" : null;
    const file = name === null ? null : path.join(state.folder, name);
    if (state.broken.has(name)) {
      response.writeHead(503).end("broken for a test\n");
    } else if (!file || !file.startsWith(state.folder) || !existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end("not found\n");
    } else {
      const type = TYPES[file.split(".").pop()] ?? "application/octet-stream";
      const small = compress && !type.startsWith("image/png");
      response.writeHead(200, {
        "content-type": type,
        "cache-control": HASHED.test(name) ? "max-age=31536000, immutable" : "no-cache",
        ...(small ? { "content-encoding": compress, vary: "accept-encoding" } : {}),
        ...state.headers,
      });
      if (small) response.end(compressed(file, compress));
      else createReadStream(file).pipe(response);
    }
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  state.origin = `http://127.0.0.1:${server.address().port}`;
  state.address = state.origin + under;
  state.close = () =>
    new Promise((closed) => {
      server.close(closed);
      server.closeAllConnections();
    });
  return state;
}

const kept = new Map();

/** A file compressed once and kept, as a host keeps it beside the file. */
export function compressed(file, how) {
  const key = `${how} ${statSync(file).mtimeMs} ${file}`;
  if (!kept.has(key)) kept.set(key, how === "br" ? brotli(readFileSync(file)) : zlib.gzipSync(readFileSync(file)));
  return kept.get(key);
}

/** Brotli at its best, as a host with files compressed beforehand sends it. */
export function brotli(bytes) {
  return zlib.brotliCompressSync(bytes, { params: { [zlib.constants.BROTLI_PARAM_QUALITY]: 11 } });
}

// ---------------------------------------------------------------- an invented shooter

/** Who sits at the edge of a wood in the evening. */
export const SEAT = {
  version: 1,
  units: "metric",
  uses: [{ what: "roe_deer", share: 4 }, { what: "wild_boar", share: 2 }],
  manners: [{ manner: "seat_rail", share: 4 }],
  ranges: { nearest_m: 30, usual_m: 80, farthest_m: 150 },
  light: { until: "half_hour_after_sunset", cover: [{ cover: "edge", share: 4 }] },
  eye: { age_years: 46, glasses: "distance" },
  load: { cartridge: "308_win_10_7_g" },
  mount: { rings_kept_mm: 30, base: "slotted_rail" },
};

/** Gives answers as if at an earlier visit. */
export async function answered(visitor, answers = SEAT) {
  await visitor.page.evaluateOnNewDocument((text) => {
    try {
      localStorage.setItem("scopewright.answers", text);
    } catch {
      // The blank page before the site has no storage.
    }
  }, JSON.stringify(answers));
}

// ---------------------------------------------------------------- the browsers

const PROGRAMS = {
  chromium: ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "/Applications/Chromium.app/Contents/MacOS/Chromium", "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"],
  firefox: ["firefox", "firefox-esr", "/Applications/Firefox.app/Contents/MacOS/firefox"],
};

export function programOf(name) {
  const named = process.env[name.toUpperCase()];
  if (named) return named;
  const folders = (process.env.PATH ?? "").split(path.delimiter);
  for (const program of PROGRAMS[name]) {
    const found = (path.isAbsolute(program) ? [program] : folders.map((folder) => path.join(folder, program))).find(existsSync);
    if (found) return found;
  }
  throw new Error(`No ${name} on PATH: install it, or set ${name.toUpperCase()} to its program`);
}

export async function launch(name, { preferences = {} } = {}) {
  const executablePath = programOf(name);
  if (name === "firefox") {
    return puppeteer.launch({
      browser: "firefox",
      executablePath,
      extraPrefsFirefox: { "layout.css.prefers-color-scheme.content-override": 1, "ui.prefersReducedMotion": 1, ...preferences },
    });
  }
  return puppeteer.launch({
    executablePath,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage"],
  });
}

// ---------------------------------------------------------------- one visitor

/** Polls until `what` holds; `test` may be async and may throw while it does not. */
export async function until(what, test, patience = PATIENCE_MS) {
  const end = Date.now() + patience;
  let last;
  do {
    try {
      const value = await test();
      if (value) return value;
      last = undefined;
    } catch (error) {
      last = error;
    }
    await new Promise((next) => setTimeout(next, 20));
  } while (Date.now() < end);
  throw new Error(`waited ${patience} ms in vain: ${what}${last ? ` (${last.message})` : ""}`);
}

/**
 * Lets a frame wait by asking from outside. Older supported versions of Firefox hold a driver's
 * scripts to the page's policy, which refuses the functions that puppeteer makes of text to wait.
 */
function waitsFromOutside(frame) {
  const kind = Object.getPrototypeOf(frame);
  kind.waitForFunction = async function (test, { timeout } = {}, ...values) {
    return until(`${test}`, async () => {
      const handle = await this.evaluateHandle(test, ...values);
      return (await handle.evaluate((value) => Boolean(value))) && handle;
    }, timeout);
  };
  kind.waitForSelector = async function (selector, { visible = false, hidden = false, timeout } = {}) {
    return until(`${selector}${hidden ? " is gone" : ""}`, async () => {
      const element = await this.$(selector);
      if (hidden) return !element || element.isHidden();
      return element && (!visible || (await element.isVisible())) && element;
    }, timeout);
  };
}

/** Waits until the module runs in a page or a frame: until then its HTML stands there alone. */
export const runs = (frame) => frame.waitForFunction(() => document.documentElement.dataset.state === "running");

/** A person at one page: what they do, what they see, and what went wrong behind it. */
export class Visitor {
  constructor(page, browserName, size, site, log = []) {
    Object.assign(this, { page, browserName, size, site, problems: log, allowed: [], counted: 0 });
  }

  static async arrive(context, browserName, { size = "phone", theme = "light", site, motion = false } = {}) {
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_MS);
    const visitor = new Visitor(page, browserName, size, site);
    if (browserName === "firefox") waitsFromOutside(page.mainFrame());
    await page.setViewport(SIZES[size]).catch((error) => {
      // Older supported versions of Firefox cannot be told how the screen is turned: size and
      // touch are set all the same.
      if (!/unknown command emulation\.setScreenOrientationOverride/.test(error.message)) throw error;
    });
    if (browserName === "chromium") {
      await page.emulateMediaFeatures([
        { name: "prefers-color-scheme", value: theme },
        { name: "prefers-reduced-motion", value: motion ? "no-preference" : "reduce" },
      ]);
    }
    page.on("console", (message) => {
      if (message.type() === "error") visitor.problems.push(`console: ${message.text()}`);
    });
    page.on("pageerror", (error) => visitor.problems.push(`page error: ${error.message ?? error}`));
    page.on("request", (request) => {
      const url = new URL(request.url());
      if (/^https?:$/.test(url.protocol) && url.origin !== new URL(site).origin) {
        visitor.problems.push(`request to another origin: ${url}`);
      }
    });
    await page.evaluateOnNewDocument(() => {
      window.clicksHeard = 0;
      addEventListener("click", () => (window.clicksHeard += 1), true);
      window.policyViolations = [];
      addEventListener("securitypolicyviolation", (event) =>
        window.policyViolations.push(`${event.violatedDirective} ${event.blockedURI} ${event.sourceFile ?? ""}:${event.lineNumber}`),
      );
    });
    return visitor;
  }

  /** Opens a path of the site and waits until the module runs. */
  async open(where = "") {
    await this.page.goto(new URL(where, this.site).href, { waitUntil: "load" });
    await this.running();
  }

  async reload() {
    // Firefox tells it as an error when a page is left while its worker still loads. A page whose
    // own module does not load never runs, and is found out below.
    if (this.browserName === "firefox") this.allow(/error loading dynamically imported module/);
    await this.page.reload({ waitUntil: "load" });
    await this.running();
  }

  async running() {
    await runs(this.page);
  }

  /** Waits until the offline copy is complete and answers for this page. */
  async keptOffline() {
    await this.page.waitForFunction(() => navigator.serviceWorker?.controller?.state === "activated");
  }

  async seen(selector) {
    return this.page.waitForSelector(selector, { visible: true });
  }

  async gone(selector) {
    await this.page.waitForSelector(selector, { hidden: true });
  }

  /** Taps on a touch screen, clicks elsewhere; `counted` counts them. */
  async tap(selector) {
    const element = typeof selector === "string" ? await this.seen(selector) : selector;
    // As a thumb does: out from under what is fixed at the edge.
    await element.evaluate((node) => node.scrollIntoView({ block: "center", behavior: "instant" }));
    this.counted += 1;
    const before = await this.page.evaluate(() => window.clicksHeard);
    if (SIZES[this.size].hasTouch) await element.tap();
    else await element.click();
    // A browser says that a finger has left before it makes a click of it. Whoever taps where
    // nothing is to be clicked, or leaves the page by it, does not wait for it.
    await until("the tap is heard", () => this.page.evaluate((count) => window.clicksHeard !== count, before).catch(() => true), 1000).catch(() => {});
    await this.settled();
  }

  /** Lets the page draw and keep what follows from what was just done. */
  async settled() {
    await this.page.evaluate(() => new Promise((done) => setTimeout(done))).catch(() => {});
  }

  /** Replaces what a field holds. */
  async type(selector, text) {
    const element = await this.seen(selector);
    await element.evaluate((field) => {
      field.focus();
      field.select?.();
    });
    await this.page.keyboard.press("Backspace");
    await this.page.keyboard.type(text);
    await this.settled();
  }

  /** Presses keys one after the other: `keys("Tab", "Space")`. */
  async keys(...names) {
    for (const name of names) await this.page.keyboard.press(name);
    await this.settled();
  }

  /** Walks with Tab until an element that matches has the focus. */
  async tabTo(selector, limit = 80) {
    const wasHere = await this.page.evaluate(() => document.hasFocus());
    for (let step = 0; step < limit; step += 1) {
      if (await this.page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
      await this.page.keyboard.press("Tab");
      // At the end of a page Firefox goes on in its own bars; a driver's keys still arrive at the
      // page, but press nothing there.
      if (wasHere && this.browserName === "firefox" && !(await this.page.evaluate(() => document.hasFocus()))) {
        throw new Error(`Tab leaves the page before it reaches ${selector}`);
      }
    }
    const stuck = await this.page.evaluate(() => document.activeElement?.outerHTML.slice(0, 120));
    throw new Error(`Tab does not reach ${selector} in ${limit} steps; the focus is on ${stuck}`);
  }

  async text(selector) {
    const element = await this.page.waitForSelector(selector);
    return element.evaluate((node) => node.textContent.trim());
  }

  async until(what, test, ...values) {
    if (values.length > 0 || test.length === 0) {
      return this.page.waitForFunction(test, {}, ...values).catch((error) => {
        throw new Error(`waited in vain: ${what} (${error.message})`);
      });
    }
    return until(what, () => test(this.page));
  }

  /** What axe-core finds must be nothing. */
  async axe(options = {}) {
    await this.page.evaluate(AXE);
    const found = await this.page.evaluate(
      async (given) => (await window.axe.run(document, given)).violations.map((violation) => ({
        rule: violation.id,
        help: violation.help,
        where: violation.nodes.map((node) => node.target.join(" ")),
      })),
      { resultTypes: ["violations"], ...options },
    );
    assert.deepEqual(found, [], "axe-core found something");
  }

  /** Nothing may scroll sideways. */
  async fits() {
    const [wide, room] = await this.page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
    assert.ok(wide <= room, `the page is ${wide} px wide in a window of ${room} px`);
  }

  async shot(name, options = {}) {
    mkdirSync(SHOTS, { recursive: true });
    const file = path.join(SHOTS, `${name}-${this.browserName}.png`);
    await this.page.screenshot({ path: file, ...options });
    return file;
  }

  /** A problem that this journey brings about on purpose. */
  allow(pattern) {
    this.allowed.push(pattern);
  }

  async clean() {
    const violations = await this.page.evaluate(() => window.policyViolations ?? []).catch(() => []);
    const all = [...this.problems, ...violations.map((text) => `policy: ${text}`)];
    const left = all.filter((text) => !this.allowed.some((pattern) => pattern.test(text)));
    assert.deepEqual(left, [], "the page reported problems");
  }
}

// ---------------------------------------------------------------- journeys

export const journeys = [];

/**
 * Registers a journey. `run` gets a visitor at a fresh browser context with `host` (the
 * server) and `another(options)` (a further tab); afterwards nothing may have been reported:
 * no console error, no policy violation, no request to another origin.
 */
export function journey(name, options, run) {
  journeys.push({ name, browsers: ["chromium", "firefox"], size: "phone", theme: "light", site: {}, ...options, run });
}

export async function walk(found, browser, browserName) {
  const server = await host(found.site);
  const context = await browser.createBrowserContext();
  const visitors = [];
  const another = async (options = {}) => {
    const visitor = await Visitor.arrive(context, browserName, {
      size: found.size,
      theme: found.theme,
      site: server.address,
      ...options,
    });
    visitors.push(visitor);
    return visitor;
  };
  try {
    const visitor = await another();
    Object.assign(visitor, { host: server, another });
    await found.run(visitor);
    for (const each of visitors) await each.clean();
  } catch (error) {
    const name = `failed-${found.name.replace(/[^a-z0-9]+/gi, "-")}`;
    const picture = await visitors[0]?.shot(name).catch(() => null);
    if (picture) error.picture = path.relative(ROOT, picture);
    const heard = visitors.flatMap((each) => each.problems);
    if (heard.length > 0) error.heard = heard;
    throw error;
  } finally {
    await context.close().catch(() => {});
    await server.close().catch(() => {});
  }
}
