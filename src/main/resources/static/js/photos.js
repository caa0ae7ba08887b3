// Takes photographs that are dropped on the ledger page or chosen in its form, sends them, and
// writes what becomes of each while it is measured. Without this module the form does the same.
import { withToken } from "./page-token.js";

const MOST_AT_ONCE = 60;

const album = document.querySelector("form[data-photographs]");
if (album) listen(album);

/** Listens to the form and to the page, and tells below the form. */
function listen(form) {
  const told = form.parentElement.querySelector("[data-told]");
  const status = told.querySelector("[data-status]");
  const readings = told.querySelector("[data-readings]");
  const after = told.querySelector("[data-after]");
  const list = told.querySelector("[data-files]");
  const input = form.querySelector("input[type=file]");
  const button = form.querySelector("button.act");
  const takenAt = form.elements.takenAt;
  let busy = false;

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    take([...input.files]);
  });

  const holdsFiles = (event) => event.dataTransfer?.types.includes("Files");
  let depth = 0;
  const ready = (change) => {
    depth = Math.max(0, depth + change);
    form.classList.toggle("ready", depth > 0);
  };
  document.addEventListener("dragenter", (event) => holdsFiles(event) && ready(1));
  document.addEventListener("dragleave", (event) => holdsFiles(event) && ready(-1));
  document.addEventListener("dragover", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = busy ? "none" : "copy";
  });
  document.addEventListener("drop", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    ready(-depth);
    take([...event.dataTransfer.files]);
  });

  async function take(files) {
    if (busy) return;
    told.hidden = false;
    if (files.length === 0) {
      say("No file was chosen. Choose one or more, or drop them on this page.");
      show();
      return;
    }
    hold(true);
    complain({});
    const chosen = input.files;
    const typed = takenAt.value;
    list.replaceChildren();
    readings.replaceChildren();
    after.hidden = true;
    const byName = files.sort((a, b) => a.name.localeCompare(b.name, "en", { numeric: true }));
    const lines = byName.map((file) => list.appendChild(waiting(file)));
    show();
    const summaries = [];
    let added = false;
    try {
      for (let from = 0; from < byName.length; from += MOST_AT_ONCE) {
        const some = byName.slice(from, from + MOST_AT_ONCE);
        const batch = await send(some, (line) => write(lines[from + line.place], line));
        batch.lines.forEach((line) => write(lines[from + line.place], line));
        batch.readings.forEach(writeReading);
        summaries.push(batch.summary);
        added ||= batch.readings.length > 0 && batch.lines.some(({ outcome }) => outcome === "measured");
      }
      say(`${summaries.join(" ")} ${outcome()}`);
      if (readings.childElementCount > 0 && !holdsFigures()) after.hidden = false;
      if (added) document.dispatchEvent(new CustomEvent("limbspan:entered"));
      empty(chosen, typed);
    } catch (trouble) {
      const slip = trouble.complaints;
      say(
        slip
          ? "Nothing was entered: one field of the form needs another look."
          : `${trouble.message} Sending them again does no harm: what is held already is not entered twice.`,
      );
      list
        .querySelectorAll("[data-outcome=waiting] .headline")
        .forEach((h) => (h.textContent = slip ? "Not measured" : "Not known"));
      if (slip) complain(slip);
    } finally {
      hold(false);
    }
  }

  /** One batch at a time. The button keeps the focus, which it would lose if it were disabled. */
  function hold(whether) {
    busy = whether;
    button.setAttribute("aria-disabled", String(whether));
  }

  /** Empties the form of what was sent; what was filled in for the next time meanwhile stays. */
  function empty(chosen, typed) {
    if (input.files === chosen) input.value = "";
    if (takenAt.value === typed) takenAt.value = "";
    form.elements.dryRun.checked = false;
  }

  /** Says beside the field of the time what is wrong with it, or that nothing is. */
  function complain(complaints) {
    const words = complaints.takenAt;
    const complaint = document.getElementById("takenAt-complaint");
    complaint.textContent = words ?? "";
    complaint.hidden = !words;
    if (!words) {
      takenAt.removeAttribute("aria-invalid");
      return;
    }
    takenAt.setAttribute("aria-invalid", "true");
    takenAt.focus();
  }

  /** Brings what is told into sight: it stands below a form that fills a small screen. */
  function show() {
    told.scrollIntoView({ block: "nearest" });
  }

  function outcome() {
    if (form.elements.dryRun.checked) return "They were only tried: nothing was entered.";
    const made = readings.childElementCount;
    return made === 0 ? "" : `They belong to ${made === 1 ? "one reading" : `${made} readings`}:`;
  }

  /** Sends files in one request; answers what became of all of them. */
  function send(files, onLine) {
    const body = new FormData();
    files.forEach((file) => body.append("photo", file, file.name));
    body.append("takenAt", takenAt.value);
    const request = new XMLHttpRequest();
    request.open("POST", form.action + (form.elements.dryRun.checked ? "?dryRun=true" : ""));
    const headers = withToken({ Accept: "application/x-ndjson" });
    Object.entries(headers).forEach(([name, value]) => request.setRequestHeader(name, value));
    let read = 0;
    let batch = null;
    let problem = null;
    let complaints = null;
    let measured = 0;
    const readOn = () => {
      if (!request.getResponseHeader("Content-Type")?.startsWith("application/x-ndjson")) return;
      let end;
      while ((end = request.responseText.indexOf("\n", read)) >= 0) {
        const told = JSON.parse(request.responseText.slice(read, end));
        read = end + 1;
        if (told.line) {
          onLine(told.line);
          measured++;
          say(`Measured or refused: ${measured} of ${files.length}.`, measured / files.length);
        }
        batch = told.batch ?? batch;
        problem = told.problem ?? problem;
        complaints = told.complaints ?? complaints;
      }
    };
    return new Promise((resolve, reject) => {
      request.upload.addEventListener("progress", ({ loaded, total }) =>
        say("Sending.", loaded / total),
      );
      request.upload.addEventListener("load", () => say("Sent; measuring.", 0));
      request.addEventListener("progress", readOn);
      request.addEventListener("error", () => reject(new Error("The service cannot be reached.")));
      request.addEventListener("load", () => {
        readOn();
        if (batch) resolve(batch);
        else if (complaints) reject(Object.assign(new Error("The form is not understood."), { complaints }));
        else reject(new Error(problem ?? detail(request)));
      });
      say("Sending.", 0);
      request.send(body);
    });
  }

  function detail(request) {
    try {
      return JSON.parse(request.responseText).detail;
    } catch {
      return request.status === 200 ? "The answer broke off." : `The service answered ${request.status}.`;
    }
  }

  /** Writes the status, with a bar as long as there is something to wait for. */
  function say(words, share) {
    if (status.textContent !== words) status.textContent = words;
    let bar = told.querySelector("progress");
    if (share === undefined) {
      bar?.remove();
      return;
    }
    if (!bar) {
      bar = document.createElement("progress");
      bar.setAttribute("aria-label", "How far the photographs are");
      status.after(bar);
    }
    bar.value = share;
  }

  function writeReading(reading) {
    const item = document.createElement("li");
    const link = document.createElement("a");
    link.href = reading.address;
    link.textContent = `Reading of ${reading.taken}`;
    item.append(link, `: ${reading.words}`);
    readings.append(item);
  }
}

/** Whether the page has figures, which follow the ledger by themselves (live.js). */
function holdsFigures() {
  return document.querySelector("figure[data-figure]") !== null;
}

function waiting(file) {
  const item = document.createElement("li");
  write(item, { file: file.name, outcome: "waiting", headline: "Waits", sentences: [] });
  return item;
}

function write(item, line) {
  item.dataset.outcome = line.outcome;
  const head = document.createElement("p");
  head.append(span("file", line.file), " ", span("headline", line.headline));
  item.replaceChildren(
    head,
    ...line.sentences.map((sentence) => {
      const p = document.createElement("p");
      p.textContent = sentence;
      return p;
    }),
  );
}

function span(kind, words) {
  const span = document.createElement("span");
  span.className = kind;
  span.textContent = words;
  return span;
}
