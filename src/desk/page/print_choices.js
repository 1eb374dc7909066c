// What is chosen in the view Print: the stock and its cells, the part, the printer.

import { stock_picture } from "./stock.js";
import { choices, el, field, say, select, tick } from "./ui.js";

/** What may be printed of a day, with the word by which stocks say that they are for it. */
export const prints_of_day = [
  ["labels", "labels"], ["cook_day_cards", "cook_day_cards"], ["finishing_cards", "finishing_cards"],
  ["day_sheets", "lists"], ["shopping", "lists"],
];

/** A choice of stock, and which of its cells are there. */
export function stock_choice(state, look, changed) {
  const room = el("div", { class: "cells" });
  const self = { use: "labels", gone: new Set() };
  const stocks = () => (state.stocks ?? []).filter((stock) => stock.for.includes(self.use));
  const usual = () => stocks().find((stock) => stock.usual_for.includes(self.use));
  const list = el("select", { onchange: () => { look.stock = list.value; begin(); } });
  const cell = () => Math.min(Number(first.max), Math.max(1, Math.trunc(Number(first.value)) || 1));
  // What is typed and is no cell is shown as the one that is taken for it, once the field is left.
  const first = el("input", { type: "number", inputMode: "numeric", min: 1, oninput: cells_changed,
    onchange: () => { first.value = cell(); } });
  const next = el("input", { type: "checkbox", onchange: cells_changed });
  function draw() {
    const stock = stocks().find(({ name }) => name === look.stock);
    first.max = stock?.cells.length ?? 1;
    first.disabled = next.checked;
    room.replaceChildren(stock_picture(stock, self.gone, put, next.checked ? 1 : cell()), ...(stock?.roll === false && stock.cells.length > 1 ? [
      el("div", { class: "cell-notes" }, el("p", { class: "soft" }, say("print.cells_help")), field(say("print.first_cell"), first),
        el("label", { class: "tick" }, next, el("span", {}, say("print.go_on"))))] : []));
  }
  function put() {
    Object.assign(look, { first_cell: next.checked ? "next" : cell(), skip: [...self.gone].sort((one, other) => one - other) });
    changed();
  }
  function cells_changed() {
    const focused = document.activeElement;
    draw();
    focused?.focus(); // it was put there again
    put();
  }
  function begin() {
    self.gone.clear();
    Object.assign(first, { value: 1 });
    next.checked = false;
    draw();
    put();
  }
  return {
    node: el("div", { class: "form-part" }, field(say("print.stock"), list), room),
    /** Shows the stocks that serve for a use. */
    serve(use) {
      self.use = use;
      const mine = usual();
      list.replaceChildren(...stocks().map(({ name, title }) =>
        el("option", { value: name }, name === mine?.name ? say("print.usual_stock", title) : title)));
      look.stock = mine?.name ?? stocks()[0]?.name ?? "";
      list.value = look.stock;
      begin();
    },
  };
}

/** Which dishes and bags, how often, and how they look. */
export function part_choice(look, changed) {
  const chosen = new Set();
  const dishes = el("fieldset", { class: "choices dishes-chosen" });
  // A name's own comma would part it; words find a dish without it.
  const put_dishes = () => { look.dishes = [...chosen].map((name) => name.replaceAll(",", " ")).join(", "); changed(); };
  const written = (key, props) => el("input", { autocomplete: "off", oninput: ({ target }) => { look[key] = target.value.trim(); changed(); }, ...props });
  const flag = (key) => tick(say(`print.${key}`), { checked: look[key], onchange: ({ target }) => { look[key] = target.checked; changed(); } });
  const copies = el("input", { type: "number", inputMode: "numeric", min: 1, max: 99, placeholder: "1", oninput: () => { look.copies = Number(copies.value) || null; changed(); } });
  return {
    node: el("details", { class: "form-part" }, el("summary", {}, say("print.part")), dishes,
      el("div", { class: "fields" },
        field(say("print.bags"), written("bags", { placeholder: "3-5" }), { help: say("print.bags_help") }),
        field(say("print.from"), written("from", { placeholder: "57" }), { help: say("print.from_help") }),
        field(say("print.copies"), copies)),
      flag("only_new")),
    manner: el("div", { class: "form-part" }, el("div", { class: "row" }, flag("large_print"), flag("trial")), el("p", { class: "soft" }, say("print.trial_help"))),
    serve(names) {
      chosen.clear();
      look.dishes = "";
      dishes.replaceChildren(el("legend", {}, say("print.dishes")), ...names.map((name) => tick(name, { onchange: ({ target }) => {
        if (target.checked) { chosen.add(name); } else { chosen.delete(name); }
        put_dishes();
      } })));
    },
  };
}

/** Printer or PDF: "" is the usual printer, null a PDF. */
export function printer_choice({ printers, why_no_printer }, wish, changed) {
  const all = printers ?? [];
  wish.printer = all.length > 0 ? "" : null;
  const put = (value) => { wish.printer = value === "pdf" ? null : value.slice(2); changed(); };
  const list = select([
    ...(all.length > 0 ? [["p:", say("print.usual_printer")]] : []), ...all.map((name) => [`p:${name}`, name]), ["pdf", say("print.pdf")],
  ], all.length > 0 ? "p:" : "pdf", put);
  const why = all.length === 0 ? el("p", { class: "soft", title: why_no_printer }, say("archive.no_printer")) : null;
  return el("div", { class: "printer" }, field(say("print.printer"), list), why);
}

export function what_choice(chosen, changed) {
  return choices(say("print.what"), prints_of_day.map(([what]) => [what, say(`day.what.${what}`)]), chosen, changed);
}
