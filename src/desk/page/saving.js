// Nothing that was written is lost: drafts kept while the cook writes, saving, and what happens when
// another program has saved the same day meanwhile.

import { Refused } from "./refused.js";
import { ask_cook, button, el, fresh_id, say } from "./ui.js";

const draft_pause = 1000; // ms after the last letter
const beacon_most = 60000; // bytes that a page which is going may still send

/** A text to be read, at the line in which two differ first. */
function reading(text, words, line) {
  const id = fresh_id("reading");
  const area = el("textarea", { id, class: "code", readOnly: true, rows: 16, value: text, wrap: "off" });
  area.setSelectionRange(0, 0);
  requestAnimationFrame(() => { area.scrollTop = (line - 2) * parseFloat(getComputedStyle(area).lineHeight); });
  return el("div", { class: "field" }, el("label", { htmlFor: id }, words), area);
}

function first_difference(one, other) {
  const others = other.split("\n");
  return one.split("\n").findIndex((line, at) => line !== others[at]);
}

/** Asks which of two texts holds; either way the other is one step back. `theirs` null: the file is gone. */
async function choose_text(mine, theirs) {
  if (theirs === null) {
    return ask_cook(say("day.file_gone"), el("p", {}, say("day.file_gone_help")), [
      ["mine", say("day.put_back"), "main"], [null, say("page.cancel"), "plain"]]);
  }
  const line = first_difference(mine, theirs);
  const both = el("div", { class: "two" }, reading(mine, say("day.my_text"), line), reading(theirs, say("day.their_text"), line));
  return ask_cook(say("day.saved_elsewhere"), [el("p", {}, say("day.saved_elsewhere_help")), both], [
    ["mine", say("day.take_mine"), "main"], ["theirs", say("day.take_theirs"), "plain"], [null, say("page.cancel"), "plain"]], "wide");
}

/** Whether to go on with a draft. Closing the dialog goes on: that loses nothing. */
export async function offer_draft(book, draft) {
  const answer = await ask_cook(say("day.draft_found"), el("p", {}, say("day.draft_found_help")), [
    ["draft", say("day.take_draft"), "main"], ["saved", say("day.take_saved"), "plain"]]);
  book.put(draft, "draft");
  if (answer === "saved") { book.put(book.saved, "saved"); }
}

export function make_saving(book, desk) {
  const self = { timer: 0, drafted: book.draft, saving: null }; // the program may have a draft from before
  const state = el("p", { class: "soft", role: "status" });

  function tell() {
    const unsaved = book.changed() || book.editing();
    const words = unsaved ? say(self.drafted === book.text ? "day.draft_kept" : "day.not_saved") : say("day.saved");
    if (state.textContent !== words) { state.textContent = words; }
    save.disabled = !unsaved;
  }
  /** `again` where it may be gone: another tab has the same day, and one draft for both. */
  async function keep_draft({ keepalive = false, again = false } = {}) {
    clearTimeout(self.timer);
    const text = book.changed() ? book.text : null;
    if (text === self.drafted && !(again && text !== null)) { return; }
    const before = self.drafted;
    self.drafted = text;
    const body = text === null ? { text, was: before } : { text }; // only one's own is taken away
    try {
      await desk.ask("PUT", `/api/draft/${book.number}`, body, { keepalive: keepalive && (text ?? before).length * 2 < beacon_most });
    } catch (failure) {
      self.drafted = before;
      desk.tell(failure);
    }
    tell();
  }
  function saved(text, etag) {
    Object.assign(book, { saved: text, etag });
    keep_draft();
    tell();
  }
  async function put(text, etag) {
    const answer = await desk.ask("PUT", `/api/day/${book.number}`, { text }, { headers: { "If-Match": etag } });
    saved(text, answer.etag);
  }
  async function settle(theirs) {
    const mine = book.text;
    await keep_draft({ again: true });
    const answer = await choose_text(mine, theirs.text);
    if (answer === "mine") {
      if (theirs.text !== null) {
        book.put(theirs.text, "theirs");
        book.put(mine, "mine");
      }
      await put(mine, theirs.etag);
    } else if (answer === "theirs") {
      Object.assign(book, { saved: theirs.text, etag: theirs.etag });
      book.put(theirs.text, "theirs");
      tell();
    }
  }
  async function save_now() {
    try {
      await book.settled();
      await put(book.text, book.etag);
    } catch (failure) {
      if (!(failure instanceof Refused) || failure.status !== 409) { throw failure; }
      await settle(failure.answer);
    }
  }
  /** Saves once at a time. \returns whether it is saved */
  async function save_day() {
    self.saving ??= save_now().catch(desk.tell).finally(() => { self.saving = null; });
    await self.saving;
    return !book.changed();
  }
  const save = button(say("day.save"), save_day, "main");
  function hidden() {
    if (document.visibilityState === "hidden") { keep_draft({ keepalive: true, again: true }); }
  }
  const going = () => { keep_draft({ keepalive: true, again: true }); };
  document.addEventListener("visibilitychange", hidden);
  addEventListener("pagehide", going);
  book.listen("text", () => {
    clearTimeout(self.timer);
    self.timer = setTimeout(() => keep_draft(), draft_pause);
    tell();
  });
  book.listen("stuck", tell);
  tell();
  return {
    save, state, save_day,
    async close() {
      document.removeEventListener("visibilitychange", hidden);
      removeEventListener("pagehide", going);
      await book.settled();
      await keep_draft();
    },
  };
}
