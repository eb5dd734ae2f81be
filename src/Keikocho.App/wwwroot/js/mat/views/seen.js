// What was seen: the item that is worked on, one tap a child for good, a second for not yet. Of a fall, the far button says that the
// head touched.
import { belt, el } from "../dom.js";

const NOT_YET = 3, PROMPTED = 2, GOOD = 1;
const HEAD_TOUCHED = 0x1000;
const WORDS = { [GOOD]: "good", [NOT_YET]: "not yet", [PROMPTED]: "prompted" };

export const seen = {
  address: "seen",
  word: "Seen",
  /** @param {any} mat @param {any} lesson */
  draw(mat, lesson) {
    const end = mat.held.end ?? 0;
    const items = lesson.items.filter((/** @type {any} */ i) => i.kind !== "word" && (i.ends & (end === 0 ? 1 : 2)) !== 0);
    const item = items.find((/** @type {any} */ i) => key(i) === mat.held.item) ?? items[0];
    const children = lesson.children.filter((/** @type {any} */ c) => c.end === end && c.mark !== "absent" && c.mark !== "told" && c.mark !== "left");
    return [
      el("p", { class: "mat-ends" }, ...["Beginners’ end", "Main group"].map((word, i) =>
        el("button", { type: "button", "aria-pressed": String(i === end), onclick: () => mat.hold("end", i) }, word))),
      el("label", { class: "mat-item" }, "Worked on ",
        el("select", { onchange: (/** @type {any} */ e) => mat.hold("item", e.target.value) },
          ...items.map((/** @type {any} */ i) => {
            const option = el("option", { value: key(i) }, i.name);
            if (i === item) option.setAttribute("selected", "");
            return option;
          }))),
      item ? null : el("p", { class: "quiet" }, "The club has no syllabus yet."),
      item?.kind === "fall"
        ? el("p", { class: "quiet" }, "A name: clean. The far button: the head touched. Who does not want to fall is not marked.")
        : el("p", { class: "quiet" }, "A name: good. Once more: not yet, then prompted, then nothing."),
      item ? el("ul", { class: `tiles ${item.kind === "fall" ? "falls" : ""}` }, ...children.map((/** @type {any} */ c) => tile(mat, lesson, c, item))) : null,
    ];
  },
};

/** @param {any} item */
const key = (item) => (item.kind === "fall" ? `fall ${item.code}` : item.id);

/** @param {any} lesson @param {any} child @param {any} item */
const place = (lesson, child, item) => `${lesson.id} ${child.id} ${key(item)}`;

/** What this tablet has marked of a child and an item tonight. @param {any} mat @param {any} lesson @param {any} child @param {any} item */
const own = (mat, lesson, child, item) => mat.held.seen?.[place(lesson, child, item)];

/** @param {any} mat @param {any} lesson @param {any} child @param {any} item */
function tile(mat, lesson, child, item) {
  const last = own(mat, lesson, child, item);
  const isFall = item.kind === "fall";
  const state = !last ? "" : isFall ? (last.code & HEAD_TOUCHED ? "head touched" : "clean") : WORDS[/** @type {1|2|3} */ (last.code)];
  return el("li", { class: "tile", "data-seen": state || null, "data-person": child.id },
    el("button", { type: "button", class: "here", "data-key": child.id, onclick: () => (isFall ? fall(mat, lesson, child, item, true) : next(mat, lesson, child, item)) },
      el("b", {}, child.name), el("small", {}, belt(child.drawing), child.belt), el("span", { class: "state" }, state || "–")),
    isFall ? el("button", { type: "button", class: "touched", onclick: () => fall(mat, lesson, child, item, false) }, "Head touched") : null);
}

/** @param {any} mat @param {any} lesson @param {any} child @param {any} item @param {boolean} clean */
function fall(mat, lesson, child, item, clean) {
  const code = clean ? item.code : item.code | HEAD_TOUCHED;
  return mat.tap(
    [{ lesson: lesson.id, person: child.id, kind: "fall", code, remember: { map: "seen", key: place(lesson, child, item), code } }],
    `${child.name}, ${item.name}: ${clean ? "clean" : "head touched; no more falls that way tonight"}`);
}

/** @param {any} mat @param {any} lesson @param {any} child @param {any} item */
function next(mat, lesson, child, item) {
  const last = own(mat, lesson, child, item);
  const code = !last ? GOOD : last.code === GOOD ? NOT_YET : last.code === NOT_YET ? PROMPTED : null;
  const base = { lesson: lesson.id, person: child.id, item: item.id };
  const remember = { map: "seen", key: place(lesson, child, item), code };
  const marks = [];
  if (last) marks.push({ ...base, kind: "cleared", replaces: last.id, ...(code ? {} : { remember }) });
  if (code) marks.push({ ...base, kind: "sighting", code, remember });
  return mat.tap(marks, `${child.name}, ${item.name}: ${code ? WORDS[/** @type {1|2|3} */ (code)] : "taken back"}`);
}
