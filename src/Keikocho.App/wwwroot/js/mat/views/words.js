// Words and questions: right or wrong, one tap a child.
import { el } from "../dom.js";

const RIGHT = 1, WRONG = 3;

export const words = {
  address: "words",
  word: "Words",
  /** @param {any} mat @param {any} lesson */
  draw(mat, lesson) {
    const end = mat.held.end ?? 0;
    const items = lesson.items.filter((/** @type {any} */ i) => i.kind === "word" && (i.ends & (end === 0 ? 1 : 2)) !== 0);
    const item = items.find((/** @type {any} */ i) => i.id === mat.held.asked) ?? items[0];
    if (!item) return [el("p", { class: "quiet" }, "No word is asked at this end.")];
    const children = lesson.children.filter((/** @type {any} */ c) => c.end === end && (c.mark === "present" || c.mark === "late"));
    return [
      el("p", { class: "mat-ends" }, ...["Beginners’ end", "Main group"].map((word, i) =>
        el("button", { type: "button", "aria-pressed": String(i === end), onclick: () => mat.hold("end", i) }, word))),
      el("label", { class: "mat-item" }, "Asked ",
        el("select", { onchange: (/** @type {any} */ e) => mat.hold("asked", e.target.value) },
          ...items.map((/** @type {any} */ i) => {
            const option = el("option", { value: i.id }, i.name);
            if (i === item) option.setAttribute("selected", "");
            return option;
          }))),
      children.length === 0 ? el("p", { class: "quiet" }, "Nobody is marked here at this end.") : null,
      el("ul", { class: "tiles asked" }, ...children.map((/** @type {any} */ child) => {
        const said = mat.held.answers?.[`${lesson.id} ${child.id} ${item.id}`]?.code;
        return el("li", { class: "tile", "data-person": child.id },
          el("b", {}, child.name),
          ...[[RIGHT, "right"], [WRONG, "wrong"]].map(([code, word]) =>
            el("button", { type: "button", "aria-pressed": String(said === code), onclick: () => answer(mat, lesson, child, item, Number(code), String(word)) }, String(word))));
      })),
    ];
  },
};

/** @param {any} mat @param {any} lesson @param {any} child @param {any} item @param {number} code @param {string} word */
function answer(mat, lesson, child, item, code, word) {
  const remember = { map: "answers", key: `${lesson.id} ${child.id} ${item.id}`, code };
  return mat.tap([{ lesson: lesson.id, person: child.id, kind: "words", item: item.id, code, remember }], `${child.name}, ${item.name}: ${word}`);
}
