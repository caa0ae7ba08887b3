// Fingers, wheel and keys on a plot. Dragging with a mouse to look closer is uPlot's own.

/** Lets `over`, the surface of a plot that shows [window.from, window.to), be moved by hand. */
export function follow(over, window) {
  const fingers = new Map();
  const instantAt = (clientX) => {
    const box = over.getBoundingClientRect();
    return window.from + ((clientX - box.left) / box.width) * (window.to - window.from);
  };

  over.addEventListener("pointerdown", (event) => {
    if (event.pointerType !== "touch") return;
    fingers.set(event.pointerId, event.clientX);
    over.setPointerCapture(event.pointerId);
  });

  over.addEventListener("pointermove", (event) => {
    if (!fingers.has(event.pointerId)) return;
    const before = [...fingers.values()];
    const was = fingers.get(event.pointerId);
    fingers.set(event.pointerId, event.clientX);
    if (fingers.size === 1) {
      window.move((was - event.clientX) / over.clientWidth);
    } else {
      const after = [...fingers.values()];
      const spread = Math.abs(after[0] - after[1]);
      if (spread > 8) {
        const middle = (after[0] + after[1]) / 2;
        window.scale(Math.abs(before[0] - before[1]) / spread, instantAt(middle));
      }
    }
  });

  for (const end of ["pointerup", "pointercancel"]) {
    over.addEventListener(end, (event) => fingers.delete(event.pointerId));
  }

  over.addEventListener("dblclick", () => window.reset());

  over.addEventListener(
    "wheel",
    (event) => {
      const sideways = Math.abs(event.deltaX) > Math.abs(event.deltaY);
      if (!sideways && !event.ctrlKey) return;
      event.preventDefault();
      if (sideways) window.move(event.deltaX / over.clientWidth);
      else window.scale(Math.exp(event.deltaY / 200), instantAt(event.clientX));
    },
    { passive: false },
  );
}
