// A phone of the house asks to be let in: under a name, by the code that the computer shows. The words stand in the
// page in every language, for the set one is not known to who is not let in.

import { keep_key } from "./key.js";

async function asked(name, code) {
  try {
    return await fetch("/api/pair", {
      method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ code, name }),
    });
  } catch {
    return null;
  }
}

/** Whether this page stands in a browser of the computer itself, and not of a phone. */
export function is_at_computer() {
  return ["127.0.0.1", "localhost"].includes(location.hostname);
}

/** Leaves the words of the phone's language alone, where it is one of ours. */
function speak_as_phone(section) {
  const language = navigator.language.slice(0, 2);
  const words = [...section.querySelectorAll("[lang]")];
  if (words.some((one) => one.lang === language)) {
    words.forEach((one) => { one.hidden = one.lang !== language; });
    document.documentElement.lang = language;
  }
}

/** Says why it was not let in. */
async function say_why(refused, response) {
  const answer = await response?.json().catch(() => null);
  const reasons = [...refused.querySelectorAll("[data-of]")];
  const fits = (status) => (one) => one.dataset.of.split(" ").includes(status);
  const why = reasons.find(fits(response ? String(response.status) : "none")) ?? reasons.find(fits("other"));
  reasons.forEach((one) => { one.hidden = one !== why; });
  refused.querySelector("pre").textContent = (answer?.messages ?? []).map(({ text }) => text).join("\n");
  refused.hidden = false;
}

/** Shows the form until this phone is let in. \param code of the link that was photographed, or null */
export function let_in(code) {
  const section = document.getElementById("pair");
  const form = section.querySelector("form");
  const refused = document.getElementById("pair-refused");
  form.elements.code.value = code ?? "";
  speak_as_phone(section);
  for (const words of section.querySelectorAll(".unencrypted")) {
    words.hidden = location.protocol === "https:";
  }
  section.hidden = false;
  form.elements.name.focus();
  return new Promise((done) => {
    form.addEventListener("submit", async (event) => {
      event.preventDefault();
      refused.hidden = true;
      const response = await asked(form.elements.name.value, form.elements.code.value);
      if (response?.ok) {
        keep_key((await response.json()).key);
        section.hidden = true;
        done();
      } else {
        await say_why(refused, response);
      }
    });
  });
}
