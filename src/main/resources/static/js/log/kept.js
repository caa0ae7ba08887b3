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

/**
 * Keeps the light that was chosen: the page as kept has the light of its last visit, which must not
 * dazzle anybody out there.
 */
export function keepLight() {
  const root = document.documentElement;
  const chosen = localStorage.getItem("light");
  if (!navigator.onLine && chosen) {
    root.dataset.light = chosen;
    for (const button of document.querySelectorAll("button[name=light]")) {
      button.setAttribute("aria-pressed", String(button.value === chosen));
    }
  }
  new MutationObserver(() => localStorage.setItem("light", root.dataset.light)).observe(root, {
    attributeFilter: ["data-light"],
  });
}
