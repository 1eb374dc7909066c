// Answers that come late: what is shown is always of the last question, and of the view that is open.

import assert from "node:assert/strict";
import { disk_full, hold } from "../late.js";

/** Dinners that were asked for before there was a guest are not proposed to the guest. */
async function dinners_of_another_guest(page) {
  const next = await hold(page, "**/api/freezer/next");
  const proposals = page.locator(".dinners li");
  const without = page.getByLabel("A guest may not eat");
  await page.getByRole("button", { name: "Propose dinners" }).click();
  await next.asked(0);
  await without.fill("milk");
  await without.press("Enter");
  await page.getByText("is no promise that it is not there").waitFor();
  await next.answer(0);
  assert.equal(await proposals.count(), 0, "they are of no guest");
  await page.getByRole("button", { name: "Propose dinners" }).click();
  await next.answer(1);
  await proposals.first().waitFor();
  await page.locator(".dinners").getByText("is no promise that it is not there").waitFor();
  await without.fill("mil");
  assert.equal(await proposals.count(), 0, "the guest is another by now");
  await without.fill("");
  await without.press("Enter");
  await page.getByRole("heading", { name: "Soonest first" }).waitFor();
  await next.end();
}

/** While it is asked what a guest may eat, no list stands there that reads as the guest's; nor where nobody can say it. */
async function list_of_another_guest(page) {
  const list = await hold(page, "**/api/freezer");
  const without = page.getByLabel("A guest may not eat");
  await without.fill("milk");
  await without.blur();
  await list.asked(0);
  assert.equal(await page.locator(".inside").getAttribute("aria-busy"), "true");
  assert.equal(await page.locator(".bag-row").first().isVisible(), false, "the list of before is of no guest");
  await list.answer(0, disk_full);
  await page.getByText("The disk is full.").waitFor();
  assert.equal(await page.locator(".bag-row").count(), 0);
  await without.fill("");
  await without.blur();
  await list.answer(1);
  await page.locator(".bag-row").first().waitFor();
  assert.equal(await page.locator(".inside").getAttribute("aria-busy"), null);
  await list.end();
}

function two_dishes([first, ...others]) {
  return [first, others.find(({ dish }) => dish !== first.dish)];
}

/** The second of two bags that were asked for stays, and the second of two times to eat it. */
async function bag_and_plan(world, page, bags) {
  await world.go(page, "bag");
  const read = await hold(page, "**/api/read");
  const typed = page.getByLabel("Id or words of the dish");
  for (const { id } of bags) {
    await typed.fill(id);
    await typed.press("Enter");
  }
  await read.answer(1);
  await page.getByRole("heading", { name: bags[1].dish }).waitFor();
  await read.answer(0);
  assert.equal(await page.locator(".bag-answer .id code").textContent(), bags[1].id);
  await read.end();
  const plan = await hold(page, "**/api/plan");
  for (const eat of ["2026-12-05T18:30", "2026-12-12T12:00"]) {
    await page.getByLabel("To be eaten on").fill(eat);
    await page.getByRole("button", { name: "Show when to start" }).click();
  }
  await plan.answer(1);
  await page.locator(".plan h3", { hasText: "12 Dec 2026" }).waitFor();
  await plan.answer(0);
  assert.match(await page.locator(".plan h3").first().textContent(), /12 Dec 2026/);
  await plan.end();
}

/** What a view was refused that is left by now is not said of the next; the next is not emptied by one before it. */
async function left_view(world, page) {
  await world.go(page, "archive");
  const list = await hold(page, "**/api/freezer");
  await world.go(page, "freezer");
  await list.asked(0);
  await world.go(page, "archive");
  await list.answer(0, disk_full);
  assert.equal(await page.locator("#said").textContent(), "");
  await list.end();
  await world.go(page, "day/1");
  await page.locator(".text-pane textarea").press("Control+End");
  const draft = await hold(page, "**/api/draft/*");
  await page.keyboard.type("# packed in the rain\n");
  await page.evaluate(() => { location.hash = "#/freezer"; });
  await draft.asked(0);
  await page.evaluate(() => { location.hash = "#/archive"; });
  await draft.answer(0);
  await page.locator(".view.archive .printed").first().waitFor();
  assert.equal(await page.locator(".view.archive").count(), 1);
  await draft.end();
}

/** The PDF that was asked for bears the name of what it is, whatever is chosen by now. */
async function print_of_another_wish(world, page) {
  await world.go(page, "print/1");
  const save = page.getByRole("button", { name: "Save them" });
  await save.waitFor(); // the day was asked for: what is held is the save
  const saved = await hold(page, "**/api/day/1");
  await save.click();
  await saved.asked(0);
  assert.ok(await save.isDisabled(), "pressed again it would meet its own save");
  await saved.answer(0);
  await save.waitFor({ state: "detached" });
  await saved.end();
  const spool = await hold(page, "**/api/spool");
  await page.getByRole("button", { name: "Make the PDF" }).click();
  await spool.asked(0);
  await page.getByLabel("Cook-day cards").check();
  await spool.answer(0);
  const link = page.locator("#said").getByRole("link", { name: "Save the PDF" });
  await link.waitFor();
  assert.equal(await link.getAttribute("download"), "orchard-day-labels.pdf");
  assert.equal(await page.locator(".spooled").textContent(), "", "it is no answer to what is chosen now");
  await spool.end();
}

/** What asks about the draft of a day stands in no other view. */
async function draft_of_left_day(world, page) {
  await page.reload(); // which knows nothing any longer of what can be undone
  await world.go(page, "freezer");
  const day = await hold(page, "**/api/day/1");
  await page.evaluate(() => { location.hash = "#/day/1"; });
  await day.asked(0);
  await world.go(page, "archive");
  await day.answer(0);
  assert.equal(await page.locator("dialog").count(), 0);
  await day.end();
}

/** A second press while the first is on its way notes nothing; one behind it says so, and leaves the way back. */
async function noted_twice(world, page, { id }) {
  await world.go(page, `bag/${id}`);
  const out = page.locator(".noting").getByRole("button", { name: "Take out" });
  await out.waitFor();
  const note = await hold(page, "**/api/freezer/note");
  const read = await hold(page, "**/api/read"); // so that the button stays
  await out.dblclick();
  await note.answer(0);
  await page.locator("#said").getByText("Taken out:").waitFor();
  await out.click();
  await note.answer(1); // and not of the double click
  await page.locator("#said").getByText("was noted already").waitFor();
  await note.end();
  await read.end();
  await page.locator("#said").getByRole("button", { name: "Undo" }).click();
  await page.locator("#said").getByText("Taken back:").waitFor();
}

/** A page that stands open over midnight learns it with the next list. */
async function next_day(world, page) {
  await world.go(page, "day/all");
  await page.getByRole("button", { name: "New day" }).waitFor();
  await page.route("**/api/days", async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, json: { ...await response.json(), today: "2026-10-18" } });
  });
  await page.getByRole("button", { name: "New day" }).click();
  assert.equal(await page.getByRole("dialog").getByLabel("Packing day").inputValue(), "2026-10-18");
  await page.getByRole("dialog").getByRole("button", { name: "Cancel" }).click();
  await page.unroute("**/api/days");
}

export async function walk(world) {
  world.sample();
  world.expect_in_console(/status of 500/);
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"));
  const desk = await world.desk();
  const page = await world.view(desk, "freezer");
  await page.locator(".bag-row").first().waitFor();
  await dinners_of_another_guest(page);
  await list_of_another_guest(page);
  const bags = two_dishes(JSON.parse(await world.command("freezer", "list", "--json")));
  await bag_and_plan(world, page, bags);
  await noted_twice(world, page, bags[0]);
  await next_day(world, page);
  await left_view(world, page);
  await draft_of_left_day(world, page);
  await print_of_another_wish(world, page);
}
