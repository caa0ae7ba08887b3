// What is typed and not yet entered: a phone drops a page while its camera is in use.
const KEPT_MS = 12 * 3_600_000;

export class Draft {
  #name;
  #form;

  constructor(rig, form) {
    this.#name = `limbspan-draft-${rig}`;
    this.#form = form;
  }

  keep() {
    const fields = [...new FormData(this.#form)];
    localStorage.setItem(this.#name, JSON.stringify({ at: Date.now(), fields }));
  }

  forget() {
    localStorage.removeItem(this.#name);
  }

  /** Writes back what was typed within the last hours, its time with it. */
  bringBack() {
    const kept = JSON.parse(localStorage.getItem(this.#name) ?? "null");
    if (!kept || kept.at < Date.now() - KEPT_MS) return;
    const frames = kept.fields.filter(([name]) => name === "frame");
    if (frames.every(([, value]) => value === "")) return;
    for (const [name, value] of kept.fields) {
      if (name !== "frame") this.#form.elements[name].value = value;
    }
    [...this.#form.elements.frame].forEach((field, i) => (field.value = frames[i]?.[1] ?? ""));
  }
}
