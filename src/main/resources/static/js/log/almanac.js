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
