// Strokes on a uPlot canvas. `u` is the plot; instants in seconds, values in the unit of the y axis.

/** Runs strokes inside the frame of the plot; they get ctx and the places of t and v in pixels. */
export function inFrame(u, strokes) {
  const { ctx, bbox } = u;
  const { x, y } = u.scales;
  const right = bbox.width / (x.max - x.min);
  const up = bbox.height / (y.max - y.min);
  const foot = bbox.top + bbox.height;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  strokes(ctx, (t) => bbox.left + (t - x.min) * right, (v) => foot - (v - y.min) * up);
  ctx.restore();
}

/** Pixels of the canvas in one CSS pixel. */
export const dot = () => globalThis.devicePixelRatio || 1;

/** The range of indexes of sorted `t` that a window [from, to] shows, and one beyond each end. */
export function seen(t, from, to) {
  return [Math.max(0, below(t, from) - 1), Math.min(t.length, below(t, to) + 1)];
}

function below(t, instant) {
  let [low, high] = [0, t.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (t[middle] < instant) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether a series has so many points in the frame that lines through them would fill it. */
export function isDense(u, t) {
  const [first, last] = seen(t, u.scales.x.min, u.scales.x.max);
  return (last - first) * dot() > 1.5 * u.bbox.width;
}

/** Both edges and what is between them, where they are dense: an upright stroke for each pixel. */
export function denseRibbon(u, { t, low, high }, fill) {
  const [first, last] = seen(t, u.scales.x.min, u.scales.x.max);
  const width = Math.ceil(dot());
  inFrame(u, (ctx, x, y) => {
    ctx.fillStyle = fill;
    ctx.globalAlpha = 0.5;
    for (let i = first; i < last; ) {
      const left = Math.floor(x(t[i]) / width) * width;
      // From the point before, so that neighbouring strokes meet.
      const before = Math.max(first, i - 1);
      let [top, foot] = [y(high[before]), y(low[before])];
      for (; i < last && x(t[i]) < left + width; i++) {
        top = Math.min(top, y(high[i]));
        foot = Math.max(foot, y(low[i]));
      }
      ctx.fillRect(left, Math.round(top), width, Math.round(foot - top));
    }
  });
}

/** An area between two series. */
export function ribbon(u, { t, low, high }, fill) {
  const [first, last] = seen(t, u.scales.x.min, u.scales.x.max);
  inFrame(u, (ctx, x, y) => {
    ctx.fillStyle = fill;
    ctx.beginPath();
    for (let i = first; i < last; i++) ctx.lineTo(x(t[i]), y(high[i]));
    for (let i = last - 1; i >= first; i--) ctx.lineTo(x(t[i]), y(low[i]));
    ctx.fill();
  });
}

/** A line through a series. */
export function line(u, t, values, stroke, width = 1.25, dash = []) {
  const [first, last] = seen(t, u.scales.x.min, u.scales.x.max);
  inFrame(u, (ctx, x, y) => {
    ctx.strokeStyle = stroke;
    ctx.lineWidth = width * dot();
    ctx.lineJoin = "round";
    ctx.setLineDash(dash.map((length) => length * dot()));
    ctx.beginPath();
    for (let i = first; i < last; i++) ctx.lineTo(x(t[i]), y(values[i]));
    ctx.stroke();
  });
}

/** A level from one instant to another. */
export function level(u, from, to, value, stroke, width, dash) {
  line(u, [from, to], [value, value], stroke, width, dash);
}

/** Uncertainty bars: half lengths in `half`. */
export function bars(u, { t, value, half }, ink) {
  const [first, last] = seen(t, u.scales.x.min, u.scales.x.max);
  const width = Math.max(1, Math.round(dot()));
  inFrame(u, (ctx, x, y) => {
    ctx.fillStyle = ink;
    for (let i = first; i < last; i++) {
      const top = y(value[i] + half[i]);
      ctx.fillRect(Math.round(x(t[i])), top, width, y(value[i] - half[i]) - top);
    }
  });
}

const shapes = {
  round: (ctx, r) => ctx.arc(0, 0, r, 0, 2 * Math.PI),
  square: (ctx, r) => ctx.rect(-r, -r, 2 * r, 2 * r),
  diamond: (ctx, r) => {
    ctx.moveTo(0, -1.4 * r);
    ctx.lineTo(1.4 * r, 0);
    ctx.lineTo(0, 1.4 * r);
    ctx.lineTo(-1.4 * r, 0);
    ctx.closePath();
  },
};

const stamps = new Map();

/** A point as a stamp: many of them print faster than they draw, and it is cut once. */
function stamp(look) {
  const key = `${look.shape} ${look.radius} ${look.stroke} ${look.fill} ${dot()}`;
  if (!stamps.has(key)) stamps.set(key, cut(look));
  return stamps.get(key);
}

function cut({ shape, radius, stroke, fill }) {
  const side = 2 * Math.ceil(2 * radius * dot()) + 1;
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = side;
  const ctx = canvas.getContext("2d");
  ctx.translate(side / 2, side / 2);
  ctx.lineWidth = 1.25 * dot();
  ctx.strokeStyle = stroke;
  ctx.fillStyle = fill;
  shapes[shape](ctx, radius * dot());
  ctx.fill();
  ctx.stroke();
  return canvas;
}

/** Points of one shape (round, square or diamond); `keep(i)` chooses among them. */
export function points(u, { t, value }, { keep = () => true, ...look }) {
  const [first, last] = seen(t, u.scales.x.min, u.scales.x.max);
  const mark = stamp(look);
  const middle = mark.width / 2;
  inFrame(u, (ctx, x, y) => {
    for (let i = first; i < last; i++) {
      if (keep(i)) ctx.drawImage(mark, Math.round(x(t[i]) - middle), Math.round(y(value[i]) - middle));
    }
  });
}

/** A stretch of time, shaded over the whole height. */
export function stretch(u, from, to, fill) {
  inFrame(u, (ctx, x) => {
    ctx.fillStyle = fill;
    const left = x(from);
    ctx.fillRect(left, u.bbox.top, Math.max(x(to) - left, 2 * dot()), u.bbox.height);
  });
}

/** An instant, as an upright line with a word at its head. */
export function upright(u, at, word, stroke, paper, serif) {
  inFrame(u, (ctx, x) => {
    const px = Math.round(x(at)) + 0.5;
    ctx.strokeStyle = stroke;
    ctx.lineWidth = 1.5 * dot();
    ctx.setLineDash([5 * dot(), 3 * dot()]);
    ctx.beginPath();
    ctx.moveTo(px, u.bbox.top);
    ctx.lineTo(px, u.bbox.top + u.bbox.height);
    ctx.stroke();
    note(ctx, u, word, px, u.bbox.top + 16 * dot(), stroke, paper, serif);
  });
}

function note(ctx, u, word, px, py, ink, paper, serif) {
  ctx.font = `italic ${14 * dot()}px ${serif}`;
  const width = ctx.measureText(word).width;
  const gap = 5 * dot();
  const fits = px + gap + width < u.bbox.left + u.bbox.width;
  const left = fits ? px + gap : px - gap - width;
  ctx.fillStyle = paper;
  ctx.fillRect(left - 2 * dot(), py - 13 * dot(), width + 4 * dot(), 17 * dot());
  ctx.fillStyle = ink;
  ctx.textAlign = "left";
  ctx.textBaseline = "alphabetic";
  ctx.fillText(word, left, py);
}

/** A word beside a level, at the right or left edge of the frame. */
export function label(u, value, word, ink, { paper, serif, side = "right", above = true }) {
  inFrame(u, (ctx, x, y) => {
    ctx.font = `italic ${14 * dot()}px ${serif}`;
    const width = ctx.measureText(word).width;
    const pad = 6 * dot();
    const left = side === "right" ? u.bbox.left + u.bbox.width - width - pad : u.bbox.left + pad;
    const base = y(value) + (above ? -5 : 15) * dot();
    ctx.fillStyle = paper;
    ctx.fillRect(left - 2 * dot(), base - 12 * dot(), width + 4 * dot(), 15 * dot());
    ctx.fillStyle = ink;
    ctx.textAlign = "left";
    ctx.textBaseline = "alphabetic";
    ctx.fillText(word, left, base);
  });
}

const monthS = 27.5545 * 86400;

/**
 * Marks above the frame: full disc perigee, small ring apogee; on its foot: wedge setup, stroke
 * calibration. Where months are narrow the rings go first, then the discs.
 */
export function edgeMarks(u, marks, ink) {
  const { ctx, bbox } = u;
  const { min, max } = u.scales.x;
  const month = ((bbox.width / dot()) * monthS) / (max - min);
  const room = { perigee: month > 9, apogee: month > 18, setup: true, calibration: true };
  const base = bbox.top - 8 * dot();
  ctx.save();
  ctx.lineWidth = 1.25 * dot();
  ctx.strokeStyle = ink.frame;
  for (const mark of marks) {
    if (mark.t < min || mark.t > max || !room[mark.kind]) continue;
    ctx.beginPath();
    marking[mark.kind]?.(ctx, u.valToPos(mark.t, "x", true), base, dot(), bbox);
    ctx.fillStyle = mark.kind === "apogee" ? ink.paper : ink.frame;
    ctx.fill();
    ctx.stroke();
  }
  ctx.restore();
}

const marking = {
  perigee: (ctx, x, y, d) => ctx.arc(x, y, 4 * d, 0, 2 * Math.PI),
  apogee: (ctx, x, y, d) => ctx.arc(x, y, 2.5 * d, 0, 2 * Math.PI),
  calibration: (ctx, x, y, d, box) => {
    const foot = box.top + box.height;
    ctx.moveTo(x, foot);
    ctx.lineTo(x, foot - 9 * d);
  },
  setup: (ctx, x, y, d, box) => {
    const foot = box.top + box.height;
    ctx.moveTo(x, foot);
    ctx.lineTo(x - 4.5 * d, foot - 9 * d);
    ctx.lineTo(x + 4.5 * d, foot - 9 * d);
    ctx.closePath();
  },
};

/** The frame of the plot, ruled on all four sides. */
export function frame(u, stroke) {
  const { ctx, bbox } = u;
  ctx.save();
  ctx.strokeStyle = stroke;
  ctx.lineWidth = dot();
  ctx.strokeRect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.restore();
}

/** What the upright axis counts, above the frame at its left. */
export function title(u, words, { ink, serif }) {
  const { ctx, bbox } = u;
  ctx.save();
  ctx.font = `italic ${15 * dot()}px ${serif}`;
  ctx.fillStyle = ink;
  ctx.textAlign = "left";
  ctx.textBaseline = "alphabetic";
  ctx.fillText(words, bbox.left, bbox.top - 8 * dot());
  ctx.restore();
}
