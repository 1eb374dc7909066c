// The next dinners: what to eat on the coming days, and when to start thawing it.

import { count, el, field, say, tick } from "./ui.js";
import { dish_name, duration, keep_until, keyed, moment } from "./said.js";

function thaw_words(dinner) {
  if (dinner.thaw === "from frozen") {
    return say("freezer.from_frozen");
  }
  if (!dinner.thaw_start) {
    return say("freezer.thaw_by_label");
  }
  const time = dinner.thaw_minutes ? ` ${say("freezer.allow", duration(dinner.thaw_minutes))}` : "";
  return say("freezer.thaw_start", moment(dinner.thaw_start), say(`bag.thaw_${keyed(dinner.thaw)}`)) + time;
}

function cook_words(dinner) {
  const at_once = dinner.thaw === "cold water" || dinner.thaw === "microwave";
  if (at_once) {
    return say("freezer.cook_at_once");
  }
  return dinner.cook_within_days ? count("freezer.cook_within", dinner.cook_within_days) : null;
}

function proposal(dinner) {
  const where = dinner.place ? ` · ${dinner.place}` : "";
  const is_past = dinner.keep_until < dinner.eat.slice(0, 10);
  const plan = `#/bag/${dinner.ids.join(",")}/${dinner.eat}`;
  const cook = cook_words(dinner);
  return el("li", {},
    el("p", { class: "when" }, el("time", { dateTime: dinner.eat }, moment(dinner.eat))),
    el("p", { class: "dish" }, dish_name(dinner)),
    el("p", {}, count("freezer.bags", dinner.ids.length), " · ", count("freezer.serves", dinner.servings), where,
      " · ", keep_until(dinner), is_past ? [" · ", el("strong", { class: "past" }, say("freezer.past_then"))] : null),
    el("p", { class: "thaw" }, thaw_words(dinner), cook ? ` ${cook}` : ""),
    el("p", {}, el("a", { href: plan, class: "go" }, say("freezer.plan_it", dinner.dish))));
}

/** "RAW Pork shoulder (use by 20 Nov 2026)" */
function dated(bag) {
  return `${bag.raw ? `${say("bag.raw")} ` : ""}${bag.dish} (${keep_until(bag)})`;
}

/** What is not proposed, and why. */
function rest_of(answer) {
  const { nothing_thawed_by, after_date, days_left, too_many, small, too_few, past, serves } = answer;
  const texts = nothing_thawed_by.map((eat) => say("freezer.nothing_thawed", moment(eat)));
  texts.push(...after_date.map(({ eat, bags }) => say("freezer.after_date", moment(eat), bags.map(dated).join("; "))));
  const add = (holds, words) => holds && texts.push(words());
  add(days_left > 0, () => count("freezer.more_days", days_left, serves));
  add(too_many > 0, () => count("freezer.too_many", too_many));
  add(small.length > 0, () => say("freezer.small", small.join("; ")));
  add(too_few.length > 0, () => say("freezer.too_few", serves, too_few.join("; ")));
  add(past > 0, () => count("freezer.past_not_proposed", past));
  return [...texts, ...(answer.proposals.length > 0 ? [say("plan.local_rules")] : [])];
}

function asked_for(fields) {
  const serves = Number.parseInt(fields.serves.value, 10);
  return {
    days: Number.parseInt(fields.days.value, 10) || 5,
    at: fields.at.value || "18:30",
    past: fields.past.checked,
    ...(serves > 0 ? { serves } : {}),
  };
}

/** A form for days, time and people, and what is proposed below it. */
export function dinners(desk) {
  const fields = {
    days: el("input", { type: "number", min: 1, max: 60, value: 5, required: true, inputMode: "numeric" }),
    at: el("input", { type: "time", value: "18:30", required: true }),
    serves: el("input", { type: "number", min: 1, max: 999, inputMode: "numeric" }),
  };
  const past = tick(say("freezer.past_best"));
  fields.past = past.querySelector("input");
  const list = el("ol", { class: "dinners", "aria-live": "polite" });
  const propose = async (event) => {
    event.preventDefault();
    try {
      const answer = await desk.ask("POST", "/api/freezer/next", asked_for(fields));
      desk.tell(answer.messages);
      const none = answer.proposals.length === 0 ? [el("li", {}, say("freezer.no_dinners"))] : [];
      const rest = rest_of(answer).map((text) => el("li", { class: "soft" }, text));
      list.replaceChildren(...none, ...answer.proposals.map(proposal), ...rest);
    } catch (failure) {
      desk.tell(failure);
    }
  };
  return el("form", { class: "next", onsubmit: propose },
    el("div", { class: "row" }, field(say("freezer.days"), fields.days), field(say("freezer.at"), fields.at),
      field(say("freezer.people"), fields.serves, { help: say("freezer.people_help") })),
    past, el("button", { class: "button plain" }, say("freezer.propose")), list);
}
