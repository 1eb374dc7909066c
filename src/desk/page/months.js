// The chart of the freezer's months: how many bags and servings are to be eaten by when.

import { drawn, el, month, say } from "./ui.js";

const longest = 76; // per cent of the width; the figure stands behind
const most_months = 240;

function after(month) {
  const [year, number] = month.split("-").map(Number);
  return number === 12 ? `${year + 1}-01` : `${year}-${String(number + 1).padStart(2, "0")}`;
}

/** The months from the first to the last, those with nothing as well: a gap is to be seen as one. */
export function without_gaps(months) {
  const known = new Map(months.map((one) => [one.month, one]));
  const last = months.at(-1)?.month ?? "";
  const all = [];
  for (let at = months[0]?.month ?? "~"; at <= last && all.length < most_months; at = after(at)) {
    all.push(known.get(at) ?? { month: at, bags: 0, servings: 0 });
  }
  return all;
}

/** Heights are in lines of type, so that the chart grows with it. A month with nothing takes less. */
const height_of = (one) => (one.bags > 0 ? 3.4 : 1.6);

function bar(kind, value, most, top) {
  const length = `${(longest * value) / most}%`;
  return [
    drawn("rect", { class: `bar ${kind}`, x: 1, y: `${top}em`, width: length, height: "0.7em" }),
    drawn("text", { x: length, dx: "0.5em", y: `${top + 0.7}em` }, String(value)),
  ];
}

function row(one, most, top) {
  return [
    drawn("text", { x: 0, y: `${top + 1}em` },
      one.bags > 0 ? month(one.month) : say("freezer.no_bags", month(one.month))),
    one.bags > 0 ? [bar("bags", one.bags, most, top + 1.35), bar("servings", one.servings, most, top + 2.25)] : null,
  ];
}

function picture(months) {
  const most = Math.max(1, ...months.flatMap((one) => [one.bags, one.servings]));
  let top = 0;
  const rows = months.map((one) => {
    const drawn_row = row(one, most, top);
    top += height_of(one);
    return drawn_row;
  });
  const label = say("freezer.months_drawn");
  return drawn("svg", { class: "months", role: "img", height: `${top}em`, "aria-label": label }, rows);
}

function legend() {
  const sample = (kind) => drawn("svg", { class: "sample", "aria-hidden": "true" },
    drawn("rect", { class: `bar ${kind}`, width: "100%", height: "100%" }));
  return el("p", { class: "legend" }, el("span", {}, sample("bags"), " ", say("freezer.bags_head")),
    el("span", {}, sample("servings"), " ", say("freezer.servings_head")));
}

function table(months) {
  const heads = ["month_head", "bags_head", "servings_head"].map((key) =>
    el("th", { scope: "col" }, say(`freezer.${key}`)));
  const rows = months.map((one) => el("tr", {}, el("th", { scope: "row" }, month(one.month)),
    el("td", {}, String(one.bags)), el("td", {}, String(one.servings))));
  return el("details", {}, el("summary", {}, say("freezer.months_table")),
    el("table", { class: "figures" }, el("thead", {}, el("tr", {}, heads)), el("tbody", {}, rows)));
}

/** The chart with its legend, and the same figures as a table. */
export function months_chart(months) {
  const all = without_gaps(months);
  return all.length > 0 ? [legend(), picture(all), table(all)] : [];
}
