// What others have changed of what is shown here, in words.

import { by_dish } from "./bag_list.js";
import { count, say } from "./ui.js";

/** "Bean bake (2 bags), Leek soup (1 bag)" */
function named(bags) {
  return by_dish(bags).map((group) => `${group[0].dish} (${count("freezer.bags", group.length)})`).join(", ");
}

function missing(some, others) {
  const there = new Set(others.map((bag) => bag.id));
  return some.filter((bag) => !there.has(bag.id));
}

/** Which bags have gone from a list, and which have come; "" where none has. */
export function news_of(before, after) {
  return [["freezer.gone_meanwhile", missing(before, after)], ["freezer.come_meanwhile", missing(after, before)]]
    .filter(([, bags]) => bags.length > 0).map(([key, bags]) => say(key, named(bags))).join(" ");
}
