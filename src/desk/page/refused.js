// What the program refused, or could not do.

import { say } from "./ui.js";

export class Refused extends Error {
  /** `status` 0: no answer at all. */
  constructor(status, answer) {
    const said = status === 401 ? null : answer?.messages;
    super(said?.[0]?.text ?? say(status === 401 ? "page.other_run" : "page.no_answer"));
    this.status = status;
    this.answer = answer;
    /** Whether the program that the page is of is gone: what was asked was neither done nor judged. */
    this.is_gone = status === 0 || status === 401;
    this.messages = said ?? [{ severity: "error", text: this.message, hints: [] }];
  }
}
