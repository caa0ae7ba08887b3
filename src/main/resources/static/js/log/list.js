// The entries of this browser as lines of the page.
import { pair, places } from "./numbers.js";
import { words } from "./zone.js";

const STATES = {
  waiting: "waits for the network",
  held: "is in the ledger",
  refused: "was not taken",
};

function paragraph(text, className) {
  const line = document.createElement("p");
  line.textContent = text;
  if (className) line.className = className;
  return line;
}

function button(text, action) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "word";
  made.textContent = text;
  made.addEventListener("click", action);
  return made;
}

function summary({ entry, state, repeat }, zone) {
  const size =
    entry.uncertainty === null
      ? places(entry.diameter, 1)
      : pair(entry.diameter, entry.uncertainty);
  const fate = repeat ? "was in the ledger already" : STATES[state];
  return `${words(entry.takenMs, zone)}, ${entry.axis}: ${size} ${entry.unit}, ${fate}.`;
}

function line(item, zone, mend, strike) {
  const made = document.createElement("li");
  made.dataset.state = item.state;
  made.append(paragraph(summary(item, zone)));
  for (const told of item.told) made.append(paragraph(told, "complaint"));
  if (item.state === "refused") {
    const acts = document.createElement("p");
    acts.className = "words";
    acts.append(
      button("Mend it in the form", () => mend(item)),
      button("Strike it out", () => strike(item)),
    );
    made.append(acts);
  }
  return made;
}

/** Writes the list anew. */
export function show(page, items, zone, { mend, strike }) {
  const waiting = items.filter((item) => item.state === "waiting").length;
  page.querySelector("[data-entries]").replaceChildren(
    ...items.map((item) => line(item, zone, mend, strike)),
  );
  page.querySelector("[data-none]").hidden = items.length > 0;
  page.querySelector("[data-send]").hidden = waiting === 0;
  page.querySelector("[data-count]").textContent = waiting === 0 ? "" : `${waiting} waiting`;
}
