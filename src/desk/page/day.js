// The view Day: write a day of cooking in a form and as text, and see its prints.

import { el } from "./ui.js";

export async function show(main, desk) {
  main.append(el("ul", {}, (desk.state.days ?? []).map(({ name }) => el("li", {}, name))));
}
