// The view Print: which day and which part of it, on what, by which printer, and how it comes out.

import { part_choice, printer_choice, prints_of_day, stock_choice, what_choice } from "./print_choices.js";
import { sheets_pane } from "./sheets.js";
import { print_button } from "./spool.js";
import { button, date, el, field, messages, say, select } from "./ui.js";

/** What of a look the program is to know: nothing that says nothing. Large type is as ticked, whatever is set. */
function packed(look) {
  return Object.fromEntries(Object.entries(look).filter(([key, value]) => key === "large_print" ||
    value !== null && value !== "" && value !== false && !(Array.isArray(value) && value.length === 0)));
}

function day_choice(desk, number) {
  const pairs = desk.state.days.map(({ number: of, made, name }) => [String(of), made ? `${date(made)} · ${name}` : name]);
  return field(say("print.day"), select(pairs, String(number), (value) => desk.go(`#/print/${value}`)));
}

/** A draft is not printed: it is saved first. */
function unsaved_part(desk, day, done) {
  if (typeof day.draft !== "string" || day.draft === day.text) { return null; }
  const save = async ({ target }) => {
    target.disabled = true; // pressed again it would meet its own save
    try {
      const { etag } = await desk.ask("PUT", `/api/day/${day.number}`, { text: day.draft }, { headers: { "If-Match": day.etag } });
      Object.assign(day, { etag, text: day.draft, draft: null });
      done();
    } catch (failure) {
      if (failure.status === 409) { desk.go(`#/day/${day.number}`); }
      desk.tell(failure);
    }
    target.disabled = false;
  };
  return el("div", { class: "form-part unsaved" }, el("p", {}, el("strong", {}, say("print.unsaved"))),
    el("div", { class: "row" }, button(say("print.save_first"), save, "main")));
}

async function show_day(main, desk, number) {
  const day = await desk.ask("GET", `/api/day/${number}`);
  const listed = desk.state.days.find((one) => one.number === number);
  const look = { stock: "", first_cell: 1, skip: [], large_print: desk.state.large_print, trial: false, dishes: "", bags: "", from: "", only_new: false, copies: null };
  const wish = { what: "labels", printer: null };
  const draft = () => typeof day.draft === "string" && day.draft !== day.text;
  const sheets = sheets_pane(desk, () => ({ number, text: day.draft ?? day.text, what: wish.what, look: packed(look) }));
  const changed = () => {
    sheets.update();
    printing.update();
    printing.forget();
  };
  const printing = print_button(desk, {
    wish: () => ({ number, etag: day.etag, what: wish.what, look: packed(look), printer: wish.printer }),
    words: () => say(wish.printer === null ? "print.make_pdf" : "print.print"),
    name: () => `${day.name.replace(/\.toml$/, "")}-${wish.what}.pdf`,
    done: () => sheets.update(),
  });
  const part = part_choice(look, changed);
  const stock = stock_choice(desk.state, look, changed);
  const serve = (what) => {
    wish.what = what;
    stock.serve(Object.fromEntries(prints_of_day)[what]);
  };
  const printer = printer_choice(desk.state, wish, changed);
  const unsaved = unsaved_part(desk, day, () => { unsaved.remove(); printing.press.disabled = false; });
  printing.press.disabled = draft();
  part.serve(listed?.dishes ?? []);
  serve("labels");
  main.append(el("div", { class: "panes printing" },
    el("section", { class: "pane" }, el("h2", {}, say("print.chosen")),
      el("div", { class: "form-part" }, day_choice(desk, number), what_choice("labels", serve)), stock.node, part.node, part.manner),
    el("section", { class: "pane sheet-pane" }, el("h2", {}, say("print.comes_out")), unsaved ?? [],
      el("div", { class: "row" }, printer, printing.press), printing.said, sheets.node)));
  return () => {
    sheets.close();
    printing.close();
  };
}

export async function show(main, desk) {
  const days = await desk.refresh_days();
  const [asked] = desk.where;
  const number = asked !== undefined && /^\d+$/.test(asked) ? Number(asked) : days[0]?.number;
  if (number === undefined) {
    main.append(messages([{ severity: "note", text: say("day.none_yet") }]), el("p", {}, el("a", { href: "#/day/all" }, say("day.new"))));
    return null;
  }
  return show_day(main, desk, number);
}
