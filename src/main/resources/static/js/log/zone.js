// Local time of a zone and instants, by the browser's own rules of time zones.
const formats = new Map();

function format(zone) {
  if (!formats.has(zone)) {
    formats.set(
      zone,
      new Intl.DateTimeFormat("en-GB", {
        timeZone: zone,
        hourCycle: "h23",
        year: "numeric",
        month: "2-digit",
        day: "2-digit",
        hour: "2-digit",
        minute: "2-digit",
        second: "2-digit",
      }),
    );
  }
  return formats.get(zone);
}

/** The local time of an instant in ms, as a field takes it: 2026-11-25T18:30:05. */
export function local(ms, zone) {
  const parts = {};
  for (const { type, value } of format(zone).formatToParts(ms)) parts[type] = value;
  return `${parts.year.padStart(4, "0")}-${parts.month}-${parts.day}T${parts.hour}:${parts.minute}:${parts.second}`;
}

/** A local time as if it were UTC, in ms; NaN if it is none. */
const asUtc = (text) => Date.parse(`${text.length === 16 ? `${text}:00` : text}Z`);

/**
 * The instants in ms at which the clock of the zone shows a local time: one, none where it is set
 * forward, two where it is set back.
 */
export function instants(text, zone) {
  const plain = asUtc(text);
  if (Number.isNaN(plain)) return [];
  const day = 86_400_000;
  const offsets = [plain - day, plain + day].map((ms) => asUtc(local(ms, zone)) - ms);
  return [...new Set(offsets)]
    .map((offset) => plain - offset)
    .filter((ms) => asUtc(local(ms, zone)) === plain)
    .sort((a, b) => a - b);
}

/** An instant in ms as the service takes it, in UTC and whole seconds. */
export const utc = (ms) => new Date(ms).toISOString().replace(/\.\d+Z$/, "Z");

/** Date and time as a page writes them: 25 Nov 2026, 18:30. */
export function words(ms, zone) {
  return new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    hourCycle: "h23",
    day: "numeric",
    month: "short",
    year: "numeric",
    hour: "2-digit",
    minute: "2-digit",
  }).format(ms);
}

/** Hours and minutes. */
export const clock = (ms, zone) => local(ms, zone).slice(11, 16);
