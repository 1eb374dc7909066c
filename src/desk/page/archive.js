// The view of the archive: what was printed when, printing it again, and keeping it safe.

import { button, count, date, el, field, say, with_words } from "./ui.js";
import { keeper, settle, undisturbed } from "./kept.js";
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

function reprint_opener(desk, print) {
  const [press, form] = opener(say("archive.again"), () => reprint_form(desk, { bags: print.bags }, print));
  press.setAttribute("aria-label", say("archive.again_named", say(`day.what.${keyed(print.what)}`), date(print.at)));
  return [press, form];
}

/** The same row for as long as the print is there: a form that is open in it stays. */
function print_row(desk, kept, print) {
  const key = JSON.stringify([print.first_at, print.what, print.stock, print.bags]);
  const node = (what, shown, make) => kept.node(`${what} ${key}`, shown, make);
  const [day, time] = print.at.split("T");
  const at = [date(day), time?.slice(0, 5)].filter(Boolean).join(", ");
  const stock = desk.state.stocks.find(({ name }) => name === print.stock)?.title ?? print.stock;
  const parts = [count("freezer.bags", print.bags.length), ...print.days.map((made) => date(made)), stock,
    ...(print.times > 1 ? [count("archive.printed_times", print.times)] : [])].filter(Boolean);
  return settle(node("row", null, () => el("li", { class: "printed" })), [
    node("when", print.at, () => el("p", { class: "when" }, el("time", { dateTime: print.at }, at), " ",
      el("strong", {}, say(`day.what.${keyed(print.what)}`)))),
    node("dishes", print.dishes, () => el("p", {}, print.dishes.join(" · "))),
    node("parts", parts, () => el("p", { class: "soft" }, parts.join(" · "))),
    node("again", null, () => reprint_opener(desk, print))]);
}

/** What was printed. \returns its box, and what shows prints in it */
function prints_part(desk) {
  const kept = keeper();
  const box = el("section", {}, el("h2", {}, say("archive.printed")));
  const list = el("ol", { class: "prints" });
  const nothing = el("p", {}, say("archive.nothing"));
  return [box, (prints) => {
    kept.begin();
    settle(list, prints.map((print) => print_row(desk, kept, print)));
    settle(box, [box.firstChild, prints.length === 0 ? nothing : list]);
  }];
}

function bags_part(desk) {
  const typed = el("input", { type: "text", autocomplete: "off", spellcheck: false, required: true });
  const place = el("div", { class: "opened" });
  const form = el("form", { class: "row", onsubmit: (event) => {
    event.preventDefault();
    const bags = typed.value.split(",").map((one) => one.trim()).filter(Boolean);
    if (bags.length === 0) { // commas alone: the browser says that it is to be filled in
      typed.value = "";
      typed.reportValidity();
      return;
    }
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
      done.textContent = with_words(answer.said);
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
  const [box, show_prints] = prints_part(desk);
  const ask = () => desk.ask("GET", "/api/archive");
  show_prints((await ask()).prints);
  main.append(el("div", { class: "columns" }, box, el("div", { class: "beside" }, bags_part(desk), safe_part(desk))));
  desk.on_change(async () => {
    const { prints } = await ask();
    undisturbed(() => show_prints(prints));
  });
}
