// Zooms about the whole and pans a part of the first figure, three seconds each.
async () => {
  const figure = document.querySelector("figure[data-figure]");
  figure.scrollIntoView();
  await new Promise((rested) => setTimeout(rested, 1500));
  const over = figure.querySelector(".u-over");
  const box = over.getBoundingClientRect();
  const frame = () => new Promise(requestAnimationFrame);
  const wheel = (deltaX, deltaY, ctrlKey) =>
    over.dispatchEvent(
      new WheelEvent("wheel", {
        deltaX, deltaY, ctrlKey, bubbles: true, cancelable: true,
        clientX: box.left + box.width / 2, clientY: box.top + 20,
      }),
    );
  const measure = async (name, step) => {
    const times = [];
    const begin = await frame();
    for (let last = begin, i = 0; last - begin < 3000; i++) {
      step(i);
      const now = await frame();
      times.push(now - last);
      last = now;
    }
    const sum = times.reduce((one, other) => one + other, 0);
    times.sort((one, other) => one - other);
    const at = (share) => times[Math.floor(times.length * share)].toFixed(1);
    return `${name} ${((1000 * times.length) / sum).toFixed(1)} frames/s (median ${at(0.5)} ms, 95 % ${at(0.95)} ms)`;
  };
  const zoom = await measure("zoom", (i) => wheel(0, i % 60 < 30 ? -12 : 12, true));
  wheel(0, -300, true);
  await new Promise((rested) => setTimeout(rested, 1500));
  const pan = await measure("pan", (i) => wheel(i % 120 < 60 ? 15 : -15, 0, false));
  return `${zoom}, ${pan}`;
}
