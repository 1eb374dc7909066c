// The prints beside the day, drawn while it is written: each is fetched by its hash, when it is seen, once.

import { is_fault } from "./faults.js";
import { count, el, field, maybe, release, say, select } from "./ui.js";

const kinds = ["labels", "cook_day_cards", "finishing_cards", "day_sheets", "shopping"];
const kept_most = 120;

/** Pictures by their hash, as addresses of blobs; the oldest are given back. */
export function picture_store(desk) {
  const kept = new Map();
  return {
    async get(hash) {
      if (!kept.has(hash)) {
        kept.set(hash, desk.ask("GET", `/api/print/${hash}.svg`).then((blob) =>
          URL.createObjectURL(new Blob([blob], { type: "image/svg+xml" }))));
        kept.get(hash).catch(() => kept.delete(hash));
      }
      for (const [old, address] of [...kept].slice(0, Math.max(0, kept.size - kept_most))) {
        kept.delete(old);
        address.then(release, () => {});
      }
      return kept.get(hash);
    },
    close() {
      kept.forEach((address) => address.then(release, () => {}));
      kept.clear();
    },
  };
}

const area_words = (area) => maybe(`day.area.${area}`) ?? area;

function words_below(print) {
  const by_words = new Map();
  (print.type ?? []).forEach(({ area, words }) => by_words.set(words, [...(by_words.get(words) ?? []), area]));
  const type = [...by_words].map(([words, areas]) => el("li", {}, say("day.type_of", words, areas.map(area_words).join(", "))));
  const left = (print.left_out ?? []).length > 0 ? el("li", {}, el("strong", {}, say("day.left_out")), " ", print.left_out.map(area_words).join(", ")) : null;
  return el("details", {}, el("summary", {}, left ? say("day.type_and_left") : say("day.type")), el("ul", { class: "soft" }, type, left));
}

function figure(pictures, seen) {
  const picture = el("img", { class: "sheet", alt: "" });
  const title = el("h3", {});
  const below = el("div", {});
  const node = el("figure", { class: "print" }, title, picture, below);
  const self = { node, print: null, shown: null };
  async function draw() {
    const { hash } = self.print;
    const address = await pictures.get(hash);
    if (self.print.hash === hash) {
      picture.src = address;
      self.shown = hash;
    }
  }
  self.draw = () => {
    if (seen.has(node) && self.shown !== self.print.hash) { draw().catch(() => {}); } // gone by now: the next check names another
  };
  self.update = (print) => {
    const same = JSON.stringify(print) === JSON.stringify(self.print);
    self.print = print;
    if (!same) {
      title.replaceChildren(print.dish || say(`day.kind.${print.kind}`), " ", el("span", { class: "soft" }, count("day.copies", print.copies ?? 1)));
      picture.alt = say("day.picture_of", say(`day.kind.${print.kind}`), print.dish ?? "");
      [picture.width, picture.height] = (print.size ?? [100, 60]).map((mm) => Math.round(mm * 96 / 25.4));
      const open = below.firstChild?.open ?? false;
      below.replaceChildren(words_below(print));
      below.firstChild.open = open;
    }
    self.draw();
  };
  return self;
}

export function preview_pane(book, desk) {
  const pictures = picture_store(desk);
  const seen = new Set();
  const figures = [];
  const room = el("div", { class: "pictures" });
  const empty = el("p", { class: "soft", hidden: true }, say("day.no_prints"));
  const watch = new IntersectionObserver((changes) => {
    for (const { target, isIntersecting } of changes) {
      if (isIntersecting) { seen.add(target); } else { seen.delete(target); }
    }
    figures.forEach((one) => one.draw());
  }, { rootMargin: "300px" });

  function update(answer) {
    const prints = answer.prints ?? [];
    // With a fault nothing is printed: what was drawn before stays, and is said to be of before.
    const stale = prints.length === 0 && (answer.messages ?? []).some(is_fault);
    room.classList.toggle("stale", stale);
    empty.textContent = stale && figures.length > 0 ? say("day.stale_prints") : answer.why_nothing || say("day.no_prints");
    empty.hidden = prints.length > 0;
    if (stale) { return; }
    while (figures.length > prints.length) {
      const { node } = figures.pop();
      watch.unobserve(node);
      seen.delete(node);
      node.remove();
    }
    while (figures.length < prints.length) {
      const made = figure(pictures, seen);
      figures.push(made);
      room.append(made.node);
    }
    figures.forEach((one, at) => {
      one.update(prints[at]);
      watch.observe(one.node);
    });
  }
  book.listen("checked", update);
  const node = el("section", { class: "pane print-pane" }, el("h2", {}, say("day.prints")),
    field(say("day.which_prints"), select(kinds.map((kind) => [kind, say(`day.what.${kind}`)]), book.what, book.show)), empty, room);
  return {
    node,
    /** Brings the prints of a dish into sight. */
    near(dish) {
      const found = figures.find(({ print }) => print.package === dish);
      // Only within the pane: the page is not to move under whoever writes.
      if (found && node.scrollHeight > node.clientHeight) { node.scrollTop = found.node.offsetTop; }
    },
    close() {
      watch.disconnect();
      pictures.close();
    },
  };
}
