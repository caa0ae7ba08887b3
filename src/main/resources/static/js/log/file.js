// Takes a CSV file: sends it in parts, and shows each line that was not taken where it can be mended.
import { part, records, text } from "./csv.js";
import { withToken } from "../page-token.js";

const LINES_AT_ONCE = 500;
const count = (n, noun) => `${n} ${noun}${n === 1 ? "" : "s"}`;

export class FileDrop {
  #page;
  #address;
  #header = null;
  #records = [];
  #bad = new Map();
  #total = { stored: 0, alreadyHeld: 0 };

  constructor(page, rig) {
    this.#page = page;
    this.#address = `/api/rigs/${rig}/readings?keepGood=true`;
  }

  #part(name) {
    return this.#page.querySelector(`[data-${name}]`);
  }

  ready() {
    const drop = this.#part("drop");
    const field = drop.querySelector("input");
    field.addEventListener("change", () => field.files[0] && this.#take(field.files[0]));
    drop.addEventListener("dragover", (event) => {
      event.preventDefault();
      drop.classList.add("over");
    });
    drop.addEventListener("dragleave", () => drop.classList.remove("over"));
    drop.addEventListener("drop", (event) => {
      event.preventDefault();
      drop.classList.remove("over");
      const [file] = event.dataTransfer.files;
      if (file) this.#take(file);
    });
    this.#part("mending").addEventListener("submit", (event) => {
      event.preventDefault();
      this.#sendMended();
    });
  }

  async #take(file) {
    [this.#header, ...this.#records] = records(await text(file));
    this.#bad.clear();
    this.#total = { stored: 0, alreadyHeld: 0 };
    if (!this.#header || this.#records.length === 0) {
      this.#tell(`${file.name} holds no line below its header.`);
      return;
    }
    await this.#send(this.#records, file.name);
  }

  async #sendMended() {
    const fields = [...this.#part("lines").querySelectorAll("input")];
    const mended = fields.map((field) => {
      const record = this.#records.find(({ line }) => line === Number(field.dataset.line));
      record.text = field.value;
      return record;
    });
    this.#bad.clear();
    await this.#send(mended, "The mended lines");
  }

  /** Sends records in parts; what goes wrong on the way leaves the rest to be sent again. */
  async #send(some, name) {
    const progress = this.#part("progress");
    progress.hidden = false;
    progress.max = some.length;
    progress.value = 0;
    let trouble = null;
    for (let from = 0; from < some.length && !trouble; from += LINES_AT_ONCE) {
      this.#tell(`${name}: ${from} of ${count(some.length, "line")} taken.`);
      const now = some.slice(from, from + LINES_AT_ONCE);
      trouble = await this.#post(now);
      if (!trouble) progress.value = from + now.length;
    }
    progress.hidden = true;
    this.#tell(this.#summary(trouble));
    this.#show();
  }

  /** Sends one part; what stopped it, in words, or null. */
  async #post(some) {
    const file = part(this.#header, some);
    let answer;
    try {
      answer = await fetch(this.#address, {
        method: "POST",
        headers: withToken({ "Content-Type": "text/csv; charset=utf-8", Accept: "application/json" }),
        body: file.text,
      });
    } catch {
      return "The network was lost on the way. Give the file again once it is back: what is stored stays, and is not stored twice.";
    }
    const told = await answer.json().catch(() => ({}));
    const wrong = (answer.ok ? told.rejected : told.violations) ?? [];
    const ofLines = wrong.filter(({ line }) => file.byLine.has(line));
    for (const violation of ofLines) this.#note(file.byLine.get(violation.line), violation);
    if (!answer.ok && ofLines.length === 0) {
      const fields = wrong.map((each) => `${each.field}: expected ${each.expectedOnPages ?? each.expected}.`);
      return [told.detail ?? `The service answered ${answer.status}.`, ...fields].join(" ");
    }
    this.#total.stored += told.stored ?? 0;
    this.#total.alreadyHeld += told.alreadyHeld ?? 0;
    return null;
  }

  #note(record, violation) {
    if (!this.#bad.has(record)) this.#bad.set(record, []);
    this.#bad.get(record).push(violation);
  }

  #summary(trouble) {
    const { stored, alreadyHeld } = this.#total;
    const words = [`${count(stored, "reading")} stored.`];
    if (alreadyHeld) words.push(`${count(alreadyHeld, "line")} the ledger had already.`);
    if (this.#bad.size) words.push(`${count(this.#bad.size, "line")} to mend below.`);
    else if (!trouble) words.push("No line is left over.");
    if (trouble) words.push(trouble);
    return words.join(" ");
  }

  #tell(words) {
    this.#part("file-status").textContent = words;
  }

  #show() {
    this.#part("mending").hidden = this.#bad.size === 0;
    this.#part("lines").replaceChildren(
      ...[...this.#bad].map(([record, violations]) => this.#line(record, violations)),
    );
  }

  /** A bad line between its neighbours in the file. */
  #line(record, violations) {
    const made = document.createElement("li");
    const at = this.#records.indexOf(record);
    const before = at === 0 ? this.#header : this.#records[at - 1];
    const field = document.createElement("input");
    field.id = `line-${record.line}`;
    field.value = record.text;
    field.dataset.line = record.line;
    field.setAttribute("aria-invalid", "true");
    field.setAttribute("aria-describedby", `line-${record.line}-told`);
    const label = document.createElement("label");
    label.htmlFor = field.id;
    label.textContent = `Line ${record.line}`;
    const told = document.createElement("div");
    told.id = `line-${record.line}-told`;
    for (const { field: name, value, expected, expectedOnPages } of violations) {
      told.append(paragraph(`${name} ${value ?? "is empty"}: expected ${expectedOnPages ?? expected}.`, "complaint"));
    }
    made.append(beside(before), label, field, told);
    if (this.#records[at + 1]) made.append(beside(this.#records[at + 1]));
    return made;
  }
}

function paragraph(words, className) {
  const made = document.createElement("p");
  made.textContent = words;
  made.className = className;
  return made;
}

const beside = ({ line, text: words }) => paragraph(`${line}  ${words}`, "beside");
