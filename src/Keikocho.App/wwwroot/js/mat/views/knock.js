// A knock: the name, and the child is off for the evening; the slip waits on the laptop. No tap takes it back.
import { el } from "../dom.js";

export const knock = {
  address: "knock",
  word: "Knock",
  /** @param {any} mat @param {any} lesson */
  draw(mat, lesson) {
    const off = new Set(mat.held.knocks ?? []);
    const activity = mat.held.activity ?? 0;
    const children = lesson.children.filter((/** @type {any} */ c) => c.mark !== "absent" && c.mark !== "told");
    return [
      el("div", { class: "mat-care" },
        el("p", {}, el("b", {}, "First aid first. "), "Keep the child still if the neck hurts. In doubt ring the emergency number. Whoever had a knock to the head is off the mat, however well they look.")),
      mat.evening.told.activities.length === 0 ? null : el("label", { class: "mat-item" }, "What they were doing ",
        el("select", { onchange: (/** @type {any} */ e) => mat.hold("activity", Number(e.target.value)) },
          ...mat.evening.told.activities.map((/** @type {any} */ a) => {
            const option = el("option", { value: a.value }, a.words);
            if (a.value === activity) option.setAttribute("selected", "");
            return option;
          }))),
      el("p", {}, "Who? The name takes the child off the mat for tonight, and no tap puts it back."),
      el("ul", { class: "tiles" }, ...children.map((/** @type {any} */ child) =>
        el("li", { class: "tile", "data-seen": off.has(child.id) ? "head touched" : null, "data-person": child.id },
          el("button", { type: "button", class: "here", disabled: off.has(child.id), onclick: () => take(mat, lesson, child, activity) },
            el("b", {}, child.name), el("span", { class: "state" }, off.has(child.id) ? "off tonight" : ""))))),
    ];
  },
};

/** @param {any} mat @param {any} lesson @param {any} child @param {number} activity */
async function take(mat, lesson, child, activity) {
  await mat.tap([{ lesson: lesson.id, person: child.id, kind: "knock", code: activity }], `${child.name} is off for tonight. The slip is on the laptop: hand it over before they go home.`);
  await mat.hold("knocks", [...(mat.held.knocks ?? []), child.id]);
}
