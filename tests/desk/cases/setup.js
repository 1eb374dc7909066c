// A kitchen that has set up nothing yet: the page says so, what is chosen there is kept at once in the settings file,
// and what is no setting is refused and leaves the file as it is.

import assert from "node:assert/strict";
import fs from "node:fs";
import { until } from "../world.js";

const file = (world) => world.file(".config/thawslip/settings.toml");
const text = (world) => fs.readFileSync(file(world), "utf8");

async function begins(page, world) {
  await page.locator("a.go", { hasText: "Set it up" }).click();
  await page.getByRole("button", { name: "Keep all as it is below" }).waitFor();
  assert.ok(!fs.existsSync(file(world)), "nothing is written before something is set");
  await page.getByLabel("Paper", { exact: true }).selectOption("a4");
  await page.locator("#said", { hasText: "Kept" }).waitFor();
  assert.match(text(world), /^paper += "a4"/m);
  assert.equal(await page.getByRole("button", { name: "Keep all as it is below" }).count(), 0);
}

async function keeps_what_else_is_there(page, world) {
  const before = text(world).replace("\n", "\n# of the orchard crew\n");
  fs.writeFileSync(file(world), before);
  await page.getByLabel("Measures").selectOption("metric");
  await page.locator("#said", { hasText: "changed elsewhere" }).waitFor();
  assert.equal(text(world), before, "what was changed elsewhere is not written over");
  await page.getByLabel("Measures").selectOption("metric");
  await page.locator("#said", { hasText: "Kept" }).waitFor();
  assert.equal(text(world).replace(/^units *= "metric"\n/m, ""), before);
}

async function refuses(page, world) {
  const before = text(world);
  const field = page.getByLabel("Temperature in the refrigerator");
  await field.fill("20 °C");
  await field.press("Tab");
  await page.locator(".setup-form .fault", { hasText: "at most 8 °C" }).waitFor();
  assert.equal(await field.inputValue(), "20 °C", "what was typed stays, to be mended");
  assert.equal(text(world), before);
  await field.fill("7 °C");
  await field.press("Tab");
  await page.locator("dialog", { hasText: "turn it colder" }).getByRole("button").click();
  await until(async () => await page.locator(".setup-form .fault").count() === 0, "nothing is wrong any longer");
  assert.equal(await field.inputValue(), "7 °C", "what is doubtful is kept all the same");
}

async function speaks(page, world) {
  await page.getByLabel("Second language on cards").selectOption("es");
  await page.getByLabel("Language of the page").selectOption("de");
  await page.locator("h1", { hasText: "Einrichten" }).waitFor();
  assert.match(text(world), /^language += \["de", "es"\]/m);
  assert.equal(await page.locator("html").getAttribute("lang"), "de");
}

async function says_why_it_cannot_begin(page, world) {
  world.settings("paper = a4\n");
  await page.reload();
  await page.locator("#refused pre", { hasText: /settings\.toml:1:\d+: error: / }).waitFor();
  assert.ok(!await page.locator("#closed").isVisible());
}

export async function walk(world) {
  world.expect_in_console(/status of 4(09|22)/);
  const page = await world.view(await world.desk());
  await begins(page, world);
  await keeps_what_else_is_there(page, world);
  await refuses(page, world);
  await speaks(page, world);
  world.sample();
  assert.match(await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf")), /a4-/);
  await says_why_it_cannot_begin(page, world);
}
