// The view of a bag: read by the camera, from a photograph, or by its id; what to do with it, to be read from afar.

import { button, count, el, field, fresh_id, say } from "./ui.js";
import { camera } from "./camera.js";
import { keep_typed } from "./kept.js";
import { history, move_form, state_buttons } from "./notes.js";
import { planner } from "./plan.js";
import { dish_name, keep_until, keyed, left_mark } from "./said.js";
import { turns } from "./turns.js";

/** The kind of a paragraph of what `read` says: by what the bag's values have of it. */
function kind_of(bag, text) {
  if (bag.cautions?.some((caution) => text.endsWith(caution))) {
    return "caution";
  }
  return bag.steps?.some((step) => text.endsWith(step)) ? "step" : "fact";
}

/** All that `read` says, in its order; the first line names the dish and its id, as the heading does. */
function paragraphs(bag) {
  const [, ...rest] = bag.words ?? [];
  return rest.map((text) => el("p", { class: kind_of(bag, text) }, text));
}

function state_words(bag) {
  if (!bag.known) {
    return say("bag.not_known");
  }
  return say(bag.state === "frozen" ? "bag.is_inside" : `freezer.is_${keyed(bag.state)}`);
}

function what_is_noted(view, bag) {
  const after = () => read_again(view);
  return [el("h3", {}, say("bag.note_it")),
    el("p", {}, state_words(bag), bag.place ? ` · ${bag.place}` : ""),
    ...(bag.known ? [el("div", { class: "row" }, state_buttons(view.desk, [bag], after, { out: "main" })),
      bag.state === "frozen" ? move_form(view.desk, [bag], [], after) : null, history(view.desk, bag)] : [])];
}

function noting(view, bag) {
  const news = el("p", { class: "news", role: "status" });
  const box = el("div", {}, what_is_noted(view, bag));
  view.noted.push({ bag, box, news });
  return el("section", { class: "noting" }, news, box);
}

/** What others noted of the bags that are shown, while the cook reads: a plan that is being made stays as it is. */
async function refresh(view) {
  for (const one of view.noted.filter(({ bag }) => bag.known && bag.id)) {
    const { bags: [now] } = await view.desk.ask("POST", "/api/read", { typed: one.bag.id });
    const is_other = now?.known && (now.state !== one.bag.state || now.place !== one.bag.place);
    if (is_other && view.noted.includes(one)) {
      Object.assign(one.bag, { state: now.state, place: now.place, changed: now.changed });
      keep_typed(one.box, () => one.box.replaceChildren(...what_is_noted(view, one.bag).filter(Boolean)));
      one.news.textContent = say("bag.meanwhile", [state_words(one.bag), one.bag.place].filter(Boolean).join(" · "));
    }
  }
}

/** A label whose words are all that is known of it. */
function text_only(bag) {
  return el("article", { class: "bag-answer" }, el("h2", {}, say("bag.only_words")),
    el("p", { class: "words" }, bag.text));
}

function what_to_do(view, bag) {
  if (bag.text !== undefined && bag.dish === undefined) {
    return text_only(bag);
  }
  const heading = el("h2", { class: "large", id: fresh_id("bag") }, dish_name(bag));
  return el("article", { class: "bag-answer", "aria-labelledby": heading.id },
    heading, el("p", { class: "id" }, bag.id ? el("code", {}, bag.id) : null, bag.days_left === undefined ? null
      : [" ", left_mark(bag)]),
    el("div", { class: "beside-it" }, el("div", { class: "do" }, paragraphs(bag)), noting(view, bag)));
}

/** How the program is asked to plan them: by the archive, or by the codes alone where it does not know one. */
function plan_question(bags) {
  const all_known = bags.every((bag) => bag.known && bag.id);
  return all_known ? { bags: bags.map((bag) => bag.id) } : { texts: bags.map((bag) => bag.code).filter(Boolean) };
}

/** Bags that the words fit, each a link to what is to be done with it. */
function choices_of(choices) {
  return [el("h2", {}, say("bag.which")), el("ul", { class: "choices-of-bags" }, choices.map((bag) => el("li", {},
    el("a", { class: "go", href: `#/bag/${bag.id}` }, dish_name(bag), ` (${bag.id})`), " ", keep_until(bag), " · ",
    left_mark(bag), bag.place ? ` · ${bag.place}` : "")))];
}

function show_answer(view, answer, eat) {
  view.planner?.leave();
  view.planner = null;
  view.bags = answer.bags;
  view.noted.length = 0;
  const dishes = answer.bags.filter((bag) => bag.dish !== undefined);
  const parts = answer.bags.map((bag) => what_to_do(view, bag));
  const question = plan_question(dishes);
  if (dishes.length > 0 && (question.bags ?? question.texts).length > 0) {
    view.planner = planner(view.desk, { question, bags: dishes, eat });
    parts.push(view.planner.box);
  }
  if (answer.choices?.length > 0) {
    parts.unshift(...choices_of(answer.choices));
  }
  if (answer.bags.length > 1) {
    parts.unshift(el("p", { class: "soft" }, count("bag.found", answer.bags.length)));
  }
  view.result.replaceChildren(...parts);
  view.result.focus();
  return view.planner && eat ? view.planner.ask() : null;
}

/** What the archive knows says it in whole sentences, where a code has few words and capitals alone. */
async function in_full(desk, answer) {
  const told = async (bag) => {
    const { bags: [full] } = await desk.ask("POST", "/api/read", { typed: bag.id });
    return full ? { ...full, code: bag.code } : bag;
  };
  const bags = await Promise.all(answer.bags.map((bag) => (bag.known && bag.code ? told(bag).catch(() => bag) : bag)));
  return { ...answer, bags };
}

/** Shows what `asked` gives, unless something else was asked for since. */
async function read(view, asked, eat) {
  const is_last = view.questions.begin();
  view.result.setAttribute("aria-busy", "true");
  try {
    const answer = await asked();
    if (!is_last()) { return; }
    view.desk.tell(answer.messages);
    await show_answer(view, answer, eat);
  } catch (failure) {
    if (!is_last()) { return; }
    show_answer(view, { bags: [] }); // not the bag before, which nobody asked for
    view.desk.tell(failure);
  }
  view.result.removeAttribute("aria-busy");
}

/** What a photograph or words say. */
function of_one(view, path, body) {
  return async () => in_full(view.desk, await view.desk.ask("POST", path, body));
}

/** Several ids, one after the other, as one answer. */
async function of_ids(view, ids) {
  const answers = [];
  for (const id of ids) {
    answers.push(await view.desk.ask("POST", "/api/read", { typed: id }));
  }
  const merged = (key) => answers.flatMap((answer) => answer[key] ?? []);
  return { bags: merged("bags"), messages: merged("messages") };
}

/** After something was noted: what was said of that stays. Another bag that is asked for by now will stand here instead. */
async function read_again(view) {
  if (view.result.hasAttribute("aria-busy")) {
    return;
  }
  const is_last = view.questions.begin();
  try {
    const answer = await of_ids(view, view.bags.map((bag) => bag.id).filter(Boolean));
    is_last() && show_answer(view, answer);
  } catch (failure) {
    is_last() && view.desk.tell(failure);
  }
}

function by_camera(view) {
  const words = () => say(view.looks ? "bag.camera_stop" : "bag.camera_start");
  const press = button("", () => {
    view.looks ? view.camera.stop() : view.camera.start();
    view.looks = !view.looks;
    press.textContent = words();
  }, "main");
  press.textContent = words();
  view.camera = camera(view.desk, {
    found: (answer) => read(view, () => in_full(view.desk, answer)),
    ended: () => { view.looks = false; press.textContent = words(); },
  });
  // Browsers give no live camera to a page that comes over the house's network as it is.
  const hidden = Boolean(view.desk.state.phone) && !isSecureContext;
  return el("section", { class: "way", hidden }, el("h2", {}, say("bag.by_camera")), press, view.camera.box);
}

function by_photo(view) {
  const take = (file) => file && read(view, of_one(view, "/api/read?as=photo", file));
  const input = el("input", { type: "file", accept: "image/*", hidden: true, "aria-label": say("bag.photo_choose"),
    onchange: () => { take(input.files[0]); input.value = ""; } });
  input.setAttribute("capture", "environment");
  const section = el("section", { class: "way" }, el("h2", {}, say("bag.by_photo")),
    button(say("bag.photo_choose"), () => input.click()), input, el("p", { class: "help" }, say("bag.photo_help")));
  section.addEventListener("dragover", (event) => event.preventDefault());
  section.addEventListener("drop", (event) => { event.preventDefault(); take(event.dataTransfer.files[0]); });
  return section;
}

function by_words(view) {
  const typed = el("input", { type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: false,
    required: true });
  const form = el("form", { class: "row", onsubmit: (event) => {
    event.preventDefault();
    read(view, of_one(view, "/api/read", { typed: typed.value.trim() }));
  } }, field(say("bag.typed"), typed, { help: say("bag.typed_help") }),
  el("button", { class: "button plain" }, say("bag.show")));
  view.typed = typed;
  return el("section", { class: "way" }, el("h2", {}, say("bag.by_words")), form);
}

export async function show(main, desk) {
  const view = { desk, questions: turns(), bags: [], noted: [], looks: false, planner: null, result: el("div", { class: "result", tabIndex: -1 }) };
  main.append(el("div", { class: "ways-to-read" }, by_camera(view), by_photo(view), by_words(view)), view.result);
  desk.on_change(() => refresh(view));
  const [ids, eat] = desk.where;
  if (ids) {
    read(view, () => of_ids(view, ids.split(",")), eat); // not waited for: it can be left meanwhile
  }
  return () => {
    view.questions.begin();
    view.camera.stop();
    view.planner?.leave();
  };
}
