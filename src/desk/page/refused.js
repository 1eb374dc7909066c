// What the program refused, or could not do.

import { say } from "./ui.js";

export class Refused extends Error {
  /** `status` 0: no answer at all. */
  constructor(status, answer) {
    super(answer?.messages?.[0]?.text ?? say("page.no_answer"));
    this.status = status;
    this.answer = answer;
    this.messages = answer?.messages ?? [{ severity: "error", text: this.message, hints: [] }];
  }
}
