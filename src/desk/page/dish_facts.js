// What the program worked out about a dish: its date, its thawing, its cautions.

import { faults_in_short } from "./faults.js";
import { count, date, el, say } from "./ui.js";

/** "38 h", "55 min", "1 h 30 min": the same in every language. */
export function duration(minutes) {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [hours > 0 ? `${hours} h` : "", rest > 0 || hours === 0 ? `${rest} min` : ""].filter(Boolean).join(" ");
}

function once(list, key) {
  return [...new Map(list.map((one) => [key(one), one])).values()];
}

function thaw_line({ thaw, look_from_minutes, thaw_minutes }) {
  if (!thaw_minutes) {
    return null;
  }
  return say("day.thaws", say(`day.choice.${thaw}`), duration(look_from_minutes ?? thaw_minutes), duration(thaw_minutes));
}

function size_line(one, several) {
  const words = [say(`day.basis.${one.basis}`, date(one.keep_until)), thaw_line(one)].filter(Boolean).join(" · ");
  return el("p", { class: "fact" },
    one.raw ? [el("strong", { class: "mark" }, say("day.raw")), " "] : null,
    several ? say("day.for_size", one.servings, words) : words);
}

/** The facts and cautions of a dish's sizes, to stand above its fields. */
export function facts_of(sizes) {
  const cautions = once(sizes.flatMap(({ cautions = [] }) => cautions), ({ text }) => text);
  const list = el("ul", { class: "cautions" }, cautions.map(({ text }) => el("li", {}, text)));
  return [
    ...sizes.map((one) => size_line(one, sizes.length > 1)),
    cautions.length > 0 ? el("details", { class: "cautions", open: true }, el("summary", {}, count("day.cautions", cautions.length)), list) : null,
  ].filter(Boolean);
}

/** A closed dish in few words: how many bags, its date, how many faults and cautions. */
export function dish_in_short(sizes, messages, base) {
  const mine = (messages ?? []).filter(({ key }) => key === base || key?.startsWith(`${base}.`));
  const bags = sizes.reduce((sum, { bags: ids }) => sum + (ids?.length ?? 0), 0);
  return [
    faults_in_short(mine),
    bags > 0 ? count("day.bags", bags) : null,
    sizes[0]?.keep_until ? date(sizes[0].keep_until) : null,
  ].filter(Boolean).join(" · ");
}
