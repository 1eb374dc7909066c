// A cook who has no mouse writes a day, sees a fault at its line and its field, goes back over form and text, and
// sees the label change.

import assert from "node:assert/strict";
import fs from "node:fs";
import path from "node:path";
import { reach, write } from "../keyboard.js";
import { until } from "../world.js";

const text_of = (page) => page.locator(".text-pane textarea").inputValue();

async function begin(page) {
  await reach(page, "New day");
  await page.keyboard.press("Enter");
  await page.locator("dialog[open]").waitFor();
  await reach(page, "Make it");
  await page.keyboard.press("Enter");
  await page.locator(".text-pane textarea").waitFor();
}

async function fill(page) {
  const name = page.getByRole("textbox", { name: "Name of the dish" });
  await name.waitFor(); // the form is there once the text was checked
  await page.locator(".dish-form .sum", { hasText: "3 fields to fill in" }).waitFor(); // and no mistake
  await name.fill("Barley\tand leek pot"); // as from a table
  await write(page, "Servings of a bag", "4");
  await write(page, "Bags", "two");
  await page.locator(".field", { hasText: "Bags" }).getByText("write, for example, 3", { exact: true }).waitFor();
  await page.locator(".text-pane").getByText("write, for example, bags = 3").waitFor(); // there it is the whole line
  await page.keyboard.press("Control+A");
  await page.keyboard.type("2");
  await write(page, /^Kind of food/, "soup or stew");
  await write(page, "Weight of a bag", "1.6 kg");
  await write(page, "Thickness, flat", "30 mm");
  await until(async () => /thickness\s*=\s*"30 mm"/.test(await text_of(page)), "the text has what the form has");
}

/** A wrong figure is marked at its line and at its field; both are one. */
async function fault(page) {
  await page.keyboard.press("Control+A");
  await page.keyboard.type("30 parsecs");
  const field = page.getByLabel("Thickness, flat");
  const described = () => field.evaluate((input) => (input.getAttribute("aria-describedby") ?? "").split(" ")
    .map((id) => document.getElementById(id)?.textContent ?? "").join(" "));
  await until(async () => await field.getAttribute("aria-invalid") === "true" && (await described()).includes("parsecs"),
    "the field is marked, and what is wrong is said at it");
  const line = (await text_of(page)).split("\n").findIndex((one) => one.includes("30 parsecs")) + 1;
  await page.locator(".text-pane .messages li.error", { hasText: `Line ${line}` }).first().waitFor();
}

async function back_and_forth(page) {
  await page.keyboard.press("Control+Z");
  await until(async () => !(await text_of(page)).includes("parsecs"), "undo of the form is undo of the text");
  await until(async () => await page.getByLabel("Thickness, flat").getAttribute("aria-invalid") === null, "no fault is left");
  await reach(page, "Text");
  await page.keyboard.press("Control+End");
  await page.keyboard.type("# sown by the crew\n");
  await until(async () => (await text_of(page)).includes("# sown by the crew"), "a remark is typed");
  await reach(page, "Bags", "Shift+Tab");
  await page.keyboard.press("Control+A");
  await page.keyboard.type("3");
  await until(async () => /bags\s*=\s*3/.test(await text_of(page)), "the form changes the text");
  assert.ok((await text_of(page)).includes("# sown by the crew"), "and leaves the remark");
  for (const stays of [/bags\s*=\s*2/, /^(?![\s\S]*sown)/]) {
    await page.keyboard.press("Control+Z");
    await until(async () => stays.test(await text_of(page)), `undo over form and text: ${stays}`);
  }
  await page.keyboard.press("Control+Shift+Z");
  await until(async () => (await text_of(page)).includes("# sown by the crew"), "and forth again");
}

async function preview(page) {
  const label = page.locator(".print-pane img").first();
  await until(() => label.evaluate((image) => image.complete && image.naturalWidth > 0), "the label is drawn");
  const before = await label.getAttribute("src");
  await reach(page, "Name of the dish", "Shift+Tab");
  await page.keyboard.press("End");
  await page.keyboard.type(" with sage");
  await until(async () => await label.getAttribute("src") !== before, "the label is drawn anew");
  await page.locator(".print-pane", { hasText: "Barley and leek pot with sage" }).waitFor();
}

async function saved(page, world) {
  await page.keyboard.press("Control+S");
  const [name] = await until(async () => {
    const names = fs.readdirSync(world.days).filter((one) => one.endsWith(".toml"));
    const has = names.some((one) => fs.readFileSync(path.join(world.days, one), "utf8").includes("with sage"));
    return has ? names : null;
  }, "the day is saved");
  assert.match(await world.command("check", path.join(world.days, name)), /Barley and leek pot with sage/);
}

async function another_dish(page) {
  await reach(page, "Add a dish");
  await page.keyboard.press("Enter");
  await until(async () => await page.getByRole("textbox", { name: "Name of the dish" }).count() === 2, "the second dish is open");
  const named = () => page.evaluate(() => document.activeElement.labels?.[0]?.textContent);
  await until(async () => await named() === "Name of the dish", "and its name has the focus");
  await page.keyboard.type("Cider plums");
  await until(async () => /dish\s*=\s*"Cider plums"/.test(await text_of(page)), "the text has it");
}

/** A first size takes what the dish has of itself; the last that goes gives it back. */
async function sizes(page) {
  const part = page.locator("details.form-part", { hasText: "Bags of several sizes" }).first();
  const size = /^\[\[package\.size\]\]$/m; // not the remark that shows how
  await part.locator("summary").click();
  await part.getByRole("button", { name: "Add a size" }).click();
  await until(async () => size.test(await text_of(page)), "there is a size");
  assert.match((await text_of(page)).split(size)[1], /^weight\s*=\s*"1.6 kg"/m, "and has the weight");
  await part.getByRole("button", { name: /^Remove / }).click();
  await until(async () => !size.test(await text_of(page)), "the size is gone");
  for (const line of [/^weight\s*=\s*"1.6 kg"/m, /^servings\s*=\s*4/m, /^bags\s*=\s*2/m]) {
    assert.match(await text_of(page), line, "the dish has its own again");
  }
}

/** A figure that is there and is none says what is wrong with it. */
async function no_servings(page) {
  const field = page.getByLabel("Servings of a bag").first();
  await field.fill("0");
  const fault = page.locator(".field", { has: field }).locator(".fault");
  await until(async () => /servings/.test(await fault.textContent()), "it says more than that it is missing");
  await field.fill("4");
  await until(async () => await fault.textContent() === "", "and no longer");
}

export async function walk(world) {
  const desk = await world.desk();
  const page = await world.view(desk, "day/all");
  await begin(page);
  await fill(page);
  await fault(page);
  await back_and_forth(page);
  await preview(page);
  await saved(page, world);
  await sizes(page);
  await no_servings(page);
  await another_dish(page);
}
