// What each child still lacks, and the ready phrases: an instructor's tablet fetches them when the laptop says that they changed, and
// keeps them for when there is no network.

export class Lacks {
  #kept;
  /** @type {any} */
  #held = null;

  /** @param {import("./kept.js").Kept} kept */
  constructor(kept) {
    this.#kept = kept;
  }

  /** What was kept before a reload. */
  async start() {
    this.#held = (await this.#kept.get("lacks")) ?? null;
  }

  /** @param {string} at what the laptop says of them now; empty where this tablet may not have them */
  async follow(at) {
    if (at === (this.#held?.at ?? "")) return;
    if (at === "") return this.forget();
    const response = await fetch("/mat/lacks", { headers: { Accept: "application/json" }, redirect: "error" });
    if (!response.ok) return this.forget();
    this.#held = await response.json();
    await this.#kept.set("lacks", this.#held);
  }

  async forget() {
    this.#held = null;
    await this.#kept.set("lacks", undefined);
  }

  get phrases() {
    return this.#held?.phrases ?? [];
  }

  /** One child of a lesson, with the lesson's own lines; null where nothing is held. @param {string} lesson @param {string} child */
  of(lesson, child) {
    const own = this.#held?.lessons.find((/** @type {any} */ l) => l.lesson === lesson);
    const lacks = own?.children.find((/** @type {any} */ c) => c.child === child);
    return lacks ? { ...lacks, test: own.test, asOf: own.asOf } : null;
  }
}
