// Where a print goes: a printer or a PDF; and that a double click prints once.

import { button, el, field, release, said_messages, say, select } from "./ui.js";

const same_wish = 3000; // ms: a click after this is meant as another print

/** A ticket that the program honours once. */
export function random_text() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Gives a wish its ticket: the same for a wish that is sent again at once, or whose answer was lost, so that it is printed
 *  once. `is_answered` is set where it was. */
export function tickets() {
  const known = new Map();
  return (wish) => {
    const text = JSON.stringify(wish);
    const before = known.get(text);
    const now = performance.now();
    const is_same = before && (!before.is_answered || now - before.at <= same_wish);
    const ticket = is_same ? before : { text: random_text(), is_answered: false };
    ticket.at = now;
    known.set(text, ticket);
    return ticket;
  };
}

/** Hands a file to the cook as the browser does it. */
export function save_file(blob, name) {
  const address = URL.createObjectURL(blob);
  const link = el("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  release(address);
}

async function print(desk, path, wish, ticket, name) {
  const answer = await desk.ask("POST", path, { ...wish, ticket: ticket.text }).catch((failure) => {
    ticket.is_answered = failure.status > 0;
    throw failure;
  });
  ticket.is_answered = true;
  desk.tell(said_messages(answer.said));
  if (answer.pdf) {
    save_file(await desk.ask("GET", answer.pdf), name);
  }
  return answer.done;
}

/** The printers, the usual one first, and buttons to print or to have the PDF.
 *  \param wish what is to be printed, asked for at each click; null where something is wrong
 *  \param after called once something was printed */
export function delivery(desk, { path, name, wish, after = () => {} }) {
  const { printers, why_no_printer } = desk.state;
  const printer = select(printers.map((one) => [one, one]), printers[0]);
  const ticket = tickets();
  const send = async (to) => {
    const asked = wish();
    if (asked === null) {
      return;
    }
    const whole = { ...asked, printer: to };
    try {
      if (await print(desk, path, whole, ticket(whole), name)) {
        await after();
      }
    } catch (failure) {
      desk.tell(failure);
    }
  };
  return el("div", { class: "row delivery" },
    printers.length > 1 ? field(say("archive.printer"), printer) : null,
    printers.length > 0 ? button(say("archive.print"), () => send(printer.value), "main") : null,
    button(say("archive.pdf"), () => send(null), printers.length > 0 ? "plain" : "main"),
    printers.length === 0 ? el("p", { class: "help", title: why_no_printer }, say("archive.no_printer")) : null);
}
