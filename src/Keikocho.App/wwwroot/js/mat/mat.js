// The tablet on the mat. The page is the same for everybody; what is of this evening comes from the laptop and is kept on the tablet
// until the evening is over.
import { Kept } from "./kept.js";
import { Outbox } from "./outbox.js";
import { Evening } from "./evening.js";
import { el } from "./dom.js";
import { Lacks } from "./lacks.js";
import { Undo } from "./undo.js";
import { Quiet } from "./quiet.js";
import { register } from "./views/register.js";
import { roll } from "./views/roll.js";
import { pairs } from "./views/pairs.js";
import { seen } from "./views/seen.js";
import { words } from "./views/words.js";
import { knock } from "./views/knock.js";
import { child } from "./views/child.js";
import { cards } from "./views/cards.js";
import { waiting } from "./views/waiting.js";

const ASK_AGAIN = 10_000;

/** A view: its address, its word, and what it draws. */
const VIEWS = [register, cards, pairs, seen, words, child, knock, roll, waiting];

class Mat {
  /** @type {Evening | null} */
  evening = null;
  /** Which lesson of the evening is shown. */
  lesson = "";
  /** Which end is shown in views of one end: 0, 1, or both. @type {number | null} */
  end = null;
  /** What a view remembers while the tablet is in the hand. @type {Record<string, any>} */
  held = {};
  /** Which child is shown; never kept. @type {string | null} */
  child = null;

  /** What was tapped last and is on its way to be kept. @type {Promise<any>} */
  #taps = Promise.resolve();

  /** @param {Kept} kept @param {Outbox} outbox */
  constructor(kept, outbox) {
    this.kept = kept;
    this.outbox = outbox;
    this.undo = new Undo(this);
    this.lacks = new Lacks(kept);
    this.quiet = new Quiet(() => this.show(null));
  }

  async start() {
    await this.lacks.start();
    const held = await this.kept.get("evening");
    if (held && held.told.join.endsAt > Date.now() - (held.skew ?? 0)) this.#take(held.told, held.at);
    else if (held) await this.#forget();
    this.held = (await this.kept.get("held")) ?? {};
    this.outbox.onChange = () => this.count();
    this.outbox.onTaken = (answer) => this.#taken(answer);
    window.addEventListener("hashchange", () => this.show(null));
    window.addEventListener("online", () => this.ask());
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && this.ask());
    /** @type {HTMLElement} */ (document.getElementById("mat-send")).addEventListener("click", () => this.ask());
    this.draw();
    await this.ask();
    window.setInterval(() => this.ask(), ASK_AGAIN);
    this.#stayAwake();
  }

  /** Asks the laptop how things stand, and hands in what waits. */
  async ask() {
    await this.outbox.send();
    try {
      const askedAt = performance.now();
      const response = await fetch("/mat/evening", { headers: { Accept: "application/json", ...this.outbox.counts() }, redirect: "error" });
      if (response.status === 401 || response.status === 403) return this.#out();
      if (!response.ok) throw new Error(String(response.status));
      const told = await response.json();
      this.outbox.reached = true;
      await this.outbox.reckoned(askedAt);
      this.#take(told, Date.now());
      await this.kept.set("evening", { told, at: Date.now(), skew: Date.now() - told.clock.now });
      await this.lacks.follow(told.lacks);
      await this.outbox.send();
      this.draw();
    } catch {
      this.outbox.reached = false;
      this.count();
    }
  }

  /** @param {any} told @param {number} at */
  #take(told, at) {
    this.evening = new Evening(told, at);
    this.outbox.token = told.token;
    this.outbox.evening = told.join.date;
    this.outbox.atLeast(told.join.sequence);
    if (!told.lessons.some((/** @type {any} */ l) => l.id === this.lesson)) this.lesson = this.evening.lessonNow()?.id ?? "";
    for (const mark of this.outbox.unreckoned) if (mark.shows) this.evening.show(mark.shows);
  }

  /** @param {any} answer */
  #taken(answer) {
    if (!this.evening) return;
    for (const tile of answer.tiles) this.evening.show(tile);
    for (const mark of this.outbox.waiting) if (mark.shows) this.evening.show(mark.shows);
    this.draw();
    // Who is missing changes the top line and the card: they are the laptop’s to make anew.
    const adults = new Set(this.evening.told.adults.map((/** @type {any} */ a) => a.id));
    if (answer.tiles.some((/** @type {any} */ t) => adults.has(t.person))) this.ask();
  }

  /**
   * One tap: kept at once, shown at once, undoable for ten seconds.
   * @param {object[]} marks
   * @param {string} said what it says, for the line and for undo
   */
  tap(marks, said) {
    // In the order of the thumb: the second tap may come before the first is kept.
    const done = this.#taps.then(() => this.#keep(marks, said));
    this.#taps = done.catch(() => []);
    return done;
  }

  /** @param {object[]} marks @param {string} said */
  async #keep(marks, said) {
    const by = this.evening?.join.person;
    const made = await this.outbox.put(marks.map((m) => ({ by, lesson: this.lesson, ...m })));
    for (const mark of made) if (mark.shows) this.evening?.show(mark.shows);
    for (const mark of made) if (mark.remember) mark.remembered = this.#remember(mark.remember, mark);
    await this.kept.set("held", this.held);
    this.say(said);
    this.undo.offer(made, said);
    this.draw();
    return made;
  }

  /**
   * What this tablet has marked itself tonight stays to be seen on it; nothing that others marked does.
   * @param {{map: string, key: string, code?: number | null}} what @param {any} mark
   * @returns what was remembered before
   */
  #remember({ map, key, code }, mark) {
    const before = this.held[map]?.[key];
    this.held[map] = { ...(this.held[map] ?? {}), [key]: code === null ? undefined : { id: mark.id, code } };
    return { map, key, before };
  }

  /** Puts back what was remembered before. @param {any[]} marks */
  async forgetLast(marks) {
    for (const { remembered } of marks) if (remembered) this.held[remembered.map] = { ...this.held[remembered.map], [remembered.key]: remembered.before };
    await this.kept.set("held", this.held);
  }

  /** Shows one child, or the names again. @param {string | null} child */
  show(child) {
    this.child = child;
    this.draw();
    if (child !== null) window.scrollTo(0, 0);
  }

  /** @param {string} sentence */
  say(sentence) {
    /** @type {HTMLElement} */ (document.getElementById("mat-said")).textContent = sentence;
  }

  /** Remembers something for this evening. @param {string} key @param {any} value */
  async hold(key, value) {
    this.held[key] = value;
    await this.kept.set("held", this.held);
    this.draw();
  }

  /** The count of what waits, and whether the laptop is reached. */
  count() {
    const place = /** @type {HTMLElement} */ (document.getElementById("mat-waiting"));
    const send = /** @type {HTMLElement} */ (document.getElementById("mat-send"));
    const waits = this.outbox.waiting.length;
    const refused = this.outbox.refused.length;
    const parts = [];
    if (waits > 0) parts.push(`${waits} waiting`);
    if (refused > 0) parts.push(`${refused} not taken`);
    if (!this.outbox.reached) parts.push("no laptop");
    place.textContent = parts.length === 0 ? "all on the laptop" : parts.join(", ");
    place.toggleAttribute("data-waits", waits > 0 || !this.outbox.reached);
    send.hidden = waits === 0 && this.outbox.reached;
  }

  draw() {
    this.count();
    const evening = this.evening;
    const main = /** @type {HTMLElement} */ (document.getElementById("main"));
    if (!evening) {
      main.replaceChildren(el("p", {}, "This tablet has joined no evening. "), el("p", { class: "actions" }, el("a", { class: "button primary", href: "/join" }, "Join the evening")));
      return;
    }
    if (evening.isOver) {
      this.#out();
      return;
    }
    const asked = location.hash.slice(1);
    const open = VIEWS.filter((v) => !v.hides?.(this));
    const view = open.find((v) => v.address === asked) ?? open[0];
    /** @type {HTMLElement} */ (document.getElementById("mat-evening")).textContent = `${evening.join.name}, tablet ${evening.join.number}`;
    const top = evening.told.top;
    const line = /** @type {HTMLElement} */ (document.getElementById("mat-top"));
    line.textContent = `Adults: ${top.adults}. First-aider: ${top.firstAider}.`;
    line.toggleAttribute("data-short", top.shortBy > 0 || top.noFirstAider);
    /** @type {HTMLElement} */ (document.getElementById("mat-views")).replaceChildren(
      ...open.map((v) => el("a", { href: `#${v.address}`, "aria-current": v === view ? "page" : null, onclick: v === view ? () => this.show(null) : null }, v.word)));
    const lessons = evening.lessons.length < 2 ? null : el("p", { class: "mat-lessons" }, ...evening.lessons.map((/** @type {any} */ l) =>
      el("button", { type: "button", "aria-pressed": String(l.id === this.lesson), onclick: () => { this.lesson = l.id; this.draw(); } }, l.name)));
    const before = document.activeElement?.getAttribute("data-key");
    main.replaceChildren(...[lessons, ...view.draw(this, evening.lesson(this.lesson))].filter((n) => n !== null));
    if (before) /** @type {HTMLElement | null} */ (main.querySelector(`[data-key="${CSS.escape(before)}"]`))?.focus({ preventScroll: true });
  }

  // Put out, or the evening is over: the names go, what waits stays until it is handed in.
  async #out() {
    this.evening = null;
    await this.#forget();
    await this.kept.set("sequence", Math.max(0, ...this.outbox.waiting.map((m) => m.sequence)));
    this.draw();
    await this.outbox.send();
  }

  async #forget() {
    await this.outbox.reckoned(Infinity);
    await this.lacks.forget();
    await this.kept.forget();
  }

  async #stayAwake() {
    try {
      await navigator.wakeLock?.request("screen");
    } catch {
      // The tablet says no, as when its battery is low; it sleeps, and wakes at the same place.
    }
  }
}

async function begin() {
  try {
    const kept = await Kept.open();
    await new Mat(kept, await Outbox.open(kept)).start();
  } catch (problem) {
    /** @type {HTMLElement} */ (document.getElementById("main")).replaceChildren(
      el("p", { class: "error" }, "This browser keeps nothing, so no mark would survive here: it may be in a private window. Open the laptop’s address in an ordinary one."));
    throw problem;
  }
}

// Without a trusted certificate there is no worker, and the page works as long as it stays open.
navigator.serviceWorker?.register("/mat-worker.js", { scope: "/mat" }).catch(() => {});
begin();
