// The form: what is typed, as a reading for the service, with what is wrong by field.
import { mean, typed, uncertaintyOfMean } from "./numbers.js";
import { instants, utc } from "./zone.js";

const INCH_MM = 25.4;

function number(form, name, least, greatest, words, wrong) {
  const value = typed(form.elements[name].value);
  if (value === null) return null;
  if (!(value >= least && value <= greatest)) {
    wrong[name] = `Expected ${words}.`;
    return null;
  }
  return value;
}

function instant(form, zone, wrong) {
  const found = instants(form.elements.taken.value, zone);
  if (found.length === 0) {
    wrong.taken =
      form.elements.taken.value === ""
        ? "Expected a date and time."
        : `The clock of ${zone} is set forward over this time; expected one that it shows.`;
    return null;
  }
  if (found[0] > Date.now() + 60_000) wrong.taken = "Expected a time that is not ahead of now.";
  return found[0];
}

function frames(form, wrong) {
  const values = [...form.elements.frame].map((field) => typed(field.value));
  const given = values.filter((value) => value !== null);
  if (given.some((value) => !(value > 0))) wrong.frames = "Expected numbers above 0.";
  return given.filter((value) => value > 0);
}

function uncertainty(form, measured, wrong) {
  const own = number(form, "uncertainty", Number.MIN_VALUE, 1e6, "a number above 0", wrong);
  if (own !== null || measured.length === 0 || wrong.uncertainty) return own;
  const scatter = uncertaintyOfMean(measured);
  if (scatter === null && !wrong.frames) {
    wrong.frames =
      measured.length < 3
        ? "Expected three frames, or a standard uncertainty of your own below."
        : "All three are alike: expected frames that differ, or a standard uncertainty of your own below.";
  }
  return scatter;
}

/** Altitude as the service takes it: a plumb line shows the distance from the zenith. */
function altitude(form, wrong) {
  const plumb = form.elements.altitudeKind.value === "protractor";
  const value = number(
    form,
    "altitude",
    plumb ? -2 : -90,
    plumb ? 180 : 92,
    plumb ? "a number from −2 to 180" : "a number from −90 to 92",
    wrong,
  );
  return value === null || !plumb ? value : Number((90 - value).toFixed(4));
}

function exposureS(form, wrong) {
  const text = form.elements.exposure.value.trim().replace(/^1\//, "");
  const part = typed(text);
  if (part === null) return null;
  if (part > 0 && part <= 100_000) return 1 / part;
  wrong.exposure = "Expected 60 for a sixtieth of a second.";
  return null;
}

/**
 * What the form says.
 *
 * @returns takenMs, axis, unit as calibrated (px or mm), frames, diameter and uncertainty in it,
 *   altitudeDeg and azimuthDeg as sighted, and wrong: a complaint by field
 */
export function read(form, zone) {
  const wrong = {};
  const takenMs = instant(form, zone, wrong);
  const typedFrames = frames(form, wrong);
  if (typedFrames.length === 0 && !wrong.frames) wrong.frames = "Expected three frames.";
  const inches = form.elements.unit.value === "in";
  const factor = inches ? INCH_MM : 1;
  const typedUncertainty = uncertainty(form, typedFrames, wrong);
  const exposure = exposureS(form, wrong);
  return {
    takenMs,
    axis: form.elements.axis.value,
    unit: form.elements.unit.value === "px" ? "px" : "mm",
    frames: typedFrames.map((value) => Number((value * factor).toPrecision(12))),
    diameter: typedFrames.length ? mean(typedFrames) * factor : null,
    uncertainty: typedUncertainty === null ? null : typedUncertainty * factor,
    ownUncertainty: form.elements.uncertainty.value.trim() !== "",
    altitudeDeg: altitude(form, wrong),
    azimuthDeg: number(form, "azimuth", 0, 360, "a number from 0 to 360", wrong),
    exposureS: exposure,
    fNumber: number(form, "fNumber", Number.MIN_VALUE, 10_000, "a number above 0", wrong),
    iso: number(form, "iso", 1, 10_000_000, "a whole number, such as 100", wrong),
    sky: form.elements.sky.value.trim(),
    note: form.elements.note.value.trim(),
    wrong,
  };
}

/** The reading as the service takes it. */
export function body(entry) {
  const suffix = entry.unit === "px" ? "Px" : "Mm";
  const reading = { takenAt: utc(entry.takenMs), axis: entry.axis };
  if (entry.frames.length >= 3) {
    reading[`frames${suffix}`] = entry.frames;
  } else {
    reading[`diameter${suffix}`] = entry.diameter;
  }
  if (entry.ownUncertainty) reading[`uncertainty${suffix}`] = entry.uncertainty;
  for (const name of ["altitudeDeg", "azimuthDeg", "exposureS", "fNumber", "iso"]) {
    if (entry[name] !== null) reading[name] = entry[name];
  }
  for (const name of ["sky", "note"]) if (entry[name]) reading[name] = entry[name];
  return reading;
}

const COMPLAINTS = ["taken", "frames", "uncertainty", "altitude", "azimuth", "exposure", "fNumber", "iso"];

/** Writes the complaints beside their fields and goes to the first; none are taken away. */
export function complain(form, wrong) {
  let first = null;
  for (const name of COMPLAINTS) {
    const told = form.querySelector(`#${name}-complaint`);
    const fields = name === "frames" ? [...form.elements.frame] : [form.elements[name]];
    told.textContent = wrong[name] ?? "";
    told.hidden = !wrong[name];
    for (const field of fields) {
      if (wrong[name]) field.setAttribute("aria-invalid", "true");
      else field.removeAttribute("aria-invalid");
    }
    if (wrong[name]) first ??= fields[0];
  }
  first?.focus();
}
