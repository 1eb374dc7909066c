// The next dinners: what to eat on the coming days, and when to start thawing it.

import { count, el, field, locale, say, tick } from "./ui.js";
import { allergens, dish_name, keep_until, moment } from "./said.js";
import { turns } from "./turns.js";

const sentence = (words) => `${words.charAt(0).toLocaleUpperCase(locale())}${words.slice(1)}.`;

/** How it is thawed, with all that its label says of that. */
function thaw_words({ thaw, thaw_start, thaw_words: label }) {
  if (!label || (thaw !== "from frozen" && !thaw_start)) {
    return say("freezer.thaw_by_label");
  }
  return thaw === "from frozen" ? sentence(label) : say("freezer.thaw_start", moment(thaw_start), label);
}

function proposal(dinner) {
  const where = dinner.place ? ` · ${dinner.place}` : "";
  const is_past = dinner.keep_until < dinner.eat.slice(0, 10);
  const plan = `#/bag/${dinner.ids.join(",")}/${dinner.eat}`;
  return el("li", {},
    el("p", { class: "when" }, el("time", { dateTime: dinner.eat }, moment(dinner.eat))),
    el("p", { class: "dish" }, dish_name(dinner)),
    el("p", {}, count("freezer.bags", dinner.ids.length), " · ", count("freezer.serves", dinner.servings), where,
      " · ", keep_until(dinner), is_past ? [" · ", el("strong", { class: "past" }, say("freezer.past_then"))] : null),
    el("p", { class: "thaw" }, thaw_words(dinner)),
    [...new Set(dinner.bags.map(allergens))].map((words) => el("p", { class: "soft" }, words)),
    el("p", {}, el("a", { href: plan, class: "go" }, say("freezer.plan_it", dinner.dish))));
}

/** "RAW Pork shoulder (use by 20 Nov 2026)" */
function dated(bag) {
  return `${bag.raw ? `${say("bag.raw")} ` : ""}${bag.dish} (${keep_until(bag)})`;
}

/** What is not proposed, and why. */
function rest_of(answer) {
  const { nothing_thawed_by, after_date, days_left, too_many, small, too_few, avoided, past, serves } = answer;
  const texts = nothing_thawed_by.map((eat) => say("freezer.nothing_thawed", moment(eat)));
  texts.push(...after_date.map(({ eat, bags }) => say("freezer.after_date", moment(eat), bags.map(dated).join("; "))));
  const add = (holds, words) => holds && texts.push(words());
  add(days_left > 0, () => count("freezer.more_days", days_left, serves));
  add(too_many > 0, () => count("freezer.too_many", too_many));
  add(small.length > 0, () => say("freezer.small", small.join("; ")));
  add(too_few.length > 0, () => say("freezer.too_few", serves, too_few.join("; ")));
  add(avoided.length > 0, () => say("freezer.avoided", avoided.join("; ")));
  add(past > 0, () => count("freezer.past_not_proposed", past));
  return [...texts, ...(answer.proposals.length > 0 ? [say("plan.local_rules")] : [])];
}

function asked_for(fields, without) {
  const serves = Number.parseInt(fields.serves.value, 10);
  return {
    days: Number.parseInt(fields.days.value, 10) || 5,
    at: fields.at.value || "18:30",
    past: fields.past.checked,
    ...(serves > 0 ? { serves } : {}),
    ...(without ? { without } : {}),
  };
}

/** What is proposed, in rows of a list; `avoided` is what the guest may not eat. */
function rows(answer, avoided) {
  const none = answer.proposals.length === 0 ? [el("li", {}, say("freezer.no_dinners"))] : [];
  const promise = avoided && answer.proposals.length > 0 ? [say("freezer.no_promise")] : [];
  const rest = [...promise, ...rest_of(answer)].map((text) => el("li", { class: "soft" }, text));
  return [...none, ...answer.proposals.map(proposal), ...rest];
}

/** A form for days, time and people, and what is proposed below it. `without()` gives what a guest may not eat.
 *  \returns {box, forget}: forget() takes the proposals away, those on their way too, where the guest is another */
export function dinners(desk, without) {
  const fields = {
    days: el("input", { type: "number", min: 1, max: 60, value: 5, required: true, inputMode: "numeric" }),
    at: el("input", { type: "time", value: "18:30", required: true }),
    serves: el("input", { type: "number", min: 1, max: 999, inputMode: "numeric" }),
  };
  const past = tick(say("freezer.past_best"));
  fields.past = past.querySelector("input");
  const list = el("ol", { class: "dinners", "aria-live": "polite" });
  const questions = turns();
  const forget = () => {
    list.replaceChildren();
    return questions.begin();
  };
  const propose = async (event) => {
    event.preventDefault();
    const is_last = forget();
    const avoided = without();
    try {
      const answer = await desk.ask("POST", "/api/freezer/next", asked_for(fields, avoided));
      if (is_last()) {
        desk.tell(answer.messages);
        list.replaceChildren(...rows(answer, avoided));
      }
    } catch (failure) {
      is_last() && desk.tell(failure);
    }
  };
  const box = el("form", { class: "next", onsubmit: propose },
    el("div", { class: "row" }, field(say("freezer.days"), fields.days), field(say("freezer.at"), fields.at),
      field(say("freezer.people"), fields.serves, { help: say("freezer.people_help") })),
    past, el("button", { class: "button plain" }, say("freezer.propose")), list);
  return { box, forget };
}
