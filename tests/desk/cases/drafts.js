// Nothing that was written is lost: of two tabs, of another program that saves the same day, of a program that is
// ended while somebody types.

import assert from "node:assert/strict";
import fs from "node:fs";
import path from "node:path";
import { until } from "../world.js";

const area = (page) => page.locator(".text-pane textarea");

async function type_at_the_end(page, text) {
  await area(page).focus();
  await page.keyboard.press("Control+End");
  await page.keyboard.type(text);
}

/** The second tab saves after the first: both texts are shown, and the one that is left stays one step back. */
async function two_tabs(world, desk, file) {
  const first = await world.view(desk, "day/1");
  const second = await world.view(desk, "day/1");
  await area(first).waitFor();
  await area(second).waitFor();
  await type_at_the_end(first, "# the first tab\n");
  await first.keyboard.press("Control+S");
  await until(() => fs.readFileSync(file, "utf8").includes("# the first tab"), "the first tab has saved");
  await type_at_the_end(second, "# the second tab\n");
  await second.keyboard.press("Control+S");
  const dialog = second.locator("dialog[open]");
  await dialog.waitFor();
  const texts = await dialog.locator("textarea").evaluateAll((areas) => areas.map(({ value }) => value));
  assert.ok(texts.some((text) => text.includes("# the second tab")) && texts.some((text) => text.includes("# the first tab")));
  assert.ok(!fs.readFileSync(file, "utf8").includes("# the second tab"), "nothing is written over unasked");
  await dialog.getByRole("button", { name: "Save mine" }).click();
  await until(() => fs.readFileSync(file, "utf8").includes("# the second tab"), "mine is saved");
  await second.keyboard.press("Control+Z");
  await until(async () => (await area(second).inputValue()).includes("# the first tab"), "the other is one step back");
  await first.context().close();
  await second.context().close();
}

const servings = (page) => page.getByLabel("Servings of a bag").first();

/** What is half written, is left, and is then saved as something else: the draft of before is gone. */
async function draft_of_before(world, desk, file) {
  const page = await world.view(desk, "day/1");
  await servings(page).waitFor();
  const kept = page.waitForResponse((response) => response.url().includes("/api/draft/") && response.ok());
  await servings(page).fill("9");
  await kept;
  await world.go(page, "print/1");
  await page.getByRole("button", { name: "Save them" }).waitFor();
  await page.goBack();
  await servings(page).fill("7");
  await until(async () => /servings\s*=\s*7/.test(await area(page).inputValue()), "the text has it");
  await page.keyboard.press("Control+S");
  await until(() => /servings\s*=\s*7/.test(fs.readFileSync(file, "utf8")), "it is saved");
  await world.go(page, "print/1");
  await page.locator(".sheet-pane img").first().waitFor();
  assert.equal(await page.getByRole("button", { name: "Save them" }).count(), 0, "nothing is left to be saved");
  await page.context().close();
}

/** An allergen that stands in its box is taken by saving, as it is by Enter. */
async function saved_from_the_box(world, desk, file) {
  const page = await world.view(desk, "day/1");
  await page.getByLabel("Contains", { exact: true }).first().fill("mustard");
  await page.keyboard.press("Control+S");
  await until(() => /contains\s*=.*"mustard"/.test(fs.readFileSync(file, "utf8")), "it is saved");
  const made = page.getByLabel("Packing day");
  await made.fill("0026-10-18");
  await made.blur();
  await until(async () => await made.inputValue() === "2026-10-18", "a year in two figures is one of this century");
  await until(async () => /made\s*=\s*2026-10-18/.test(await area(page).inputValue()), "and so in the text");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await until(() => fs.readFileSync(file, "utf8").includes("2026-10-18"), "and in the file");
  await page.context().close();
}

/** What stands in the box is in the text, and in the draft, before it is left or taken by Enter. */
async function kept_from_the_box(world, desk) {
  const page = await world.view(desk, "day/1");
  const box = page.getByLabel("May contain", { exact: true }).first();
  await box.fill("sesame");
  await until(async () => /may_contain\s*=.*"sesame"/.test(await area(page).inputValue()), "the text has it");
  await page.getByText("Not saved; kept as a draft").waitFor();
  await page.reload();
  await opened(page);
  assert.match(await area(page).inputValue(), /may_contain\s*=.*"sesame"/, "so has the draft");
  await until(async () => (await page.locator(".picked").allTextContents()).some((text) => text.includes("sesame")), "and the form");
  await page.keyboard.press("Control+S");
  await page.getByText("Saved", { exact: true }).waitFor();
  await page.context().close();
}

/** Waits for the day's text; where a draft of before is asked about, goes on with it. */
async function opened(page) {
  const go_on = page.getByRole("button", { name: "Go on with the draft" });
  await go_on.or(area(page)).first().waitFor();
  if (await go_on.count() > 0) { await go_on.click(); }
  await area(page).waitFor();
}

/** Back and forward while the page asks whether to go on with a draft: form and text agree, and the draft is in both. */
async function left_while_asked(world, desk) {
  const page = await world.view(desk, "day/all");
  await world.go(page, "day/1");
  await opened(page);
  await servings(page).waitFor();
  const kept = page.waitForResponse((response) => response.url().includes("/api/draft/") && response.ok());
  await servings(page).fill("5");
  await kept;
  await page.reload();
  await page.getByRole("button", { name: "Go on with the draft" }).waitFor();
  await page.goBack();
  await page.locator("table.days").waitFor();
  assert.equal(await page.locator("dialog[open]").count(), 0, "nothing is asked of what is left");
  await page.goForward();
  await until(async () => await servings(page).inputValue() === "5", "the form has the draft");
  assert.match(await area(page).inputValue(), /servings\s*=\s*5/, "and so has the text");
  await servings(page).fill("3");
  await until(async () => /servings\s*=\s*3/.test(await area(page).inputValue()), "what is typed into the form comes to the text");
  await page.context().close();
}

/** Two tabs have one draft: one that is left as it is keeps its text, whatever the other has saved. */
async function draft_again(world, desk, file) {
  const first = await world.view(desk, "day/1");
  const second = await world.view(desk, "day/1");
  await opened(first);
  await opened(second);
  const kept = first.waitForResponse((response) => response.url().includes("/api/draft/") && response.ok());
  await type_at_the_end(first, "# of the first alone\n");
  await kept;
  await type_at_the_end(second, "# of the second\n");
  await second.keyboard.press("Control+S");
  await until(() => fs.readFileSync(file, "utf8").includes("# of the second"), "the second has saved");
  await first.keyboard.press("Control+S");
  await first.locator("dialog[open]").getByRole("button", { name: "Cancel" }).click();
  await first.context().close();
  await second.context().close();
  const again = await world.view(desk, "day/1");
  await again.getByRole("button", { name: "Go on with the draft" }).click();
  await until(async () => (await area(again).inputValue()).includes("# of the first alone"), "the first is there");
  await again.context().close();
}

/** Of two tabs that are left unsaved one has the draft, and the other says that it has none. */
async function draft_of_one(world, desk) {
  const first = await world.view(desk, "day/1");
  const second = await world.view(desk, "day/1");
  await opened(first);
  await opened(second);
  await type_at_the_end(first, "# the picking ladder\n");
  await first.getByText("Not saved; kept as a draft").waitFor();
  await type_at_the_end(second, "# the cider press\n");
  await second.getByText("Not saved, and not kept: another tab has a draft").waitFor();
  await second.getByText("This day is open in another tab").waitFor();
  await second.context().close();
  await first.context().close();
  const again = await world.view(desk, "day/1");
  await opened(again);
  assert.match(await area(again).inputValue(), /# the picking ladder/, "nothing is written over");
  await again.keyboard.press("Control+S");
  await again.getByText("Saved", { exact: true }).waitFor();
  await again.context().close();
}

async function killed_while_typing(world, desk, file) {
  const page = await world.view(desk, "day/2");
  await area(page).waitFor();
  const kept = page.waitForResponse((response) => response.url().includes("/api/draft/") && response.ok());
  await type_at_the_end(page, "# half a thought");
  await kept;
  await desk.kill();
  await servings(page).fill("11");
  await page.getByText("The program does not answer").waitFor();
  assert.equal(await servings(page).inputValue(), "11", "what is typed stays where nobody answers");
  await page.getByText("Not saved", { exact: true }).waitFor(); // for it is in no draft
  assert.ok(!fs.readFileSync(file, "utf8").includes("half a thought"), "it is a draft, and no day");
  const again = await world.desk();
  const other = await world.view(again, "day/2");
  await other.getByRole("button", { name: "Go on with the draft" }).click();
  await until(async () => (await area(other).inputValue()).includes("# half a thought"), "the draft is there");
  await other.context().close();
  await from_before(page);
}

/** The page is of the run before, and another answers at its address: it refuses, and nothing typed goes. */
async function from_before(page) {
  await page.route(/\/api\//, (route) => route.fulfill({ status: 401, json: { messages: [] } }));
  await servings(page).fill("12");
  await page.getByText("Thawslip has been started again").waitFor();
  assert.equal(await servings(page).inputValue(), "12", "what is typed stays in a page from before");
  await page.getByText("Not saved", { exact: true }).waitFor();
  await page.context().close();
}

/** A day is taken away after a question, and is there again by Undo; a new one is of a year that there is. */
async function day_removed(world, desk, file) {
  const before = fs.readFileSync(file, "utf8");
  const page = await world.view(desk, "day/all");
  await page.getByRole("button", { name: "Remove orchard-day.toml" }).click();
  await page.locator("dialog[open]").getByRole("button", { name: "Remove", exact: true }).click();
  await page.getByText("Removed: orchard-day.toml").waitFor();
  assert.ok(!fs.existsSync(file), "the file is gone");
  assert.equal(await page.getByText("orchard-day.toml", { exact: true }).count(), 0, "and so is its row");
  await page.getByRole("button", { name: "Undo" }).click();
  await page.getByText("orchard-day.toml", { exact: true }).waitFor();
  assert.equal(fs.readFileSync(file, "utf8"), before, "all of it is there again");
  await page.getByRole("button", { name: "New day" }).click();
  const made = page.locator("dialog[open]").getByLabel("Packing day");
  await made.fill("9999-10-17");
  await page.getByRole("button", { name: "Make it" }).click();
  assert.ok(await made.evaluate((field) => field.matches(":invalid")), "no day is of that year");
  await page.locator("dialog[open]").getByRole("button", { name: "Cancel" }).click();
  await page.context().close();
}

export async function walk(world) {
  world.sample();
  // The browser says so of each answer that refuses, and of a program that is gone.
  world.expect_in_console(/status of 40[19]|ERR_CONNECTION_REFUSED|ERR_CONNECTION_RESET|ERR_EMPTY_RESPONSE|ERR_INCOMPLETE_CHUNKED_ENCODING/);
  world.sample("windfall-day.toml"); // the second by name
  const desk = await world.desk();
  const file = path.join(world.days, "orchard-day.toml");
  await draft_of_before(world, desk, file);
  await saved_from_the_box(world, desk, file);
  await kept_from_the_box(world, desk);
  await two_tabs(world, desk, file);
  await left_while_asked(world, desk);
  await draft_again(world, desk, file);
  await draft_of_one(world, desk);
  await day_removed(world, desk, file);
  await killed_while_typing(world, desk, path.join(world.days, "windfall-day.toml"));
}
