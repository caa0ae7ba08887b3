// Dates and numbers as the page writes them, in the rig's time zone.
const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

const mostKept = 5000;

/** A writer of dates for one IANA time zone. */
export class Calendar {
  constructor(zone) {
    this.locals = new Map();
    this.parts = new Intl.DateTimeFormat("en-GB", {
      timeZone: zone, hourCycle: "h23",
      year: "numeric", month: "numeric", day: "numeric", hour: "2-digit", minute: "2-digit",
    });
  }

  /** {year, month (1 to 12), day, clock "hh:mm"} at that second of the epoch. */
  at(seconds) {
    const got = {};
    for (const { type, value } of this.parts.formatToParts(seconds * 1000)) got[type] = value;
    return { year: got.year, month: +got.month, day: +got.day, clock: `${got.hour}:${got.minute}` };
  }

  /** A date object whose local parts read as the zone's do, as uPlot wants it. */
  local(seconds) {
    // Kept: an axis asks for the same days in every frame.
    const kept = this.locals.get(seconds);
    if (kept) return new Date(kept);
    const { year, month, day, clock } = this.at(seconds);
    const [hour, minute] = clock.split(":");
    const made = new Date(+year, month - 1, day, +hour, +minute, Math.floor(seconds % 60));
    if (this.locals.size > mostKept) this.locals.clear();
    this.locals.set(seconds, made.getTime());
    return made;
  }

  date(seconds) {
    const { year, month, day } = this.at(seconds);
    return `${day} ${months[month - 1]} ${year}`;
  }

  moment(seconds) {
    return `${this.date(seconds)}, ${this.at(seconds).clock}`;
  }

  /** Labels of an axis whose ticks stand `step` seconds apart; the larger unit where it changes. */
  labels(ticks, step) {
    let before = null;
    return ticks.map((tick) => {
      const now = this.at(tick);
      const label = axisLabel(now, before, step);
      before = now;
      return label;
    });
  }
}

const day = 86400;

function axisLabel(now, before, step) {
  const month = months[now.month - 1];
  if (step >= 360 * day) return now.year;
  if (step >= 27 * day) return before?.year === now.year ? month : `${month}\n${now.year}`;
  if (step >= day) {
    return before?.month === now.month && before?.year === now.year
      ? String(now.day)
      : `${now.day} ${month}\n${now.year}`;
  }
  return before?.day === now.day ? now.clock : `${now.clock}\n${now.day} ${month}`;
}

/** A number with a true minus, and a plus where a sign is wanted. */
export function figure(value, places, signed = false) {
  const digits = Math.abs(value).toFixed(places);
  if (value < 0 && Number(digits) !== 0) return `\u2212${digits}`;
  return signed ? `+${digits}` : digits;
}

/** The decimal places that show an uncertainty with two significant digits (GUM 7.2.6). */
export function placesOf(uncertainty) {
  if (!(uncertainty > 0)) return 2;
  return Math.max(0, 1 - Math.floor(Math.log10(uncertainty)));
}
