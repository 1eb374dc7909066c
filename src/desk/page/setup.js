// The view of the settings: language, paper, measures, whose lists, stocks and printers. What is changed is kept at
// once; a settings file that is there stays as it is but for that.

import { ask_cook, button, el, field, maybe, messages, say, select, tick } from "./ui.js";

const jobs = ["labels", "finishing_cards", "cook_day_cards", "lists"];
const usual_dots = [203.2, 300, 600];

/** Pairs for a list of choices; what is set stands among them whatever it is. */
function with_set(pairs, value) {
  const is_there = pairs.some(([one]) => one === String(value ?? ""));
  return is_there ? pairs : [...pairs, [String(value), String(value)]];
}

/** A list to choose from, whose choice is kept; `of` turns what was chosen into a value of the file. */
function kept_choice(view, path, label, pairs, { of = (chosen) => chosen || null, help } = {}) {
  const value = view.shown.values[path];
  const list = select(with_set(pairs, value), String(value ?? ""), (chosen) => keep(view, path, of(chosen)));
  list.name = path;
  return field(label, list, { help });
}

function worded_choice(view, path) {
  const word = (value) => maybe(`setup.${path}_${value.replaceAll("-", "_")}`) ?? value;
  return kept_choice(view, path, say(`setup.${path}`), view.shown.choices[path].map((value) => [value, word(value)]),
    { help: maybe(`setup.${path}_help`) });
}

function kept_tick(view, path) {
  return tick(say(`setup.${path}`), { name: path, checked: view.shown.values[path],
    onchange: (event) => keep(view, path, event.target.checked) });
}

/** The language of prints and page, and a second one for cards. */
function languages(view) {
  const [first, second = ""] = view.shown.values.language;
  const pairs = view.shown.choices.language.map((code) => [code, say(`setup.in_${code}`)]);
  const none = ["", say("setup.no_second")];
  const keep_both = () => {
    const [one, other] = [of_page.value, of_cards.value];
    keep(view, "language", other && other !== one ? [one, other] : one);
  };
  const of_page = select(pairs, first, keep_both);
  const of_cards = select([none, ...pairs.filter(([code]) => code !== first)], second, keep_both);
  [of_page.name, of_cards.name] = ["language", "second"];
  return [field(say("setup.language"), of_page),
    field(say("setup.second"), of_cards, { help: say("setup.second_help") })];
}

/** What was refused stays in its field, with why. */
function refrigerator(view) {
  const path = "refrigerator";
  const refused = view.refused?.path === path ? view.refused : null;
  const input = el("input", { type: "text", name: path, value: refused?.value ?? view.shown.values[path], autocomplete: "off",
    "aria-invalid": refused ? "true" : null, onchange: (event) => keep(view, path, event.target.value.trim() || null) });
  const node = field(say(`setup.${path}`), input, { help: say(`setup.${path}_help`) });
  node.append(...(refused ? [el("div", { class: "fault", role: "alert" }, messages(refused.messages))] : []));
  return node;
}

function stock_pairs(view, job) {
  const fitting = view.desk.state.stocks.filter((stock) => stock.for.includes(job));
  return [["", say("setup.usual_stock")], ...fitting.map(({ name, title }) => [name, title])];
}

/** What one kind of print is printed on and by. */
function job_part(view, job) {
  const { printers } = view.desk.state;
  const dots = usual_dots.map((one) => [String(one), say("setup.dots_per_inch", one.toLocaleString())]);
  return el("fieldset", {}, el("legend", {}, say(`day.what.${job}`)), el("div", { class: "fields" },
    kept_choice(view, `${job}.stock`, say("setup.stock"), stock_pairs(view, job)),
    kept_choice(view, `${job}.printer`, say("setup.printer"),
      [["", say(printers.length > 0 ? "setup.usual_printer" : "setup.no_printer")], ...printers.map((name) => [name, name])]),
    kept_choice(view, `${job}.dpi`, say("setup.dpi"), [["", say("setup.usual_dots")], ...dots],
      { of: (chosen) => (chosen ? Number(chosen) : null), help: say("setup.dpi_help") })));
}

/** Where nothing has been set: all of it may be right as it is proposed. */
function first_time(view) {
  return view.shown.there ? null : el("section", {}, el("p", { class: "lead" }, say("setup.first")),
    button(say("setup.as_proposed"), () => keep(view), "main"));
}

function show_all(view) {
  view.box.replaceChildren(...[
    first_time(view),
    el("fieldset", {}, el("legend", {}, say("setup.words")),
      el("div", { class: "fields" }, languages(view), worded_choice(view, "paper")), kept_tick(view, "large_print")),
    el("fieldset", {}, el("legend", {}, say("setup.kitchen")),
      el("div", { class: "fields" }, worded_choice(view, "units"), worded_choice(view, "allergens"),
        worded_choice(view, "storage_list"), refrigerator(view)), kept_tick(view, "people_at_risk")),
    ...jobs.map((job) => job_part(view, job)),
    el("p", { class: "help" }, say("setup.file", view.shown.file)),
  ].filter(Boolean));
}

/** What was said of the value that is kept all the same. */
async function mention(all, path) {
  const of_it = all.filter(({ key }) => key === path);
  if (of_it.length > 0) {
    await ask_cook(say("setup.kept"), messages(of_it), [[null, say("page.close"), "main"]]);
  }
}

/** Keeps a value of the settings; none of them: those that hold. One behind the other, however fast they are chosen. */
function keep(view, path, value) {
  view.kept = view.kept.then(() => keep_one(view, path, value));
}

/** What is refused is said at its field, all else below the view. */
async function keep_one(view, path, value) {
  const edits = path === undefined ? [] : [{ path, value }];
  view.refused = null;
  try {
    const kept = await view.desk.ask("PUT", "/api/setup", { edits }, { headers: { "If-Match": view.shown.etag } });
    await mention(kept.messages, path);
    const speaks_otherwise = kept.values.language[0] !== view.desk.state.language || path === "allergens";
    if (speaks_otherwise) {
      location.reload();
      return;
    }
    Object.assign(view.desk.state, await view.desk.ask("GET", "/api/state"));
    view.desk.tell(say("setup.kept"));
  } catch (failure) {
    const is_at_field = failure.status === 422 && path === "refrigerator";
    view.refused = is_at_field ? { path, value, messages: failure.messages } : null;
    view.desk.tell(is_at_field ? null : failure);
  }
  await look(view).catch(view.desk.tell);
}

/** Who stands in a field by the keyboard stays in it; who was on the button of the first time goes to the first field. */
async function look(view) {
  view.shown = await view.desk.ask("GET", "/api/setup");
  const at = view.box.contains(document.activeElement) ? document.activeElement.name : null;
  show_all(view);
  if (at !== null) {
    const fields = [...view.box.querySelectorAll("select, input")];
    (fields.find(({ name }) => name === at) ?? fields[0]).focus();
  }
}

export async function show(main, desk) {
  const view = { desk, refused: null, kept: Promise.resolve(), box: el("div", { class: "setup-form" }) };
  main.append(view.box);
  await look(view);
  return () => view.kept;
}
