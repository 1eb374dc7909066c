// Answers that are held back, and come when the case lets them.

import { until } from "./world.js";

/** Waits until the page has taken what it was answered before: this is asked for behind it, more than once, for what is
 *  taken may ask for more. */
async function taken(page) {
  await page.evaluate(async () => {
    for (let asked = 0; asked < 5; asked += 1) {
      await (await fetch("/icon.svg", { cache: "no-store" })).text();
      await new Promise(requestAnimationFrame);
    }
  });
}

/** Holds back the answers of a path. `answer(at, how)` gives that of a request, by its number: the program's own, or `how`. */
export async function hold(page, path) {
  const routes = [];
  await page.route(path, (route) => { routes.push(route); });
  return {
    async answer(at, how) {
      const route = await until(() => routes[at], `${path} is asked for`);
      const came = page.waitForEvent("requestfinished", (request) => request === route.request());
      await (how ? route.fulfill(how) : route.continue());
      await came;
      await taken(page);
    },
    asked: (at) => until(() => routes[at], `${path} is asked for`),
    end: () => page.unroute(path),
  };
}

/** What the program says where it cannot do a thing. */
export const disk_full = { status: 500, contentType: "application/json",
  body: JSON.stringify({ messages: [{ severity: "error", text: "The disk is full.", hints: [] }] }) };
