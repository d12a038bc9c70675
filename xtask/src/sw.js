// The offline copy: every file of one version, kept and served whole.
// A new version waits until the page asks for it, so that nobody's answers are cut off;
// a version that did not arrive whole is never used. What the page has just loaded is not asked
// for again: a file with its hash in its name cannot have changed, of others the host is asked
// whether they have.
const VERSION = "__VERSION__";
const FILES = ["__FILES__"];
const FAMILY = `scopewright ${self.registration.scope} `;
const CACHE = FAMILY + VERSION;

// A version is named by the digest of all its files: an upload of which some files are still
// those of the version before, or were cut off, is no version.
async function keepAll() {
  const answers = await Promise.all(
    FILES.map(async (file) => {
      const cache = /-[0-9a-f]{16}/.test(file) ? "default" : "no-cache";
      const answer = await fetch(new Request(file, { cache }));
      if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
      return answer;
    }),
  );
  const whole = new Blob(await Promise.all(answers.map((answer) => answer.clone().blob())));
  const digest = new DataView(await crypto.subtle.digest("SHA-256", await whole.arrayBuffer()));
  if (digest.getBigUint64(0).toString(16).padStart(16, "0") !== VERSION) throw new Error("not of one version");
  const isNew = !(await caches.has(CACHE));
  const copy = await caches.open(CACHE);
  await Promise.all(FILES.map((file, at) => copy.put(file, answers[at]))).catch(async (error) => {
    // A full disk: what came of a new version goes again.
    if (isNew) await caches.delete(CACHE);
    throw error;
  });
}

self.addEventListener("install", (event) => event.waitUntil(keepAll()));

async function dropOlder() {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(FAMILY) && name !== CACHE).map((name) => caches.delete(name)),
  );
  await self.clients.claim();
}

self.addEventListener("activate", (event) => event.waitUntil(dropOlder()));

self.addEventListener("message", (event) => {
  if (event.data === "use the new version") self.skipWaiting();
});

async function answer(request) {
  const cache = await caches.open(CACHE);
  const wanted = request.mode === "navigate" && isFront(request.url) ? "./index.html" : request;
  return (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request);
}

function isFront(address) {
  const url = new URL(address);
  return url.origin + url.pathname === self.registration.scope;
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(self.registration.scope)) {
    event.respondWith(answer(request));
  }
});
