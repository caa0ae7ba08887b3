// Figure of the night ratios on their own page: with the running mean, and the near Moon if wanted.
import * as draw from "./draw.js";
import { nights } from "./nights.js";
import { figure, placesOf } from "./words.js";

const ratio = (value, half) => figure(value, placesOf(half / 2));

export const passes = {
  ...nights,

  reach(data, from, to, options) {
    const [first, last] = draw.seen(data.t, from, to);
    const near = options.has("near") ? data.near.slice(first, last) : [];
    return [1, ...data.predicted.slice(first, last), ...near];
  },

  under(u, data, ink) {
    draw.level(u, u.scales.x.min, u.scales.x.max, 1, ink.frame, 1, [2, 3]);
    draw.ribbon(u, { t: data.t, low: data.running.low, high: data.running.high }, ink.interval);
    draw.line(u, data.t, data.running.value, ink.judged, 2);
    draw.line(u, data.t, data.running.predicted, ink.computed, 1.5, [7, 4]);
  },

  draw(u, data, ink, options) {
    draw.bars(u, data, ink.bar);
    draw.points(u, data, { shape: "round", radius: 2.5, stroke: ink.observed, fill: ink.observed });
    const open = { radius: 2.5, stroke: ink.computed, fill: ink.paper };
    draw.points(u, { t: data.t, value: data.predicted }, { ...open, shape: "diamond" });
    if (options.has("near")) draw.points(u, { t: data.t, value: data.near }, { ...open, shape: "square" });
  },

  say: (data, i, calendar) =>
    `${nights.say(data, i, calendar)}, near Moon ${figure(data.near[i], 2)}; ${data.verdict[i]}`,

  columns: [
    ...nights.columns,
    { name: "near Moon", write: (data, i) => figure(data.near[i], 2) },
    { name: "mean so far", write: (data, i) => ratio(data.running.value[i], data.running.high[i] - data.running.value[i]) },
    { name: "verdict", text: true, write: (data, i) => data.verdict[i] },
  ],
};
