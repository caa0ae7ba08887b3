// Notes the frame in which the first figure is there, in ms since the request began.
new MutationObserver(() => {
  if (!document.querySelector("figure canvas")) return;
  requestAnimationFrame(() => (globalThis.firstPlotMs ??= performance.now()));
}).observe(document, { childList: true, subtree: true });
