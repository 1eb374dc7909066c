// The list of days, and how a new one begins.

import { ask_cook, button, confirmed, count, date, el, field, in_this_century, say, select, years } from "./ui.js";

function row(day) {
  const name = el("a", { href: `#/day/${day.number}`, class: "dish" }, day.made ? date(day.made) : day.name);
  const notes = [day.draft ? say("day.has_draft") : null, day.readable ? null : say("day.not_readable")].filter(Boolean);
  return el("tr", {},
    el("td", {}, name, el("div", { class: "soft" }, day.name)),
    el("td", {}, (day.dishes ?? []).join(" · "), notes.map((note) => el("div", {}, el("strong", {}, note)))),
    el("td", { class: "figures" }, count("day.bags", day.bags ?? 0)));
}

function table(days) {
  return el("div", { class: "scroll" }, el("table", { class: "days" },
    el("thead", {}, el("tr", {}, el("th", { scope: "col" }, say("day.made")), el("th", { scope: "col" }, say("day.dishes")),
      el("th", { scope: "col", class: "figures" }, say("day.bags_head")))),
    el("tbody", {}, days.map(row))));
}

/** Asks how a new day begins, makes it, and goes there. */
export async function new_day(desk) {
  const { days, today } = desk.state;
  const when = el("input", { type: "date", value: today, required: true, ...years,
    onblur: () => { when.value = in_this_century(when.value); } });
  const pairs = [["blank", say("day.from_blank")], ...days.map(({ number, made, name }) =>
    [String(number), say("day.from_day", made ? date(made) : name)]), ["sample", say("day.from_sample")]];
  const from = select(pairs, "blank");
  const body = [field(say("day.made"), when), field(say("day.begin_with"), from, { help: say("day.begin_help") })];
  if (await ask_cook(say("day.new"), body, [["make", say("day.make"), "main"], [null, say("page.cancel"), "plain"]]) !== "make") {
    return;
  }
  try {
    const begins = /^\d+$/.test(from.value) ? Number(from.value) : from.value;
    const { number } = await desk.ask("POST", "/api/days", { from: begins, made: when.value });
    desk.go(`#/day/${number}`);
  } catch (failure) {
    desk.tell(failure);
  }
}

export async function show_days(main, desk) {
  const days = await desk.refresh_days();
  const first = desk.state.set_up ? null
    : el("p", { class: "lead" }, say("setup.first"), " ", el("a", { href: "#/setup", class: "go" }, say("setup.do_it")));
  main.append(...[first].filter(Boolean),
    days.length > 0 ? table(days) : el("p", {}, say("day.none_yet")),
    el("div", { class: "row" }, button(say("day.new"), () => new_day(desk), "main")));
}
