// What stands against printing a day: mistakes, and what is only still to be filled in.

import { id_of } from "./fields.js";
import { count, maybe, say } from "./ui.js";

/** Keys that every dish, or whatever goes with it, must have, and that nothing but a value can be wrong with. */
const must_have = /(?:^|\.)(?:dish|servings|food|add)$/;

function value_at(form, path) {
  return path.match(/[^.[\]]+/g).reduce((value, key) => (/^\d+$/.test(key) ? value?.[Number(key) - 1] : value?.[key]), form);
}

/** Words of a field: by its id, else by its key alone. `kind` is "field", "help" or "example". */
export function words_of(kind, path) {
  const id = id_of(path);
  return maybe(`day.${kind}.${id}`) ?? maybe(`day.${kind}.${path.split(".").at(-1)}`);
}

function is_missing(message, form) {
  const is_of_one = message.severity === "error" && must_have.test(message.key ?? "");
  return is_of_one && [undefined, "", 0].includes(value_at(form, message.key));
}

/** An answer in which what has not been filled in yet is no mistake: it says which field, in the page's words. */
export function with_missing(answer) {
  const told = (message) => {
    if (!answer.form || !is_missing(message, answer.form)) { return message; }
    const is_zero = value_at(answer.form, message.key) === 0; // as a new day has it, or as the cook has typed it
    return { ...message, severity: "missing", hints: [], is_zero,
      text: (is_zero ? undefined : words_of("field", message.key)) ?? message.text };
  };
  return { ...answer, messages: (answer.messages ?? []).map(told) };
}

export function is_fault({ severity }) {
  return severity === "error" || severity === "missing";
}

/** "2 mistakes · 3 to fill in"; empty where nothing stands against printing. */
export function faults_in_short(messages) {
  const of = (kind) => messages.filter(({ severity }) => severity === kind).length;
  const [errors, missing] = [of("error"), of("missing")];
  return [errors > 0 ? count("day.errors", errors) : null, missing > 0 ? count("day.missing", missing) : null]
    .filter(Boolean).join(" · ");
}

/** The mark of a message: its severity. */
export function mark_words({ severity }) {
  return severity === "missing" ? say("day.still_missing") : say(`page.${severity}`);
}
