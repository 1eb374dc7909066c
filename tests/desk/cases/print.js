// A day is printed as a PDF by a double click: what is in the archive then was printed once.

import assert from "node:assert/strict";
import fs from "node:fs";
import { until } from "../world.js";

/** An answer is lost on its way: the same wish has the same ticket again, and another wish one of its own. */
async function lost_answer(world, desk) {
  const page = await world.view(desk, "print/1");
  const press = page.getByRole("button", { name: "Make the PDF" });
  const tickets = [];
  await page.route("**/api/spool", async (route) => {
    tickets.push(route.request().postDataJSON().ticket);
    await route.abort();
  });
  const lose = async () => {
    const asked = tickets.length;
    await press.click();
    await until(async () => tickets.length > asked && await press.isEnabled(), "the answer is lost");
  };
  await lose();
  await lose();
  await page.getByRole("checkbox", { name: "A trial, not for food" }).check();
  await lose();
  await page.getByRole("checkbox", { name: "A trial, not for food" }).uncheck();
  await lose();
  const [first, again, other, back] = tickets;
  assert.equal(again, first, "pressed again");
  assert.notEqual(other, first, "another print is asked for");
  assert.equal(back, first, "the first wish again");
  await page.context().close();
}

/** The same of what is printed again from the archive. */
async function lost_reprint(world, page) {
  const tickets = [];
  await page.route("**/api/reprint", async (route) => {
    tickets.push(route.request().postDataJSON().ticket);
    await route.abort();
  });
  await page.evaluate(() => { performance.now = () => Date.now() * 1000; }); // no press is at once behind another
  await page.locator(".printed").first().getByRole("button").click();
  const press = page.locator(".reprint .delivery").getByRole("button", { name: "PDF" }).first();
  for (const count of [1, 2]) {
    await press.click();
    await until(() => tickets.length === count, "the answer is lost");
    await page.getByText("The program does not answer.").waitFor();
    await page.locator("#said").getByRole("button", { name: "Close" }).click();
  }
  assert.equal(tickets[1], tickets[0], "pressed again");
  await page.unroute("**/api/reprint");
}

/** What is no cell of the sheet is taken for the nearest, and the field shows which. */
async function first_cell(page) {
  const field = page.getByLabel("Begin at cell");
  const checked = [];
  page.on("request", (request) => request.url().endsWith("/api/sheet") && checked.push(request.postDataJSON().look.first_cell));
  for (const [typed, taken] of [["-3", 1], ["0", 1], ["3.7", 3], ["999", 10], ["1", 1]]) {
    await field.fill(typed);
    await field.blur();
    assert.equal(await field.inputValue(), String(taken), `${typed} is no cell`);
    await until(() => (checked.at(-1) ?? 1) === taken, `cell ${taken} is asked for`);
  }
}

export async function walk(world) {
  world.sample();
  world.expect_in_console(/ERR_FAILED/); // answers that the case loses
  const desk = await world.desk();
  await lost_answer(world, desk);
  const page = await world.view(desk, "print/1");
  const sheet = page.locator(".sheet-pane img").first();
  await until(() => sheet.evaluate((image) => image.complete && image.naturalWidth > 0), "the sheet is drawn");

  await first_cell(page);
  const spooled = [];
  page.on("request", (request) => request.url().endsWith("/api/spool") && spooled.push(request.postDataJSON().ticket));
  await page.getByRole("button", { name: "Make the PDF" }).dblclick();
  const link = page.getByRole("link", { name: "Save the PDF" });
  await link.waitFor();
  const [pdf] = await Promise.all([page.waitForEvent("download"), link.click()]);
  assert.ok(fs.readFileSync(await pdf.path()).subarray(0, 5).equals(Buffer.from("%PDF-")));
  await page.getByText("100 %").first().waitFor();
  assert.equal(new Set(spooled).size, 1, "two clicks have one ticket");

  await world.go(page, "archive");
  await page.locator(".printed").first().waitFor();
  assert.equal(await page.locator(".printed").count(), 1, "one print");
  await lost_reprint(world, page);
  assert.ok(!(await page.locator(".printed").textContent()).includes("2 times"), "printed once");
  const bags = JSON.parse(await world.command("freezer", "list", "--json"));
  assert.equal(bags.length, 14, "the sample's bags are in the freezer, each once");

  // The program itself gives a ticket's first answer again, whoever sends it twice.
  const answers = await page.evaluate(async () => {
    const headers = { "Content-Type": "application/json", "Thawslip-Key": sessionStorage.getItem("thawslip-key") };
    const ask = async (method, path, body) => (await fetch(path, { method, headers, body: body && JSON.stringify(body) })).json();
    const { etag } = await ask("GET", "/api/day/1");
    const wish = { number: 1, etag, what: "cook_day_cards", look: {}, printer: null, ticket: "walk-".padEnd(32, "0") };
    return [await ask("POST", "/api/spool", wish), await ask("POST", "/api/spool", wish)];
  });
  assert.ok(answers[0].done, JSON.stringify(answers[0]));
  assert.deepEqual(answers[0], answers[1]);
  await world.go(page, "freezer");
  await page.getByLabel("Dish or place").fill("no such dish");
  await page.getByText("Nothing in the freezer fits that.").waitFor();
  await world.go(page, "archive");
  await page.locator(".printed").nth(1).waitFor();
  const printed = await page.locator(".printed").allTextContents();
  assert.equal(printed.length, 2, "the labels, and the cards");
  assert.ok(!printed.some((text) => text.includes("times")), "each printed once");
}
