// Figure of the cycle: observed diameters over the computed Moon.
import * as draw from "./draw.js";
import { figure, placesOf } from "./words.js";

const arcmin = (value, half) => `${figure(value, placesOf(half / 2))}\u2032`;

const shapes = [["round", "horizontal"], ["square", "vertical"], ["diamond", "limb-fit"]];

export const cycle = {
  tick: (value, places) => `${figure(value, places)}\u2032`,

  reach(data, from, to) {
    const { t, low, high } = data.ribbon;
    const [first, last] = draw.seen(t, from, to);
    return [...low.slice(first, last), ...high.slice(first, last)];
  },

  under(u, data, ink) {
    if (draw.isDense(u, data.ribbon.t)) {
      draw.denseRibbon(u, data.ribbon, ink.computed);
    } else {
      draw.ribbon(u, data.ribbon, ink.ribbon);
      draw.line(u, data.ribbon.t, data.ribbon.low, ink.computed, 1);
      draw.line(u, data.ribbon.t, data.ribbon.high, ink.computed, 1);
    }
    for (const { t, value } of data.arcs) draw.line(u, t, value, ink.computed, 2);
    if (!data.own) return;
    if (draw.isDense(u, data.own.t)) {
      draw.denseRibbon(u, data.own, ink.judged);
      return;
    }
    draw.line(u, data.own.t, data.own.low, ink.judged, 1.75, [2, 3]);
    draw.line(u, data.own.t, data.own.high, ink.judged, 1.75, [2, 3]);
  },

  draw(u, data, ink) {
    draw.bars(u, data, ink.bar);
    const round = { radius: 2.5, stroke: ink.observed, fill: ink.observed };
    const open = { ...round, fill: ink.paper };
    const inferred = new Set(data.inferred);
    for (const [shape, axis] of shapes) {
      draw.points(u, data, { ...round, shape, keep: (i) => data.axis[i] === axis && !inferred.has(i) });
      if (inferred.size) draw.points(u, data, { ...open, shape, keep: (i) => data.axis[i] === axis && inferred.has(i) });
    }
    for (const { number, onset } of data.changes) {
      draw.upright(u, onset, `Remark ${number}`, ink.judged, ink.paper, ink.serif);
    }
  },

  say: (data, i, calendar) =>
    `${calendar.moment(data.t[i])}: observed ${arcmin(data.value[i], data.half[i])} \u00b1 ` +
    `${arcmin(data.half[i], data.half[i])} (k = 2), computed ${arcmin(data.computed[i], data.half[i])}, ${data.axis[i]}` +
    (data.inferred.includes(i) ? ", scale taken from the computed Moon" : ""),

  columns: [
    { name: "taken", text: true, write: (data, i, calendar) => calendar.moment(data.t[i]) },
    { name: "axis", text: true, write: (data, i) => data.axis[i] },
    { name: "observed", write: (data, i) => arcmin(data.value[i], data.half[i]) },
    { name: "\u00b1 (k = 2)", write: (data, i) => arcmin(data.half[i], data.half[i]) },
    { name: "computed", write: (data, i) => arcmin(data.computed[i], data.half[i]) },
  ],
};
