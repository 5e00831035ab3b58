// The offline worker: pages seen before open without signal, one never seen
// says so. What a page is made of is kept for good; the page itself is asked
// of the server first, so that nobody reads yesterday's oxygen as today's.
const kept = "aerosteep-pages";
const made = "aerosteep-made-of";
const never = "/offline";

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(kept).then((c) => c.addAll([never, "/", "/worksheets"])).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin || address.pathname.startsWith("/api/")) return;
  if (address.pathname.startsWith("/assets/")) event.respondWith(fromKept(request));
  else if (request.mode === "navigate") event.respondWith(fromServer(request));
});

// An asset's address changes with its content, so what is kept is right.
async function fromKept(request) {
  const cache = await caches.open(made);
  const found = await cache.match(request);
  if (found) return found;
  try {
    const answer = await fetch(request);
    if (answer.ok) await cache.put(request, answer.clone());
    return answer;
  } catch (cause) {
    const older = await cache.match(request, { ignoreSearch: true });
    if (older) return older;
    throw cause;
  }
}

async function fromServer(request) {
  const cache = await caches.open(kept);
  try {
    const answer = await fetch(request);
    if (answer.ok && !answer.redirected) await cache.put(request, answer.clone());
    return answer;
  } catch {
    return (await cache.match(request)) || (await cache.match(request, { ignoreSearch: true })) || cache.match(never);
  }
}
