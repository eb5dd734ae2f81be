// What only adults may see of one child: opened with a code, shut after ten seconds, kept nowhere.
import { el } from "./dom.js";

/** @param {any} mat @param {any} child */
export function forAdult(mat, child) {
  const dialog = /** @type {HTMLDialogElement} */ (el("dialog", { class: "mat-dialog", "aria-label": `For an adult: ${child.name}` }));
  const code = /** @type {HTMLInputElement} */ (el("input", { type: "password", inputmode: "numeric", maxlength: "6", autocomplete: "off", id: "adult-code" }));
  const said = el("p", { role: "status" });
  const open = async () => {
    const typed = code.value;
    code.value = "";
    try {
      const response = await fetch("/mat/adult", {
        method: "POST",
        headers: { "Content-Type": "application/json", Accept: "application/json", "Page-Token": mat.outbox.token },
        body: JSON.stringify({ child: child.id, code: typed }),
      });
      const sees = await response.json();
      if (sees.problem) said.textContent = sees.problem;
      else show(dialog, sees);
    } catch {
      said.textContent = "The laptop is not reached. The emergency sheet is in the red folder.";
    }
  };
  dialog.append(
    el("h2", {}, child.full),
    el("label", { for: "adult-code" }, `${mat.evening.join.name}’s code`), code, said,
    el("p", { class: "mat-choices" },
      el("button", { type: "button", class: "primary", onclick: open }, "Open for ten seconds"),
      el("button", { type: "button", onclick: () => dialog.close() }, "Nothing")));
  document.body.append(dialog);
  dialog.addEventListener("close", () => dialog.remove());
  dialog.showModal();
  code.focus();
}

/** @param {HTMLDialogElement} dialog @param {any} sees */
function show(dialog, sees) {
  dialog.replaceChildren(...[
    el("h2", {}, sees.name),
    ...(sees.care ?? []).flatMap((/** @type {any} */ c) => [el("h3", {}, c.heading), el("p", { class: "mat-care-note" }, c.text)]),
    sees.careLocked ? el("p", {}, el("b", {}, sees.careLocked)) : null,
    ...sees.standing.map((/** @type {string} */ line) => el("p", {}, el("b", {}, line))),
    sees.contacts.length === 0 ? el("p", {}, "No contact is held.") : null,
    el("ul", { class: "rows" }, ...sees.contacts.map((/** @type {any} */ c) =>
      el("li", {}, el("span", {}, `${c.name}${c.relation ? `, ${c.relation}` : ""}`), el("b", {}, c.phone || "no number"), c.askFirst ? el("span", {}, "check with the instructor") : null))),
    el("p", { class: "mat-choices" }, el("button", { type: "button", class: "primary", onclick: () => dialog.close() }, "Shut")),
  ].filter((n) => n !== null));
  window.setTimeout(() => dialog.close(), sees.seconds * 1000);
  // A tablet that sleeps stops its clock: what was open is shut when it is turned away from.
  document.addEventListener("visibilitychange", () => dialog.close(), { once: true });
}
