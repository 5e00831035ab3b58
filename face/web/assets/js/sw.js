// The offline worker: pages seen before open without signal, one never seen
// says so. The page itself is asked of the server first, so that nobody reads
// yesterday's oxygen as today's. Before this text the server writes `parts`,
// what every page is made of, and `mark`, a mark of their content.
const kept = "aerosteep-pages";
const made = `aerosteep-made-of-${mark}`;
const never = "/offline";
const patience = 4000; // ms until a page that was seen stands in for a server that hangs

self.addEventListener("install", (event) => event.waitUntil(prepare()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));

async function prepare() {
  await (await caches.open(made)).addAll(parts);
  await (await caches.open(kept)).addAll([never, "/", "/worksheets"]);
  await self.skipWaiting();
}

async function takeOver() {
  for (const name of await caches.keys()) {
    if (name.startsWith("aerosteep-made-of-") && name !== made) await caches.delete(name);
  }
  await self.clients.claim();
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin || address.pathname.startsWith("/api/")) return;
  if (address.pathname.startsWith("/assets/")) event.respondWith(address.search ? fromKept(request) : fromServer(request, made));
  else if (address.pathname === "/plan/wanted" || /^\/batches\/[^/]+\/carried$/.test(address.pathname)) event.respondWith(fromServer(request, kept));
  else if (request.mode === "navigate") event.respondWith(fromServer(request, kept).catch(() => caches.match(never)));
});

// An address with a mark changes with its content, so what is kept is right.
async function fromKept(request) {
  const cache = await caches.open(made);
  const found = await cache.match(request, { ignoreVary: true });
  if (found) return found;
  try {
    return await fetchAndKeep(request, cache);
  } catch (cause) {
    const older = await cache.match(request, { ignoreSearch: true, ignoreVary: true });
    if (older) return older;
    throw cause;
  }
}

async function fromServer(request, name) {
  const cache = await caches.open(name);
  const seen = (await cache.match(request, { ignoreVary: true })) ?? (await cache.match(request, { ignoreSearch: true, ignoreVary: true }));
  const asked = fetchAndKeep(request, cache);
  if (!seen) return asked;
  const late = new Promise((done) => setTimeout(done, patience, seen));
  return Promise.race([asked.catch(() => seen), late]);
}

async function fetchAndKeep(request, cache) {
  const answer = await fetch(request);
  const file = request.mode === "navigate" && !answer.headers.get("Content-Type")?.startsWith("text/html");
  if (answer.ok && !answer.redirected && !file) await cache.put(request, answer.clone());
  return answer;
}
