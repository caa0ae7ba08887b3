// A figure that the server tells as a whole: axes, layers of points and lines, shadings, uprights.
import uPlot from "../../webjars/uplot/1.6.30/dist/uPlot.esm.js";
import { readInk } from "./ink.js";
import * as draw from "./draw.js";
import { whenOpened, whileOpen } from "./table.js";
import { Calendar, figure as written, placesOf } from "./words.js";

/** Where the page is laid out for printing the ground has no height of its own. */
const heightOnPaper = 300;

/** More points than that are drawn small and without bars: what counts then is where they crowd. */
const crowd = 1000;

const looks = {
  observed: (u, data, ink) => {
    const dense = data.t.length > crowd;
    if (data.half && !dense) draw.bars(u, data, ink.bar);
    draw.points(u, data, { shape: "round", radius: dense ? 0.75 : 2.5, stroke: ink.observed, fill: ink.observed });
  },
  inferred: (u, data, ink) => {
    if (data.half) draw.bars(u, data, ink.bar);
    draw.points(u, data, { shape: "round", radius: 2.5, stroke: ink.observed, fill: ink.paper });
  },
  shown: (u, data, ink) =>
    draw.points(u, data, { shape: "round", radius: 3.5, stroke: ink.judged, fill: ink.judged }),
  computed: (u, data, ink) =>
    draw.points(u, data, { shape: "diamond", radius: 2.5, stroke: ink.computed, fill: ink.paper }),
  line: (u, { t, value }, ink) => draw.line(u, t, value, ink.computed, 1.5),
  broken: (u, { t, value }, ink) => draw.line(u, t, value, ink.computed, 1.5, [7, 4]),
  judged: (u, { t, value }, ink) => draw.line(u, t, value, ink.judged, 2),
};
const lines = new Set(["line", "broken", "judged"]);

export class Drawing {
  #options = new Set();
  #fetching = null;

  constructor(figure) {
    this.figure = figure;
    this.ground = figure.querySelector(".plot");
    this.readout = figure.querySelector(".readout");
  }

  /** Fetches, plots, and keeps up with news, light, size and switches. */
  async hang() {
    await this.#fetch();
    this.ink = readInk();
    this.plot = new uPlot(this.#shape(), this.#columns(), this.ground);
    new ResizeObserver(() => this.#fit()).observe(this.ground);
    document.addEventListener("limbspan:light", () => {
      this.ink = readInk();
      this.plot.redraw(false, true);
    });
    document.addEventListener("limbspan:news", () => this.#renew());
    this.figure.addEventListener("click", (event) => this.#switched(event));
    whenOpened(this.figure, (table) => this.#tabulate(table));
  }

  async #fetch(signal) {
    const url = new URL(this.figure.dataset.src, document.baseURI);
    for (const option of this.#options) url.searchParams.set(option, "true");
    const answer = await fetch(url, { headers: { Accept: "application/json" }, signal });
    if (!answer.ok) throw new Error(`${url.pathname}: ${answer.status}`);
    this.data = await answer.json();
    this.calendar = new Calendar(this.data.timeZone);
    this.layers = this.data.layers
      .filter((layer) => layer.x.length > 0)
      .map(({ name, look, x, y, half }) => ({ name, look, t: x, value: y, half }));
    this.points = this.layers.filter(({ look }) => !lines.has(look));
  }

  async #renew() {
    if (!this.figure.isConnected) return;
    // An answer asked for before must not come after this one and put the old data back.
    this.#fetching?.abort();
    this.#fetching = new AbortController();
    try {
      await this.#fetch(this.#fetching.signal);
    } catch (error) {
      if (error.name !== "AbortError") this.readout.textContent = "The new data could not be fetched.";
      return;
    }
    this.plot.setData(this.#columns(), true);
    whileOpen(this.figure, (table) => this.#tabulate(table));
  }

  #switched(event) {
    const button = event.target.closest("button[data-switch]");
    if (!button) return;
    const on = button.getAttribute("aria-pressed") !== "true";
    button.setAttribute("aria-pressed", String(on));
    if (on) this.#options.add(button.dataset.switch);
    else this.#options.delete(button.dataset.switch);
    this.#renew();
  }

  /** All places on the first axis, so that the pointer finds the nearest. */
  #columns() {
    const rows = [];
    for (const layer of this.points) {
      layer.t.forEach((t, i) => rows.push([t, layer.value[i], layer, i]));
    }
    rows.sort((a, b) => a[0] - b[0]);
    this.rows = rows;
    return [rows.map((row) => row[0]), rows.map((row) => row[1])];
  }

  #fit() {
    const { clientWidth: width, clientHeight: height } = this.ground;
    if (matchMedia("print").matches || !width || !height) return;
    if (width !== this.plot.width || height !== this.plot.height) this.plot.setSize({ width, height });
  }

  #span(axis, pick) {
    let [low, high] = [axis.from ?? Infinity, axis.to ?? -Infinity];
    for (const layer of this.layers) {
      for (let i = 0; i < layer.t.length; i++) {
        const [least, most] = pick(layer, i);
        low = Math.min(low, least);
        high = Math.max(high, most);
      }
    }
    if (!(low < high)) [low, high] = Number.isFinite(low) ? [low - 1, low + 1] : [0, 1];
    return [low, high];
  }

  #across() {
    const { across } = this.data;
    const [low, high] = this.#span(across, ({ t }, i) => [t[i], t[i]]);
    const air = across.from === undefined ? 0.025 * (high - low) : 0;
    return [low - air, high + air];
  }

  #up() {
    const [low, high] = this.#span(this.data.up, ({ value, half }, i) => [
      value[i] - (half?.[i] ?? 0),
      value[i] + (half?.[i] ?? 0),
    ]);
    const air = 0.06 * (high - low);
    return [low - air, high + air];
  }

  #shape() {
    const pen = (name) => () => this.ink[name];
    const narrow = this.ground.clientWidth < 500;
    const axis = {
      stroke: pen("ink"),
      font: `15px ${this.ink.serif}`,
      labelFont: `italic 15px ${this.ink.serif}`,
      labelSize: 24,
      grid: { stroke: pen("grid"), width: 1 },
      ticks: { stroke: pen("frame"), width: 1, size: 5 },
      gap: 4,
    };
    const time = this.data.across.kind === "time";
    return {
      width: this.ground.clientWidth,
      height: this.ground.clientHeight || heightOnPaper,
      padding: [26, 14, 0, 0],
      legend: { show: false },
      cursor: { y: false, points: { show: false }, drag: { x: false, y: false } },
      select: { show: false },
      scales: { x: { time, range: () => this.#across() }, y: { range: () => this.#up() } },
      tzDate: (seconds) => this.calendar.local(seconds),
      series: [{}, { paths: () => null, points: { show: false } }],
      axes: [
        {
          ...axis,
          space: narrow ? 52 : 68,
          size: time ? 46 : 28,
          ...(time ? {} : { label: this.data.across.name }),
          values: (u, ticks) => this.#acrossLabels(ticks, time),
        },
        {
          ...axis,
          size: narrow ? 58 : 68,
          values: (u, ticks) => this.#numbers(ticks, this.data.up),
        },
      ],
      hooks: {
        drawAxes: [(u) => this.#under(u)],
        draw: [(u) => this.#over(u)],
        setCursor: [(u) => this.#read(u)],
      },
    };
  }

  #acrossLabels(ticks, time) {
    const step = ticks.length > 1 ? ticks[1] - ticks[0] : 86400;
    return time ? this.calendar.labels(ticks, step) : this.#numbers(ticks, this.data.across);
  }

  #numbers(ticks, { unit, sign }) {
    const step = ticks.length > 1 ? ticks[1] - ticks[0] : 1;
    let places = 0;
    while (places < 6 && Math.abs(step * 10 ** places - Math.round(step * 10 ** places)) > 1e-6) places++;
    return ticks.map((tick) => written(tick, places, sign === "always" && tick !== 0) + (unit.length > 2 ? "" : unit));
  }

  #under(u) {
    for (const { from, to } of this.data.bands) draw.stretch(u, from, to, this.ink.interval);
    const { min, max } = u.scales.y;
    if (this.data.up.sign === "always" && min < 0 && max > 0) {
      draw.level(u, u.scales.x.min, u.scales.x.max, 0, this.ink.computed, 1);
    }
  }

  #over(u) {
    for (const layer of this.layers) looks[layer.look](u, layer, this.ink);
    for (const { at, word } of this.data.uprights) {
      draw.upright(u, at, word, this.ink.judged, this.ink.paper, this.ink.serif);
    }
    draw.frame(u, this.ink.frame);
    const { name, unit } = this.data.up;
    draw.title(u, unit.length > 2 ? `${name}, ${unit}` : name, this.ink);
  }

  #read(u) {
    const { left, top, idx } = u.cursor;
    if (left < 0 || idx === null || idx === undefined || !this.rows.length) return;
    const [, , layer, i] = this.#nearest(u, left, top);
    this.readout.textContent = `${this.#place(layer.t[i])}: ${layer.name} ${this.#value(layer, i)}`;
  }

  #nearest(u, left, top) {
    const right = u.bbox.width / draw.dot() / (u.scales.x.max - u.scales.x.min);
    const up = u.bbox.height / draw.dot() / (u.scales.y.max - u.scales.y.min);
    const [x, y] = [u.posToVal(left, "x"), u.posToVal(top, "y")];
    const [first, last] = draw.seen(this.rows.map((row) => row[0]), x - 24 / right, x + 24 / right);
    let best = this.rows[Math.min(first, this.rows.length - 1)];
    const away = (row) => Math.hypot((row[0] - x) * right, (row[1] - y) * up);
    for (let k = first; k < last; k++) if (away(this.rows[k]) < away(best)) best = this.rows[k];
    return best;
  }

  #place(t) {
    const { across } = this.data;
    return across.kind === "time" ? this.calendar.moment(t) : `${across.name} ${written(t, 2, across.sign === "always")}${across.unit}`;
  }

  #value(layer, i) {
    const { unit, sign } = this.data.up;
    const half = layer.half?.[i];
    const value = written(layer.value[i], placesOf(half ? half / 2 : undefined), sign === "always") + unit;
    return half ? `${value} \u00b1 ${written(half, placesOf(half / 2))}${unit} (k = 2)` : value;
  }

  #tabulate(details) {
    const table = document.createElement("table");
    table.createCaption().textContent =
      `What the figure shows${this.data.thinned ? ", without the points that would fall on others." : "."}`;
    const head = table.createTHead().insertRow();
    for (const name of [this.data.across.name, this.data.up.name, "what it is"]) {
      const cell = document.createElement("th");
      cell.scope = "col";
      cell.textContent = name;
      head.append(cell);
    }
    const body = table.createTBody();
    for (const [, , layer, i] of this.rows) {
      const row = body.insertRow();
      const t = layer.t[i];
      const { across } = this.data;
      row.insertCell().textContent =
        across.kind === "time" ? this.calendar.moment(t) : written(t, 2, across.sign === "always") + across.unit;
      row.insertCell().textContent = this.#value(layer, i);
      row.insertCell().textContent = layer.name;
    }
    details.querySelector(".wide").replaceChildren(table);
  }
}
