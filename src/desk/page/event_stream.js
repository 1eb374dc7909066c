// A stream of events as it comes, byte by byte: WHATWG, HTML Living Standard, section 9.2.6, Interpreting an event
// stream. The browser's own EventSource sends no headers, so it cannot say the key.

const line_end = /\r\n|\r|\n/;

/** What a line means: its field, and its value without the one space in front. */
function field_of(line) {
  const colon = line.indexOf(":");
  if (colon < 0) {
    return [line, ""];
  }
  const value = line.slice(colon + 1);
  return [line.slice(0, colon), value.startsWith(" ") ? value.slice(1) : value];
}

/**
 * Reads one stream. `heard` gets each event as it is whole, {type, data, id}; `retry` each time to wait, in ms.
 * \returns a function that takes the next bytes (Uint8Array). What is left unfinished at the end is no event.
 */
export function event_reader({ heard, retry = () => {} }) {
  const decoder = new TextDecoder(); // takes a byte-order mark away
  const event = { type: "", data: [], id: "" };
  const rest = { text: "", after_return: false };
  const fields = {
    event: (value) => { event.type = value; },
    data: (value) => event.data.push(value),
    id: (value) => { event.id = value.includes("\0") ? event.id : value; },
    retry: (value) => /^[0-9]+$/.test(value) && retry(Number(value)),
  };
  const dispatch = () => {
    const { type, data, id } = event;
    Object.assign(event, { type: "", data: [] });
    if (data.length > 0) {
      heard({ type: type || "message", data: data.join("\n"), id });
    }
  };
  const take = (line) => {
    const [field, value] = field_of(line);
    line === "" ? dispatch() : Object.hasOwn(fields, field) && fields[field](value);
  };
  return (bytes) => {
    const more = decoder.decode(bytes, { stream: true });
    // A line feed behind a carriage return that ended a line already belongs to it.
    rest.text += rest.after_return && more.startsWith("\n") ? more.slice(1) : more;
    rest.after_return &&= more === "";
    for (let end = line_end.exec(rest.text); end; end = line_end.exec(rest.text)) {
      const line = rest.text.slice(0, end.index);
      rest.text = rest.text.slice(end.index + end[0].length);
      rest.after_return = end[0] === "\r" && rest.text === "";
      take(line);
    }
  };
}
