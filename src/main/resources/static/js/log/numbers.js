// Numbers as people type them, and as the page sets them.
const MINUS = "\u2212";

/** The number in a field, with a decimal point or comma; null if it is empty, NaN if it is none. */
export function typed(text) {
  const plain = text.trim().replace(",", ".").replace(MINUS, "-");
  if (plain === "") return null;
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
}

export const places = (value, count) => value.toFixed(count).replace("-", MINUS);

export const signed = (value, count) => (value > 0 ? "+" : "") + places(value, count);

/** Decimal places that leave an uncertainty two significant digits (JCGM 100:2008, 7.2.6). */
export function placesOf(uncertainty) {
  return Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(uncertainty))));
}

/** A value with its standard uncertainty. */
export function pair(value, uncertainty, sign = places) {
  const count = placesOf(uncertainty);
  return `${sign(value, count)} ± ${places(uncertainty, count)}`;
}

export const mean = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Standard uncertainty of the mean of three or more values (JCGM 100:2008, 4.2.3), or null. */
export function uncertaintyOfMean(values) {
  if (values.length < 3) return null;
  const middle = mean(values);
  const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  const uncertainty = Math.sqrt(squares / (values.length - 1) / values.length);
  return uncertainty > 0 ? uncertainty : null;
}
