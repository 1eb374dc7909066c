// Printing again: what the archive keeps of a print or of bags, on a sheet that may be half used.

import { choices, el, field, say, select, tick } from "./ui.js";
import { delivery } from "./deliver.js";
import { keyed } from "./said.js";
import { stock_picture } from "./stock.js";

/** The look of a print that is made again; what is not asked for stays as it was printed. */
function look_of({ stock, gone, next, dish }) {
  return {
    ...(stock ? { stock } : {}),
    ...(next ? { first_cell: "next" } : {}),
    ...(gone.size > 0 && !next ? { skip: [...gone].sort((one, other) => one - other) } : {}),
    ...(dish ? { dishes: dish.replaceAll(",", " ") } : {}), // a comma would part the name
  };
}

function dish_choice(wanted, dishes) {
  const pairs = [["", say("archive.all_dishes")], ...dishes.map((dish) => [dish, dish])];
  return field(say("archive.which"), select(pairs, "", (dish) => { wanted.dish = dish; }));
}

/** Cards of both kinds, printed together or apart, or those of one: they may be on two stocks. */
const kinds = ["labels", "cards", "finishing_cards", "cook_day_cards"];

/** Whether a stock takes this kind of print; cards are of two kinds. */
function fits_kind(stock, kind) {
  return stock.for.some((use) => use === kind || (kind === "cards" && use.endsWith("_cards")));
}

/** The stocks for this kind of print; the first is the one that it was printed on. */
function stock_choice(desk, wanted, drawn) {
  const fits = desk.state.stocks.filter((stock) => fits_kind(stock, wanted.kind));
  const pairs = [["", say("archive.same_stock")], ...fits.map((stock) => [stock.name, stock.title || stock.name])];
  return field(say("archive.stock"), select(pairs, wanted.stock, (name) => {
    wanted.stock = name;
    wanted.gone.clear();
    drawn();
  }));
}

/** A form for one print of the archive, or for bags. \param question {printed} or {bags}
 *  \param print what the archive says of it: its stock and dishes, if it is one print */
export function reprint_form(desk, question, print = {}) {
  const what = keyed(print.what ?? "labels");
  const kind_printed = kinds.includes(what) ? what : "cards";
  const wanted = { kind: kind_printed, stock: "", gone: new Set(), next: false, dish: "" };
  const changing = el("div");
  const stock_now = () => desk.state.stocks.find((stock) => stock.name === (wanted.stock || print.stock));
  const draw = () => {
    const sheet = wanted.next ? null : stock_picture(stock_now(), wanted.gone);
    changing.replaceChildren(stock_choice(desk, wanted, draw),
      tick(say("archive.next_cell"), { checked: wanted.next, onchange: (event) => {
        wanted.next = event.target.checked;
        draw();
      } }),
      ...(sheet ? [el("p", { class: "help" }, say("print.cells_help")), sheet] : []));
  };
  draw();
  const kind = choices(say("archive.kind"), kinds.map((one) => [one, say(`day.what.${one}`)]),
    wanted.kind, (value) => { Object.assign(wanted, { kind: value, stock: "" }); wanted.gone.clear(); draw(); });
  return el("div", { class: "reprint" }, kind, print.dishes?.length > 1 ? dish_choice(wanted, print.dishes) : null,
    changing, delivery(desk, { path: "/api/reprint", name: "thawslip-again.pdf",
      wish: () => ({ ...question, kind: wanted.kind, look: look_of(wanted) }) }));
}
