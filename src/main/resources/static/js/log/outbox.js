// Entries wait here, in the browser's own database, until the ledger has them.
import { withToken } from "../page-token.js";

const NAME = "limbspan-log";
const STORE = "entries";
const KEPT_MS = 36 * 3_600_000;

function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/**
 * Entries of one rig: `{id, rig, reading, entry, state, told, sentAt}`. The state is waiting, held
 * or refused; what is told with it are the service's words.
 */
export class Outbox extends EventTarget {
  #rig;
  #opened;

  constructor(rig) {
    super();
    this.#rig = rig;
    const opening = indexedDB.open(NAME, 1);
    opening.onupgradeneeded = () =>
      opening.result.createObjectStore(STORE, { keyPath: "id", autoIncrement: true });
    this.#opened = asked(opening);
  }

  async #store(mode) {
    return (await this.#opened).transaction(STORE, mode).objectStore(STORE);
  }

  /** All entries of the rig, the latest first. */
  async all() {
    const every = await asked((await this.#store("readonly")).getAll());
    return every.filter((item) => item.rig === this.#rig).reverse();
  }

  async add(reading, entry) {
    const item = { rig: this.#rig, reading, entry, state: "waiting", told: [] };
    await asked((await this.#store("readwrite")).add(item));
    this.#changed();
  }

  async remove(id) {
    await asked((await this.#store("readwrite")).delete(id));
    this.#changed();
  }

  /** Forgets what the ledger has had for long. */
  async tidy() {
    for (const item of await this.all()) {
      if (item.state === "held" && item.sentAt < Date.now() - KEPT_MS) await this.remove(item.id);
    }
  }

  /** Sends what waits, one by one, in one page at a time; a repeat does no harm. */
  async send() {
    if (navigator.locks) {
      await navigator.locks.request(`${NAME}-${this.#rig}`, () => this.#sendAll());
    } else {
      await this.#sendAll();
    }
  }

  async #sendAll() {
    const waiting = (await this.all()).filter((item) => item.state === "waiting").reverse();
    for (const item of waiting) {
      const answer = await this.#post(item.reading);
      if (!answer) break;
      await asked((await this.#store("readwrite")).put({ ...item, ...answer }));
      this.#changed();
    }
  }

  /** What became of a reading; null if that is not known, and it waits on. */
  async #post(reading) {
    let answer;
    try {
      answer = await fetch(`/api/rigs/${this.#rig}/readings`, {
        method: "POST",
        headers: withToken({ "Content-Type": "application/json", Accept: "application/json" }),
        body: JSON.stringify(reading),
      });
    } catch {
      return null;
    }
    this.dispatchEvent(new CustomEvent("login", { detail: answer.status === 401 || answer.status === 403 }));
    if (answer.ok) {
      const report = await answer.json();
      return { state: "held", told: [], repeat: report.stored === 0, sentAt: Date.now() };
    }
    if (![400, 404, 409, 413, 422].includes(answer.status)) return null;
    const problem = await answer.json().catch(() => ({}));
    return { state: "refused", told: sentences(problem, answer.status) };
  }

  #changed() {
    this.dispatchEvent(new Event("change"));
  }
}

function sentences(problem, status) {
  const named = (problem.violations ?? []).map(
    ({ field, value, expected, expectedOnPages }) =>
      `${field} ${value ?? "is empty"}: expected ${expectedOnPages ?? expected}.`,
  );
  return named.length ? named : [problem.detail ?? `The service answered ${status}.`];
}
