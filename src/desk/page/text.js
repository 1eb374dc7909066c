// The text: a textarea with line numbers and marks beside it, and what is said of it below.

import { span_of } from "./book.js";
import { faults_in_short, mark_words } from "./faults.js";
import { hints_of } from "./parts.js";
import { button, el, fresh_id, renewed, say } from "./ui.js";

/** The least change that makes one text of another: [from, to, what stands there then]. */
export function change_between(before, after) {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) { head += 1; }
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) { tail += 1; }
  return [head, before.length - tail, after.slice(head, after.length - tail)];
}

/** Whoever stands in the text keeps the browser's own undo; from elsewhere nothing may take the focus away. */
function replace(area, from, to, words) {
  if (document.activeElement === area) {
    area.setSelectionRange(from, to);
    if (document.execCommand(words === "" ? "delete" : "insertText", false, words)) { return; }
  }
  area.setRangeText(words, from, to, "preserve");
}

function order(messages) {
  return messages.filter(({ line }) => line > 0).sort((a, b) => a.line - b.line || a.column - b.column);
}

function worst(list) {
  return ["error", "missing", "caution", "note"].find((kind) => list.some(({ severity }) => severity === kind));
}

const sign = { error: "✕", missing: "…", caution: "!", note: "·" };

export function text_pane(book, reveal) {
  const area = el("textarea", {
    id: fresh_id("text"), class: "code", value: book.text, wrap: "off", spellcheck: false, autocomplete: "off", autocapitalize: "off",
  });
  const numbers = el("pre", { class: "numbers", ariaHidden: "true" });
  const marks = el("div", { class: "marks" });
  const gutter = el("div", { class: "gutter" }, el("div", { class: "roll" }, numbers, marks));
  const said = el("ul", { class: "messages" });
  const sum = el("p", { class: "soft", role: "status" });
  const state = { quiet: false, lines: 0 };

  function number() {
    const lines = area.value.split("\n").length;
    if (lines !== state.lines) {
      state.lines = lines;
      numbers.textContent = Array.from({ length: lines }, (_, at) => at + 1).join("\n");
    }
  }
  const roll = () => { gutter.firstChild.style.transform = `translateY(${-area.scrollTop}px)`; };
  function jump(message) {
    const [from, to] = span_of(area.value, message);
    area.focus();
    area.setSelectionRange(from, to);
    const height = parseFloat(getComputedStyle(area).lineHeight);
    area.scrollTop = Math.max(0, (message.line - 4) * height);
    roll();
  }
  function mark_of(line, list) {
    const kind = worst(list);
    const words = say("day.mark", mark_words({ severity: kind }), line, list.map(({ text }) => text).join(" "));
    const mark = el("button", { type: "button", class: `place ${kind}`, ariaLabel: words, title: words, onclick: () => jump(list[0]) }, sign[kind]);
    mark.style.top = `calc(${line - 1} * var(--line))`;
    return mark;
  }
  function item_of(message) {
    return el("li", { class: message.severity },
      el("span", { class: "mark" }, mark_words(message)), " ",
      button(say("day.line", message.line), () => jump(message), "quiet small"), " ", message.text, hints_of(book, message),
      message.key ? button(say("day.to_field"), () => reveal(message.key), "quiet small") : null);
  }
  const show_marks = renewed(marks, (all) => all.map(([line, of]) => mark_of(line, of)));
  const show_said = renewed(said, (list) => list.map(item_of));
  function show(answer) {
    const list = order(answer.messages ?? []);
    const by_line = grouped(list);
    show_marks([...by_line]);
    show_said(list);
    const words = faults_in_short(list) || say("day.no_errors");
    if (sum.textContent !== words) { sum.textContent = words; }
  }

  area.addEventListener("input", () => {
    number();
    if (!state.quiet) { book.put(area.value, "typing"); }
  });
  area.addEventListener("scroll", roll);
  book.listen("text", (text) => {
    if (text !== area.value) {
      state.quiet = true;
      replace(area, ...change_between(area.value, text));
      state.quiet = false;
      number();
    }
  });
  book.listen("checked", show);
  number();
  return {
    node: el("section", { class: "pane text-pane" },
      el("h2", {}, el("label", { htmlFor: area.id }, say("day.text"))), sum, el("div", { class: "editor" }, gutter, area), said),
  };
}

function grouped(list) {
  const map = new Map();
  list.forEach((one) => map.set(one.line, [...(map.get(one.line) ?? []), one]));
  return map;
}
