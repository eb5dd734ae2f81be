// The evening as this tablet knows it: what the laptop said last, with what was tapped since on top of it.

const SAID = {
  present: ["present", "present", "出"],
  left: ["left", "left", "早"],
  told: ["told", "absent, told us", "届"],
  absent: ["absent", "absent", "欠"],
  none: ["", "not marked", ""],
};

export class Evening {
  /** @type {any} */
  #told;
  #at = 0;

  /** @param {any} told what the laptop said @param {number} at when it was heard, by this tablet’s clock */
  constructor(told, at) {
    this.#told = told;
    this.#at = at;
  }

  get told() {
    return this.#told;
  }

  get at() {
    return this.#at;
  }

  get join() {
    return this.#told.join;
  }

  get lessons() {
    return this.#told.lessons;
  }

  get isOver() {
    return this.now() > this.join.endsAt;
  }

  /** Now by the laptop’s clock, however wrong this tablet’s is. */
  now() {
    return this.#told.clock.now + (Date.now() - this.#at);
  }

  /** Minutes since midnight at the club. */
  minute() {
    return (this.#told.clock.minute + Math.floor((Date.now() - this.#at) / 60000)) % 1440;
  }

  /** @param {string} id */
  lesson(id) {
    return this.lessons.find((/** @type {any} */ l) => l.id === id) ?? this.lessons[0];
  }

  /** The lesson that is on, or comes next, or was last. */
  lessonNow() {
    const minute = this.minute();
    return this.lessons.find((/** @type {any} */ l) => l.end > minute) ?? this.lessons[this.lessons.length - 1];
  }

  /** What an arrival now is marked with: the clock speaks only while the lesson is on. @param {any} lesson */
  arrival(lesson) {
    const minute = this.minute();
    return minute > lesson.end ? null : minute;
  }

  /** @param {string} kind @param {any} lesson @param {number | null} at */
  says(kind, lesson, at) {
    if (kind === "present" && at !== null && at > lesson.ukemiFrom) return { mark: "late", words: `came ${two(at)}`, sign: "遅" };
    const [mark, words, sign] = SAID[/** @type {keyof typeof SAID} */ (kind === "excused" ? "told" : kind)] ?? SAID.none;
    return { mark, words: kind === "left" && at !== null ? `left ${two(at)}` : words, sign };
  }

  /** Where a person stands now. @param {string} lesson @param {string} person */
  find(lesson, person) {
    return this.lesson(lesson).children.find((/** @type {any} */ c) => c.id === person) ?? this.#told.adults.find((/** @type {any} */ a) => a.id === person);
  }

  /** @param {{lesson: string, person: string, mark: string, words: string, sign: string}} tile */
  show(tile) {
    for (const place of [this.find(tile.lesson, tile.person), this.#told.adults.find((/** @type {any} */ a) => a.id === tile.person)]) {
      if (place) Object.assign(place, { mark: tile.mark, words: tile.words, sign: tile.sign });
    }
  }
}

/** @param {number} minute */
function two(minute) {
  return `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
}
