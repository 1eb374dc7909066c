// A day that is being written: its text, what the program says of it, and what was there before.
//
// The text is the only truth. Whoever changes it says so to the book, which has it checked and says to the others:
//   listen("text", f)     f(text, from): it has changed; `from` is who did it, "typing", "form", "undo"…
//   listen("checked", f)  f(answer, current): what check says; `current` where that is of the text as it is now
//   listen("rest", f)     f(): edits are made, or wait, for the program does not answer

import { with_missing } from "./faults.js";
import { make_history } from "./history.js";

function listeners() {
  const all = new Map();
  return {
    listen(kind, f) {
      all.set(kind, [...(all.get(kind) ?? []), f]);
    },
    hush: () => all.clear(),
    emit: (kind, ...values) => (all.get(kind) ?? []).forEach((f) => f(...values)),
  };
}

/** One check at a time; what changed meanwhile is checked after it, and only the last of it. */
function checker(book, desk, emit) {
  const self = { running: false, again: false };
  return async function check() {
    if (book.editing()) { return; } // it is checked once the last edit is made
    if (self.running) { self.again = true; return; }
    self.running = true;
    const { text, number, what, look } = book;
    try {
      book.answer = with_missing(await desk.ask("POST", "/api/check", { number, text, what, look }));
      emit("checked", book.answer, text === book.text && !book.editing());
    } catch (failure) {
      desk.tell(failure);
    }
    self.running = false;
    if (self.again) { self.again = false; check(); }
  };
}

/**
 * Edits of the form, one after the other: each is made in the text as it is then. What is asked for together is made,
 * and undone, together; of a field that is typed into only the last value waits.
 */
function editor(book, desk, emit) {
  const queue = [];
  const self = { running: false, done: Promise.resolve() };
  const is_value = (edits) => edits.length === 1 && edits[0].value !== undefined;
  function put(edits) {
    const last = queue.at(-1) ?? [];
    if (is_value(last) && is_value(edits) && last[0].path === edits[0].path) { queue.pop(); }
    queue.push(edits);
  }
  async function next() {
    const edits = queue.shift();
    const { text } = book;
    try {
      const answer = await desk.ask("POST", "/api/edit", { text, edits });
      if (text === book.text) {
        book.put(answer.text, is_value(edits) ? `form ${edits[0].path}` : "form");
      } else {
        queue.unshift(edits); // somebody has typed meanwhile: again, in the newer text
      }
    } catch (failure) {
      desk.tell(failure);
      if (failure.is_gone) {
        queue.unshift(edits); // what was typed stays, and waits for the next edit
        return false;
      }
      emit("checked", book.answer, true); // what the form shows was not done
    }
    return true;
  }
  async function run() {
    self.running = true;
    while (queue.length > 0 && await next()) { /* one after the other */ }
    self.running = false;
    emit("rest");
    book.check_now();
  }
  return {
    editing: () => self.running || queue.length > 0,
    settled: () => self.done,
    edit(edits) {
      put(edits);
      if (!self.running) { self.done = run(); }
    },
  };
}

function offset_of(text, line, column) {
  const lines = text.split("\n");
  const before = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  return before + [...(lines[line - 1] ?? "")].slice(0, column - 1).join("").length;
}

/** Where a message stands in a text, in UTF-16 code units: [from, to]. */
export function span_of(text, { line, column, length = 0 }) {
  const from = offset_of(text, line, column);
  const marked = [...text.slice(from).split("\n")[0]].slice(0, length).join("");
  return [from, from + marked.length];
}

export function open_book(desk, day) {
  const { listen, hush, emit } = listeners();
  const { state } = desk;
  const names = (list) => new Map(list.map(({ id, name }) => [id, name]));
  const book = {
    number: day.number, name: day.name, etag: day.etag, saved: day.text, text: day.text, what: "labels", look: {}, answer: null, foods: state.foods ?? [],
    names: { foods: names(state.foods ?? []), allergens: names(state.allergens ?? []) }, listen, hush,
  };
  const history = make_history(day.text);
  const check = checker(book, desk, emit);
  const { edit, editing, settled } = editor(book, desk, emit);
  const move = (text) => {
    if (text !== null) { book.text = text; emit("text", text, "undo"); check(); }
  };
  /** Once what was typed into the form has come to the text: else it would come behind what is taken back. */
  const at_rest = (f) => (editing() ? settled().then(f) : f());
  return Object.assign(book, {
    edit, editing, settled,
    /** A new text. */
    put(text, from) {
      if (text === book.text) { return; }
      book.text = text;
      history.keep(text, from);
      emit("text", text, from);
      check();
    },
    undo: () => at_rest(() => move(history.back())),
    redo: () => at_rest(() => move(history.forward())),
    can: () => history.can(),
    check_now: check,
    show(what) { book.what = what; check(); },
    /** Writes what was meant in place of what a message marks. */
    take_hint(message, meant) {
      const [from, to] = span_of(book.text, message);
      const quote = book.text[from] === '"' || book.text[from] === "'" ? book.text[from] : "";
      book.put(book.text.slice(0, from) + quote + meant + quote + book.text.slice(to), "hint");
    },
    changed: () => book.text !== book.saved,
  });
}
