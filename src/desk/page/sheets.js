// What comes out, sheet by sheet, as it will be printed.

import { turns } from "./turns.js";
import { button, count, el, messages, release, say } from "./ui.js";

const pause = 150; // ms after the last change of a choice

/** `question()` gives what POST /api/sheet takes, without the number of the sheet. */
export function sheets_pane(desk, question) {
  const self = { timer: 0, sheet: 1, address: null };
  const questions = turns();
  const picture = el("img", { class: "sheet", alt: "", hidden: true });
  const place = el("p", { role: "status" });
  const said = el("div", {});
  const back = button(say("print.sheet_before"), () => { self.sheet -= 1; draw(); });
  const next = button(say("print.sheet_after"), () => { self.sheet += 1; draw(); });
  const node = el("div", { class: "sheets" }, el("div", { class: "row" }, place, back, next), said, picture);

  function free() {
    if (self.address) { release(self.address); }
    self.address = null;
  }
  function show({ sheets, prints, svg, messages: list }) {
    free();
    picture.hidden = !svg;
    if (svg) {
      self.address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
      picture.src = self.address;
      picture.alt = say("print.sheet_of", self.sheet, sheets);
    }
    place.textContent = sheets > 0 ? `${say("print.sheet_of", self.sheet, sheets)} · ${count("print.prints", prints)}` : say("print.nothing");
    back.disabled = self.sheet <= 1;
    next.disabled = self.sheet >= sheets;
    said.replaceChildren((list ?? []).length > 0 ? messages(list) : "");
  }
  async function draw() {
    const is_last = questions.begin();
    const asked = question();
    if (!asked) { return; }
    try {
      const answer = await desk.ask("POST", "/api/sheet", { ...asked, sheet: self.sheet });
      if (!is_last()) { return; }
      if (self.sheet > Math.max(1, answer.sheets)) {
        self.sheet = 1;
        draw();
        return;
      }
      show(answer);
    } catch (failure) {
      if (is_last()) { show({ sheets: 0, prints: 0, svg: "", messages: failure.messages ?? [{ severity: "error", text: failure.message }] }); }
    }
  }
  back.disabled = next.disabled = true;
  return {
    node,
    /** The choices have changed. */
    update() {
      clearTimeout(self.timer);
      self.timer = setTimeout(draw, pause);
    },
    close() {
      clearTimeout(self.timer);
      questions.begin();
      free();
    },
  };
}
