// Who works with whom: one tap an activity, two taps when somebody left, came or sits out. Names only; without a network the tablet
// repairs by itself, by yes and no.
import { el } from "../dom.js";
import { mend } from "../repair.js";

const HEAD_TOUCHED = 0x1000;
const LEAVES = 0, COMES = 1, ADULT = 2;

export const pairs = {
  address: "pairs",
  word: "Pairs",
  /** @param {any} mat @param {any} lesson */
  draw(mat, lesson) {
    const all = lesson.pairs ?? [];
    const ends = [...new Set(all.map((/** @type {any} */ p) => p.end))];
    const end = ends.includes(mat.held.end ?? 0) ? mat.held.end ?? 0 : ends[0];
    const own = all.filter((/** @type {any} */ p) => p.end === end);
    const pack = own.find((/** @type {any} */ p) => p.activity === mat.held.drill) ?? own[0];
    if (!pack) return [el("p", { class: "quiet" }, "Nobody is marked here yet: take the register, and the laptop makes the pairs.")];
    const now = whoIsIn(mat, lesson, pack);
    // Whoever needs an adult is in no pair: the others keep theirs.
    const needs = pack.needsAdult.filter((/** @type {number} */ p) => now.has(p));
    const paired = new Set([...now].filter((p) => !needs.includes(p)));
    const groups = made({ ...pack, here: pack.here.filter((/** @type {number} */ p) => !pack.needsAdult.includes(p)) }, paired, mat.held.helper);
    const asks = mat.held.pairsAsk;
    return [
      ends.length < 2 ? null : el("p", { class: "mat-ends" }, ...["Beginners’ end", "Main group"].map((word, i) =>
        el("button", { type: "button", "aria-pressed": String(i === end), onclick: () => mat.hold("end", i) }, word))),
      el("p", { class: "mat-ends" }, ...own.map((/** @type {any} */ p) =>
        el("button", { type: "button", "data-key": `activity ${p.activity}`, "aria-pressed": String(p === pack), onclick: () => choose(mat, p.activity) }, p.word))),
      el("p", { class: "actions mat-actions" },
        asking(mat, "left", "Left"), asking(mat, "out", "Sits out"), asking(mat, "came", "Came"),
        pack.adults.length + pack.ahead.filter((/** @type {any} */ a) => a.event === ADULT).length > 0 && paired.size % 2 === 1 ? asking(mat, "adult", "An adult helps") : null),
      asks ? names(mat, lesson, pack, now, asks) : null,
      asks || (groups?.length === 0 && pack.says) ? null : el("h2", {}, pack.name),
      asks ? null : groups === null
        ? el("p", { class: "mat-asks", role: "status" }, "Ask the laptop: at most two changes do not do here.")
        : groups.length === 0
          ? el("p", { class: "mat-asks", role: "status" }, pack.says ?? (needs.length > 1 ? "No two of those who are here can work together in this." : "Fewer than two are here who can have a partner."))
          : el("ol", { class: "mat-pairs" }, ...groups.map((/** @type {any} */ g) => el("li", {}, line(pack, g)))),
      asks || pack.says || needs.length === 0 ? null
        : el("p", { class: "mat-asks" }, `${needs.length === 1 ? "Needs" : "Need"} an adult: ${needs.map((/** @type {number} */ p) => pack.register[p].name).join(", ")}`),
    ];
  },
};

/** Places of those who are here by what this tablet knows, without those who sit out. @param {any} mat @param {any} lesson @param {any} pack @returns {Set<number>} */
function whoIsIn(mat, lesson, pack) {
  const out = mat.held.pairsOut ?? {};
  const here = new Set(lesson.children.filter((/** @type {any} */ c) => c.mark === "present" || c.mark === "late").map((/** @type {any} */ c) => c.id));
  return new Set(pack.register.map((/** @type {any} */ _, /** @type {number} */ place) => place)
    .filter((/** @type {number} */ place) => here.has(pack.register[place].id) && !out[`${lesson.id} ${pack.register[place].id}`] && !isShut(mat, pack.register[place].id)));
}

/**
 * What this tablet knows and the pairs it holds may not yet: a knock takes the child off, and a touched head leaves the child out until
 * the laptop has made the pairs anew. Shut wins.
 * @param {any} mat @param {string} child
 */
function isShut(mat, child) {
  const touched = (/** @type {any} */ m) => m.person === child && m.kind === "fall" && (m.code & HEAD_TOUCHED) !== 0;
  return (mat.held.knocks ?? []).includes(child) || mat.outbox.unreckoned.some(touched);
}

/**
 * The pairs for those who are in: as the laptop made them, made beforehand for one thing that happened, or repaired here.
 * @param {any} pack @param {Set<number>} now @param {string | undefined} helper
 */
function made(pack, now, helper) {
  const here = new Set(pack.here);
  const left = pack.here.filter((/** @type {number} */ p) => !now.has(p));
  const came = [...now].filter((p) => !here.has(p));
  const asked = pack.ahead.find((/** @type {any} */ a) => a.event === ADULT && a.adult === helper);
  if (left.length + came.length === 0) return asked && now.size % 2 === 1 ? asked.groups : pack.groups;
  if (left.length + came.length === 1 && !asked) {
    const event = left.length === 1 ? LEAVES : COMES;
    const ahead = pack.ahead.find((/** @type {any} */ a) => a.event === event && a.place === (left[0] ?? came[0]));
    if (ahead) return ahead.groups;
  }
  if (pack.groups.length === 0) return pack.here.length === 0 && now.size < 2 ? [] : null;
  const adults = asked ? [helper, ...pack.adults] : pack.adults;
  const groups = mend(pack, pack.groups.map((/** @type {any} */ g) => [...g.places]), [...now], adults.length);
  return groups && groups.map((places) => ({ places, adult: places.length === 1 ? adults[0] : null }));
}

/** "Ana – Ben (tori only)", as the laptop writes it. @param {any} pack @param {any} group */
function line(pack, group) {
  const members = group.places.map((/** @type {number} */ p) => pack.register[p]);
  const words = members.map((/** @type {any} */ m) => (m.tori ? `${m.name} (tori only)` : m.name)).join(" – ");
  if (group.adult) return `${words} – ${group.adult}`;
  return members.length < 3 ? words : `${words}: ${members[1].name} in the middle; ${members[0].name} and ${members[2].name} do not ${pack.thrown ? "throw" : "work with"} each other`;
}

/** @param {any} mat @param {number} activity */
function choose(mat, activity) {
  mat.held.pairsAsk = null;
  return mat.hold("drill", activity);
}

/** @param {any} mat @param {string} what @param {string} word */
const asking = (mat, what, word) =>
  el("button", { type: "button", "data-key": `ask ${what}`, "aria-pressed": String(mat.held.pairsAsk === what), onclick: () => mat.hold("pairsAsk", mat.held.pairsAsk === what ? null : what) }, word);

/** @param {any} mat @param {any} lesson @param {any} pack @param {Set<number>} now @param {string} what */
function names(mat, lesson, pack, now, what) {
  const button = (/** @type {string} */ key, /** @type {string} */ name, /** @type {() => any} */ then) =>
    el("li", { class: "tile" }, el("button", { type: "button", class: "here", "data-key": key, onclick: then }, el("b", {}, name)));
  if (what === "adult") {
    const others = [...pack.adults, ...pack.ahead.filter((/** @type {any} */ a) => a.event === ADULT).map((/** @type {any} */ a) => a.adult)];
    return el("ul", { class: "tiles" }, ...[...new Set(others)].map((name) => button(`adult ${name}`, name, () => {
      mat.held.pairsAsk = null;
      return mat.hold("helper", name);
    })));
  }
  const wanted = pack.register.filter((/** @type {any} */ _, /** @type {number} */ place) => (what === "came") !== now.has(place));
  return el("ul", { class: "tiles" }, ...wanted.map((/** @type {any} */ child) => button(`${what} ${child.id}`, child.name, () => change(mat, lesson, child, what))));
}

/** Left and came are marks of the register, for the roll; to sit one out is for the pairs only. @param {any} mat @param {any} lesson @param {any} child @param {string} what */
async function change(mat, lesson, child, what) {
  const key = `${lesson.id} ${child.id}`;
  mat.held.pairsAsk = null;
  mat.held.pairsOut = { ...(mat.held.pairsOut ?? {}), [key]: what === "out" };
  const tile = mat.evening.find(lesson.id, child.id);
  const isHere = tile?.mark === "present" || tile?.mark === "late";
  if (what === "out" || !tile || (what === "came" && isHere)) return mat.hold("pairsOut", mat.held.pairsOut);
  const kind = what === "left" ? "left" : "present";
  const at = kind === "left" ? mat.evening.minute() : mat.evening.arrival(lesson);
  const says = mat.evening.says(kind, lesson, at);
  const was = { mark: tile.mark, words: tile.words, sign: tile.sign };
  return mat.tap([{ lesson: lesson.id, person: child.id, kind, at, was, shows: { lesson: lesson.id, person: child.id, ...says } }], `${child.name}: ${says.words}`);
}
