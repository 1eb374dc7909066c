// Bags as a list: by dish, the soonest date first, each to be chosen, noted and looked at.

import { button, count, el, fresh_id, say, tick } from "./ui.js";
import { allergens, dish_name, is_gone, keep_until, keyed, left_mark, weight } from "./said.js";
import { settle } from "./kept.js";
import { history, note } from "./notes.js";

/** What bags have in common that stand below one heading. */
function dish_key(bag) {
  return JSON.stringify([bag.dish, bag.raw, bag.contains, bag.may_contain, bag.added, bag.named ?? null]);
}

/** Bags that are of one dish, in the order in which each dish comes first. */
export function by_dish(bags) {
  const groups = new Map();
  for (const bag of bags) {
    const key = dish_key(bag);
    groups.set(key, [...(groups.get(key) ?? []), bag]);
  }
  return [...groups.values()];
}

/** "3 bags · 18 servings · 6.6 kg" of those that are inside. */
export function totals(bags) {
  const inside = bags.filter((bag) => !is_gone(bag));
  const servings = inside.reduce((sum, bag) => sum + bag.servings, 0);
  const grams = inside.reduce((sum, bag) => sum + (bag.grams ?? 0), 0);
  const key = inside.every((bag) => bag.grams !== null) ? "freezer.weighs" : "freezer.weighs_at_least";
  const parts = [count("freezer.bags", inside.length), count("freezer.servings", servings)];
  return [...parts, ...(grams > 0 ? [say(key, weight(grams))] : [])].join(" · ");
}

/** "milk: contains milk": why it is not for the guest. */
function why_not(bag) {
  const words = ({ word, where, as }) => say("freezer.named_as", word, say(`freezer.in_${keyed(where)}`), as);
  return bag.named.map(words).join("; ");
}

const double_click = 700; // ms in which the second press of a slow one comes
const stillness = 8; // px that a hand moves between the two

/** Whether it is the second press of a double click: the next bag has moved under the pointer meanwhile. */
function is_second({ pressed }, { detail, clientX, clientY }) {
  return detail > 0 && pressed !== null && performance.now() - pressed.at < double_click &&
    Math.hypot(clientX - pressed.x, clientY - pressed.y) < stillness;
}

/** Takes it out, or puts it back where it is out, by one press. */
function quick_button(list, bag) {
  const state = is_gone(bag) ? "frozen" : "out";
  const words = say(`freezer.do_${state}`);
  return button(words, async (event) => {
    if (is_second(list, event)) {
      return;
    }
    await note(list.desk, [bag], { state }, list.changed);
    list.pressed = { at: performance.now(), x: event.clientX, y: event.clientY };
  }, "plain", { "aria-label": say("freezer.do_named", words, bag.dish, bag.id) });
}

function choice_of(list, bag) {
  const box = tick(bag.id, {
    checked: list.chosen.has(bag.id), onchange: (event) => list.choose([bag], event.target.checked),
  });
  list.boxes.set(bag.id, box.querySelector("input"));
  return box;
}

function row(list, bag) {
  const state = is_gone(bag) ? el("strong", {}, say(`freezer.is_${keyed(bag.state)}`)) : null;
  const open = { class: "go", href: `#/bag/${bag.id}`, "aria-label": say("freezer.open_named", bag.dish, bag.id) };
  return el("li", { class: "bag-row" },
    el("div", { class: "what" }, choice_of(list, bag), state, el("span", {}, keep_until(bag)), left_mark(bag),
      el("span", {}, count("freezer.serves", bag.servings)), bag.place ? el("span", {}, bag.place) : null),
    el("div", { class: "acts" }, quick_button(list, bag), el("a", open, say("freezer.open"))),
    history(list.desk, bag));
}

function choice_of_all(list, bags) {
  return tick(say("freezer.all_bags", bags.length), {
    "aria-label": say("freezer.all_named", bags.length, bags[0].dish),
    onchange: (event) => list.choose(bags, event.target.checked),
  });
}

function dish_group(list, bags) {
  const [bag] = bags;
  const key = dish_key(bag);
  const kept = (what, shown, make) => list.kept.node(`${what} ${key}`, shown, make);
  const heading = kept("heading", null, () => el("h3", { id: fresh_id("dish") }, dish_name(bag)));
  const all = kept("all", bags.map(({ id }) => id), () => choice_of_all(list, bags));
  return settle(kept("dish", null, () => el("section", { class: "of-dish", "aria-labelledby": heading.id })), [
    settle(kept("head", null, () => el("div", { class: "head" })), [heading, bags.length > 1 ? all : null]),
    bag.named?.length > 0 ? kept("named", null, () => el("p", {}, el("strong", {}, why_not(bag)))) : null,
    kept("totals", totals(bags), () => el("p", { class: "soft" }, totals(bags), el("br"), allergens(bag))),
    settle(kept("bags", null, () => el("ul", { class: "bags" })), bags.map((one) =>
      list.kept.node(`bag ${one.id}`, one, () => row(list, one)))),
  ]);
}

/** Bags under a title, by dish. `list`: {desk, chosen, boxes, pressed, kept (kept.js), choose(bags, chosen), changed()}. */
export function part(list, title, bags) {
  const kept = (what, make) => list.kept.node(`${what} ${title}`, null, make);
  return settle(kept("part", () => el("section", { class: "part" })), [kept("title", () => el("h2", {}, title)),
    bags.length === 0 ? kept("none", () => el("p", {}, say("freezer.none")))
      : by_dish(bags).map((group) => dish_group(list, group))]);
}

/** What a guest may not eat, what nobody knows, and what no label names it on: never more than that. */
export function parts_without(list, bags, avoided) {
  const named = bags.filter((bag) => bag.named?.length > 0);
  const unknown = bags.filter((bag) => !bag.named?.length && bag.contains === null);
  const unnamed = bags.filter((bag) => !bag.named?.length && bag.contains !== null);
  return [
    list.kept.node("standing", null, () => el("p", { class: "standing" }, say("freezer.no_promise"))),
    part(list, say("freezer.is_named", avoided), named),
    ...(unknown.length > 0 ? [part(list, say("freezer.is_unknown"), unknown)] : []),
    part(list, say("freezer.is_unnamed", avoided), unnamed),
  ];
}
