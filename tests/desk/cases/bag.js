// A bag is read by camera, from a photograph, by its id and by words; it is noted as taken out, seen so in the
// freezer, taken back, and planned for a dinner.

import assert from "node:assert/strict";
import fs from "node:fs";
import { read_greymap, write_film } from "../film.js";
import { until } from "../world.js";

// The first label of the sheet: 4 x 2 in, 5/32 in from the left and 1/2 in from the top; at 200 dots per inch.
const first_label = ["-x", "31", "-y", "100", "-W", "800", "-H", "400"];

async function print_labels(world) {
  world.sample();
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"),
    "--stock", "letter-2x5-4x2in");
  const page = ["-gray", "-r", "200", "-f", "1", "-l", "1", "-singlefile", ...first_label, world.file("labels.pdf")];
  await world.tool("pdftoppm", ...page, world.file("label"));
  await world.tool("pdftoppm", "-png", ...page, world.file("label"));
  write_film(read_greymap(world.file("label.pgm")), world.file("camera.y4m"));
  return JSON.parse(await world.command("freezer", "list", "--json"));
}

const answer = (page) => page.locator(".bag-answer");

async function by_camera(page, bags) {
  await page.getByRole("button", { name: "Start the camera" }).click();
  await answer(page).waitFor();
  const id = await answer(page).locator(".id code").textContent();
  const bag = bags.find((one) => one.id === id);
  assert.ok(bag, `the camera has read ${id}`);
  assert.match(await answer(page).locator("h2").textContent(), new RegExp(bag.dish));
  await page.locator(".camera").waitFor({ state: "hidden" });
  assert.equal(await page.locator("video").evaluate((video) => video.srcObject), null, "the camera is off again");
  return bag;
}

async function by_photo(page, world, bag) {
  await page.reload();
  await page.locator("input[type=file]").setInputFiles(world.file("label.png"));
  await answer(page).waitFor();
  assert.equal(await answer(page).locator(".id code").textContent(), bag.id);
}

/** A picture without a code is refused, and the bag of before is shown no longer. */
async function no_photo(page, world) {
  fs.writeFileSync(world.file("words.png"), "no picture");
  await page.locator("input[type=file]").setInputFiles(world.file("words.png"));
  await page.getByText("neither a PNG nor a JPEG").waitFor();
  assert.equal(await answer(page).count(), 0, "no bag is shown that nobody asked for");
}

async function by_typing(page, bag, bags) {
  await page.reload();
  const typed = page.getByLabel("Id or words of the dish");
  await typed.fill(bag.id.toLowerCase());
  await typed.press("Enter");
  await answer(page).waitFor();
  const said = await answer(page).textContent();
  for (const words of ["Thaw", "Cook", "until 74 °C (165 °F) in the middle", "Caution:", "Local food-safety rules come first."]) {
    assert.ok(said.includes(words), `what to do says: ${words}`);
  }
  await typed.fill("s"); // smoky, squash, soup…
  await typed.press("Enter");
  const choices = page.locator(".choices-of-bags li");
  await choices.first().waitFor();
  const fitting = bags.filter(({ dish }) => /(^|\s)s/i.test(dish));
  assert.equal(await choices.count(), fitting.length, "all that the words fit are asked about");
  await choices.first().getByRole("link").click();
  await page.getByRole("heading", { name: fitting[0].dish }).waitFor();
}

async function noted(page, world, bag) {
  await world.go(page, `bag/${bag.id}`);
  await answer(page).getByRole("button", { name: "Take out" }).click();
  await answer(page).getByRole("button", { name: "Put back in" }).waitFor();
  await world.go(page, "freezer");
  await page.locator(".bag-row").first().waitFor();
  assert.equal(await page.getByText(bag.id).count(), 0, "what is out is not inside");
  await page.getByLabel("Also what is no longer inside").check();
  const row = page.locator(".bag-row", { hasText: bag.id });
  await row.getByText("taken out").first().waitFor();
  assert.match(await world.command("freezer", "history", bag.id), /out/, "the archive has it");
  await page.getByRole("button", { name: "Take the last change back" }).click();
  await row.getByRole("button", { name: /^Take out/ }).waitFor();
}

/** The next bag moves under the pointer between the two presses. */
async function slow_double_click(page) {
  await page.getByLabel("Also what is no longer inside").uncheck();
  const rows = page.locator(".bag-row");
  await until(async () => await page.getByText("taken out").count() === 0, "what is out is hidden");
  const before = await rows.count();
  const { x, y, width, height } = await rows.first().getByRole("button", { name: /^Take out/ }).boundingBox();
  await page.mouse.click(x + width / 2, y + height / 2);
  await until(async () => await rows.count() === before - 1, "one is taken out");
  await page.mouse.click(x + width / 2, y + height / 2);
  await page.locator("#said").getByRole("button", { name: "Undo" }).click();
  await until(async () => await rows.count() === before, "no other was, and what is said can be taken back");
}

async function moved(page, world, bag) {
  const row = page.locator(".bag-row", { hasText: bag.id });
  await row.getByRole("checkbox").check();
  const bar = page.locator(".chosen");
  await bar.getByLabel("Move to").fill("cellar, shelf 2");
  await bar.getByRole("button", { name: "Move", exact: true }).click();
  await row.getByText("cellar, shelf 2").waitFor();
  const stands_at = (place) => page.locator(place).evaluate((node) => node === document.activeElement);
  await until(() => stands_at(".chosen h2"), "who moved it stands beside what is chosen");
  await bar.getByRole("button", { name: "Choose none" }).click();
  await until(() => stands_at("main h1"), "nothing is chosen");
  await page.locator("#said").getByRole("button", { name: "Close" }).press("Enter");
  await until(() => stands_at("main h1"), "nothing is said any longer");
  await page.getByLabel("Lies in").selectOption("cellar, shelf 2");
  await until(async () => await page.locator(".bag-row").count() === 1, "one bag lies there");
  await page.getByLabel("Lies in").selectOption("");
}

async function avoided(page, bags) {
  const allergen = bags.flatMap(({ contains }) => contains)[0];
  const without = page.getByLabel("A guest may not eat");
  await without.fill(allergen);
  await without.press("Enter");
  await page.getByText("is no promise that it is not there").waitFor();
  await page.getByRole("heading", { name: `Named (${allergen}), so not for this guest` }).waitFor();
  const named = bags.filter(({ contains, added }) => [...contains, ...added].includes(allergen));
  const part = page.locator(".part", { hasText: `Named (${allergen})` }).first();
  await until(async () => await part.locator(".bag-row").count() === named.length, "every bag is named that has it");
  assert.ok(!/free from|safe for/i.test(await page.locator("main").textContent()), "nothing is promised");
  await without.fill("");
  await without.press("Enter");
  await page.getByText("is no promise that it is not there").waitFor({ state: "detached" });
}

async function dinner(page) {
  await page.getByRole("button", { name: "Propose dinners" }).click();
  const proposals = page.locator(".dinners li:has(.dish)");
  await proposals.first().waitFor();
  const words = await proposals.first().textContent();
  assert.match(words, /Start thawing|Cook it from frozen|Thaw it as its label says/);
  await proposals.first().getByRole("link").click();
  await page.locator(".plan table.events").waitFor();
  const picture = page.locator("img.timeline").first();
  await until(() => picture.evaluate((image) => image.complete && image.naturalWidth > 0), "the plan is drawn");
  const [calendar] = await Promise.all([page.waitForEvent("download"),
    page.getByRole("button", { name: "Save for the calendar" }).click()]);
  const text = fs.readFileSync(await calendar.path(), "utf8");
  assert.ok(text.startsWith("BEGIN:VCALENDAR\r\n"), "RFC 5545, section 3.4: a calendar begins so");
}

/** What was typed into the address may have a lone "%": it is no id, and the page goes on. */
async function lone_percent(world, page) {
  await world.go(page, "bag/100%");
  await page.locator("#said .error").waitFor();
  await page.goto(`${page.url().split("#")[0]}#open=100%`);
  await page.reload();
  await page.locator("h1").first().waitFor();
  assert.match(await page.title(), /Thawslip/);
}

export async function walk(world) {
  const bags = await print_labels(world);
  await world.open_browser({ camera: world.file("camera.y4m") });
  const desk = await world.desk();
  const page = await world.view(desk, "bag");
  const bag = await by_camera(page, bags);
  await by_photo(page, world, bag);
  world.expect_in_console(/status of 422/);
  await no_photo(page, world);
  await by_typing(page, bag, bags);
  await noted(page, world, bag);
  await slow_double_click(page);
  await moved(page, world, bag);
  await avoided(page, bags);
  await dinner(page);
  await lone_percent(world, page);
}
