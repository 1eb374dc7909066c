// The view of the freezer: what is inside, what is noted of it, its months, its door list and the next dinners.

import { button, count, el, field, fresh_id, renewed, say, select, tick } from "./ui.js";
import { part, parts_without, totals } from "./bag_list.js";
import { delivery } from "./deliver.js";
import { dinners } from "./dinners.js";
import { keep_standing, keep_typed, keeper, settle, undisturbed } from "./kept.js";
import { months_chart } from "./months.js";
import { news_of } from "./news.js";
import { move_form, state_buttons, undo_button } from "./notes.js";
import { is_gone } from "./said.js";
import { turns } from "./turns.js";

const typing_pause = 250; // ms

function question_of({ words, place, without, gone }) {
  const avoided = without.value.trim();
  return {
    words: words.value.trim().split(/\s+/).filter(Boolean),
    gone: gone.checked,
    ...(place.value ? { place: place.value } : {}),
    ...(avoided ? { without: avoided } : {}),
  };
}

function summary(answer) {
  if (!answer) {
    return [];
  }
  const { bags, past, sought } = answer;
  const frozen = bags.filter((bag) => !is_gone(bag));
  if (frozen.length === 0) {
    return [el("p", {}, say(sought ? "freezer.none_fits" : "freezer.empty"))];
  }
  const warning = el("p", {}, el("strong", { class: "past" }, count("freezer.past", past)));
  return [el("p", { class: "lead" }, totals(frozen)), ...(past > 0 ? [warning] : [])];
}

function chosen_bags(view, bags) {
  return bags.length === 0 ? [] : [
    el("h2", {}, count("freezer.chosen", bags.length)),
    el("div", { class: "row" }, state_buttons(view.desk, bags, view.list.changed),
      button(say("freezer.choose_none"), () => view.list.choose(bags, false), "quiet")),
    move_form(view.desk, bags, view.answer.places, view.list.changed),
  ];
}

function show_chosen(view) {
  const bags = view.answer.bags.filter((bag) => view.list.chosen.has(bag.id));
  keep_standing(view.bar, () => {
    view.bar.hidden = bags.length === 0;
    view.show_bar(bags);
  });
}

function place_choices(places) {
  const pairs = places.filter((one) => one.place)
    .map((one) => [one.place, one.bags > 0 ? say("freezer.place_with", one.place, one.bags) : one.place]);
  return [...select([["", say("freezer.every_place")], ...pairs]).children];
}

function show_places(view, places) {
  const { place } = view.fields;
  const chosen = place.value;
  const is_there = chosen === "" || places.some((one) => one.place === chosen);
  view.show_place_choices(is_there ? places : [...places, { place: chosen, bags: 0 }]);
  place.value = chosen;
}

/** Whoever goes through the list by the keyboard stays at that place of it, also when a bag has gone. */
function stay(view, show) {
  const rows = () => [...view.inside.querySelectorAll(".bag-row")];
  const at = rows().findIndex((row) => row.contains(document.activeElement));
  undisturbed(() => show(view));
  if (at >= 0 && !view.inside.contains(document.activeElement)) {
    rows()[Math.min(at, rows().length - 1)]?.querySelector("button")?.focus();
  }
}

function show_answer(view) {
  const { answer, list, question: { words, place, without: avoided } } = view;
  const there = new Set(answer.bags.map((bag) => bag.id));
  list.chosen = new Set([...list.chosen].filter((id) => there.has(id)));
  const sought = Boolean(words.length > 0 || place || avoided);
  view.show_summary({ ...answer, sought });
  list.kept.begin();
  settle(view.inside, avoided ? parts_without(list, answer.bags, avoided)
    : [part(list, say("freezer.inside"), answer.bags)]);
  view.show_months(answer.months);
  show_places(view, answer.places);
  show_chosen(view);
}

/** What is of another question would read as if it were what is asked for now. It keeps its place: nothing moves under
 *  who points at something beside it. */
function hide(view, is_hidden) {
  for (const node of [view.summary, view.inside, view.months, view.bar]) {
    node.classList.toggle("outdated", is_hidden);
  }
}

function show_nothing(view) {
  view.answer = null;
  view.show_summary(null);
  view.inside.replaceChildren();
  view.show_months([]);
  view.bar.hidden = true;
}

async function asked(view, question) {
  return view.desk.ask("POST", "/api/freezer", question);
}

/** Loads what the filters ask for. `tell` is called with what is said of it; of what is late nothing is said. */
async function load(view, tell) {
  const is_last = view.questions.begin();
  const question = question_of(view.fields);
  view.news.textContent = "";
  view.inside.setAttribute("aria-busy", "true");
  if (JSON.stringify(question) !== JSON.stringify(view.question)) {
    hide(view, true);
  }
  view.question = question;
  try {
    const answer = await asked(view, question);
    if (!is_last()) { return; }
    view.answer = answer;
    hide(view, false); // before: what is hidden cannot have the focus
    stay(view, show_answer);
    tell(answer.messages);
  } catch (failure) {
    if (!is_last()) { return; }
    hide(view, false);
    show_nothing(view);
    view.desk.tell(failure);
  }
  view.inside.removeAttribute("aria-busy");
}

/** Loads what the filters ask for; what was said of the filters before is taken away. */
async function filter(view) {
  return load(view, view.desk.tell);
}

/** Somebody else has noted or printed something. Of what is asked for here by now the answer has it already. */
async function refresh(view) {
  const is_last = view.questions.now();
  const { answer: before } = view;
  const now = await asked(view, view.question);
  if (!is_last() || view.answer !== before || JSON.stringify(now) === JSON.stringify(before)) {
    return;
  }
  view.answer = now;
  keep_typed(view.bar, () => stay(view, show_answer));
  view.news.textContent = news_of(before?.bags ?? [], now.bags);
}

function filters(view) {
  const known = el("datalist", { id: fresh_id("allergens") },
    view.desk.state.allergens.map(({ name }) => el("option", { value: name })));
  const soon = () => {
    clearTimeout(view.waiting);
    view.waiting = setTimeout(() => filter(view), typing_pause);
  };
  const gone = tick(say("freezer.gone_too"), { onchange: () => filter(view) });
  view.fields = {
    words: el("input", { type: "search", autocomplete: "off", oninput: soon }),
    place: select([["", say("freezer.every_place")]], "", () => filter(view)),
    without: el("input", { type: "text", list: known.id, autocomplete: "off",
      oninput: () => view.dinners.forget(), onchange: () => filter(view) }),
    gone: gone.querySelector("input"),
  };
  const { words, place, without } = view.fields;
  const submit = (event) => {
    event.preventDefault();
    filter(view);
  };
  return el("form", { class: "filters", role: "search", onsubmit: submit },
    field(say("freezer.words"), words), field(say("freezer.place"), place),
    field(say("freezer.without"), without, { help: say("freezer.without_help") }), known,
    el("div", { class: "row" }, gone, el("button", { class: "button plain" }, say("freezer.show")),
      undo_button(view.desk, view.list.changed)));
}

function aside(view) {
  view.dinners = dinners(view.desk, () => view.fields.without.value.trim());
  const block = (title, ...inside) => el("section", {}, el("h2", {}, title), inside);
  return el("div", { class: "beside" },
    block(say("freezer.months"), view.months),
    block(say("freezer.dinners"), view.dinners.box),
    view.desk.state.phone ? null : block(say("freezer.door_list"), el("p", { class: "help" }, say("freezer.door_list_help")),
      delivery(view.desk, { path: "/api/freezer/door-list", name: "door-list.pdf", wish: () => ({ look: {} }) })));
}

function list_of(view) {
  return {
    desk: view.desk, chosen: new Set(), boxes: new Map(), pressed: null, kept: keeper(),
    choose(bags, chosen) {
      for (const bag of bags) {
        this.chosen[chosen ? "add" : "delete"](bag.id);
        this.boxes.get(bag.id).checked = chosen;
      }
      show_chosen(view);
    },
    changed: () => load(view, () => {}), // what was said of the change stays
  };
}

/** Its parts, each shown anew only where it has become another. */
function new_view(desk) {
  const view = { desk, questions: turns(), answer: null, question: null, summary: el("div"), inside: el("div", { class: "inside" }), months: el("div"),
    news: el("p", { class: "news", role: "status" }),
    bar: el("section", { class: "chosen", hidden: true, "aria-label": say("freezer.chosen_bags") }) };
  view.show_summary = renewed(view.summary, summary);
  view.show_months = renewed(view.months, months_chart);
  view.show_bar = renewed(view.bar, (bags) => chosen_bags(view, bags));
  view.list = list_of(view);
  return view;
}

export async function show(main, desk) {
  const view = new_view(desk);
  main.append(view.summary, filters(view), view.news, view.bar,
    el("div", { class: "columns" }, view.inside, aside(view)));
  view.show_place_choices = renewed(view.fields.place, place_choices);
  filter(view); // not waited for: it can be left meanwhile
  desk.on_change(() => refresh(view));
  return () => {
    clearTimeout(view.waiting);
    view.questions.begin();
    view.dinners.forget();
  };
}
