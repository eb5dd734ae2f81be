// The register without reloading: each tap is sent by itself and the tile changes when the answer says that it is stored.
// Without this script the same form posts and the page comes back; nothing is lost either way.
import { markId } from "./mark-id.js";

const form = /** @type {HTMLFormElement | null} */ (document.querySelector("form.register"));
if (form) {
  const said = /** @type {HTMLElement} */ (form.querySelector("[data-said]"));
  /** Taps go one after the other, in the order of the thumb. @type {Promise<void>} */
  let last = Promise.resolve();
  let waiting = 0;

  form.addEventListener("submit", (event) => {
    const button = /** @type {HTMLButtonElement | null} */ (event.submitter);
    // An adult from the list gets a tile of their own: the page comes back with it.
    if (!button || button.name === "adult") return;
    event.preventDefault();
    /** @type {HTMLElement | null} */ (button.closest("[popover]"))?.hidePopover();
    const body = new FormData(form, button);
    body.set("command", markId(Date.now(), crypto.getRandomValues(new Uint8Array(10))));
    const address = button.getAttribute("formaction") ?? form.action;
    const tile = tileOf(String(body.get(button.name) ?? ""));
    tile?.setAttribute("aria-busy", "true");
    waiting++;
    last = last.then(() => send(address, body, tile)).finally(() => {
      waiting--;
      if (waiting === 0) tile?.removeAttribute("aria-busy");
      tile?.removeAttribute("aria-busy");
    });
  });

  // A page that is left while a tap is on its way would leave the thumb in doubt.
  window.addEventListener("beforeunload", (event) => {
    if (waiting > 0) event.preventDefault();
  });

  /** @param {string} person */
  function tileOf(person) {
    return person === "" ? null : document.querySelector(`.tile[data-person="${CSS.escape(person)}"]`);
  }

  /** @param {string} address @param {FormData} body @param {HTMLElement | null} tapped */
  async function send(address, body, tapped) {
    let answer;
    try {
      const response = await fetch(address, { method: "POST", body, headers: { Accept: "application/json" }, redirect: "manual" });
      // The answer is another page: nobody acts here any more, or the lesson is gone. It says so itself, and nothing was stored.
      if (response.type === "opaqueredirect") {
        waiting = 0;
        location.reload();
        return;
      }
      if (!response.ok) throw new Error(String(response.status));
      answer = await response.json();
    } catch {
      say("Not stored: the laptop did not answer. Tap again.", true);
      // The next tap may go through and say something else; the tile keeps saying that this one did not.
      const state = tapped?.querySelector(".state");
      if (tapped && state) {
        tapped.setAttribute("data-failed", "");
        state.textContent = "not stored, tap again";
      }
      return;
    }
    for (const tile of answer.tiles) show(tile);
    for (const [name, count] of Object.entries({
      present: answer.tally.present, told: answer.tally.told, absent: answer.tally.absent, "not-marked": answer.tally.notMarked,
    })) {
      const place = form?.querySelector(`[data-tally="${name}"]`);
      if (place) place.textContent = String(count);
    }
    if (answer.said) say(answer.said, false);
    else if (answer.tiles.length === 1) say(`${answer.tiles[0].name}: ${answer.tiles[0].words}`, false);
  }

  /** @param {{person: string, mark: string, words: string, sign: string}} tile */
  function show(tile) {
    const place = tileOf(tile.person);
    if (!place) return;
    place.removeAttribute("data-failed");
    if (tile.mark === "") place.removeAttribute("data-mark");
    else place.setAttribute("data-mark", tile.mark);
    const state = place.querySelector(".state");
    if (state) state.textContent = tile.words;
    const stamp = place.querySelector(".stamp");
    if (stamp) {
      stamp.className = tile.mark === "" ? "stamp" : `stamp ${tile.mark}`;
      stamp.textContent = tile.sign;
    }
  }

  /** @param {string} sentence @param {boolean} alert */
  function say(sentence, alert) {
    said.textContent = sentence;
    said.classList.toggle("vh", false);
    said.classList.toggle("error", alert);
  }
}
