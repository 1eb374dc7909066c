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

export async function walk(world) {
  world.sample();
  world.expect_in_console(/status of 500/);
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"));
  const desk = await world.desk();
  const page = await world.view(desk, "freezer");
  await page.locator(".bag-row").first().waitFor();
  await dinners_of_another_guest(page);
  await list_of_another_guest(page);
}
