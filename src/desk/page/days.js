// The list of days, and how a new one begins.

import { ask_cook, button, confirmed, count, date, el, field, in_this_century, say, select, years } from "./ui.js";

/** Takes a day away, with a way back. `after` is called once it is gone or there again. */
async function remove(desk, { number, name }, after) {
  if (!await confirmed(say("day.ask_remove_day", name), say("day.remove"))) { return; }
  try {
    const path = `/api/day/${number}`;
    const { text, etag, draft } = await desk.ask("GET", path);
    const gone = await desk.ask("POST", `${path}/remove`, {}, { headers: { "If-Match": etag } });
    const put_back = async () => {
      try {
        await desk.ask("PUT", path, { text }, { headers: { "If-Match": gone.etag } });
        if (draft !== null) { await desk.ask("PUT", `/api/draft/${number}`, { text: draft, was: null }); }
        desk.tell(null);
        await after(number);
      } catch (failure) {
        desk.tell(failure);
      }
    };
    await after(number);
    desk.tell(say("day.day_removed", name), button(say("day.undo"), put_back));
  } catch (failure) {
    desk.tell(failure);
  }
}

function row(desk, day, after) {
  const name = el("a", { href: `#/day/${day.number}`, class: "dish" }, day.made ? date(day.made) : day.name);
  const notes = [day.draft ? say("day.has_draft") : null, day.readable ? null : say("day.not_readable")].filter(Boolean);
  return el("tr", {},
    el("td", {}, name, el("div", { class: "soft" }, day.name)),
    el("td", {}, (day.dishes ?? []).join(" · "), notes.map((note) => el("div", {}, el("strong", {}, note)))),
    el("td", { class: "figures" }, count("day.bags", day.bags ?? 0)),
    el("td", {}, button(say("day.remove"), () => remove(desk, day, after), "quiet small", { ariaLabel: say("day.remove_this", day.name) })));
}

function table(desk, days, after) {
  const head = (words, props) => el("th", { scope: "col", ...props }, words);
  return el("div", { class: "scroll" }, el("table", { class: "days" },
    el("thead", {}, el("tr", {}, head(say("day.made")), head(say("day.dishes")), head(say("day.bags_head"), { class: "figures" }), el("td"))),
    el("tbody", {}, days.map((day) => row(desk, day, after)))));
}

/** Asks how a new day begins, makes it, and goes there. */
export async function new_day(desk) {
  await desk.refresh_days().catch(desk.tell); // the day may be another by now
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

/** `forget(number)`: the day is another from now on, or none. */
export async function show_days(main, desk, forget) {
  const first = desk.state.set_up ? null
    : el("p", { class: "lead" }, say("setup.first"), " ", el("a", { href: "#/setup", class: "go" }, say("setup.do_it")));
  const list = el("div");
  const show = async () => {
    const days = await desk.refresh_days();
    list.replaceChildren(days.length > 0 ? table(desk, days, changed) : el("p", {}, say("day.none_yet")));
  };
  const changed = (number) => {
    forget(number);
    return show();
  };
  await show();
  main.append(...[first].filter(Boolean), list,
    el("div", { class: "row" }, button(say("day.new"), () => new_day(desk), "main")));
}
