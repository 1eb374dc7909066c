// What every view is made of: elements, words, dates, fields, buttons, dialogs.

const spoken = { words: {}, language: "en" };

/** Sets the words of the page and their language; called once, before anything is shown. */
export function speak(words, language) {
  spoken.words = words;
  spoken.language = language;
}

/** The language as dates and numbers know it. Spanish is of the Americas; English writes the day first, as prints do. */
export function locale() {
  return { en: "en-GB", es: "es-419", de: "de" }[spoken.language] ?? "en-GB";
}

function word(key) {
  return key.split(".").reduce((table, part) => table?.[part], spoken.words);
}

function filled(text, values) {
  return text.replace(/\{(\d+)\}/g, (whole, place) => values[place] ?? whole);
}

/** A text of the program's with words of the page for their keys: "{print.from}". */
export function with_words(text) {
  return text.replace(/\{(\w+\.\w+)\}/g, (whole, key) => maybe(key) ?? whole);
}

/** The words of "section.key", with {0}, {1}… filled in; the key itself where there are none. */
export function say(key, ...values) {
  const found = word(key);
  return filled(typeof found === "string" ? found : key, values);
}

/** The same, or undefined where there are none. */
export function maybe(key) {
  const found = word(key);
  return typeof found === "string" ? found : undefined;
}

/** Words that depend on a number: a table with `one` and `other`. {0} is the number. */
export function count(key, number, ...more) {
  const forms = word(key) ?? {};
  const form = new Intl.PluralRules(locale()).select(number);
  return filled(forms[form] ?? forms.other ?? key, [number.toLocaleString(locale()), ...more]);
}

/** "17 Oct 2026" of "2026-10-17", or what was given where it is no date. */
export function date(iso, style = { day: "numeric", month: "short", year: "numeric" }) {
  const found = /^(\d{4})-(\d\d)(?:-(\d\d))?/.exec(iso ?? "");
  if (!found) {
    return iso ?? "";
  }
  const day = new Date(Date.UTC(+found[1], +found[2] - 1, +(found[3] ?? 1)));
  return new Intl.DateTimeFormat(locale(), { ...style, timeZone: "UTC" }).format(day);
}

/** "2026-11-30" of "0026-11-30": a year that was typed in two figures. */
export function in_this_century(iso) {
  return iso.replace(/^00(?=\d\d-)/, "20");
}

/** The years that a day may be of. */
export const years = { min: "1990-01-01", max: "2200-12-31" };

/** "December 2026" of "2026-12". */
export function month(iso) {
  return date(iso, { month: "long", year: "numeric" });
}

const svg_space = "http://www.w3.org/2000/svg";

function give(node, name, value) {
  if (value === undefined || value === null || value === false) {
    return;
  }
  if (name.startsWith("on")) {
    node.addEventListener(name.slice(2), value);
  } else if (name === "class") {
    node.setAttribute("class", value);
  } else if (name in node && !(node instanceof SVGElement) && name !== "list") {
    node[name] = value;
  } else {
    node.setAttribute(name, value === true ? "" : value);
  }
}

function grow(node, props, children) {
  for (const [name, value] of Object.entries(props ?? {})) {
    give(node, name, value);
  }
  node.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false));
  return node;
}

/** An element: el("p", { class: "soft", onclick: f }, "text", other, [others], null). */
export function el(tag, props, ...children) {
  return grow(document.createElement(tag), props, children);
}

/** The same of SVG. */
export function drawn(tag, props, ...children) {
  return grow(document.createElementNS(svg_space, tag), props, children);
}

const numbers = { next: 0 };

/** An id that nothing else of the page has. */
export function fresh_id(stem = "n") {
  numbers.next += 1;
  return `${stem}-${numbers.next}`;
}

/** A button with words. kind: "main", "plain" or "quiet". */
export function button(words, onclick, kind = "plain", props = {}) {
  return el("button", { type: "button", class: `button ${kind}`, onclick, ...props }, words);
}

/** A control below its label, with help where there is some; the control may be any element. */
export function field(label, control, { help, wide } = {}) {
  control.id ||= fresh_id("field");
  const helped = help ? el("small", { id: `${control.id}-help`, class: "help" }, help) : null;
  if (helped) {
    control.setAttribute("aria-describedby", helped.id);
  }
  return el("div", { class: wide ? "field wide" : "field" }, el("label", { htmlFor: control.id }, label), control, helped);
}

/** A box to tick, or one of a group (type "radio"), with its words behind it. */
export function tick(words, props = {}) {
  const box = el("input", { type: "checkbox", ...props });
  return el("label", { class: "tick" }, box, el("span", {}, words));
}

/** Choices under a legend: pairs of value and words. `onchange` gets the value. */
export function choices(legend, pairs, chosen, onchange) {
  const name = fresh_id("choice");
  const boxes = pairs.map(([value, words]) =>
    tick(words, { type: "radio", name, value, checked: value === chosen, onchange: () => onchange(value) }));
  return el("fieldset", { class: "choices" }, el("legend", {}, legend), boxes);
}

/** A list to choose from: pairs of value and words. */
export function select(pairs, chosen, onchange) {
  const options = pairs.map(([value, words]) => el("option", { value }, words));
  const list = el("select", { onchange: () => onchange?.(list.value) }, options);
  list.value = chosen ?? "";
  return list;
}

/** Fills a node anew only where what it shows has changed: whoever stands in it with the focus is left in peace. */
export function renewed(node, make) {
  let last;
  return (shown) => {
    const text = JSON.stringify(shown);
    if (text !== last) {
      last = text;
      node.replaceChildren(...[make(shown)].flat(Infinity).filter(Boolean));
    }
  };
}

/** Messages as the program gives them; `mark` is the key of another word than their severity. */
export function messages(list) {
  return el("ul", { class: "messages" }, list.map(({ severity, mark = `page.${severity}`, text, hints }) =>
    el("li", { class: severity }, el("strong", { class: "mark" }, say(mark)), " ", text,
      (hints ?? []).map((hint) => el("span", { class: "hint" }, hint)))));
}

/** What a command has said, as messages: "error: …" with the hints below it; lines that it quotes are left out. */
export function said_messages(said) {
  const list = [];
  for (const line of with_words(said).split("\n")) {
    const [, severity, text] = /^(?:\S.*?:\d+:\d+: )?(error|caution|note): (.*)$/.exec(line) ?? [];
    const hint = /^\s+hint: (.*)$/.exec(line)?.[1];
    if (hint && list.length > 0) {
      list.at(-1).hints.push(hint);
    } else if (/^\S/.test(line)) {
      list.push({ severity: severity ?? "note", text: text ?? line, hints: [] });
    }
  }
  return list;
}

const loading = 60_000; // ms in which a browser has surely read what it was given

/** Gives the address of a blob back: later, for what still loads from it would be missed. */
export function release(address) {
  setTimeout(() => URL.revokeObjectURL(address), loading);
}

/** Asks in a dialog. `answers`: [[value, words, kind]…], the safe one last; `shape` "wide" for two things beside each other. \returns the value, or null */
export function ask_cook(title, body, answers, shape) {
  return new Promise((answered) => {
    let value = null;
    const heading = el("h2", { id: fresh_id("asked") }, title);
    const is_fit = () => [...box.querySelectorAll("input")].every((input) => input.reportValidity());
    const buttons = answers.map(([of, words, kind]) => button(words, () => {
      if (of === null || is_fit()) { value = of; box.close(); }
    }, kind));
    const box = el("dialog", { class: shape, "aria-labelledby": heading.id }, heading, body ?? [], el("div", { class: "row" }, buttons));
    box.addEventListener("close", () => { box.remove(); answered(value); });
    document.body.append(box);
    box.showModal();
  });
}

/** Asks for a yes. */
export async function confirmed(question, yes) {
  return (await ask_cook(question, null, [[true, yes, "main"], [false, say("page.cancel"), "plain"]])) === true;
}
