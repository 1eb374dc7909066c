// What is noted of bags: taken out, put back, eaten, discarded, never filled, moved, and taken back again.

import { button, count, el, field, fresh_id, say } from "./ui.js";
import { is_gone, keyed, moment } from "./said.js";

const states = ["out", "frozen", "eaten", "discarded", "never filled"];
const for_phones = ["out", "eaten"]; // all else is noted at the computer

/** The states that a bag may be given now, the likeliest first. */
function states_for(desk, bags) {
  const fits = {
    out: bags.some((bag) => bag.state === "frozen"),
    frozen: bags.some(is_gone),
    eaten: bags.some((bag) => bag.state === "frozen" || bag.state === "out"),
    discarded: bags.some((bag) => bag.state === "frozen" || bag.state === "out"),
    "never filled": bags.some((bag) => bag.state === "frozen"),
  };
  return (desk.state.phone ? for_phones : states).filter((state) => fits[state]);
}

/** What has been noted, in words: "Taken out of the freezer: Bean bake (2 bags)". */
function done_words(note, bags) {
  const dishes = [...new Set(bags.map((bag) => bag.dish))].join(", ");
  const key = note.state === undefined ? "moved" : keyed(note.state);
  return say(`freezer.done_${key}`, dishes, count("freezer.bags", bags.length), note.place ?? "");
}

const noting = new Set(); // what is being noted, so that a second press notes nothing
const changes = new Map(); // what was noted before, by its words, as the change that can be taken back

/** Tells what came of it. Of what was so already it is said, with the way back of when it was noted here. */
function tell_noted(desk, bags, what, { change, messages }, after) {
  const wish = JSON.stringify([bags.map((bag) => bag.id), what]);
  change && changes.set(wish, change);
  const words = done_words(what, bags);
  const done = { severity: "note", text: change ? words : say("freezer.noted_before", words), hints: [] };
  const known = changes.get(wish);
  desk.tell([done, ...messages], known && undo_button(desk, after, say("day.undo"), known));
}

/** Notes it of the bags, and shows what came of it, with a way back. `after` is called once it is noted. */
export async function note(desk, bags, what, after) {
  const body = { bags: bags.map((bag) => bag.id), ...what };
  const wish = JSON.stringify(body);
  if (noting.has(wish)) {
    return;
  }
  noting.add(wish);
  try {
    tell_noted(desk, bags, what, await desk.ask("POST", "/api/freezer/note", body), after);
  } catch (failure) {
    desk.tell(failure);
    return;
  } finally {
    noting.delete(wish);
  }
  await after();
}

async function undo(desk, after, change) {
  try {
    const answer = await desk.ask("POST", "/api/freezer/undo", { change });
    const dishes = [...new Set((answer.bags ?? []).map((bag) => bag.dish))].join(", ");
    const done = { severity: "note", text: say("freezer.undone", dishes), hints: [] };
    desk.tell([...(dishes ? [done] : []), ...answer.messages]);
  } catch (failure) {
    desk.tell(failure.status === 409 ? [{ severity: "error", text: say("freezer.noted_since") }] : failure);
    return;
  }
  await after();
}

/** Takes this change back, or the last whichever it is; null on a phone. `after` is called once that is done. */
export function undo_button(desk, after, words = say("freezer.undo"), change = null) {
  return desk.state.phone ? null : button(words, () => undo(desk, after, change));
}

/** A button for each state that fits. `after` is called once it is noted. */
export function state_buttons(desk, bags, after, kinds = {}) {
  return states_for(desk, bags).map((state) => button(say(`freezer.do_${keyed(state)}`),
    () => note(desk, bags, { state }, after), kinds[state] ?? "plain"));
}

/** Where bags lie by now: a place to write or to choose, and a button; null on a phone. */
export function move_form(desk, bags, places, after) {
  if (desk.state.phone) {
    return null;
  }
  const list = el("datalist", { id: fresh_id("places") }, places.map(({ place }) => el("option", { value: place })));
  const place = el("input", { type: "text", list: list.id, required: true, autocomplete: "off" });
  return el("form", { class: "row", onsubmit: (event) => {
    event.preventDefault();
    note(desk, bags, { place: place.value.trim() }, after);
  } }, field(say("freezer.move_to"), place), list, el("button", { class: "button plain" }, say("freezer.do_move")));
}

function event_words(event) {
  const what = event.takes_back ? say("freezer.was_taken_back")
    : event.state !== undefined ? say(`freezer.was_${keyed(event.state)}`)
      : event.place !== undefined ? say("freezer.was_moved", event.place)
        : say("freezer.was_renamed", event.known_as ?? "");
  return event.undone ? say("freezer.was_undone", what) : what;
}

/** What was noted of a bag, asked for when it is opened. */
export function history(desk, bag) {
  const events = el("ol", { class: "history" });
  const fill = async () => {
    try {
      const answer = await desk.ask("POST", "/api/freezer/history", { bag: bag.id });
      events.replaceChildren(...answer.events.map((event) =>
        el("li", {}, el("time", { dateTime: event.at }, moment(event.at)), " ", event_words(event))));
    } catch (failure) {
      desk.tell(failure);
    }
  };
  const opened = (event) => event.target.open && fill();
  return el("details", { class: "log", ontoggle: opened }, el("summary", {}, say("freezer.history")), events);
}
