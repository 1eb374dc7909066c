// The view Day: write a day of cooking in a form and as text, beside its prints.

import { open_book } from "./book.js";
import { show_days } from "./days.js";
import { day_form } from "./form.js";
import { preview_pane } from "./preview.js";
import { make_saving, offer_draft } from "./saving.js";
import { text_pane } from "./text.js";
import { button, date, el, renewed, say } from "./ui.js";

/** Days that this tab has written: with all that can be undone. */
const books = new Map();
const narrow = matchMedia("(max-width: 48rem)");
const last = { number: null, panes: new Set(narrow.matches ? ["form"] : ["form", "text", "prints"]) };

/** The day's book; null where its view was left meanwhile: a draft's question would stand in another. */
async function book_of(main, desk, number) {
  const day = await desk.ask("GET", `/api/day/${number}`);
  if (!main.isConnected) { return null; }
  const known = books.get(number);
  // What draft it has put itself a book knows; that of another tab is none of its own.
  if (known && known.text === day.text) {
    return Object.assign(known, { etag: day.etag, saved: day.text });
  }
  if (known && (known.etag === day.etag || known.changed())) {
    return known; // another program's text is noticed when this one is saved
  }
  const book = Object.assign(open_book(desk, day), { draft: day.draft ?? null });
  books.set(number, book);
  if (typeof day.draft === "string" && day.draft !== day.text) {
    await offer_draft(book, day.draft);
  }
  return book;
}

function pane_switches(panes) {
  const show = () => {
    for (const [name, { node }] of Object.entries(panes)) { node.hidden = !last.panes.has(name); }
    switches.forEach((one) => { one.ariaPressed = String(last.panes.has(one.value)); });
  };
  const switches = Object.keys(panes).map((name) => {
    const one = button(say(`day.pane.${name}`), () => {
      // Where it is narrow one stands alone: what would stand below it is too far away to be seen.
      if (narrow.matches) { last.panes.clear(); }
      if (last.panes.has(name)) { last.panes.delete(name); } else { last.panes.add(name); }
      show();
    }, "plain", { value: name });
    return one;
  });
  show();
  return el("div", { class: "switches", role: "group", ariaLabel: say("day.panes") }, switches);
}

function undo_buttons(book) {
  const undo = button(say("day.undo"), book.undo);
  const redo = button(say("day.redo"), book.redo);
  const able = () => {
    const can = book.can();
    undo.disabled = !can.undo;
    redo.disabled = !can.redo;
  };
  book.listen("text", able);
  able();
  return [undo, redo];
}

/** Ctrl+S saves, Ctrl+Z goes back over form and text alike; on other keyboards with Command. */
function keys(book, saving) {
  return (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || document.querySelector("dialog[open]")) { return; }
    const does = { s: saving.save_day, z: event.shiftKey ? book.redo : book.undo, y: book.redo }[event.key.toLowerCase()];
    if (does) {
      event.preventDefault();
      does();
    }
  };
}

function name_of(main, book) {
  const heading = main.querySelector("h1");
  return (answer) => {
    const made = answer.form?.day?.made;
    const words = [say("page.day"), typeof made === "string" ? date(made) : book.name].join(" · ");
    if (heading.textContent !== words) { heading.textContent = words; }
  };
}

/** The cautions that hold for the day as a whole. */
function day_cautions(answer) {
  return [...new Set((answer.cautions ?? []).map(({ text }) => text))];
}

const caution = (text) => el("li", { class: "caution" }, el("span", { class: "mark" }, say("page.caution")), " ", text);

async function show_day(main, desk, number) {
  const book = await book_of(main, desk, number);
  if (book === null || !main.isConnected) { return null; } // left while it was asked for: another view listens to the book by now
  book.hush();
  last.number = number;
  const saving = make_saving(book, desk);
  const form = day_form(book);
  const text = text_pane(book, (key) => form.reveal(key));
  const preview = preview_pane(book, desk);
  const cautions = el("ul", { class: "messages" });
  const show_cautions = renewed(cautions, (texts) => texts.map(caution));
  const form_pane = { node: el("section", { class: "pane form-pane" }, el("h2", {}, say("day.form")), form.node, cautions) };
  form.node.addEventListener("focusin", ({ target }) => {
    const dish = [...form.node.querySelectorAll(".dish-form")].findIndex((one) => one.contains(target));
    if (dish >= 0) { preview.near(dish + 1); }
  });
  const named = name_of(main, book);
  book.listen("checked", (answer, current) => {
    if (current) { form.update(answer); } else { form.mark(answer); }
    named(answer);
    show_cautions(day_cautions(answer));
  });
  const panes = { form: form_pane, text, prints: preview };
  const bar = el("div", { class: "row day-bar" }, pane_switches(panes), undo_buttons(book),
    saving.save, saving.state, el("a", { class: "end", href: `#/print/${number}` }, say("day.print_it")), el("a", { href: "#/day/all" }, say("day.all")));
  main.append(bar, el("div", { class: "panes" }, Object.values(panes).map(({ node }) => node)));
  const pressed = keys(book, saving);
  addEventListener("keydown", pressed);
  book.check_now();
  return async () => {
    removeEventListener("keydown", pressed);
    await saving.close();
    book.hush();
    preview.close();
  };
}

/** Of a day that was taken away nothing is left to be undone. */
function forget(number) {
  books.delete(number);
  if (last.number === number) { last.number = null; }
}

export async function show(main, desk) {
  const [asked] = desk.where;
  const number = asked === undefined ? last.number : /^\d+$/.test(asked) ? Number(asked) : null;
  return number === null ? show_days(main, desk, forget) : show_day(main, desk, number);
}
