// A sheet of a stock as a picture to scale: each cell is there, or gone; a click, Enter or Space says which, and the
// arrow keys go from cell to cell.

import { drawn, el, say } from "./ui.js";

const cross = (x, y, w, h) => `M${x} ${y}l${w} ${h}M${x + w} ${y}l${-w} ${h}`;

function cell_of([x, y, w, h], number, radius) {
  const size = Math.min(w, h) * 0.4;
  const words = drawn("text", { x: x + w / 2, y: y + h / 2 + size * 0.35 }, String(number));
  words.style.fontSize = `${size}px`; // of the drawing, so millimetres
  return drawn("g", { class: "cell", role: "checkbox" }, drawn("rect", { x, y, width: w, height: h, rx: radius ?? 0 }),
    drawn("path", { d: cross(x, y, w, h) }), words);
}

/** Where an arrow key leads: cells stand in rows, as many beside each other as beside the first. */
function steps_of(cells) {
  const columns = cells.filter(([, y]) => Math.abs(y - cells[0][1]) < 1).length;
  return { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -columns, ArrowDown: columns };
}

/** The sheet with its cells. A roll has no cells that could be gone: there is no picture of it.
 *  \param gone a Set of cells' numbers, counted along rows from 1; changed here
 *  \param changed called after each click
 *  \param first the cell that a print begins at: those before it are not used either */
export function stock_picture(stock, gone, changed = () => {}, first = 1) {
  if (!stock || stock.roll || stock.cells.length < 2) {
    return el("p", { class: "help" }, say("print.no_cells"));
  }
  const [width, height] = stock.sheet;
  const steps = steps_of(stock.cells);
  const self = { at: 0 };
  const cells = stock.cells.map((box, at) => cell_of(box, at + 1, stock.radius));
  function show() {
    cells.forEach((cell, at) => {
      const there = !gone.has(at + 1) && at + 1 >= first;
      cell.setAttribute("aria-checked", String(there));
      cell.setAttribute("aria-label", say(there ? "print.cell_there" : "print.cell_gone", at + 1));
      cell.setAttribute("tabindex", at === self.at ? "0" : "-1");
    });
  }
  function turn(at) {
    self.at = at;
    gone[gone.has(at + 1) ? "delete" : "add"](at + 1);
    show();
    changed();
  }
  function pressed(event) {
    const step = steps[event.key];
    if (event.key !== "Enter" && event.key !== " " && !step) { return; }
    event.preventDefault();
    if (!step) { turn(self.at); return; }
    self.at = Math.min(cells.length - 1, Math.max(0, self.at + step));
    show();
    cells[self.at].focus();
  }
  cells.forEach((cell, at) => cell.addEventListener("click", () => turn(at)));
  show();
  return drawn("svg", { viewBox: `-1 -1 ${width + 2} ${height + 2}`, class: "stock", role: "group",
    "aria-label": say("print.cells_of", stock.title || stock.name), onkeydown: pressed },
  drawn("rect", { class: "paper", x: 0, y: 0, width, height }), cells);
}
