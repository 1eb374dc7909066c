// A sheet of a stock as a picture to scale: each cell is there, or gone, and a click says which.

import { el, say } from "./ui.js";

function place(node, [x, y, width, height], [sheet_width, sheet_height]) {
  const part = (length, of) => `${((100 * length) / of).toFixed(3)}%`;
  Object.assign(node.style, {
    left: part(x, sheet_width), top: part(y, sheet_height), width: part(width, sheet_width),
    height: part(height, sheet_height),
  });
  return node;
}

/** The sheet with a button for each cell. A roll has no cells that could be gone: there is no picture of it.
 *  \param gone a Set of cells' numbers, counted along rows from 1; changed here
 *  \param changed called after each click */
export function stock_picture(stock, gone, changed = () => {}) {
  if (!stock || stock.roll || stock.cells.length < 2) {
    return el("p", { class: "help" }, say("archive.no_cells"));
  }
  const cell = (box, at) => {
    const number = at + 1;
    const words = () => say(gone.has(number) ? "archive.cell_gone" : "archive.cell_there", number);
    const press = el("button", { type: "button", class: "cell", "aria-pressed": String(gone.has(number)),
      "aria-label": words(), onclick: () => {
        gone[gone.has(number) ? "delete" : "add"](number);
        press.setAttribute("aria-pressed", String(gone.has(number)));
        press.setAttribute("aria-label", words());
        changed();
      } }, String(number));
    return place(press, box, stock.sheet);
  };
  const label = say("archive.sheet_of", stock.title || stock.name);
  const sheet = el("div", { class: "stock", role: "group", "aria-label": label }, stock.cells.map(cell));
  sheet.style.aspectRatio = `${stock.sheet[0]} / ${stock.sheet[1]}`;
  return sheet;
}
