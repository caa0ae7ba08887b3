// The log page: computes while one types, keeps what is entered, sends it when it can.
import { Almanac } from "./log/almanac.js";
import { paragraphs } from "./log/computed.js";
import { Draft } from "./log/draft.js";
import { body, complain, read } from "./log/entry.js";
import { FileDrop } from "./log/file.js";
import { keepLight, keepPage } from "./log/kept.js";
import { show } from "./log/list.js";
import { Outbox } from "./log/outbox.js";
import { clock, instants, local } from "./log/zone.js";

const AGAIN_MS = 20_000;

const page = document.querySelector("article.log");
const { rig, zone } = page.dataset;
const form = page.querySelector("form.writing");
const network = page.querySelector("[data-network]");
const computed = page.querySelector("[data-computed]");
const almanac = new Almanac(rig);
const outbox = new Outbox(rig);
const draft = new Draft(rig, form);
let kept = null;
let mended = null;

function tellNetwork() {
  const here = navigator.onLine ? "" : "No network. Entries are kept in this browser and sent once there is one. ";
  const page =
    kept === null
      ? ""
      : kept
        ? "This page works without a network."
        : "At this address the browser keeps no pages: leave this one open where there is no network.";
  network.textContent = here + page;
}

function tellUtc() {
  const found = instants(form.elements.taken.value, zone);
  const twice = found.length > 1 ? "; the clock shows it twice that night, and the first is meant" : "";
  form.querySelector("[data-utc]").textContent = found.length
    ? `${clock(found[0], "UTC")} UTC${twice}.`
    : "";
}

let turn = 0;

/** Compares what stands in the form; only the latest answer is written. */
async function compare() {
  tellUtc();
  const mine = ++turn;
  const entry = read(form, zone);
  const table = entry.takenMs === null ? null : await almanac.of(entry.takenMs);
  const waiting = (await outbox.all()).filter((item) => item.state === "waiting");
  if (mine !== turn) return;
  const told = paragraphs(entry, table, waiting.map((item) => item.entry), zone);
  computed.replaceChildren(
    ...told.map(({ words, caution }) => {
      const line = document.createElement("p");
      line.textContent = words;
      line.className = caution ? "caution" : "";
      return line;
    }),
  );
}

let pause;
function compareSoon() {
  clearTimeout(pause);
  pause = setTimeout(compare, 150);
}

function fillTime(ms) {
  form.elements.taken.value = local(ms, zone);
}

function shift(by) {
  const found = instants(form.elements.taken.value, zone);
  fillTime(by === "now" || !found.length ? Date.now() : found[0] + Number(by) * 1000);
  compare();
}

/** What changes from frame to frame is emptied; what stays for the night stays. */
function emptyForNext() {
  for (const field of form.elements.frame) field.value = "";
  for (const name of ["uncertainty", "altitude", "azimuth", "note"]) form.elements[name].value = "";
  fillTime(Date.now());
  draft.forget();
}

async function enter(event) {
  event.preventDefault();
  const entry = read(form, zone);
  complain(form, entry.wrong);
  if (Object.keys(entry.wrong).length) return;
  delete entry.wrong;
  await outbox.add(body(entry), entry);
  if (mended !== null) await outbox.remove(mended);
  mended = null;
  emptyForNext();
  await send();
}

function mend({ id, entry }) {
  mended = id;
  fillTime(entry.takenMs);
  [...form.elements.frame].forEach((field, i) => (field.value = entry.frames[i] ?? ""));
  form.elements.unit.value = entry.unit;
  form.elements.axis.value = entry.axis;
  form.elements.altitudeKind.value = "altitude";
  form.elements.altitude.value = entry.altitudeDeg ?? "";
  form.elements.azimuth.value = entry.azimuthDeg ?? "";
  form.elements.uncertainty.value = entry.ownUncertainty ? entry.uncertainty : "";
  form.elements.exposure.value = entry.exposureS ? Number((1 / entry.exposureS).toPrecision(6)) : "";
  form.elements.fNumber.value = entry.fNumber ?? "";
  form.elements.iso.value = entry.iso ?? "";
  form.elements.sky.value = entry.sky;
  form.elements.note.value = entry.note;
  form.elements.frame[0].focus();
  compare();
}

async function list() {
  show(page, await outbox.all(), zone, { mend, strike: ({ id }) => outbox.remove(id) });
}

let sending = false;
async function send() {
  if (sending) return;
  sending = true;
  try {
    await outbox.send();
    await almanac.refresh();
  } finally {
    sending = false;
  }
  compare();
}

form.addEventListener("submit", enter);
form.addEventListener("input", () => {
  draft.keep();
  compareSoon();
});
form.addEventListener("change", compareSoon);
for (const word of form.querySelectorAll("[data-shift]")) {
  word.addEventListener("click", () => shift(word.dataset.shift));
}
page.querySelector("[data-send] button").addEventListener("click", send);
outbox.addEventListener("change", list);
outbox.addEventListener("login", ({ detail }) => (page.querySelector("[data-login]").hidden = !detail));
addEventListener("online", () => {
  tellNetwork();
  send();
});
addEventListener("offline", tellNetwork);
document.addEventListener("visibilitychange", () => document.hidden || send());
setInterval(async () => {
  const items = await outbox.all();
  if (items.some((item) => item.state === "waiting")) send();
}, AGAIN_MS);

keepLight();
new FileDrop(page, rig).ready();
fillTime(Date.now());
await outbox.tidy();
await list();
await almanac.refresh();
const setup = almanac.setupNow();
if (setup?.unit === "mm") form.elements.unit.value = "mm";
draft.bringBack();
await compare();
send();
kept = await keepPage([`/rigs/${rig}/log/almanac.json`]);
tellNetwork();
document.documentElement.dataset.logReady = "yes";
