// What was typed beside the computed Moon, in sentences.
import { behind, diameterArcmin, moon, setupAt } from "./almanac.js";
import { pair, places, signed } from "./numbers.js";
import { clock } from "./zone.js";

const ARCMIN = 60;

function away(minutes, more, less) {
  const size = Math.abs(minutes);
  if (size < 0.5) return "the same";
  return `${places(size, 0)}′ ${minutes > 0 ? more : less}`;
}

function place(entry, then, hidden) {
  const words = [
    `Computed: altitude ${places(then.apparentAltitudeDeg, 2)}°, azimuth ${places(then.azimuthDeg, 2)}°.`,
  ];
  if (then.apparentAltitudeDeg < 0) words.push("The Moon is below the horizon then: is the time right?");
  else if (hidden) {
    words.push(
      `The rig’s own horizon stands ${places(hidden.lineDeg, 1)}° high there: the Moon is ${hidden.wholly ? "" : "partly "}behind it then.`,
    );
  }
  if (entry.altitudeDeg !== null) {
    const minutes = (entry.altitudeDeg - then.apparentAltitudeDeg) * ARCMIN;
    words.push(`Sighted altitude ${places(entry.altitudeDeg, 1)}°: ${away(minutes, "higher", "lower")}.`);
  }
  if (entry.azimuthDeg !== null) {
    const turn = ((entry.azimuthDeg - then.azimuthDeg + 540) % 360) - 180;
    words.push(
      `Sighted azimuth ${places(entry.azimuthDeg, 1)}°: ${away(turn * ARCMIN, "further right", "further left")}.`,
    );
  }
  return words;
}

/** Diameter in arcminutes with its uncertainty, where the setup's plate scale is known. */
function standardised(entry, setup) {
  if (entry.diameter === null || !setup?.arcsecPerUnit || setup.unit !== entry.unit) return null;
  return {
    arcmin: (entry.diameter * setup.arcsecPerUnit) / 60,
    relative: entry.uncertainty === null ? null : entry.uncertainty / entry.diameter,
    ofScale: setup.relativeUncertainty,
  };
}

function size(entry, then, setup) {
  if (entry.diameter === null) return [];
  const computed = diameterArcmin(then, entry.axis);
  const words = [];
  if (entry.uncertainty !== null) {
    words.push(`Mean ${pair(entry.diameter, entry.uncertainty)} ${entry.unit}.`);
  }
  if (!setup?.unit) {
    words.push(`Computed ${places(computed, 3)}′; this setup has no calibration yet to compare by.`);
  } else if (setup.unit !== entry.unit) {
    const calibrated = setup.unit === "px" ? "pixels" : "millimetres";
    words.push(`This setup is calibrated in ${calibrated}: measure the Moon in the same unit.`);
  } else {
    const observed = standardised(entry, setup);
    const percent = 100 * Math.log(observed.arcmin / computed);
    const uncertainty = 100 * Math.hypot(observed.relative ?? 0, observed.ofScale);
    words.push(
      observed.relative === null
        ? `${places(observed.arcmin, 2)}′, computed ${places(computed, 2)}′: residual ${signed(percent, 2)} %.`
        : `${pair(observed.arcmin, (observed.arcmin * uncertainty) / 100)}′, computed ${places(computed, 3)}′: residual ${pair(percent, uncertainty, signed)} %.`,
    );
  }
  return words;
}

/** Readings of the same pass, setup and axis: those of the ledger and those that wait. */
function partners(entry, then, setup, table, waiting) {
  const waited = waiting.map((other) => {
    const moonThen = moon(table, other.takenMs);
    const known = standardised(other, setupAt(table, other.takenMs));
    return {
      atS: other.takenMs / 1000,
      axis: other.axis,
      setup: setupAt(table, other.takenMs)?.number,
      pass: moonThen.pass,
      apparentAltitudeDeg: moonThen.apparentAltitudeDeg,
      observedArcmin: known?.arcmin ?? null,
      predictedArcmin: diameterArcmin(moonThen, other.axis),
      relativeUncertainty: known?.relative ?? null,
    };
  });
  return [...table.readings, ...waited].filter(
    (other) =>
      other.pass === then.pass &&
      other.axis === entry.axis &&
      other.setup === setup?.number &&
      Math.abs(other.atS * 1000 - entry.takenMs) >= 1000,
  );
}

/** The one furthest from this in altitude makes the pair. */
function night(entry, then, setup, table, waiting, zone) {
  const all = partners(entry, then, setup, table, waiting);
  if (all.length === 0) {
    const missing = then.apparentAltitudeDeg < 20 ? "one high in the sky" : "one low in the sky";
    return [`The first reading of this pass: ${missing} will make a night pair.`];
  }
  const apart = (other) => Math.abs(other.apparentAltitudeDeg - then.apparentAltitudeDeg);
  const other = all.reduce((best, next) => (apart(next) > apart(best) ? next : best));
  const low = other.apparentAltitudeDeg < then.apparentAltitudeDeg;
  const computed = diameterArcmin(then, entry.axis);
  const expected = low ? computed / other.predictedArcmin : other.predictedArcmin / computed;
  const words = [
    `Makes a night pair with the reading of ${clock(other.atS * 1000, zone)}, ${places(other.apparentAltitudeDeg, 0)}° high: ratio ${places(expected, 4)} expected.`,
  ];
  const own = standardised(entry, setup);
  if (own && own.relative !== null && other.observedArcmin !== null && other.relativeUncertainty !== null) {
    const ratio = low ? own.arcmin / other.observedArcmin : other.observedArcmin / own.arcmin;
    words.push(`Observed ${pair(ratio, ratio * Math.hypot(own.relative, other.relativeUncertainty))}.`);
  }
  return words;
}

/**
 * Paragraphs about an entry.
 *
 * @param table null if nothing can be computed for that instant here and now
 * @param waiting entries of the same rig that the ledger does not have yet
 */
export function paragraphs(entry, table, waiting, zone) {
  if (entry.takenMs === null) return [];
  if (!table) {
    return [
      {
        words: navigator.onLine
          ? "The Moon of this instant cannot be computed here."
          : "Without a network the Moon is known only for the days about the last visit with one: this instant is compared once the entry is sent.",
      },
    ];
  }
  const then = moon(table, entry.takenMs);
  const setup = setupAt(table, entry.takenMs);
  const told = [];
  if (then.sunAltitudeDeg > -2 && then.sunSeparationDeg < 20) {
    told.push({
      caution: true,
      words: `Caution: the Sun is up and ${places(then.sunSeparationDeg, 0)}° from the Moon. Point no lens, no finder and no eye there.`,
    });
  }
  told.push({ words: place(entry, then, behind(table, then)).join(" ") });
  const ofSize = size(entry, then, setup);
  if (ofSize.length) told.push({ words: ofSize.join(" ") });
  const known = waiting.filter((other) => Math.abs(other.takenMs - entry.takenMs) < 86_400_000);
  if (entry.diameter !== null) told.push({ words: night(entry, then, setup, table, known, zone).join(" ") });
  return told;
}
