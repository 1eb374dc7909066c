// Which fields a day has: a table for the form. Their words stand in words/*.toml: [day.field] by id, with
// [day.help] and [day.example] where there are any. README.md, "A day", says what each takes.
//
// A field: [key, kind, options]. Kinds are those of controls.js; a field's id is its path without numbers, "_" for ".".

import { say } from "./ui.js";

const sizes = ["weight", "thickness", "container"].map((key) => [key, "text"]);
const placing = ["placing", "choice", { of: ["rack", "tray", "stacked"] }];
const moments = { offers: "moments" };

/** Of the day itself. */
export const day_fields = [
  ["made", "date"], ["kitchen", "text"], ["place", "text"], ["freezer", "text"], ["prepared", "text"],
];

/** Of a dish: parts, each a few fields; `table` or `list` names the table they stand in; `folded` ones are seldom used. */
export const dish_parts = [
  { part: "bag", fields: [
    ["dish", "text", { wide: true, large: true }], ["servings", "number"], ["bags", "number"],
    ["food", "several", { offers: "foods", single: true, wide: true }], ["use_by", "date"]] },
  { part: "frozen", fields: [["weight", "text"], ["thickness", "text"], placing] },
  { part: "allergens", fields: [
    ["contains", "several", { offers: "allergens" }], ["may_contain", "several", { offers: "allergens" }]] },
  { part: "thaw", table: "thaw", fields: [
    ["method", "ticks", { of: ["refrigerator", "cold water", "running water", "microwave", "from frozen"], single: true, wide: true }],
    ["note", "text", { wide: true }]] },
  { part: "finish", list: "finish", fresh: () => ({ add: "", when: moments_of_cooking()[0] }), fields: [
    ["add", "text"], ["when", "text", moments], ["bag", "text"]] },
  { part: "cook", table: "cook", fields: [
    ["in", "text"], ["setting", "text"], ["time", "text"], ["until", "text"], ["hold", "text"],
    ["time_from", "choice", { of: ["thawed", "frozen"] }], ["steps", "lines", { wide: true }],
    ["because", "text", { wide: true }]] },
  { part: "size", folded: true, list: "size", fresh: () => ({ servings: 2, bags: 1 }), fields: [
    ["servings", "number"], ["bags", "number"], ...sizes, placing, ["place", "text"]] },
  { part: "side", folded: true, list: "side", fresh: () => ({ add: "", takes: "15 min" }), fields: [
    ["add", "text"], ["takes", "text"], ["in", "text"], ["ready", "text", moments], ["steps", "lines", { wide: true }]] },
  { part: "ingredient", folded: true, list: "ingredient", fresh: () => ({ add: "" }), fields: [
    ["add", "text"], ["for", "choice", { of: ["day before", "packing day", "cook day"] }]] },
  { part: "rest", folded: true, fields: [
    ["made", "date"], ["days_refrigerated", "number"], ["container", "text"], ["place", "text"],
    ["station", "text"], ["note", "text", { wide: true }]] },
];

/** What a new dish begins with. */
export const fresh_dish = { dish: "", servings: 4, bags: 1 };

/** Moments at which something is added, in the page's words, which a day's text may have. */
export function moments_of_cooking() {
  return ["start", "after", "halfway", "last", "serving"].map((moment) => say(`day.moment.${moment}`));
}

/** "package_thaw_method" of "package[2].thaw.method". */
export function id_of(path) {
  return path.replace(/\[\d+\]/g, "").replaceAll(".", "_");
}
