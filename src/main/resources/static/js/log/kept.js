// Keeps this page and all it is made of in the browser, for when there is no network.
const CACHE = "limbspan-log";

/** Waits until the browser has all of it; false where it keeps no pages for this address. */
export async function keepPage(more) {
  if (!("serviceWorker" in navigator)) return false;
  try {
    await navigator.serviceWorker.register("/log-worker.js");
    await navigator.serviceWorker.ready;
    const cache = await caches.open(CACHE);
    const parts = performance
      .getEntriesByType("resource")
      .map(({ name }) => name)
      .filter((name) => isPart(new URL(name)));
    await cache.addAll([...new Set([location.pathname, ...parts, ...more])]);
    await navigator.storage?.persist?.();
    return true;
  } catch {
    return (await caches.match(location.pathname)) !== undefined;
  }
}

function isPart({ origin, pathname }) {
  return origin === location.origin && /^\/(css|js)\/|\.svg$|\.webmanifest$/.test(pathname);
}
