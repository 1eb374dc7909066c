// Parts of the form: a field bound to its place in the text, a table's fields, a list of tables.
//
// Each part has { node, update(value), fields() }; a field has path(), fault(messages) and reveal().
// `base()` is the path of the table it stands in, worked out when it is needed: dishes move.

import { kinds } from "./controls.js";
import { is_fault, mark_words, words_of } from "./faults.js";
import { button, el, fresh_id, renewed, say } from "./ui.js";

function plain(value) {
  const one = value?.date ?? value ?? null;
  return JSON.stringify(Array.isArray(one) && one.length === 1 ? one[0] : one);
}

/** Whether an edit's value is what the text has already. */
export function same(edited, stands) {
  return plain(edited) === plain(stands);
}

/** A field in the text's table `base()`. `last(key)` says whether it is the only key of a table that may be without. */
export function make_field(book, [key, kind, options = {}], base, last = () => false) {
  const path = () => `${base()}.${key}`;
  let known = null;
  function changed() {
    const value = control.read();
    if (value !== undefined && !same(value, known)) {
      known = value;
      book.edit([{ path: value === null && last(key) ? base() : path(), value }]);
    }
  }
  const control = kinds[kind]({
    label: words_of("field", path()) ?? key, example: words_of("example", path()), changed,
    options: { ...options, names: book.names[options.offers] ?? new Map() },
  });
  const help = words_of("help", path());
  const helped = help ? el("small", { id: fresh_id("help"), class: "help" }, help) : null;
  const faults = el("div", { id: fresh_id("fault"), class: "fault" });
  const node = el("div", { class: options.wide ? "field wide" : "field" }, control.node, helped, faults);
  const show_faults = renewed(faults, (list) => list.map((message) => said_of(book, message, value_in)));
  control.input.setAttribute("aria-describedby", [helped?.id, faults.id].filter(Boolean).join(" "));
  return {
    node, path,
    update(value) {
      const entered = control.read();
      if (entered !== undefined && !same(entered, value)) {
        control.write(value);
      }
      known = value ?? null;
    },
    fault(list) {
      const wrong = list.some(is_fault);
      control.input.toggleAttribute("data-fault", wrong);
      if (wrong && control.input.tagName !== "FIELDSET") {
        control.input.setAttribute("aria-invalid", "true");
      } else {
        control.input.removeAttribute("aria-invalid");
      }
      show_faults(list);
    },
    reveal() {
      node.closest("details")?.setAttribute("open", "");
      control.focus();
      node.scrollIntoView({ block: "center" });
    },
  };
}

/** A hint shows a line of the text, as weight = "2.2 kg"; a field takes the value alone. */
function value_in(hint) {
  return hint.replace(/\b\w+ = (\S.*)$/, (line, value) => {
    try {
      return [JSON.parse(value)].flat().join(", ");
    } catch {
      return value; // a date has no quotes
    }
  });
}

/** A message at its field, with a button for what was meant. `told` gives the words of a hint as they are shown. */
export function said_of(book, message, told) {
  return el("p", { class: message.severity }, el("span", { class: "mark" }, mark_words(message)), " ",
    message.severity === "missing" && !message.is_zero ? null : message.text, hints_of(book, message, told)); // the field has its name above
}

/** A hint as words, or as a button that writes what was meant. */
export function hints_of(book, message, told = (hint) => hint) {
  return (message.hints ?? []).map((hint) => {
    const meant = /did you mean "(.+)"\?$/.exec(hint)?.[1];
    return meant !== undefined && message.length > 0
      ? button(say("day.take_hint", meant), () => book.take_hint(message, meant), "plain small")
      : el("span", { class: "hint" }, told(hint));
  });
}

function fields_part(book, { part, table, fields }, base) {
  const inner = table ? () => `${base()}.${table}` : base;
  const self = { keys: [] };
  const last = (key) => Boolean(table) && self.keys.every((one) => one === key);
  const made = fields.map((field) => make_field(book, field, inner, last));
  return {
    head: say(`day.part.${part}`), body: el("div", { class: "fields" }, made.map(({ node }) => node)),
    update(value) {
      const values = table ? value?.[table] : value;
      self.keys = Object.keys(values ?? {});
      made.forEach((field, at) => field.update(values?.[fields[at][0]]));
    },
    fields: () => made, used: (value) => fields.filter(([key]) => value?.[key] !== undefined).length,
  };
}

function row_of(book, list, fields, index, gone) {
  const row = { index };
  const base = () => `${list()}[${row.index}]`;
  const made = fields.map((field) => make_field(book, field, base));
  const remove = button(say("day.remove"), () => book.edit([{ path: base(), remove: true }, ...gone(row)]), "quiet small");
  row.node = el("li", { class: "fields" }, made.map(({ node }) => node), el("div", { class: "field end" }, remove));
  row.update = (value) => {
    row.value = value ?? {};
    remove.ariaLabel = say("day.remove_this", value?.add || say("day.row", row.index));
    made.forEach((field, at) => field.update(value?.[fields[at][0]]));
  };
  row.fields = () => made;
  row.focus = () => made[0].reveal();
  return row;
}

function list_part(book, { part, list, fresh, fields }, base) {
  const rows = [];
  const path = () => `${base()}.${list}`;
  const node = el("ol", { class: `rows ${part}` });
  let wanted = 0; // rows that the cook has just asked for: the first field of the last gets the focus
  let beside = {}; // what stands in the table that the list is in
  /** A first size takes what the dish has of the same keys: both together are a mistake. */
  function first_of_all() {
    const own = list === "size" && rows.length === 0 ? fields.map(([key]) => key).filter((key) => beside[key] !== undefined) : [];
    const taken = Object.fromEntries(own.map((key) => [key, beside[key]]));
    return [...own.map((key) => ({ path: `${base()}.${key}`, value: null })), { path: path(), add: { ...fresh(), ...taken } }];
  }
  const add = button(say(`day.add.${part}`), () => { wanted = rows.length + 1; book.edit(first_of_all()); }, "plain small");
  function number() {
    rows.forEach((row, at) => { row.index = at + 1; });
  }
  /** The last size gives back to the dish what it has: else it would be lost. \returns the edits for that */
  function last_of_all({ value }) {
    const own = list === "size" && rows.length === 0 ? fields.map(([key]) => key).filter((key) => (value[key] ?? null) !== null) : [];
    return own.map((key) => ({ path: `${base()}.${key}`, value: value[key] }));
  }
  function gone(row) {
    rows.splice(rows.indexOf(row), 1);
    row.node.remove();
    number();
    add.focus();
    return last_of_all(row);
  }
  function update(value) {
    beside = value ?? {};
    const values = Array.isArray(value?.[list]) ? value[list] : [];
    while (rows.length > values.length) { rows.pop().node.remove(); }
    while (rows.length < values.length) {
      rows.push(row_of(book, path, fields, rows.length + 1, gone));
      node.append(rows.at(-1).node);
    }
    rows.forEach((row, at) => row.update(values[at]));
    if (wanted > 0 && rows.length >= wanted) {
      wanted = 0;
      rows.at(-1).focus();
    }
  }
  return {
    head: say(`day.part.${part}`), body: el("div", {}, node, add), update,
    fields: () => rows.flatMap((row) => row.fields()), used: (value) => value?.[list]?.length ?? 0,
  };
}

/** A part of a dish, open or folded, with its words at the side. */
export function make_part(book, given, base) {
  const part = given.list ? list_part(book, given, base) : fields_part(book, given, base);
  const used = el("span", { class: "soft" });
  const node = given.folded
    ? el("details", { class: "form-part" }, el("summary", {}, part.head, " ", used), part.body)
    : el("div", { class: "form-part", role: "group", ariaLabel: part.head }, el("h4", { ariaHidden: "true" }, part.head), part.body);
  return { node, fields: part.fields, update(value) {
    part.update(value);
    const number = part.used(value);
    used.textContent = number > 0 ? say("day.used", number) : "";
  } };
}
