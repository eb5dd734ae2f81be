// Tonight's card, propped up and read from two metres: one part at a time, and how long it still takes as one large number. Nothing
// sounds. It is drawn from what the tablet keeps, so it works without the laptop.
import { markId } from "../../mark-id.js";
import { el, hour } from "../dom.js";

/** @type {number | undefined} */
let ticking;

export const cards = {
  address: "cards",
  word: "Card",
  /** @param {any} mat @param {any} lesson */
  draw(mat, lesson) {
    const missing = whoIsMissing(mat, lesson);
    const all = missing.length > 0 && lesson.planB?.length > 0 ? lesson.planB : lesson.cards ?? [];
    const end = mat.held.end ?? 0;
    const card = all.find((/** @type {any} */ c) => c.both) ?? all.find((/** @type {any} */ c) => c.end === end) ?? all[0];
    clearInterval(ticking);
    if (!card) return [el("p", { class: "quiet" }, "This lesson has no card.")];
    sendShown(mat);
    const ends = el("p", { class: "mat-ends" },
      ...(card.both ? [] : ["Beginners’ end", "Main group"].map((word, i) =>
        el("button", { type: "button", "aria-pressed": String(i === end), onclick: () => mat.hold("end", i) }, word))),
      mat.evening.join.teaches
        ? el("button", { type: "button", "data-key": "missing", "aria-pressed": String(mat.held.cardAsk === true), onclick: () => mat.hold("cardAsk", !mat.held.cardAsk) }, "Adult missing")
        : null);
    if (mat.held.cardAsk) return [ends, el("p", { class: "mat-asks", role: "status" }, "Who is not here?"), adults(mat, lesson)];
    const changed = missing.length === 0 ? card.planB : `${missing.join(", ")}: missing. ${card.planB || "Nothing is thrown at the beginners’ end until the laptop has made the card anew."}`;
    if (card.empty) return [ends, changed ? el("p", { class: "mat-care" }, changed) : null, el("p", { class: "mat-card-title" }, card.empty)].filter((n) => n !== null);
    const now = place(mat, lesson, card);
    const part = card.parts[now.at];
    const next = card.parts[now.at + 1];
    return [
      ends,
      changed ? el("p", { class: "mat-care" }, changed) : null,
      el("p", { class: "mat-card-count", role: "timer", "aria-live": "off" }, countdown(mat, now, part)),
      el("h2", { class: "mat-card-title" }, part.title),
      el("p", { class: "mat-card-when" }, `${hour(part.start)}, ${part.minutes} minutes. ${card.lead}`.trimEnd()),
      ...part.lines.map((/** @type {string} */ line) => el("p", { class: "mat-card-line" }, line)),
      card.lookAt ? el("p", { class: "mat-card-line mat-tally" }, `Look at: ${card.lookAt}`) : null,
      el("p", { class: "actions" },
        part.item || part.falls
          ? el("button", { type: "button", "data-key": "seen", onclick: () => toSeen(mat, lesson, card, part) }, part.falls ? "Mark falls" : "Mark what is seen")
          : null,
        now.at > 0 ? el("button", { type: "button", "data-key": "back", onclick: () => go(mat, lesson, card, now.at - 1, false) }, "Back") : null,
        now.started ? null : el("button", { type: "button", class: "primary", "data-key": "start", onclick: () => go(mat, lesson, card, now.at, true) }, "Start"),
        next && now.started ? el("button", { type: "button", class: "primary", "data-key": "next", onclick: () => go(mat, lesson, card, now.at + 1, true) }, `Next: ${next.title}`) : null),
      el("ol", { class: "mat-card-parts" }, ...card.parts.map((/** @type {any} */ p, /** @type {number} */ i) =>
        el("li", { "aria-current": i === now.at ? "step" : null }, `${hour(p.start)} ${p.title}`))),
    ].filter((n) => n !== null);
  },
};

/** Adults marked missing on this tablet, without whom the laptop has not made the card anew yet. @param {any} mat @param {any} lesson @returns {string[]} */
function whoIsMissing(mat, lesson) {
  const waits = mat.outbox.unreckoned.filter((/** @type {any} */ m) => m.kind === "absent" && m.lesson === lesson.id).map((/** @type {any} */ m) => m.person);
  return mat.evening.told.adults.filter((/** @type {any} */ a) => a.mark === "absent" && waits.includes(a.id)).map((/** @type {any} */ a) => a.name);
}

/** @param {any} mat @param {any} lesson */
function adults(mat, lesson) {
  return el("ul", { class: "tiles" }, ...mat.evening.told.adults.filter((/** @type {any} */ a) => a.mark !== "absent").map((/** @type {any} */ a) =>
    el("li", { class: "tile", "data-person": a.id },
      el("button", { type: "button", class: "here", "data-key": `missing ${a.id}`, onclick: () => isMissing(mat, lesson, a) }, el("b", {}, a.name), el("small", {}, a.duty)))));
}

/** The register says so, and the laptop makes the card anew. @param {any} mat @param {any} lesson @param {any} adult */
function isMissing(mat, lesson, adult) {
  mat.held.cardAsk = false;
  const says = mat.evening.says("absent", lesson, null);
  const was = { mark: adult.mark, words: adult.words, sign: adult.sign };
  return mat.tap(
    [{ lesson: lesson.id, person: adult.id, kind: "absent", was, shows: { lesson: lesson.id, person: adult.id, ...says } }], `${adult.name} is missing: plan B.`);
}

/** @param {any} lesson @param {any} card */
const key = (lesson, card) => `${lesson.id} ${card.both ? "both" : card.end}`;

/** Which part is on: the one that was gone to, else the clock's. @param {any} mat @param {any} lesson @param {any} card */
function place(mat, lesson, card) {
  const held = mat.held.card?.[key(lesson, card)];
  if (held && held.at < card.parts.length) return held;
  const minute = mat.evening.minute();
  const at = card.parts.findIndex((/** @type {any} */ p) => minute < p.start + p.minutes);
  return { at: minute < card.parts[0].start ? 0 : at < 0 ? card.parts.length - 1 : at, started: 0 };
}

/** @param {any} mat @param {any} now @param {any} part */
function countdown(mat, now, part) {
  const number = el("span", {}, left(mat, now, part));
  if (now.started) {
    ticking = window.setInterval(() => {
      if (!number.isConnected) clearInterval(ticking);
      else number.textContent = left(mat, now, part);
    }, 500);
  }
  return number;
}

/** "14:05", and "+1:20" beyond the end. @param {any} mat @param {any} now @param {any} part */
function left(mat, now, part) {
  const seconds = now.started ? Math.round(part.minutes * 60 - (mat.evening.now() - now.started) / 1000) : part.minutes * 60;
  const whole = Math.abs(seconds);
  return `${seconds < 0 ? "+" : ""}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** @param {any} mat @param {any} lesson @param {any} card @param {number} at @param {boolean} forward */
async function go(mat, lesson, card, at, forward) {
  const part = card.parts[at];
  const before = mat.held.card ?? {};
  if (forward && part.slot > 0 && part.item) {
    const shown = { command: markId(Date.now(), crypto.getRandomValues(new Uint8Array(10))), lesson: lesson.id, end: card.end, slot: part.slot, item: part.item, both: card.both ? "yes" : "" };
    mat.held.shown = [...(mat.held.shown ?? []), shown];
  }
  workedOn(mat, lesson, card, part);
  await mat.hold("card", { ...before, [key(lesson, card)]: { at, started: mat.evening.now() } });
}

let sending = false;

/** Tells the laptop what was gone to; without a network it waits here. @param {any} mat */
async function sendShown(mat) {
  if (sending || !(mat.held.shown?.length > 0)) return;
  sending = true;
  try {
    while (mat.held.shown.length > 0) {
      const response = await fetch("/cards/slot", {
        method: "POST", body: new URLSearchParams(mat.held.shown[0]), redirect: "manual", headers: { "Page-Token": mat.outbox.token },
      });
      // A redirect is the laptop's way to say that it has it; anything else of its own is final too, save an old token.
      if (response.status === 400 || response.status === 401 || response.status >= 500) break;
      mat.held.shown = mat.held.shown.slice(1);
      await mat.kept.set("held", mat.held);
    }
  } catch {
    // No laptop: it is sent when one is reached again.
  } finally {
    sending = false;
  }
}

/** What the card is at is what Seen marks next. @param {any} mat @param {any} lesson @param {any} card @param {any} part */
function workedOn(mat, lesson, card, part) {
  if (!part.item && !part.falls) return;
  if (!card.both) mat.held.end = card.end;
  const fall = lesson.items.find((/** @type {any} */ i) => i.kind === "fall");
  mat.held.item = part.falls ? (fall ? `fall ${fall.code}` : mat.held.item) : part.item;
}

/** @param {any} mat @param {any} lesson @param {any} card @param {any} part */
async function toSeen(mat, lesson, card, part) {
  workedOn(mat, lesson, card, part);
  await mat.kept.set("held", mat.held);
  location.hash = "seen";
}
