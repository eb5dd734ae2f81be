// What waits on this tablet, in words, and what the laptop will not take.
import { el, hour } from "../dom.js";

export const waiting = {
  address: "waiting",
  word: "Waiting",
  /** @param {any} mat */
  draw(mat) {
    const name = (/** @type {any} */ m) => mat.evening.find(m.lesson, m.person)?.name ?? "somebody";
    const line = (/** @type {any} */ m) => `${name(m)}: ${m.kind}${m.at !== null && m.at !== undefined ? ` at ${hour(m.at)}` : ""}`;
    return [
      el("h2", {}, mat.outbox.waiting.length === 0 ? "Nothing waits: all is on the laptop." : `${mat.outbox.waiting.length} wait to be sent`),
      mat.outbox.waiting.length > 0 ? el("p", {}, "They are kept on this tablet and go by themselves as soon as the laptop is reached. Do not clear the browser’s data before.") : null,
      el("ul", {}, ...mat.outbox.waiting.map((/** @type {any} */ m) => el("li", {}, line(m)))),
      ...(mat.outbox.refused.length > 0
        ? [
            el("h2", {}, "Not taken"),
            el("ul", { class: "rows" }, ...mat.outbox.refused.map((/** @type {any} */ m) =>
              el("li", {}, `${line(m)}. ${m.refused} `, el("button", { type: "button", onclick: () => mat.outbox.dismiss(m) }, "Read")))),
          ]
        : []),
      el("p", { class: "quiet" }, navigator.serviceWorker?.controller ? "This tablet can open this page without a network." : "Without a network this page works as long as it stays open: this tablet does not trust the laptop yet."),
    ];
  },
};
