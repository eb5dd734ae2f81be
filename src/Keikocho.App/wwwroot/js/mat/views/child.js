// One child: what is still missing for the next test, and a note by ready phrases. Names first, then one child at a time; it goes when
// the names-only face comes or another view is chosen, and which child it was is kept nowhere.
import { belt, el } from "../dom.js";

export const child = {
  address: "child",
  word: "Child",
  /** A junior leader’s tablet has no such view. @param {any} mat */
  hides: (mat) => !mat.evening.join.teaches,
  /** @param {any} mat @param {any} lesson */
  draw(mat, lesson) {
    const one = lesson.children.find((/** @type {any} */ c) => c.id === mat.child);
    return one ? page(mat, lesson, one) : names(mat, lesson);
  },
};

/** @param {any} mat @param {any} lesson */
function names(mat, lesson) {
  return [
    el("p", { class: "quiet" }, "A name: what this child still lacks for the next test, and a note."),
    el("ul", { class: "tiles" }, ...lesson.children.map((/** @type {any} */ c) =>
      el("li", { class: "tile", "data-person": c.id },
        el("button", { type: "button", class: "here", "data-key": c.id, onclick: () => mat.show(c.id) },
          el("b", {}, c.name), el("small", {}, belt(c.drawing), c.belt))))),
  ];
}

/** @param {any} mat @param {any} lesson @param {any} one */
function page(mat, lesson, one) {
  const lacks = mat.lacks.of(lesson.id, one.id);
  const list = (/** @type {string} */ heading, /** @type {string[]} */ lines) =>
    lines.length === 0 ? [] : [el("h3", {}, heading), el("ul", { class: "mat-lacks" }, ...lines.map((line) => el("li", {}, line)))];
  return [
    el("div", { class: "mat-one", "data-person": one.id },
      el("h2", {}, one.name, " ", el("small", {}, belt(one.drawing), one.belt)),
      ...(lacks === null
        ? [el("p", {}, "The laptop has not told this tablet yet what is missing. It does as soon as it is reached.")]
        : [
            el("p", { class: "mat-verdict" }, lacks.verdict ? el("b", {}, lacks.verdict) : null, lacks.rank ? ` for ${lacks.rank}. ` : "", `${lacks.test}.`),
            el("ul", { class: "mat-lacks" }, ...lacks.says.map((/** @type {string} */ line) => el("li", {}, line))),
            ...list("Falls still missing", lacks.falls),
            ...list("Still to be shown", lacks.items),
            el("p", { class: "quiet" }, lacks.asOf),
          ]),
      ...(mat.lacks.phrases.length === 0 ? [] : [
        el("h3", {}, "A note"),
        el("ul", { class: "mat-phrases" }, ...mat.lacks.phrases.map((/** @type {any} */ phrase) => el("li", {}, button(mat, lesson, one, phrase)))),
      ])),
  ];
}

/** @param {any} lesson @param {any} one @param {any} phrase */
const place = (lesson, one, phrase) => `${lesson.id} ${one.id} ${phrase.key}`;

/** @param {any} mat @param {any} lesson @param {any} one @param {any} phrase */
function button(mat, lesson, one, phrase) {
  const key = place(lesson, one, phrase);
  const isNoted = mat.held.notes?.[key] !== undefined;
  return el("button", {
    type: "button", "data-key": `phrase ${phrase.key}`, "aria-pressed": String(isNoted),
    onclick: () => (isNoted ? mat.say(`${one.name}: noted already.`) : note(mat, lesson, one, phrase)),
  }, el("span", {}, phrase.seen), el("span", {}, phrase.next), isNoted ? el("b", {}, "noted") : null);
}

/** @param {any} mat @param {any} lesson @param {any} one @param {any} phrase */
function note(mat, lesson, one, phrase) {
  return mat.tap(
    [{ lesson: lesson.id, person: one.id, kind: "note", phrase: phrase.key, remember: { map: "notes", key: place(lesson, one, phrase), code: 1 } }],
    `${one.name}: noted. ${phrase.seen}`);
}
