// Ten seconds to take the last tap back with one big button; after that it is corrected on the laptop, with trace.

const SECONDS = 10;

export class Undo {
  #mat;
  /** @type {any[]} */
  #marks = [];
  /** @type {any[]} */
  #before = [];
  /** @type {number | undefined} */
  #timer;

  /** @param {any} mat */
  constructor(mat) {
    this.#mat = mat;
    /** @type {HTMLElement} */ (document.getElementById("mat-undo-button")).addEventListener("click", () => this.#take());
  }

  /** @param {any[]} marks that were just made @param {string} said */
  offer(marks, said) {
    clearTimeout(this.#timer);
    this.#marks = marks.filter((m) => m.kind !== "knock" && m.kind !== "cleared" && !(m.kind === "note" && m.replaces));
    const bar = /** @type {HTMLElement} */ (document.getElementById("mat-undo"));
    bar.hidden = this.#marks.length === 0;
    /** @type {HTMLElement} */ (document.getElementById("mat-undo-words")).textContent = said;
    this.#timer = window.setTimeout(() => this.#end(), SECONDS * 1000);
  }

  async #take() {
    const marks = this.#marks;
    this.#end();
    if (marks.length === 0) return;
    await this.#mat.tap(
      marks.map((m) => ({
        lesson: m.lesson, person: m.person, kind: m.kind === "note" ? "note" : "cleared", item: m.item, phrase: m.phrase, replaces: m.id,
        shows: m.was ? { lesson: m.lesson, person: m.person, ...m.was } : undefined,
      })),
      marks.length === 1 ? "Taken back." : `Taken back: ${marks.length} marks.`);
    await this.#mat.forgetLast(marks);
    this.#mat.draw();
  }

  #end() {
    clearTimeout(this.#timer);
    this.#marks = [];
    /** @type {HTMLElement} */ (document.getElementById("mat-undo")).hidden = true;
  }
}
