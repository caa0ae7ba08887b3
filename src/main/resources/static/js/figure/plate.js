// One figure: fetches what it draws, plots it, writes the reading under the pointer, and makes its
// table. What is drawn and said comes from its kind (cycle.js, residuals.js, nights.js).
import uPlot from "../../webjars/uplot/1.6.30/dist/uPlot.esm.js";
import { readInk } from "./ink.js";
import { dot, edgeMarks, frame, seen } from "./draw.js";
import { follow } from "./hand.js";
import { openTable, whenOpened, whileOpen } from "./table.js";

const pause = 160;

/** Where the page is laid out for printing the ground has no height of its own. */
const heightOnPaper = 340;

export class Plate {
  #fetching = null;
  #waiting = 0;
  #frame = 0;
  #inSight = true;
  /** The stretch that the data were asked for; at first the whole. */
  #asked = { from: -Infinity, to: Infinity };
  #switches = new Set();

  /**
   * @param figure the figure element; `data-src` says where its data are
   * @param kind {unit, places, extent(data, i), draw(u, data, ink), say(data, i, calendar), columns}
   */
  constructor(figure, kind, calendar) {
    this.figure = figure;
    this.kind = kind;
    this.calendar = calendar;
    this.ground = figure.querySelector(".plot");
    this.readout = figure.querySelector(".readout");
  }

  /** Fetches the whole; afterwards `data` is there. */
  async begin() {
    this.data = await this.#fetch();
    return this;
  }

  /** Plots, and keeps to the window from now on. */
  hang(window) {
    this.window = window;
    this.ink = readInk();
    this.plot = new uPlot(this.#options(), [this.data.t, this.data.value], this.ground);
    follow(this.plot.over, window);
    window.listen(() => this.#moved());
    new ResizeObserver(() => this.#fit()).observe(this.ground);
    new IntersectionObserver(([seen]) => this.#sighted(seen.isIntersecting)).observe(this.ground);
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
    for (const option of this.#switches) url.searchParams.set(option, "true");
    url.searchParams.set("points", Math.ceil(this.ground.clientWidth * dot()));
    let asked = this.#asked;
    if (this.window) {
      const { from, to } = this.window;
      const beside = (to - from) / 2;
      asked = { from: from - beside, to: to + beside };
      url.searchParams.set("from", new Date(asked.from * 1000).toISOString());
      url.searchParams.set("to", new Date(asked.to * 1000).toISOString());
    }
    const answer = await fetch(url, { headers: { Accept: "application/json" }, signal });
    if (!answer.ok) throw new Error(`${url.pathname}: ${answer.status}`);
    const data = await answer.json();
    this.#asked = asked;
    return data;
  }

  #sighted(inSight) {
    this.#inSight = inSight;
    const { min, max } = this.plot.scales.x;
    if (inSight && (min !== this.window.from || max !== this.window.to)) this.#moved();
  }

  /** Draws once a frame at most, and only what can be seen; an open table follows in any case. */
  #moved() {
    if (this.#inSight) {
      this.#frame ||= requestAnimationFrame(() => {
        this.#frame = 0;
        this.plot.setScale("x", { min: this.window.from, max: this.window.to });
      });
    } else if (!openTable(this.figure)) {
      return;
    }
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(() => this.#refine(), pause);
  }

  /** Fetches anew what the window shows, if what is held is coarser than it could be or ends before. */
  async #refine() {
    if (this.data.coarse || !this.#covers()) await this.#renew();
    else this.#tabulateAnew();
  }

  /** Whether the data were asked for all that the window shows. */
  #covers() {
    return this.#asked.from <= this.window.from && this.#asked.to >= this.window.to;
  }

  async #renew() {
    this.#fetching?.abort();
    this.#fetching = new AbortController();
    try {
      do {
        this.data = await this.#fetch(this.#fetching.signal);
        // The window may move for that, to where nothing was asked for.
        this.window.reach(...this.data.whole);
      } while (!this.#covers());
      this.plot.setData([this.data.t, this.data.value], false);
      this.plot.redraw(true, true);
      this.#tabulateAnew();
    } catch (error) {
      if (error.name !== "AbortError") this.readout.textContent = "The finer data could not be fetched.";
    }
  }

  /** A word that draws more, or no longer. */
  #switched(event) {
    const button = event.target.closest("button[data-switch]");
    if (!button) return;
    const on = button.getAttribute("aria-pressed") !== "true";
    button.setAttribute("aria-pressed", String(on));
    if (on) this.#switches.add(button.dataset.switch);
    else this.#switches.delete(button.dataset.switch);
    this.#renew();
  }

  #fit() {
    const { clientWidth: width, clientHeight: height } = this.ground;
    if (matchMedia("print").matches || !width || !height) return;
    if (width !== this.plot.width || height !== this.plot.height) {
      this.plot.setSize({ width, height });
    }
  }

  #range() {
    const { from, to } = this.window;
    let [low, high] = [Infinity, -Infinity];
    const [first, last] = seen(this.data.t, from, to);
    for (let i = first; i < last; i++) {
      low = Math.min(low, this.data.value[i] - this.data.half[i]);
      high = Math.max(high, this.data.value[i] + this.data.half[i]);
    }
    for (const value of this.kind.reach?.(this.data, from, to, this.#switches) ?? []) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    if (!(low < high)) [low, high] = Number.isFinite(low) ? [low - 1, low + 1] : [0, 1];
    const air = 0.06 * (high - low);
    return [low - air, high + air];
  }

  #options() {
    const pen = (name) => () => this.ink[name];
    const narrow = this.ground.clientWidth < 500;
    const axis = {
      stroke: pen("ink"),
      font: `15px ${this.ink.serif}`,
      grid: { stroke: pen("grid"), width: 1 },
      ticks: { stroke: pen("frame"), width: 1, size: 5 },
      gap: 4,
    };
    return {
      width: this.ground.clientWidth,
      height: this.ground.clientHeight || heightOnPaper,
      padding: [18, 14, 0, 0],
      legend: { show: false },
      cursor: {
        y: false,
        points: { show: false },
        drag: { x: true, y: false, setScale: false, dist: 6 },
        bind: { dblclick: () => null },
      },
      select: { show: true },
      scales: {
        x: { time: true, range: () => [this.window.from, this.window.to] },
        y: { range: () => this.#range() },
      },
      tzDate: (seconds) => this.calendar.local(seconds),
      series: [{}, { paths: () => null, points: { show: false } }],
      axes: [
        {
          ...axis,
          space: narrow ? 48 : 64,
          size: 46,
          values: (u, ticks) => this.calendar.labels(ticks, ticks.length > 1 ? ticks[1] - ticks[0] : 86400),
        },
        {
          ...axis,
          size: narrow ? 58 : 68,
          values: (u, ticks) => this.#yLabels(ticks),
        },
      ],
      hooks: {
        drawAxes: [(u) => this.kind.under?.(u, this.data, this.ink)],
        draw: [
          (u) => {
            this.kind.draw(u, this.data, this.ink, this.#switches);
            frame(u, this.ink.frame);
            edgeMarks(u, this.data.marks, this.ink);
          },
        ],
        setCursor: [(u) => this.#read(u)],
        setSelect: [(u) => this.#selected(u)],
      },
    };
  }

  #yLabels(ticks) {
    const step = ticks.length > 1 ? ticks[1] - ticks[0] : 1;
    let places = 0;
    while (places < 6 && Math.abs(step * 10 ** places - Math.round(step * 10 ** places)) > 1e-6) places++;
    return ticks.map((tick) => this.kind.tick(tick, places));
  }

  #selected(u) {
    if (u.select.width < 6) return;
    const from = u.posToVal(u.select.left, "x");
    const to = u.posToVal(u.select.left + u.select.width, "x");
    u.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
    this.window.show(from, to);
  }

  #read(u) {
    const index = u.cursor.idx;
    if (u.cursor.left < 0 || index === null || index === undefined) return;
    this.readout.textContent = this.kind.say(this.data, index, this.calendar);
  }

  #tabulateAnew() {
    whileOpen(this.figure, (table) => this.#tabulate(table));
  }

  #tabulate(details) {
    const table = document.createElement("table");
    const caption = table.createCaption();
    const { from, to } = this.window;
    caption.textContent =
      `What the figure shows, ${this.calendar.date(from)} to ${this.calendar.date(to)}` +
      (this.data.thinned ? ", thinned to what the screen can hold." : ".");
    const head = table.createTHead().insertRow();
    for (const { name, text } of this.kind.columns) {
      const cell = document.createElement("th");
      cell.scope = "col";
      cell.textContent = name;
      if (!text) cell.className = "n";
      head.append(cell);
    }
    const body = table.createTBody();
    for (let i = 0; i < this.data.t.length; i++) {
      if (this.data.t[i] < from || this.data.t[i] > to) continue;
      const row = body.insertRow();
      for (const { write, text } of this.kind.columns) {
        const cell = row.insertCell();
        cell.textContent = write(this.data, i, this.calendar);
        if (!text) cell.className = "n";
      }
    }
    details.querySelector(".wide").replaceChildren(table);
  }
}
