// The outbox: every tap goes in here first and is shown as made; the laptop gets it when it can be reached, each exactly once. A mark
// leaves only when the laptop has said that it holds it.
import { markId } from "../mark-id.js";

const AT_ONCE = 100;
const AGAIN_AFTER = [1000, 2000, 4000, 8000, 15000];

export class Outbox {
  #kept;
  #marks;
  #sequence;
  /** What the laptop holds, and has not told an evening with it yet. @type {any[]} */
  #settled;
  #sending = false;
  #tries = 0;
  /** @type {number | undefined} */
  #timer;
  /** Token, evening and what to do with answers; set by the page. */
  token = "";
  evening = "";
  /** @type {(answer: any) => void} */
  onTaken = () => {};
  /** @type {() => void} */
  onChange = () => {};
  /** Whether the last try reached the laptop. */
  reached = true;

  /** @param {import("./kept.js").Kept} kept @param {any[]} marks @param {number} sequence @param {any[]} settled */
  constructor(kept, marks, sequence, settled) {
    this.#kept = kept;
    this.#marks = marks;
    this.#sequence = sequence;
    this.#settled = settled;
  }

  /** @param {import("./kept.js").Kept} kept */
  static async open(kept) {
    const marks = await kept.waiting();
    const counted = (await kept.get("sequence")) ?? 0;
    // Settled before a reload: whatever the laptop tells next was asked later.
    const settled = ((await kept.get("settled")) ?? []).map((/** @type {any} */ m) => ({ ...m, settledAt: -1 }));
    return new Outbox(kept, marks, Math.max(counted, ...marks.map((m) => m.sequence), 0), settled);
  }

  /** The laptop’s count of this tablet: a wiped memory goes on from there. @param {number} sequence */
  atLeast(sequence) {
    this.#sequence = Math.max(this.#sequence, sequence);
  }

  /** What waits to be sent. */
  get waiting() {
    return this.#marks.filter((m) => !m.refused);
  }

  /** What the evening that was told last cannot rest on: what waits, and what arrived after that evening was asked for. */
  get unreckoned() {
    return [...this.#settled, ...this.waiting];
  }

  /** The laptop told an evening that was asked for at this moment of the page’s own clock. @param {number} askedAt */
  async reckoned(askedAt) {
    if (this.#settled.length === 0) return;
    this.#settled = this.#settled.filter((m) => m.settledAt > askedAt);
    await this.#kept.set("settled", this.#settled);
  }

  /** What the laptop will never take, with its reason. */
  get refused() {
    return this.#marks.filter((m) => m.refused);
  }

  /** What a tablet says of itself whenever it asks. @param {number} [less] marks that are on their way with it */
  counts(less = 0) {
    return { "Marks-Waiting": String(this.waiting.length - less), "Marks-Refused": String(this.refused.length) };
  }

  /**
   * Puts marks in, made in one moment. They are kept before this returns.
   * @param {object[]} marks without id, sequence and time
   * @returns {Promise<any[]>} with them
   */
  async put(marks) {
    const madeAt = Date.now();
    const made = marks.map((mark) => ({
      ...mark,
      id: markId(madeAt, crypto.getRandomValues(new Uint8Array(10))),
      sequence: ++this.#sequence,
      madeAt,
      evening: this.evening,
    }));
    await this.#kept.set("sequence", this.#sequence);
    await this.#kept.add(made);
    this.#marks.push(...made);
    this.onChange();
    this.send();
    return made;
  }

  /** Sends what waits; safe to call at any time. */
  async send() {
    if (this.#sending || this.waiting.length === 0) return;
    this.#sending = true;
    clearTimeout(this.#timer);
    try {
      while (this.waiting.length > 0) {
        const evening = this.waiting[0].evening;
        const marks = this.waiting.filter((m) => m.evening === evening).slice(0, AT_ONCE);
        const answer = await this.#post(evening, marks);
        this.reached = answer !== null;
        if (answer === null) break;
        this.#tries = 0;
        await this.#settle(marks, answer);
      }
    } finally {
      this.#sending = false;
      this.onChange();
    }
    if (this.waiting.length > 0) {
      const wait = AGAIN_AFTER[Math.min(this.#tries++, AGAIN_AFTER.length - 1)];
      this.#timer = window.setTimeout(() => this.send(), wait);
    }
  }

  /** @param {string} evening @param {any[]} marks @returns {Promise<any>} null when nothing is known to have arrived */
  async #post(evening, marks) {
    try {
      const body = JSON.stringify({
        evening,
        marks: marks.filter((m) => m.kind !== "note").map(({ id, sequence, lesson, person, by, madeAt, kind, at, item, code, replaces }) =>
          ({ id, sequence, lesson, person, by, madeAt, kind, at, item, code, replaces })),
        notes: marks.filter((m) => m.kind === "note").map(({ id, lesson, person, by, madeAt, phrase, replaces }) => ({ id, lesson, person, by, madeAt, phrase, replaces })),
      });
      const send = () => fetch("/mat/marks", {
        method: "POST", body, headers: { "Content-Type": "application/json", Accept: "application/json", "Page-Token": this.token, ...this.counts(marks.length) },
      });
      let response = await send();
      if (response.status === 400) {
        // The page is older than its token: a new one, and once more.
        const fresh = await fetch("/mat/token", { headers: { Accept: "application/json" } });
        if (!fresh.ok) return null;
        this.token = (await fresh.json()).token;
        response = await send();
      }
      return response.ok ? await response.json() : null;
    } catch {
      return null;
    }
  }

  /** @param {any[]} marks @param {any} answer */
  async #settle(marks, answer) {
    const byId = new Map(marks.map((m) => [m.id, m]));
    const settledAt = performance.now();
    const taken = answer.answers.filter((/** @type {any} */ l) => l.taken && byId.has(l.id)).map((/** @type {any} */ l) => ({ ...byId.get(l.id), settledAt }));
    this.#settled = [...this.#settled, ...taken];
    await this.#kept.set("settled", this.#settled);
    for (const line of answer.answers) {
      const mark = byId.get(line.id);
      if (!mark) continue;
      if (line.taken) {
        await this.#kept.remove(mark.sequence);
        this.#marks = this.#marks.filter((m) => m !== mark);
      } else {
        mark.refused = line.why ?? "The laptop does not take it.";
        await this.#kept.change(mark);
      }
    }
    this.onTaken(answer);
  }

  /** Puts a refused mark aside, once an adult has read why. @param {any} mark */
  async dismiss(mark) {
    await this.#kept.remove(mark.sequence);
    this.#marks = this.#marks.filter((m) => m !== mark);
    this.onChange();
  }
}
