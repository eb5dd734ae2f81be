// The register: one tap a child, in the order that the thumb knows.
import { belt, el } from "../dom.js";
import { forAdult } from "../adult.js";

const CHECK = "Check with instructor before this child goes.";

export const register = {
  address: "register",
  word: "Register",
  /** @param {any} mat @param {any} lesson */
  draw(mat, lesson) {
    const missing = mat.held.missing === lesson.id;
    const untouched = lesson.children.filter((/** @type {any} */ c) => c.mark === "");
    const tally = (/** @type {string[]} */ ...marks) => lesson.children.filter((/** @type {any} */ c) => marks.includes(c.mark)).length;
    return [
      el("p", { class: "actions mat-actions" },
        el("button", { type: "button", disabled: untouched.length === 0 || !lesson.isOn, onclick: () => all(mat, lesson, "present") }, "All here"),
        el("button", { type: "button", disabled: untouched.length === 0, onclick: () => all(mat, lesson, "absent") }, "Rest are absent"),
        missing ? el("button", { type: "button", class: "primary", onclick: () => mat.hold("missing", null) }, "Nobody else is missing") : null,
        el("span", { class: "mat-tally" }, `${tally("present", "late")} here, ${tally("told")} told us, ${tally("absent")} absent, ${untouched.length} not marked`)),
      missing ? el("p", { class: "mat-asks", role: "status" }, "Tap whoever is missing.") : null,
      el("ul", { class: "tiles" }, ...lesson.children.map((/** @type {any} */ child) => tile(mat, lesson, child, missing))),
      el("h2", {}, "Adults and leaders"),
      el("ul", { class: "tiles" }, ...mat.evening.told.adults.map((/** @type {any} */ adult) => tile(mat, lesson, { ...adult, belt: adult.duty, drawing: null }, false))),
    ];
  },
};

/** @param {any} mat @param {any} lesson @param {any} child @param {boolean} missing */
function tile(mat, lesson, child, missing) {
  return el("li", { class: "tile", "data-mark": child.mark || null, "data-person": child.id },
    el("button", { type: "button", class: "here", "data-key": child.id, onclick: () => here(mat, lesson, child, missing) },
      el("b", {}, child.name),
      el("small", {}, belt(child.drawing), child.belt),
      el("span", { class: "state" }, child.sign ? el("span", { class: `stamp ${child.mark}`, "aria-hidden": "true" }, child.sign) : null, child.words)),
    el("button", { type: "button", class: "more", "aria-label": `More of ${child.name}${child.askAdult ? ": ask an adult" : ""}`, onclick: () => more(mat, lesson, child) },
      "⋯", child.askAdult ? el("span", { class: "mat-sign", "aria-hidden": "true" }) : null));
}

/** @param {any} mat @param {any} lesson @param {any} child @param {boolean} missing */
async function here(mat, lesson, child, missing) {
  if (missing && child.mark !== "absent") return mark(mat, lesson, child, "absent");
  if (child.mark === "present" || child.mark === "late") return mat.say(`${child.name}: ${child.words}`);
  if (!lesson.isOn) return mat.say("The lesson is still to come.");
  if (child.ask && !(await ask(`${child.full}?`, `${child.full} is here`))) return;
  return mark(mat, lesson, child, "present");
}

/** @param {any} mat @param {any} lesson @param {any} child @param {string} kind */
function mark(mat, lesson, child, kind) {
  const at = kind === "present" ? mat.evening.arrival(lesson) : kind === "left" ? mat.evening.minute() : null;
  const says = mat.evening.says(kind, lesson, at);
  const was = { mark: child.mark, words: child.words, sign: child.sign };
  return mat.tap([{ lesson: lesson.id, person: child.id, kind, at, was, shows: { lesson: lesson.id, person: child.id, ...says } }], `${child.name}: ${says.words}`);
}

/** @param {any} mat @param {any} lesson @param {string} kind */
async function all(mat, lesson, kind) {
  const children = lesson.children.filter((/** @type {any} */ c) => c.mark === "");
  const at = kind === "present" ? mat.evening.arrival(lesson) : null;
  const says = mat.evening.says(kind, lesson, at);
  if (kind === "present") mat.held.missing = lesson.id;
  await mat.tap(
    children.map((/** @type {any} */ c) => ({
      lesson: lesson.id, person: c.id, kind, at, was: { mark: "", words: "not marked", sign: "" }, shows: { lesson: lesson.id, person: c.id, ...says },
    })),
    kind === "present" ? `${children.length} marked here.` : `${children.length} marked absent.`);
}

/** @param {any} mat @param {any} lesson @param {any} child */
function more(mat, lesson, child) {
  const dialog = /** @type {HTMLDialogElement} */ (el("dialog", { class: "mat-dialog", "aria-label": child.name }));
  const choose = (/** @type {string} */ kind, /** @type {string} */ word) =>
    el("button", { type: "button", onclick: () => { dialog.close(); mark(mat, lesson, child, kind); } }, word);
  const teaches = mat.evening.join.teaches;
  const isChild = Boolean(child.full);
  dialog.append(...[
    el("h2", {}, child.full ?? child.name),
    // A leader's tablet does not know of whom: it says so of every child.
    isChild && (child.checkFirst || !teaches) ? el("p", { class: "mat-check" }, teaches ? CHECK : "Before a child goes: an instructor hands the child over.") : null,
    el("p", { class: "mat-choices" },
      child.checkFirst ? el("button", { type: "button", onclick: () => { dialog.close(); goes(mat, lesson, child); } }, "Left now") : choose("left", "Left now"), choose("excused", "Absent, told us"), choose("absent", "Absent"),
      el("button", { type: "button", onclick: () => { dialog.close(); location.hash = "knock"; } }, "A knock"),
      teaches && isChild ? el("button", { type: "button", onclick: () => { dialog.close(); forAdult(mat, child); } }, "For an adult") : null,
      el("button", { type: "button", onclick: () => dialog.close() }, "Nothing")),
  ].filter((n) => n !== null));
  show(dialog);
}

/** A child whom not everybody may fetch is marked as gone after one more look. @param {any} mat @param {any} lesson @param {any} child */
async function goes(mat, lesson, child) {
  if (await ask(`${child.full}: check with instructor`, "Checked: left now", "Not yet")) mark(mat, lesson, child, "left");
}

/** @param {string} question @param {string} yes @param {string} [no] @returns {Promise<boolean>} */
function ask(question, yes, no = "Somebody else") {
  return new Promise((done) => {
    const dialog = /** @type {HTMLDialogElement} */ (el("dialog", { class: "mat-dialog", "aria-label": question }));
    dialog.addEventListener("close", () => done(dialog.returnValue === "yes"));
    dialog.append(
      el("h2", {}, question),
      el("p", { class: "mat-choices" },
        el("button", { type: "button", class: "primary", onclick: () => dialog.close("yes") }, yes),
        el("button", { type: "button", onclick: () => dialog.close("no") }, no)));
    show(dialog);
  });
}

/** @param {HTMLDialogElement} dialog */
function show(dialog) {
  document.body.append(dialog);
  dialog.addEventListener("close", () => dialog.remove());
  dialog.showModal();
}
