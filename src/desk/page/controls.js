// How a field's value is entered: one function per kind, each gives
//   { node, focus, read(), write(value) }
// `read` gives the value as an edit takes it (null: no such key; undefined: not ready yet), `write` shows one.
// `changed` is called when the cook has changed it.

import { button, el, fresh_id, in_this_century, maybe, say, years } from "./ui.js";

const shown = (value) => (value === null || value === undefined || typeof value === "object" ? "" : String(value));
const list_of = (value) => (Array.isArray(value) ? value.filter((one) => one !== null).map(String) : shown(value) ? [shown(value)] : []);
// A tab or the like comes along with what is pasted from elsewhere; nobody can see it, and none can be printed.
const without_controls = (words) => words.replace(/[\u0000-\u001F\u007F]+/g, " ");
const or_null = (value) => (value === "" ? null : value);

function typed({ label, example, changed, options, type = "text", ...more }) {
  const id = fresh_id("field");
  const input = el("input", {
    id, type, placeholder: example ?? "", autocomplete: "off", class: options.large ? "dish" : null,
    list: options.offers ? `offered-${options.offers}` : null, oninput: changed, ...more,
  });
  return { input, node: [el("label", { htmlFor: id }, label), input], focus: () => input.focus() };
}

function text(given) {
  const made = typed(given);
  const read = () => or_null(without_controls(made.input.value));
  return { ...made, read, write: (value) => { made.input.value = shown(value); } };
}

function number(given) {
  const made = typed({ ...given, inputMode: "numeric" });
  const read = () => {
    const written = made.input.value.trim();
    return /^\d{1,9}$/.test(written) ? Number(written) : or_null(written);
  };
  return { ...made, read, write: (value) => { made.input.value = shown(value); } };
}

function date(given) {
  const made = typed({ ...given, type: "date", ...years });
  // While a date is typed it has no value, or one of a year like 0002: that is nothing to write down yet.
  const read = () => {
    const { value, validity, ownerDocument } = made.input;
    const is_typed = ownerDocument.activeElement === made.input;
    if (value === "") {
      return validity.badInput || is_typed ? undefined : null;
    }
    return value < "1990" && is_typed ? undefined : { date: value };
  };
  made.input.addEventListener("blur", () => {
    made.input.value = in_this_century(made.input.value);
    given.changed();
  });
  return { ...made, read, write: (value) => { made.input.value = shown(value); } };
}

function lines(given) {
  const id = fresh_id("field");
  const input = el("textarea", { id, rows: 3, placeholder: given.example ?? "", oninput: given.changed });
  const read = () => {
    const all = input.value.split("\n").map((line) => without_controls(line).trim()).filter((line) => line !== "");
    return all.length > 0 ? all : null;
  };
  const write = (value) => {
    input.value = list_of(value).join("\n");
    input.rows = Math.max(3, list_of(value).length + 1);
  };
  return { input, node: [el("label", { htmlFor: id }, given.label), input], focus: () => input.focus(), read, write };
}

function choice({ label, changed, options }) {
  const id = fresh_id("field");
  const pairs = [["", say("day.as_usual")], ...options.of.map((value) => [value, maybe(`day.choice.${value}`) ?? value])];
  const input = el("select", { id, onchange: changed }, pairs.map(([value, words]) => el("option", { value }, words)));
  // What a list does not have is shown all the same: the text says it.
  const write = (value) => {
    const wanted = shown(value);
    if (![...input.options].some((option) => option.value === wanted)) {
      input.append(el("option", { value: wanted }, wanted));
    }
    input.value = wanted;
  };
  return { input, node: [el("label", { htmlFor: id }, label), input], focus: () => input.focus(), read: () => or_null(input.value), write };
}

function packed_list(all, options) {
  return all.length === 0 ? null : all.length === 1 && options.single ? all[0] : all;
}

function ticks({ label, changed, options }) {
  const chosen = [];
  const boxes = options.of.map((value) => el("input", { type: "checkbox", value, onchange: ({ target }) => {
    const at = chosen.indexOf(value);
    if (target.checked) { chosen.push(value); } else if (at >= 0) { chosen.splice(at, 1); }
    number_them();
    changed();
  } }));
  const places = boxes.map(() => el("span", { class: "soft" }));
  function number_them() {
    boxes.forEach((box, at) => {
      const place = chosen.indexOf(box.value);
      box.checked = place >= 0;
      places[at].textContent = place >= 0 && chosen.length > 1 ? say("day.place_in_order", place + 1) : "";
    });
  }
  const node = el("fieldset", { class: "choices" }, el("legend", {}, label), boxes.map((box, at) =>
    el("label", { class: "tick" }, box, el("span", {}, maybe(`day.choice.${box.value}`) ?? box.value, " ", places[at]))));
  const write = (value) => {
    chosen.splice(0, chosen.length, ...list_of(value));
    number_them();
  };
  return { input: node, node, focus: () => boxes[0].focus(), read: () => packed_list([...chosen], options), write };
}

function several(given) {
  const { options, changed } = given;
  const { names } = options;
  const made = typed({ ...given, onchange: take });
  const chosen = [];
  const list = el("ul", { class: "picked" });
  const name_of = (value) => names.get(value) ?? value;
  function draw() {
    list.replaceChildren(...chosen.map((value) => el("li", {}, name_of(value), " ", button(say("day.remove"), () => {
      chosen.splice(chosen.indexOf(value), 1);
      draw();
      made.input.focus();
      changed();
    }, "quiet small", { ariaLabel: say("day.remove_this", name_of(value)) }))));
    list.hidden = chosen.length === 0;
  }
  /** What is chosen, and what stands in the box: it counts before it is taken over, as in any field. */
  function all() {
    const words = without_controls(made.input.value).trim();
    const value = [...names].find(([, name]) => name.toLowerCase() === words.toLowerCase())?.[0] ?? words;
    return value === "" || chosen.includes(value) ? [...chosen] : [...chosen, value];
  }
  function take() {
    write(all());
    changed();
  }
  made.input.addEventListener("keydown", (event) => {
    if (event.key === "Enter") { event.preventDefault(); take(); }
  });
  function write(value) {
    chosen.splice(0, chosen.length, ...list_of(value));
    made.input.value = "";
    draw();
  }
  draw();
  return { ...made, node: [made.node[0], list, made.input], read: () => packed_list(all(), options), write };
}

/** By the names of the kinds in fields.js. */
export const kinds = { text, number, date, lines, choice, ticks, several };
