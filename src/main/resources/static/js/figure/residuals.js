// Figure of the residuals: ln(observed / computed) in percent, and the judged changes.
import * as draw from "./draw.js";
import { figure, placesOf } from "./words.js";

const percent = (value, half, signed) => `${figure(value, placesOf(half / 2), signed)} %`;

export const residuals = {
  tick: (value, places) => (value === 0 ? "0 %" : `${figure(value, places, true)} %`),

  under(u, data, ink) {
    for (const { from, to } of data.changes) draw.stretch(u, from, to, ink.interval);
    draw.level(u, u.scales.x.min, u.scales.x.max, 0, ink.computed, 1.25);
  },

  draw(u, data, ink) {
    draw.bars(u, data, ink.bar);
    draw.points(u, data, { shape: "round", radius: 2.5, stroke: ink.observed, fill: ink.observed });
    for (const { from, to, percent: value } of data.levels) {
      draw.level(u, from, to, value, ink.judged, 2);
    }
    for (const { onset, words } of data.changes) {
      draw.upright(u, onset, words, ink.judged, ink.paper, ink.serif);
    }
  },

  say: (data, i, calendar) =>
    `${calendar.moment(data.t[i])}: ${percent(data.value[i], data.half[i], true)} \u00b1 ` +
    `${percent(data.half[i], data.half[i])} (k = 2)`,

  columns: [
    { name: "taken", text: true, write: (data, i, calendar) => calendar.moment(data.t[i]) },
    { name: "residual", write: (data, i) => percent(data.value[i], data.half[i], true) },
    { name: "\u00b1 (k = 2)", write: (data, i) => percent(data.half[i], data.half[i]) },
  ],
};
