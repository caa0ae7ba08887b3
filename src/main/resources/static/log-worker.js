// Stands between the log page and the network: the network first, else what the browser has kept.
// Kept are the log pages that were opened, their styles, scripts and tables; nothing else.
const CACHE = "limbspan-log";
const KEPT = /^\/(css|js)\/|^\/limb\.svg$|^\/rigs\/[^/]+\/log(\/|$)/;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const address = new URL(event.request.url);
  const ours = address.origin === self.location.origin && KEPT.test(address.pathname);
  if (event.request.method === "GET" && ours) event.respondWith(fresh(event.request, address));
});

async function fresh(request, address) {
  const cache = await caches.open(CACHE);
  try {
    const answer = await fetch(request);
    if (answer.ok && !address.search) await cache.put(request, answer.clone());
    return answer;
  } catch (trouble) {
    const kept = await cache.match(request, { ignoreVary: true });
    if (kept) return kept;
    throw trouble;
  }
}
