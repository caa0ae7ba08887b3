// Colours and type of a drawing, read from the style sheet each time the light changes.
const names = [
  "paper", "ink", "plot-frame", "plot-grid", "plot-observed", "plot-bar", "plot-computed",
  "plot-ribbon", "plot-judged", "plot-interval",
];

/** The inks of the present light: {frame, grid, observed, ...} and the type as a CSS family. */
export function readInk() {
  const style = getComputedStyle(document.documentElement);
  const ink = { serif: style.getPropertyValue("--serif").trim() };
  for (const name of names) {
    ink[name.replace("plot-", "")] = style.getPropertyValue(`--${name}`).trim();
  }
  return ink;
}
