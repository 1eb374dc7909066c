// The form: a day's fields and its dishes, as true as the text beside it.

import { dish_in_short, facts_of } from "./dish_facts.js";
import { day_fields, dish_parts, fresh_dish, moments_of_cooking } from "./fields.js";
import { make_field, make_part, said_of } from "./parts.js";
import { button, confirmed, count, el, fresh_id, renewed, say } from "./ui.js";

const always = 2; // fields of a day that are never folded

function dish_body(book, base) {
  const parts = dish_parts.map((part) => make_part(book, part, base));
  return {
    node: parts.map(({ node }) => node),
    update: (value) => parts.forEach((part) => part.update(value)),
    fields: () => parts.flatMap((part) => part.fields()),
  };
}

/** One dish: its heading opens and closes it; its fields are made when it is first opened. */
function make_dish(book, list, index, open) {
  const dish = { index, value: {} };
  const base = () => `package[${dish.index}]`;
  const body = el("div", { id: fresh_id("dish"), class: "dish-body", hidden: true });
  const facts = el("div", { class: "facts" });
  const faults = el("div", { class: "fault" });
  const name = el("span", { class: "dish" });
  const sum = el("span", { class: "soft sum" });
  const head = el("button", { type: "button", class: "opens", ariaExpanded: "false", onclick: () => dish.open(body.hidden) }, name, sum);
  head.setAttribute("aria-controls", body.id);
  const show_facts = renewed(facts, facts_of);
  const show_faults = renewed(faults, (list_of) => list_of.map((message) => said_of(book, message)));
  const show_sum = renewed(sum, (words) => words);
  const act = (words, does) => button(say(words), does, "quiet small");
  const tools = el("div", { class: "row tools" },
    act("day.up", () => list.move(dish, -1)), act("day.down", () => list.move(dish, 1)),
    act("day.copy", () => list.copy(dish)), act("day.remove_dish", () => list.remove(dish)));
  let inside = null;
  dish.node = el("section", { class: "dish-form" }, el("h3", {}, head), faults, body);
  dish.fields = () => inside?.fields() ?? [];
  dish.opened = () => !body.hidden;
  dish.open = (opens) => {
    if (opens && !inside) {
      inside = dish_body(book, base);
      body.append(facts, ...inside.node, tools);
      inside.update(dish.value);
    }
    body.hidden = !opens;
    head.ariaExpanded = String(opens);
    if (opens) { list.show_faults(); }
  };
  dish.focus = () => { head.focus(); head.scrollIntoView({ block: "nearest" }); };
  dish.update = (value) => {
    dish.value = value ?? {};
    name.textContent = `${dish.index} ${dish.value.dish || say("day.no_name")}`;
    inside?.update(dish.value);
  };
  dish.say = (answer, rest) => {
    const mine = (answer.packages ?? []).filter(({ number }) => number === dish.index);
    if (dish.opened()) { show_facts(mine); }
    show_faults(rest);
    show_sum(dish_in_short(mine, answer.messages, base()));
  };
  dish.base = base;
  dish.open(open);
  return dish;
}

function dish_list(book, after) {
  const dishes = [];
  const node = el("div", { class: "dishes" });
  const list = { node, dishes, show_faults: () => after() };
  let wanted = 0;
  function order() {
    dishes.forEach((dish, at) => { dish.index = at + 1; dish.update(dish.value); });
    dishes.forEach((dish, at) => { if (node.children[at] !== dish.node) { node.insertBefore(dish.node, node.children[at]); } });
  }
  list.add = () => { wanted = dishes.length + 1; book.edit([{ path: "package", add: fresh_dish }]); };
  list.move = (dish, by) => {
    const to = dish.index - 1 + by;
    if (to < 0 || to >= dishes.length) { return; }
    book.edit([{ path: dish.base(), move: by }]);
    dishes.splice(to, 0, ...dishes.splice(dish.index - 1, 1));
    order();
    dish.focus();
  };
  list.copy = (dish) => {
    book.edit([{ path: dish.base(), copy: true }]);
    const other = make_dish(book, list, dish.index + 1, true);
    other.value = dish.value;
    dishes.splice(dish.index, 0, other);
    order();
    other.focus();
  };
  list.remove = async (dish) => {
    if (!await confirmed(say("day.ask_remove", dish.value.dish || say("day.no_name")), say("day.remove_dish"))) { return; }
    book.edit([{ path: dish.base(), remove: true }]);
    dishes.splice(dish.index - 1, 1);
    dish.node.remove();
    order();
    (dishes[dish.index - 1] ?? dishes.at(-1))?.focus();
  };
  list.update = (values) => {
    while (dishes.length > values.length) { dishes.pop().node.remove(); }
    while (dishes.length < values.length) {
      const fresh = make_dish(book, list, dishes.length + 1, dishes.length === 0 || wanted > dishes.length);
      dishes.push(fresh);
      node.append(fresh.node);
    }
    dishes.forEach((dish, at) => dish.update(values[at]));
    if (wanted > 0 && dishes.length >= wanted) {
      wanted = 0;
      dishes.at(-1).fields()[0]?.reveal();
    }
  };
  return list;
}

function offered(id, pairs) {
  return el("datalist", { id: `offered-${id}` }, pairs.map(([value, name]) => el("option", { value: name ?? value })));
}

/** Kinds of food by their names, and everyday words for them, which the program understands as they are. */
function food_words({ names, foods }) {
  const words = new Set(foods.flatMap(({ words: of }) => of ?? []));
  return [...names.foods, ...[...words].filter((word) => !names.foods.has(word)).map((word) => [word])];
}

/** The message's field: the deepest that is a beginning of its key. */
function field_of(fields, key) {
  for (let path = key ?? ""; path !== ""; path = path.replace(/(\[\d+\]|\.?[^.[\]]+)$/, "")) {
    if (fields.has(path)) { return fields.get(path); }
  }
  return null;
}

/** The form of a book. `update(answer)` shows what a check has said; `reveal(key)` goes to a field. */
export function day_form(book) {
  const fields = day_fields.map((field) => make_field(book, field, () => "day"));
  const general = el("div", { class: "fault" });
  const show_general = renewed(general, (rest) => rest.map((message) => said_of(book, message)));
  let answer = { messages: [], packages: [] };
  const list = dish_list(book, show_faults);
  const all = () => [...fields, ...list.dishes.flatMap((dish) => dish.fields())];
  const by_path = () => new Map(all().map((field) => [field.path(), field]));
  function show_faults() {
    const placed = by_path();
    const of_field = new Map();
    const of_dish = new Map();
    const rest = [];
    for (const message of answer.messages ?? []) {
      const field = field_of(placed, message.key);
      const dish = /^package\[(\d+)\]/.exec(message.key ?? "")?.[1];
      const [map, at] = field ? [of_field, field] : [of_dish, Number(dish)];
      if (field || dish) { map.set(at, [...(map.get(at) ?? []), message]); } else { rest.push(message); }
    }
    placed.forEach((field) => field.fault(of_field.get(field) ?? []));
    list.dishes.forEach((dish) => dish.say(answer, of_dish.get(dish.index) ?? []));
    show_general(rest);
  }
  const summary = el("p", { class: "soft" });
  const unread = el("p", { hidden: true, role: "status" }, el("strong", {}, say("day.unread")));
  const inside = el("div", { class: "form" },
    offered("foods", food_words(book)), offered("allergens", [...book.names.allergens]),
    offered("moments", moments_of_cooking().map((moment) => [moment])),
    general, el("div", { class: "fields" }, fields.slice(0, always).map(({ node }) => node)),
    el("details", { class: "form-part" }, el("summary", {}, say("day.more_of_day")), el("div", { class: "fields" }, fields.slice(always).map(({ node }) => node))),
    el("h2", {}, say("day.dishes")), summary, list.node, button(say("day.add_dish"), list.add, "main"));
  const node = el("div", {}, unread, inside);
  return {
    node,
    update(next) {
      answer = next;
      // Of a text that cannot be read at all nothing is known: what stands in the form stays, and waits.
      const lost = !next.form;
      unread.hidden = !lost;
      inside.inert = lost;
      if (lost) { show_faults(); return; }
      fields.forEach((field, at) => field.update(next.form.day?.[day_fields[at][0]]));
      const values = Array.isArray(next.form.package) ? next.form.package : [];
      list.update(values);
      summary.textContent = count("day.dishes_of_day", values.length);
      show_faults();
    },
    mark(next) { answer = next; show_faults(); },
    reveal(key) {
      const dish = list.dishes[Number(/^package\[(\d+)\]/.exec(key)?.[1]) - 1];
      dish?.open(true);
      const field = field_of(by_path(), key);
      if (field) { field.reveal(); } else { dish?.focus(); }
    },
  };
}
