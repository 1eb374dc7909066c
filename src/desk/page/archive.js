// The view of the archive: what was printed when, printing it again, and keeping it safe.

import { button, count, date, el, field, say } from "./ui.js";
import { reprint_form } from "./reprint.js";
import { keyed } from "./said.js";

/** Opens a form below what it belongs to, and closes it again. */
function opener(words, form) {
  const place = el("div", { class: "opened" });
  const press = button(words, () => {
    const opens = !place.hasChildNodes();
    place.replaceChildren(...(opens ? [form()] : []));
    press.setAttribute("aria-expanded", String(opens));
  }, "plain", { "aria-expanded": "false" });
  return [press, place];
}

function print_row(desk, print) {
  const [day, time] = print.at.split("T");
  const at = [date(day), time?.slice(0, 5)].filter(Boolean).join(", ");
  const parts = [count("freezer.bags", print.bags.length), ...print.days.map((made) => date(made)), print.stock,
    ...(print.times > 1 ? [count("archive.printed_times", print.times)] : [])].filter(Boolean);
  const named = say("archive.again_named", say(`day.what.${keyed(print.what)}`), date(day));
  const [press, form] = opener(say("archive.again"), () => reprint_form(desk, { bags: print.bags }, print));
  press.setAttribute("aria-label", named);
  return el("li", { class: "printed" },
    el("p", { class: "when" }, el("time", { dateTime: print.at }, at), " ",
      el("strong", {}, say(`day.what.${keyed(print.what)}`))),
    el("p", {}, print.dishes.join(" · ")), el("p", { class: "soft" }, parts.join(" · ")), press, form);
}

function prints_part(desk, prints) {
  return el("section", {}, el("h2", {}, say("archive.printed")),
    prints.length === 0 ? el("p", {}, say("archive.nothing")) : el("ol", { class: "prints" },
      prints.map((print) => print_row(desk, print))));
}

function bags_part(desk) {
  const typed = el("input", { type: "text", autocomplete: "off", spellcheck: false, required: true });
  const place = el("div", { class: "opened" });
  const form = el("form", { class: "row", onsubmit: (event) => {
    event.preventDefault();
    const bags = typed.value.split(",").map((one) => one.trim()).filter(Boolean);
    place.replaceChildren(el("h3", {}, say("archive.again_of", bags.join(", "))), reprint_form(desk, { bags }));
  } }, field(say("archive.bags"), typed, { help: say("archive.bags_help") }),
  el("button", { class: "button plain" }, say("archive.again")));
  return el("section", {}, el("h2", {}, say("archive.by_bag")), form, place);
}

function safe_part(desk) {
  const done = el("p", { role: "status", class: "done" });
  const act = (path) => async (event) => {
    event.target.disabled = true;
    try {
      const answer = await desk.ask("POST", path, {});
      done.textContent = answer.said;
    } catch (failure) {
      desk.tell(failure);
    }
    event.target.disabled = false;
  };
  return el("section", {}, el("h2", {}, say("archive.safe")),
    el("p", { class: "help" }, say("archive.safe_help")),
    el("div", { class: "row" }, button(say("archive.back_up"), act("/api/archive/backup")),
      button(say("archive.export"), act("/api/archive/export"))), done);
}

export async function show(main, desk) {
  const answer = await desk.ask("GET", "/api/archive");
  main.append(el("div", { class: "columns" }, prints_part(desk, answer.prints),
    el("div", { class: "beside" }, bags_part(desk), safe_part(desk))));
}
