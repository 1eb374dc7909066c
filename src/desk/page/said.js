// How a bag's dates, states and figures are said, in the words and order that the prints have.

import { count, date, el, locale, say } from "./ui.js";

/** "Thu 3 Dec 2026, 18:30" of a moment on the kitchen's clock. */
export function moment(iso) {
  const [day, time] = iso.split("T");
  const said = `${date(day, { weekday: "short" }).replace(".", "")} ${date(day)}`;
  return time ? `${said}, ${time.slice(0, 5)}` : said;
}

/** "46 h", "2 h 30 min". */
export function duration(minutes) {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) {
    return say("bag.minutes", rest);
  }
  return rest === 0 ? say("bag.hours", hours) : say("bag.hours_minutes", hours, rest);
}

/** "best by 17 Dec 2026", or "use by" where the cook has set the date. */
export function keep_until(bag) {
  return say(bag.basis === "use by" ? "bag.use_by" : "bag.best_by", date(bag.keep_until));
}

/** How many days are left; a date that is past is said in words, and whose rules come first. */
export function days_left(bag) {
  if (bag.days_left > 0) {
    return count("bag.left", bag.days_left);
  }
  return bag.days_left === 0 ? say("bag.last_day") : count("bag.past", -bag.days_left);
}

/** The same as an element: what is past stands out by weight and words. */
export function left_mark(bag) {
  return el(bag.days_left < 0 ? "strong" : "span", { class: bag.days_left < 0 ? "past" : "left" }, days_left(bag));
}

/** "2.2 kg", or "40 g" of less than one, in the language's own figures. */
export function weight(grams) {
  if (Math.round(grams) < 1000) {
    return say("bag.grams", Math.round(grams));
  }
  const kilos = grams / 1000;
  return say("bag.kilos", kilos.toLocaleString(locale(), { minimumFractionDigits: 1, maximumFractionDigits: 1 }));
}

/** A dish as it is named everywhere: what is raw says so before its name. */
export function dish_name({ raw, dish }) {
  return raw ? [el("strong", { class: "raw" }, say("bag.raw")), " ", dish] : [dish];
}

/** The key of a state, of a way to thaw or of a print in the tables of words: "never filled" → "never_filled". */
export function keyed(word) {
  return word.replaceAll(/[ -]/g, "_");
}

/** Whether a bag's state is one that it may be taken back from. */
export function is_gone(bag) {
  return bag.state !== undefined && bag.state !== "frozen";
}

/** "contains celery; added on cook day: milk", or that no label names any, or that it is not known. */
export function allergens(bag) {
  if (bag.contains === null) {
    return say("freezer.contents_unknown");
  }
  const parts = [["bag.contains", bag.contains], ["bag.may_contain", bag.may_contain], ["bag.added", bag.added]]
    .filter(([, names]) => names?.length > 0)
    .map(([key, names]) => say(key, names.join(", ")));
  return parts.length > 0 ? parts.join("; ") : say("freezer.none_named");
}
