// The computed Moon between the rows of the service's table: a cubic through the four next rows.
const DEG = Math.PI / 180;

/** Lagrange's weights for a point at share t of the way from the second to the third of four rows. */
function weights(t) {
  return [
    (-t * (t - 1) * (t - 2)) / 6,
    ((t + 1) * (t - 1) * (t - 2)) / 2,
    (-(t + 1) * t * (t - 2)) / 2,
    ((t + 1) * t * (t - 1)) / 6,
  ];
}

function direction(table, row) {
  const altitude = table.altitudeDeg[row] * DEG;
  const azimuth = table.azimuthDeg[row] * DEG;
  return [
    Math.cos(altitude) * Math.cos(azimuth),
    Math.cos(altitude) * Math.sin(azimuth),
    Math.sin(altitude),
  ];
}

/** Whether the table reaches an instant in ms. */
export function holds(table, ms) {
  const rows = (ms / 1000 - table.fromS) / table.stepS;
  return rows >= 1 && rows < table.altitudeDeg.length - 2;
}

/** The Moon at an instant that the table holds. */
export function moon(table, ms) {
  const rows = (ms / 1000 - table.fromS) / table.stepS;
  const first = Math.floor(rows) - 1;
  const share = weights(rows - first - 1);
  const at = (column) => share.reduce((sum, weight, i) => sum + weight * table[column][first + i], 0);
  const sum = [0, 0, 0];
  share.forEach((weight, i) => {
    direction(table, first + i).forEach((value, axis) => (sum[axis] += weight * value));
  });
  return {
    altitudeDeg: Math.atan2(sum[2], Math.hypot(sum[0], sum[1])) / DEG,
    apparentAltitudeDeg: at("apparentAltitudeDeg"),
    azimuthDeg: (Math.atan2(sum[1], sum[0]) / DEG + 360) % 360,
    horizontalArcmin: at("horizontalArcmin"),
    verticalArcmin: at("verticalArcmin"),
    sunAltitudeDeg: at("sunAltitudeDeg"),
    sunSeparationDeg: at("sunSeparationDeg"),
    pass: table.pass[Math.round(rows)],
  };
}

/** Altitude of the rig's own horizon at an azimuth, in degrees; null if the table has none. */
function lineDeg(table, azimuthDeg) {
  const points = table.horizon ?? [];
  if (points.length === 0) return null;
  const corner = (i) => {
    const point = points[(i + points.length) % points.length];
    return [point.azimuthDeg + 360 * Math.floor(i / points.length), point.altitudeDeg];
  };
  let highest = 0;
  for (let i = 0; i <= points.length; i += 1) {
    const [start, from] = corner(i - 1);
    const [end, to] = corner(i);
    if (start <= azimuthDeg && azimuthDeg <= end) {
      const here =
        end > start ? from + ((azimuthDeg - start) / (end - start)) * (to - from) : Math.max(from, to);
      highest = Math.max(highest, here);
    }
  }
  return highest;
}

/**
 * What of the computed Moon the rig's own horizon hides.
 *
 * @returns altitude of the line and whether the whole disc is behind it; null if all is clear
 */
export function behind(table, moonThen) {
  const line = lineDeg(table, moonThen.azimuthDeg);
  const radius = moonThen.verticalArcmin / 120;
  if (line === null || moonThen.apparentAltitudeDeg - radius >= line) return null;
  return { lineDeg: line, wholly: moonThen.apparentAltitudeDeg + radius <= line };
}

/** The computed diameter along an axis. */
export function diameterArcmin(moonThen, axis) {
  if (axis === "horizontal") return moonThen.horizontalArcmin;
  if (axis === "vertical") return moonThen.verticalArcmin;
  return (moonThen.horizontalArcmin + moonThen.verticalArcmin) / 2;
}

/** The setup in force at an instant. */
export function setupAt(table, ms) {
  return table.setups.filter((setup) => (setup.fromS ?? -Infinity) * 1000 <= ms).at(-1);
}

/** Fetches tables of one rig, the newest first in mind; without a network the browser's copy. */
export class Almanac {
  #address;
  #tables = [];
  #asked = new Set();

  constructor(rig) {
    this.#address = `/rigs/${rig}/log/almanac.json`;
  }

  /** Fetches the table of these days again. */
  async refresh() {
    const table = await this.#fetch(this.#address);
    if (table) this.#tables = [table, ...this.#tables.filter((kept) => kept.fromS !== table.fromS)];
    return table !== null;
  }

  /** The table that holds an instant, fetched if need be; null if it cannot be had. */
  async of(ms) {
    const kept = this.#tables.find((table) => holds(table, ms));
    if (kept || Number.isNaN(ms)) return kept ?? null;
    const hour = Math.floor(ms / 3_600_000);
    if (this.#asked.has(hour) && navigator.onLine) return null;
    this.#asked.add(hour);
    const at = new Date(ms).toISOString();
    const table = await this.#fetch(`${this.#address}?at=${encodeURIComponent(at)}`);
    if (!table) return null;
    this.#tables.push(table);
    return holds(table, ms) ? table : null;
  }

  /** What the newest table says of the setup that lasts. */
  setupNow() {
    return this.#tables[0]?.setups.at(-1) ?? null;
  }

  async #fetch(address) {
    try {
      const answer = await fetch(address, { headers: { Accept: "application/json" } });
      return answer.ok ? await answer.json() : null;
    } catch {
      return null;
    }
  }
}
