// Loads the page's module, keeps the offline copy, and says plainly when something cannot run.
const me = document.querySelector("script[data-wasm]");
const absolute = (path) => new URL(path, document.baseURI).href;
// What only a tap asks for is loaded then.
globalThis.scopewrightBeside = (name) => import(absolute(name));
// A file's text: UTF-8, or else what spreadsheets write in its place.
globalThis.scopewrightText = async (file) => {
  const bytes = await file.arrayBuffer();
  const as = (name) => new TextDecoder(name).decode(bytes);
  const text = as("utf-8");
  return text.includes("\ufffd") ? as(text.startsWith("\ufffd\ufffd") ? "utf-16" : "windows-1252") : text;
};

function show(id, detail) {
  const part = document.getElementById(id);
  if (!part) return;
  const place = part.querySelector("[data-detail]");
  if (place && detail) place.textContent = detail;
  part.hidden = false;
}

// A stopped module never answers again. Answers are saved one by one as they are given,
// so starting again goes on where it stopped.
let stopped = false;
function stop(error) {
  if (stopped || typeof WebAssembly !== "object" || !(error instanceof WebAssembly.RuntimeError)) return;
  stopped = true;
  show("stopped", String(error.message ?? error));
  document.querySelector("#stopped button")?.focus();
}
addEventListener("error", (event) => stop(event.error));
addEventListener("unhandledrejection", (event) => stop(event.reason));
document.querySelector("#stopped button")?.addEventListener("click", () => location.reload());

// What stands in the HTML is seen before the module takes its place; a page that is not shown
// paints nothing and does not wait for it.
const painted = () =>
  new Promise((done) => {
    setTimeout(done, 300);
    new PerformanceObserver((list) => {
      if (list.getEntriesByName("first-contentful-paint").length) done();
    }).observe({ type: "paint", buffered: true });
  });

// A link's answers and a club's presets stand in the address until the module has read them: a
// tap before that shows what it asks for, and the module goes there when it has them.
addEventListener("click", (event) => {
  const to = event.target.closest("#app a")?.getAttribute("href");
  if (!to || document.documentElement.dataset.state || !/^#\/(open|embed)\//.test(location.hash)) return;
  event.preventDefault();
  me.dataset.tapped = to;
  for (const part of document.querySelectorAll(".early")) part.classList.toggle("early--asked", `#${part.id}` === to);
});

async function start() {
  if (typeof WebAssembly !== "object") {
    show("cannot-run", "WebAssembly");
    return;
  }
  try {
    const [glue] = await Promise.all([import(absolute(me.dataset.js)), painted()]);
    await glue.default({ module_or_path: absolute(me.dataset.wasm) });
    document.documentElement.dataset.state = "running";
  } catch (error) {
    if (error instanceof WebAssembly.RuntimeError) stop(error);
    else show("cannot-run", String(error?.message ?? error));
  }
}

// A new version stands ready: it is used when the visitor says so, never before.
function announce(registration, worker) {
  const notice = document.getElementById("update");
  // The first of all versions is no new one.
  if (!notice || !registration.active || registration.active === worker) return;
  const use = () => {
    // Another tab has changed over already.
    if (worker.state !== "installed") return location.reload();
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    worker.postMessage("use the new version");
  };
  notice.hidden = false;
  notice.querySelector("button")?.addEventListener("click", use, { once: true });
}

async function keepOffline() {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register(absolute("sw.js"));
    const watch = (worker) =>
      worker?.addEventListener("statechange", () => {
        if (worker.state === "installed") announce(registration, worker);
      });
    if (registration.waiting) announce(registration, registration.waiting);
    watch(registration.installing);
    registration.addEventListener("updatefound", () => watch(registration.installing));
  } catch (error) {
    // Private windows and plain http forbid the copy: the page runs without it.
    console.info(`No offline copy here: ${error?.message ?? error}`);
  }
}

// Paper shows what is folded on the screen.
let unfolded = [];
addEventListener("beforeprint", () => {
  unfolded = [...document.querySelectorAll(".fold:not([open])")];
  for (const fold of unfolded) fold.open = true;
});
addEventListener("afterprint", () => {
  for (const fold of unfolded) fold.open = false;
});

/** Removes the offline copy of this page and nothing of any other. */
export async function dropCopy() {
  const registration = await navigator.serviceWorker?.getRegistration(absolute("./"));
  if (!registration) return;
  const family = `scopewright ${registration.scope} `;
  await registration.unregister();
  for (const name of await caches.keys()) if (name.startsWith(family)) await caches.delete(name);
}

await start();
keepOffline();
