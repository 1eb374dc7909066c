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
  // The program may have a draft from before. `sent` may not have come there yet.
  const self = { timer: 0, sent: book.draft, putting: Promise.resolve(), elsewhere: false, saving: null };
  const state = el("p", { class: "soft", role: "status" });

  function tell() {
    const unsaved = book.changed() || book.editing();
    const is_kept = book.draft === book.text && !book.editing(); // an edit is not in the text before it is made
    const words = say(!unsaved ? "day.saved" : is_kept ? "day.draft_kept" : self.elsewhere ? "day.draft_elsewhere" : "day.not_saved");
    if (state.textContent !== words) { state.textContent = words; }
    save.disabled = !unsaved;
  }
  function tell_draft_failure(failure) {
    const is_told = self.elsewhere;
    self.elsewhere = failure.status === 409;
    if (!self.elsewhere) { desk.tell(failure); }
    else if (!is_told) { desk.tell([{ severity: "caution", text: say("day.draft_elsewhere_help"), hints: [] }]); }
  }
  /** `again` where it may be gone: another tab has the same day, and one draft for both. */
  async function put_draft({ keepalive = false, again = false } = {}) {
    clearTimeout(self.timer);
    const text = book.changed() ? book.text : null;
    if (text === self.sent && !(again && text !== null)) { return; }
    const was = self.sent; // only one's own is written over or taken away
    self.sent = text;
    const bytes = ((text ?? "").length + (was ?? "").length) * 2;
    try {
      await desk.ask("PUT", `/api/draft/${book.number}`, { text, was }, { keepalive: keepalive && bytes < beacon_most });
      Object.assign(book, { draft: text });
      self.elsewhere = false;
    } catch (failure) {
      self.sent = book.draft;
      tell_draft_failure(failure);
    }
    tell();
  }
  /** One after the other, for each says what was there before it. */
  function keep_draft(how) {
    self.putting = self.putting.then(() => put_draft(how));
    return self.putting;
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
    if (document.visibilityState === "hidden") { going(); }
  }
  const going = () => { put_draft({ keepalive: true, again: true }); }; // waits for nothing
  document.addEventListener("visibilitychange", hidden);
  addEventListener("pagehide", going);
  book.listen("text", () => {
    clearTimeout(self.timer);
    self.timer = setTimeout(() => keep_draft(), draft_pause);
    tell();
  });
  book.listen("rest", tell);
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
