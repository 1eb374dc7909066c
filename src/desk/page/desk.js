// Begins the page: asks for the state, and shows a view.
//
// A view is a module with `export async function show(main, desk)`. `main` holds the view's heading already;
// what is returned is called when the view is left. `desk` has
//   state            what GET /api/state gave; `await desk.refresh_days()` asks for its days again
//   ask(method, path, body, {headers, signal})  JSON, or a Blob; throws Refused with `status`, `answer`, `messages`
//   say(key, …)      words of the page
//   tell(what, act)  shows a text, messages, or what was thrown, and a button for it; nothing takes them away
//   go("#/bag/…")    another view
//   on_change(f)     has f called when others may have noted or printed something: it shows that quietly
//   where            what stands behind the view in the fragment: ["3"] of "#/day/3"

import { hear_changes, quietly } from "./changes.js";
import { keep_standing } from "./kept.js";
import { decoded, key, take_code, take_key } from "./key.js";
import { is_at_computer, let_in } from "./pair.js";
import { Refused } from "./refused.js";
import { turns } from "./turns.js";
import { button, el, messages, say, speak, with_words } from "./ui.js";

const views = {
  day: () => import("./day.js"),
  print: () => import("./print.js"),
  freezer: () => import("./freezer.js"),
  bag: () => import("./bag.js"),
  archive: () => import("./archive.js"),
  phones: () => import("./phones.js"),
  setup: () => import("./setup.js"),
};

/** The views that there are: on a phone what it may ask, and that of phones where they are let in. */
function names_of_views() {
  const names = desk.state.phone ? ["freezer", "bag"] : Object.keys(views);
  return names.filter((name) => name !== "phones" || desk.state.phones);
}

const main = document.getElementById("view");
const said = document.getElementById("said");

function packed(body) {
  const raw = body instanceof Blob || body instanceof ArrayBuffer || ArrayBuffer.isView(body);
  return raw ? [body, "application/octet-stream"] : [JSON.stringify(body), "application/json"];
}

async function answer_of(response) {
  if (!(response.headers.get("Content-Type") ?? "").startsWith("application/json")) {
    return response.blob();
  }
  const answer = await response.json();
  for (const message of answer.messages ?? []) {
    message.text = with_words(message.text);
    message.hints = message.hints.map(with_words);
  }
  if (answer.today && desk.state) {
    desk.state.today = answer.today; // a page may stand open for days
  }
  return answer;
}

const asking = { count: 0 }; // requests of the page that are under way

async function ask(...what) {
  asking.count += 1;
  try {
    return await answered(...what);
  } finally {
    asking.count -= 1;
  }
}

async function answered(method, path, body, { headers = {}, signal, keepalive } = {}) {
  const all = { "Thawslip-Key": key(), ...headers };
  const [bytes, type] = body === undefined ? [] : packed(body);
  if (type) {
    all["Content-Type"] = type;
  }
  let response;
  try {
    response = await fetch(path, { method, headers: all, body: bytes, signal, keepalive });
  } catch (failure) {
    throw failure.name === "AbortError" ? failure : new Refused(0, null);
  }
  const answer = await answer_of(response);
  if (!response.ok) {
    throw new Refused(response.status, answer);
  }
  return answer;
}

function told(what) {
  if (what instanceof Error && what.name === "AbortError") {
    return [];
  }
  if (what instanceof Error) {
    return what.messages ?? [{ severity: "error", text: what.message, hints: [] }];
  }
  return typeof what === "string" ? [{ severity: "note", text: what, hints: [] }] : what ?? [];
}

function tell(what, act = null) {
  const list = told(what);
  keep_standing(said, () => said.replaceChildren(...(list.length > 0
    ? [messages(list), ...[act].filter(Boolean), button(say("page.close"), () => tell(null), "quiet")] : [])));
}

function go(fragment) {
  location.hash = fragment;
}

const desk = {
  state: null, ask, say, tell, go, where: [],
  async refresh_days() {
    desk.state.days = (await ask("GET", "/api/days")).days;
    return desk.state.days;
  },
};

function place() {
  const [name, ...rest] = location.hash.replace(/^#\/?/, "").split("/").map(decoded);
  return names_of_views().includes(name) ? [name, rest] : [names_of_views()[0], []];
}

const shown = { leave: null, left: Promise.resolve(), hear: null };
const places = turns();

function head_of(name) {
  for (const link of document.querySelectorAll("nav a")) {
    if (link.hash === `#/${name}`) {
      link.setAttribute("aria-current", "page");
    } else {
      link.removeAttribute("aria-current");
    }
  }
  document.title = `${say(`page.${name}`)} – ${say("page.title")}`;
  return el("h1", { tabIndex: -1 }, say(`page.${name}`));
}

async function show_place() {
  const is_open = places.begin();
  const leave = shown.leave;
  document.querySelectorAll("dialog[open]").forEach((asked) => asked.close()); // what it asks of is left
  Object.assign(shown, { leave: null, hear: null });
  // One after the other, and goes on in any case: a view that cannot be left would hold the cook.
  shown.left = shown.left.then(leave).catch(tell);
  await shown.left;
  if (!is_open()) { return; } // another was gone to meanwhile, and stands there by now
  const [name, where] = place();
  const heading = head_of(name);
  const section = el("div", { class: `view ${name}` }, heading);
  tell(null);
  main.replaceChildren(section);
  heading.focus();
  try {
    const view = await views[name]();
    const on_change = (hear) => { shown.hear = is_open() ? hear : shown.hear; };
    const of_view = Object.assign(Object.create(desk), { where, on_change });
    const left = is_open() ? await view.show(section, of_view) : null;
    if (is_open()) {
      shown.leave = left;
    } else {
      await left?.();
    }
  } catch (failure) {
    is_open() && tell(failure);
  }
}

function masthead() {
  const skip = el("a", { class: "skip", href: "#view", onclick: (event) => {
    event.preventDefault();
    main.querySelector("h1").focus();
  } }, say("page.skip"));
  const links = names_of_views().map((name) => el("li", {}, el("a", { href: `#/${name}` }, say(`page.${name}`))));
  document.getElementById("masthead").append(
    skip, el("p", { class: "brand" }, say("page.title")),
    el("nav", { "aria-label": say("page.views") }, el("ul", {}, links)),
    el("p", { class: "folder" }, desk.state.phone?.name ?? desk.state.folder));
}

/** Goes to the day that the link names, or that the program was started with, unless the link names a view. */
function open_day(name) {
  const number = desk.state.days?.find((one) => one.name === name)?.number ?? desk.state.open;
  if (Number.isInteger(number) && !location.hash) {
    history.replaceState(null, "", `#/day/${number}`);
  }
}

/** The state; a phone that is not let in asks for that first. */
async function first_state() {
  const code = take_code();
  if (code !== null) {
    await let_in(code);
  }
  try {
    return await ask("GET", "/api/state");
  } catch (failure) {
    if (failure.status !== 401 || is_at_computer()) {
      throw failure;
    }
    await let_in(null);
    return ask("GET", "/api/state");
  }
}

async function begin() {
  let name;
  try {
    name = await take_key();
    desk.state = await first_state();
  } catch (failure) {
    const why = failure.answer?.messages ?? [];
    const without_key = failure.status === 401 && key() === "" ? "keyless" : "closed";
    const section = document.getElementById(why.length > 0 && failure.status !== 401 ? "refused" : without_key);
    section.append(...why.map(({ text }) => el("pre", {}, text)));
    section.hidden = false;
    return;
  }
  speak(desk.state.words, desk.state.language);
  document.documentElement.lang = desk.state.language;
  masthead();
  open_day(name);
  addEventListener("hashchange", show_place);
  hear_changes(desk.state.changes, quietly(() => shown.hear?.(), () => asking.count > 0));
  await show_place();
}

begin();
