// The stretch of time that all figures of a page show together. Seconds of the epoch, half-open.
const shortest = 3600;

function edged(first, last) {
  const edge = Math.max((last - first) * 0.015, shortest);
  return [first - edge, last + edge];
}

/** A window on [first, last) that tells its listeners when it moves. */
export class TimeWindow {
  #listeners = new Set();

  constructor(first, last) {
    this.whole = edged(first, last);
    [this.from, this.to] = this.whole;
  }

  /** The ledger reaches from first to last now; who looks at the whole goes on looking at it. */
  reach(first, last) {
    const whole = edged(first, last);
    if (whole[0] >= this.whole[0] && whole[1] <= this.whole[1]) return;
    const all = this.from === this.whole[0] && this.to === this.whole[1];
    this.whole = [Math.min(whole[0], this.whole[0]), Math.max(whole[1], this.whole[1])];
    if (all) this.reset();
  }

  listen(listener) {
    this.#listeners.add(listener);
  }

  show(from, to) {
    const [first, last] = this.whole;
    const width = Math.min(Math.max(to - from, shortest), last - first);
    const middle = (from + to) / 2;
    this.from = Math.min(Math.max(middle - width / 2, first), last - width);
    this.to = this.from + width;
    // The whole is known by its very bounds, which the sums above may miss by a rounding.
    if (width === last - first) [this.from, this.to] = this.whole;
    for (const listener of this.#listeners) listener(this);
  }

  /** Moves by a fraction of the width, later if positive. */
  move(fraction) {
    const by = fraction * (this.to - this.from);
    this.show(this.from + by, this.to + by);
  }

  /** Widens (factor above 1) or narrows about the instant that stays in place. */
  scale(factor, still = (this.from + this.to) / 2) {
    this.show(still - (still - this.from) * factor, still + (this.to - still) * factor);
  }

  reset() {
    this.show(...this.whole);
  }

  /** One of the words under a figure: earlier, later, closer, wider, whole. */
  turn(word) {
    const turns = {
      earlier: () => this.move(-0.5),
      later: () => this.move(0.5),
      closer: () => this.scale(0.5),
      wider: () => this.scale(2),
      whole: () => this.reset(),
    };
    turns[word]?.();
  }
}
