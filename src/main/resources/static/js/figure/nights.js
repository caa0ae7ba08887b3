// Figure of the night ratios: high size over low size of one pass, against prediction.
import * as draw from "./draw.js";
import { figure, placesOf } from "./words.js";

const ratio = (value, half) => figure(value, placesOf(half / 2));

export const nights = {
  tick: (value, places) => figure(value, Math.max(places, 2)),

  reach: (data, from, to) => {
    const [first, last] = draw.seen(data.t, from, to);
    return [1, ...data.predicted.slice(first, last)];
  },

  under(u, data, ink) {
    draw.level(u, u.scales.x.min, u.scales.x.max, 1, ink.frame, 1, [2, 3]);
    if (!data.mean) return;
    const { observed, half, predicted } = data.mean;
    const { min, max } = u.scales.x;
    draw.ribbon(u, { t: [min, max], low: [observed - half, observed - half], high: [observed + half, observed + half] }, ink.interval);
    draw.level(u, min, max, observed, ink.judged, 1.5);
    draw.level(u, min, max, predicted, ink.computed, 1.5, [7, 4]);
  },

  draw(u, data, ink) {
    draw.bars(u, data, ink.bar);
    draw.points(u, data, { shape: "round", radius: 2.5, stroke: ink.observed, fill: ink.observed });
    draw.points(
      u,
      { t: data.t, value: data.predicted },
      { shape: "diamond", radius: 2.5, stroke: ink.computed, fill: ink.paper },
    );
    if (!data.mean) return;
    const above = data.mean.observed >= data.mean.predicted;
    draw.label(u, data.mean.observed, "mean observed", ink.judged, { ...ink, above });
    draw.label(u, data.mean.predicted, "mean computed", ink.computed, { ...ink, side: "left", above: !above });
  },

  say: (data, i, calendar) =>
    `Pass of ${calendar.date(data.t[i])}: observed ${ratio(data.value[i], data.half[i])} \u00b1 ` +
    `${ratio(data.half[i], data.half[i])} (k = 2), computed ${ratio(data.predicted[i], data.half[i])}`,

  columns: [
    { name: "culmination", text: true, write: (data, i, calendar) => calendar.moment(data.t[i]) },
    { name: "observed", write: (data, i) => ratio(data.value[i], data.half[i]) },
    { name: "\u00b1 (k = 2)", write: (data, i) => ratio(data.half[i], data.half[i]) },
    { name: "computed", write: (data, i) => ratio(data.predicted[i], data.half[i]) },
  ],
};
