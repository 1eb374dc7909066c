// Labels are printed again on a sheet whose first cell is gone, the freezer's door gets its list, and the archive is
// kept safe.

import assert from "node:assert/strict";
import fs from "node:fs";
import { read_greymap } from "../film.js";

async function again(page, world) {
  await world.go(page, "archive");
  await page.locator(".printed button").first().click();
  await page.getByRole("checkbox", { name: "Cell 1, there" }).click();
  const [pdf] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save as PDF" }).click()]);
  assert.ok(fs.readFileSync(await pdf.path()).subarray(0, 5).equals(Buffer.from("%PDF-")));
  const file = world.file("again.pdf");
  fs.copyFileSync(await pdf.path(), file);
  await world.tool("pdftoppm", "-gray", "-r", "50", "-f", "1", "-l", "1", "-singlefile", file, world.file("again"));
  const { width, grey } = read_greymap(world.file("again.pgm"));
  // At 50 dots per inch the first cell lies between 8 and 208 across, 25 and 125 down.
  const ink = (left) => grey.reduce((sum, value, at) => sum + (value < 128 && at % width >= left && at % width < left + 180 &&
    at / width >= 30 && at / width < 120 ? 1 : 0), 0);
  assert.equal(ink(15), 0, "the first cell is gone");
  assert.ok(ink(230) > 0, "the second is printed on");
}

/** What no bag is called is refused in the page's own way, and commas alone ask for nothing. */
async function nothing_to_print(page) {
  const typed = page.getByLabel("Ids, or words of a dish");
  const again = page.getByRole("button", { name: "Print again", exact: true }).last();
  await typed.fill(" , ");
  await again.click();
  assert.ok(await typed.evaluate((field) => !field.validity.valid), "the field is to be filled in");
  assert.equal(await page.locator(".beside .reprint").count(), 0, "and nothing is offered");
  await typed.fill("medlars");
  await again.click();
  await page.locator(".beside .reprint").getByRole("button", { name: "Save as PDF" }).click();
  const said = page.locator("#said li.error");
  await said.waitFor();
  const words = (await said.textContent()).replace(/\s+/g, " ");
  assert.match(words, /^Error no bag in the freezer is called "medlars"/);
  assert.ok(!/hint:|error:/.test(words), words);
  assert.equal(await said.locator(".hint").count(), 1, "what comes near stands as a hint");
}

async function kept_safe(page, world) {
  const before = fs.readdirSync(world.days).length;
  await page.getByRole("button", { name: "Make a backup" }).click();
  await page.locator(".done", { hasText: /\S/ }).waitFor();
  assert.ok(fs.readdirSync(world.days).length > before, "a copy stands beside the days");
}

async function door_list(page, world) {
  await world.go(page, "freezer");
  const [pdf] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save as PDF" }).click()]);
  const file = world.file("door.pdf");
  fs.copyFileSync(await pdf.path(), file);
  await world.tool("pdftotext", file, world.file("door.txt"));
  const text = fs.readFileSync(world.file("door.txt"), "utf8");
  for (const { dish } of JSON.parse(await world.command("freezer", "list", "--json"))) {
    assert.ok(text.replace(/\s+/g, " ").includes(dish), `the list for the door has ${dish}`);
  }
}

export async function walk(world) {
  world.sample();
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"),
    "--stock", "letter-2x5-4x2in");
  const page = await world.view(await world.desk(), "archive");
  await kept_safe(page, world);
  await again(page, world);
  await nothing_to_print(page);
  await door_list(page, world);
}
