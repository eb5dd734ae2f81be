// The fire roll: who is on the premises now, in one tap and without a network.
import { el } from "../dom.js";

export const roll = {
  address: "roll",
  word: "Who is here",
  /** @param {any} mat */
  draw(mat) {
    const evening = mat.evening;
    const isHere = (/** @type {any} */ p) => p.mark === "present" || p.mark === "late";
    const children = evening.lessons.flatMap((/** @type {any} */ l) => l.children.filter(isHere));
    const names = [...new Set(children.map((/** @type {any} */ c) => c.full))];
    const adults = evening.told.adults.filter(isHere).map((/** @type {any} */ a) => a.name);
    const open = evening.lessons.flatMap((/** @type {any} */ l) => l.children.filter((/** @type {any} */ c) => c.mark === "")).map((/** @type {any} */ c) => c.full);
    const list = (/** @type {string} */ heading, /** @type {string[]} */ who) => [
      el("h2", {}, `${heading}: ${who.length}`),
      el("ul", { class: "mat-roll" }, ...who.map((name) => el("li", {}, name))),
    ];
    return [
      ...list("Children here", names),
      ...list("Adults here", adults),
      ...(open.length > 0 ? list("Not marked, look for them", [...new Set(open)]) : []),
    ];
  },
};
