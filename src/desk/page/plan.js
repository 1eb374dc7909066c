// When to start what, so that bags are on the table at a time: a drawing to scale, the same in words, the core's
// temperature, and a file for the calendar.

import { button, el, field, messages, release, say } from "./ui.js";
import { core_curve } from "./core.js";
import { save_file } from "./deliver.js";
import { dish_name, moment } from "./said.js";
import { turns } from "./turns.js";

const usual_dinner = "18:30";
const minutes_a_day = 1440;
const lane_width = 360; // in pixels, of a dish in the drawing

/** A moment by which most bags can be thawed: the day after their time to thaw, at the usual dinner. */
export function usual_time(today, bags) {
  const longest = Math.max(0, ...bags.map((bag) => bag.thaw_minutes ?? 0));
  const day = new Date(`${today}T00:00Z`);
  day.setUTCDate(day.getUTCDate() + 1 + Math.ceil(longest / minutes_a_day));
  return `${day.toISOString().slice(0, 10)}T${usual_dinner}`;
}

/** Remarks as messages are; the dish stands before what is said of it. */
function remark_messages(remarks, names_dish) {
  const kind = (severity) => (severity === "cannot be done" ? { severity: "error", mark: "plan.cannot_be_done" } : { severity });
  return messages(remarks.map(({ severity, dish, text }) => (
    { ...kind(severity), text: names_dish && dish ? say("plan.of_dish", dish, text) : text, hints: [] })));
}

/** What is to be minded at an event stands beside it; the rest before all. */
function split(remarks) {
  const at = new Map();
  const before = [];
  for (const remark of remarks) {
    for (const event of remark.events ?? []) {
      at.set(event, [...(at.get(event) ?? []), remark]);
    }
    if (!(remark.events?.length > 0)) {
      before.push(remark);
    }
  }
  return { at, before };
}

function event_row(event, remarks) {
  const unsaid = remarks.filter(({ text }) => !event.text.includes(text));
  return el("tr", {}, el("th", { scope: "row" }, el("time", { dateTime: event.at }, moment(event.at))),
    el("td", {}, el("strong", {}, say(`plan.step_${event.what}`)), " ", event.text,
      unsaid.length > 0 ? remark_messages(unsaid, false) : null));
}

function events_table({ events }, remarks) {
  const head = (key) => el("th", { scope: "col" }, say(key));
  return el("table", { class: "events" }, el("caption", {}, say("plan.in_words")),
    el("thead", {}, el("tr", {}, head("plan.when"), head("plan.what"))),
    el("tbody", {}, events.map((event, at) => event_row(event, remarks.get(at) ?? []))));
}

function ways(list) {
  const way = (one) => el("li", {}, el("p", {}, el("strong", {}, dish_name(one)), ": ", one.text),
    one.cautions.length > 0 ? messages(one.cautions.map((text) => ({ severity: "caution", text, hints: [] }))) : null);
  return list.length > 0 ? [el("h3", {}, say("plan.ways")), el("ul", { class: "ways" }, list.map(way))] : [];
}

/** The program's own drawing, a picture for each sheet; its words are the table's. */
function pictures(kept, pages) {
  return pages.map((page, number) => {
    const address = URL.createObjectURL(new Blob([page], { type: "image/svg+xml" }));
    kept.push(address);
    const alt = pages.length > 1 ? say("plan.drawing_of", number + 1, pages.length) : say("plan.drawing");
    return el("img", { class: "sheet timeline", src: address, alt });
  });
}

function curves(core) {
  return core.length > 0 ? [el("h3", {}, say("plan.core")), ...core.map(core_curve)] : [];
}

function calendar_button({ calendar, eat }) {
  const save = () => save_file(new Blob([calendar], { type: "text/calendar" }), `thawslip-${eat.slice(0, 10)}.ics`);
  return calendar ? el("p", {}, button(say("plan.calendar"), save)) : null;
}

/** What is said of a dish, with whether it is raw. */
function with_raw(list, dishes) {
  const raw = new Map(dishes.map((one) => [one.dish, one.raw]));
  return (list ?? []).map((one) => ({ ...one, raw: raw.get(one.dish) ?? false }));
}

function answer_parts(kept, answer) {
  const { at, before } = split(answer.remarks);
  return [
    el("h3", {}, say("plan.for", moment(answer.eat))),
    answer.possible ? null : el("p", {}, el("strong", {}, say("plan.not_possible"))),
    before.length > 0 ? remark_messages(before, true) : null,
    ...ways(with_raw(answer.ways, answer.dishes)),
    answer.events.length > 0 ? events_table(answer, at) : null,
    calendar_button(answer),
    el("div", { class: "drawings" }, el("div", {}, pictures(kept, answer.svg)),
      el("div", {}, curves(with_raw(answer.core, answer.dishes)))),
    el("p", { class: "standing" }, say("plan.local_rules")),
  ].filter(Boolean);
}

/** How many dishes the page has room for side by side. */
function dishes_beside() {
  const all = document.documentElement.clientWidth;
  const drawing = all >= 1024 ? all * 0.6 : all; // the core's course stands beside it there
  return Math.min(3, Math.max(1, Math.floor(drawing / lane_width)));
}

/** A form for the time to eat, and the plan below it.
 *  \param question {bags} or {texts}, as the program takes them
 *  \returns {box, ask(eat), leave} */
export function planner(desk, { question, bags, eat }) {
  const value = eat ?? usual_time(desk.state.today, bags);
  const time = el("input", { type: "datetime-local", required: true, value });
  const result = el("div", { class: "plan", tabIndex: -1 });
  const kept = [];
  const questions = turns();
  const leave = () => {
    kept.splice(0).forEach(release);
    return questions.begin();
  };
  const ask = async () => {
    const is_last = questions.begin();
    try {
      const answer = await desk.ask("POST", "/api/plan", { ...question, eat: time.value,
        beside: dishes_beside() });
      if (!is_last()) { return; }
      kept.splice(0).forEach(release);
      desk.tell(answer.messages);
      result.replaceChildren(...answer_parts(kept, answer));
      result.focus();
    } catch (failure) {
      if (!is_last()) { return; }
      result.replaceChildren();
      desk.tell(failure);
    }
  };
  const form = el("form", { class: "row", onsubmit: (event) => { event.preventDefault(); ask(); } },
    field(say("plan.eat"), time), el("button", { class: "button main" }, say("plan.plan")));
  return { box: el("section", { class: "planner" }, el("h2", {}, say("plan.title")), form, result), ask, leave };
}
