// The view of phones: lets one in by a code, shows who is let in, and locks them out. Only where the program was
// started for them.

import { button, confirmed, count, el, say } from "./ui.js";
import { keep_standing } from "./kept.js";
import { moment } from "./said.js";
import { turns } from "./turns.js";

const look_pause = 2000; // ms from one look to the next, while a phone may come

function picture(offer) {
  const address = URL.createObjectURL(new Blob([offer.svg], { type: "image/svg+xml" }));
  return el("img", { class: "pairing", src: address, alt: say("phones.picture"),
    onload: () => URL.revokeObjectURL(address) });
}

function show_offer(view, offer) {
  const left = el("p", {}, count("phones.left", offer.seconds));
  view.left = left;
  view.offer.replaceChildren(
    el("h2", {}, say("phones.photograph")), picture(offer),
    el("p", {}, say("phones.or_type"), " ", el("code", {}, offer.link)),
    el("p", { class: "large", role: "status" }, el("code", {}, offer.code)), left,
    button(say("phones.take_back"), () => asked(view, () => view.desk.ask("POST", "/api/phones/take-back", {}))));
}

function no_offer(view) {
  view.offer.replaceChildren(button(say("phones.let_in"), () => asked(view, async () => {
    await view.desk.ask("POST", "/api/phones/offer", {});
    view.desk.tell(null);
  }), "main"));
}

function row(view, phone) {
  const lock_out = button(say("phones.lock_out"), async () => {
    if (await confirmed(say("phones.ask_lock_out", phone.name), say("phones.lock_out"))) {
      await asked(view, () => view.desk.ask("POST", "/api/phones/lock-out", { number: phone.number }));
    }
  }, "plain", { "aria-label": say("phones.lock_out_named", phone.name) });
  return el("li", { class: "row" }, el("strong", {}, phone.name), el("span", { class: "soft" },
    say("phones.since", moment(phone.paired))), lock_out);
}

function show_answer(view, answer) {
  const came = view.shown && answer.phones.length > view.shown.phones.length ? answer.phones.at(-1) : null;
  if (came) {
    view.desk.tell(say("phones.came", came.name));
  }
  if (answer.offer?.code !== view.shown?.offer?.code || !view.shown) {
    keep_standing(view.offer, () => (answer.offer ? show_offer(view, answer.offer) : no_offer(view)));
  } else if (answer.offer) {
    view.left.textContent = count("phones.left", answer.offer.seconds);
  }
  if (JSON.stringify(answer.phones) !== JSON.stringify(view.shown?.phones)) {
    keep_standing(view.list.parentNode, () => view.list.replaceChildren(...(answer.phones.length > 0
      ? answer.phones.map((phone) => row(view, phone)) : [el("li", {}, say("phones.none"))])));
  }
  if (!view.shown) {
    view.air.replaceChildren(...air(answer));
  }
  view.shown = answer;
}

/** Who could listen, and how a phone knows this computer. */
function air({ fingerprint }) {
  const says = (key) => el("p", {}, say(key));
  return fingerprint
    ? [says("phones.encrypted"), el("p", {}, el("code", { class: "fingerprint" }, fingerprint))]
    : [says("phones.listening"), says("phones.camera")];
}

/** Looks, and goes on looking while a phone may come; a failure is told once. */
async function look(view) {
  clearTimeout(view.waiting);
  const is_last = view.looks.begin();
  try {
    const answer = await view.desk.ask("GET", "/api/phones");
    if (!is_last()) { return; }
    view.fails = false;
    show_answer(view, answer);
  } catch (failure) {
    if (!is_last()) { return; }
    view.fails || view.desk.tell(failure);
    view.fails = true;
  }
  if (view.shown?.offer) {
    view.waiting = setTimeout(() => look(view), look_pause);
  }
}

/** Does it, and shows what came of it. */
async function asked(view, act) {
  try {
    await act();
    await look(view);
  } catch (failure) {
    view.desk.tell(failure);
  }
}

export async function show(main, desk) {
  const view = { desk, shown: null, looks: turns(), fails: false, offer: el("section", { class: "offer" }),
    list: el("ul", { class: "phones" }), air: el("div") };
  main.append(el("p", { class: "lead" }, say("phones.about")), view.offer,
    el("section", {}, el("h2", {}, say("phones.let_in_already")), view.list),
    el("section", {}, el("h2", {}, say("phones.who_listens")), view.air));
  await look(view);
  return () => {
    view.looks.begin();
    clearTimeout(view.waiting);
  };
}
