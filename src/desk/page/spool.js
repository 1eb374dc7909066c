// Printing once: a press of the button has a ticket, which the program honours a single time.

import { random_text } from "./deliver.js";
import { turns } from "./turns.js";
import { ask_cook, button, count, date, el, messages, release, said_messages, say } from "./ui.js";

/** Whether bags of a dish are those that were printed before. \returns what to ask the program then, or null */
async function which_batch({ dish, made, known }) {
  const words = ({ bags, servings, printed, bag }) =>
    say("print.same_bags", count("day.bags", bags), servings, date(printed?.slice(0, 10)), bag);
  const answer = await ask_cook(say("print.ask_batch", dish, date(made)), el("p", {}, say("print.ask_batch_help")), [
    ...known.map((one) => [{ same_batch: [one.bag] }, words(one), "plain"]),
    [{ new_batch: true }, say("print.other_bags"), "plain"], [null, say("page.cancel"), "plain"]]);
  return answer;
}

async function pdf_links(desk, path, name) {
  const blob = await desk.ask("GET", path);
  const address = URL.createObjectURL(new Blob([blob], { type: "application/pdf" }));
  return {
    address, node: el("p", { class: "row" },
      el("a", { class: "button main", href: address, download: name }, say("print.keep_pdf")),
      el("a", { class: "button plain", href: address, target: "_blank" }, say("print.open_pdf"))),
  };
}

/** The button that prints and what came of it. `wish()` gives what POST /api/spool takes, without the ticket. */
export function print_button(desk, { path = "/api/spool", wish, words, name, done }) {
  const self = { running: false, address: null };
  const unanswered = new Map(); // tickets by their wishes: pressed again, what was printed is not printed twice
  const wishes = turns();
  const said = el("div", { class: "spooled", role: "status" });
  const press = button(words(), print, "main");

  function free() {
    if (self.address) { release(self.address); }
    self.address = null;
  }
  /** Where the wish is another by now, or the view was left, it is told below all views: it was printed all the same. */
  async function show(answer, pressed) {
    const list = said_messages(answer.said);
    const pdf = answer.pdf ? await pdf_links(desk, answer.pdf, pressed.name) : null;
    if (!pressed.is_last()) {
      desk.tell(list, pdf?.node);
      return;
    }
    free();
    const lines = messages(list);
    self.address = pdf?.address ?? null;
    said.replaceChildren(el("h3", {}, say(answer.done ? "print.done" : "print.not_done")), lines,
      ...(pdf ? [pdf.node, el("p", {}, el("strong", {}, say("print.at_full_size")))] : []));
  }
  async function spool(pressed, more = {}) {
    const whole = { ...pressed.wish, ...more };
    const text = JSON.stringify(whole);
    const ticket = unanswered.get(text) ?? random_text();
    unanswered.set(text, ticket);
    const answer = await desk.ask("POST", path, { ...whole, ticket }).catch((failure) => {
      if (failure.status > 0) { unanswered.delete(text); }
      throw failure;
    });
    unanswered.delete(text); // the next press is another print
    const asks = answer.done ? [] : answer.asks ?? [];
    const which = asks.length > 0 ? await which_batch(asks[0]) : null;
    if (which) {
      await spool(pressed, { ...more, ...which, same_batch: [...more.same_batch ?? [], ...which.same_batch ?? []] });
    } else {
      await show(answer, pressed);
      done?.(answer);
    }
  }
  async function print() {
    const pressed = { wish: wish(), name: name(), is_last: wishes.now() };
    if (self.running || !pressed.wish) { return; }
    self.running = true;
    press.disabled = true;
    said.replaceChildren(el("p", {}, say("print.running")));
    try {
      await spool(pressed);
    } catch (failure) {
      pressed.is_last() && said.replaceChildren();
      desk.tell(failure);
    }
    self.running = false;
    press.disabled = false;
  }
  return {
    press, said,
    update() { press.textContent = words(); },
    /** What came of another wish is no answer to this one. */
    forget() {
      free();
      said.replaceChildren();
      wishes.begin();
    },
    close() {
      free();
      wishes.begin();
    },
  };
}
