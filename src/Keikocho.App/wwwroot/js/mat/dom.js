// Elements without text that is read as markup: names come from people.

/**
 * @param {string} tag
 * @param {Record<string, any>} [set] attributes; "on..." are listeners, null and false leave out
 * @param {...(Node | string | null | undefined)} inside
 * @returns {HTMLElement}
 */
export function el(tag, set = {}, ...inside) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(set)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : String(value));
  }
  element.append(...inside.filter((i) => i !== null && i !== undefined));
  return element;
}

/** The drawn belt. @param {string | null} drawing classes */
export function belt(drawing) {
  if (!drawing) return null;
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("class", drawing);
  svg.setAttribute("aria-hidden", "true");
  const use = document.createElementNS("http://www.w3.org/2000/svg", "use");
  use.setAttribute("href", "#belt");
  svg.append(use);
  return svg;
}

/** "17:05". @param {number} minute since midnight */
export function hour(minute) {
  return `${String(Math.floor(minute / 60) % 24).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
}
