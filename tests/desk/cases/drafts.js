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

async function killed_while_typing(world, desk, file) {
  const page = await world.view(desk, "day/2");
  await area(page).waitFor();
  const kept = page.waitForResponse((response) => response.url().includes("/api/draft/") && response.ok());
  await type_at_the_end(page, "# half a thought");
  await kept;
  await desk.kill();
  await page.context().close();
  assert.ok(!fs.readFileSync(file, "utf8").includes("half a thought"), "it is a draft, and no day");
  const again = await world.desk();
  const other = await world.view(again, "day/2");
  await other.getByRole("button", { name: "Go on with the draft" }).click();
  await until(async () => (await area(other).inputValue()).includes("# half a thought"), "the draft is there");
}

export async function walk(world) {
  world.sample();
  // The browser says so of each answer that refuses, and of a program that is gone.
  world.expect_in_console(/status of 409|ERR_CONNECTION_REFUSED|ERR_CONNECTION_RESET|ERR_EMPTY_RESPONSE|ERR_INCOMPLETE_CHUNKED_ENCODING/);
  world.sample("windfall-day.toml"); // the second by name
  const desk = await world.desk();
  await two_tabs(world, desk, path.join(world.days, "orchard-day.toml"));
  await killed_while_typing(world, desk, path.join(world.days, "windfall-day.toml"));
}
