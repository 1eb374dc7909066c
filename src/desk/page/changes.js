// Listens to the program: hears that somebody took out a bag, or printed, wherever that was. What was heard says nothing
// but that it is worth to ask again. Where there is no stream, it is asked when the cook comes back to the page.

import { event_reader } from "./event_stream.js";
import { key } from "./key.js";

const first_pause = 1000; // ms, unless the program says another
const longest_pause = 60_000;
const over = [401, 403, 404, 421]; // a phone that was locked out, a program of another run: nobody will let us in again

const short_wait = 20; // ms
const longest_wait = 500;

function paused(time, signal) {
  return new Promise((done) => {
    const timer = setTimeout(done, time);
    signal?.addEventListener("abort", () => { clearTimeout(timer); done(); });
  });
}

function pause_of({ pause, failures }) {
  const grown = Math.min(Math.max(pause, longest_pause), pause * 2 ** failures);
  return grown * (0.75 + Math.random() / 4); // not all pages at once
}

async function read(listening, signal) {
  const response = await fetch("/api/changes", {
    headers: { "Thawslip-Key": key(), "Last-Event-ID": listening.id }, cache: "no-store", signal,
  });
  if (!response.ok) {
    listening.is_over = over.includes(response.status);
    await response.body?.cancel();
    throw new Error(String(response.status));
  }
  const take = event_reader({
    heard: (event) => { listening.id = event.id; listening.heard(); },
    retry: (pause) => { listening.pause = pause; },
  });
  const reader = response.body.getReader();
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    listening.failures = 0;
    listening.is_open = true;
    take(part.value);
  }
}

/** Listens until the page is hidden, and again after growing pauses where the stream ends. */
async function listen(listening, signal) {
  for (let first = true; !signal.aborted && !listening.is_over; first = false) {
    try {
      await read(listening, signal);
    } catch {
      listening.failures += 1; // of the network or the program: tried again
    }
    listening.is_open = false;
    if (first && !signal.aborted) {
      listening.heard(); // nobody knows what came meanwhile
    }
    await paused(pause_of(listening), signal);
  }
}

/** Calls `heard` whenever there may be something new. \param id how far the state was that the page has */
export function hear_changes(id, heard) {
  const listening = { id, heard, pause: first_pause, failures: 0, is_open: false, is_over: false };
  let turn = null;
  const look = () => {
    if (document.visibilityState === "hidden") {
      turn?.abort();
      turn = null;
    } else if (turn === null) {
      turn = new AbortController();
      listen(listening, turn.signal);
    }
  };
  document.addEventListener("visibilitychange", look);
  addEventListener("focus", () => listening.is_open || heard());
  look();
}

/**
 * A function that calls `act` once at a time, and once more where it was called meanwhile; but not while `is_busy`, for
 * what the cook does here comes first. What fails stays as it is shown.
 */
export function quietly(act, is_busy) {
  const state = { runs: false, again: false };
  const run = async () => {
    for (let waited = 0; is_busy() && waited < longest_wait; waited += short_wait) {
      await paused(short_wait);
    }
    state.again = false;
    await Promise.resolve(act()).catch(() => {});
  };
  return async () => {
    state.again = true;
    if (state.runs) {
      return;
    }
    state.runs = true;
    while (state.again) {
      await run();
    }
    state.runs = false;
  };
}
