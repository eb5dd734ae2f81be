// After a minute untouched, or at a button, the screen shows names only: children look at it.

const SECONDS = 60;

export class Quiet {
  /** @type {number | undefined} */
  #timer;

  #hidden;

  /** @param {() => void} hidden what goes altogether, not only out of sight */
  constructor(hidden) {
    this.#hidden = hidden;
    /** @type {HTMLElement} */ (document.getElementById("mat-hide")).addEventListener("click", (event) => {
      event.stopPropagation();
      this.#hide();
    });
    // The touch that wakes it does nothing else.
    for (const name of ["pointerdown", "click", "keydown"]) {
      document.addEventListener(name, (event) => {
        if (document.body.hasAttribute("data-quiet")) {
          event.preventDefault();
          event.stopPropagation();
          if (name !== "pointerdown") document.body.removeAttribute("data-quiet");
        }
        this.#wait();
      }, { capture: true });
    }
    this.#wait();
  }

  #wait() {
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.#hide(), SECONDS * 1000);
  }

  #hide() {
    document.body.setAttribute("data-quiet", "");
    this.#hidden();
  }
}
