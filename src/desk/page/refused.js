// What the program refused, or could not do.

import { is_at_computer } from "./pair.js";
import { say } from "./ui.js";

/** Why the key does not hold: the program was started again, or this is a phone that was locked out. */
const no_key_words = () => say(is_at_computer() ? "page.other_run" : "page.locked_out");

export class Refused extends Error {
  /** `status` 0: no answer at all. */
  constructor(status, answer) {
    const said = status === 401 ? null : answer?.messages;
    super(said?.[0]?.text ?? (status === 401 ? no_key_words() : say("page.no_answer")));
    this.status = status;
    this.answer = answer;
    /** Whether the program that the page is of is gone: what was asked was neither done nor judged. */
    this.is_gone = status === 0 || status === 401;
    this.messages = said ?? [{ severity: "error", text: this.message, hints: [] }];
  }
}
