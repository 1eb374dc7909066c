// No test: the README's pictures of the page, for samples/desk_pictures. Into the folder THAWSLIP_PICTURES.

import path from "node:path";
import { picture_of, write_png } from "../grey_png.js";
import { until } from "../world.js";

const drawn = (page, images) => until(() => page.locator(images).first().evaluate((image) =>
  image.complete && image.naturalWidth > 0), `${images} are drawn`);

const views = {
  day: ["day/1", 900, async (page) => {
    await page.locator(".text-pane textarea").waitFor();
    await drawn(page, ".print-pane img");
  }],
  print: ["print/1", 900, (page) => drawn(page, ".sheet-pane img")],
  freezer: ["freezer", 900, async (page) => {
    await page.locator(".bag-row").first().waitFor();
  }],
  bag: ["bag/ID", 960, (page) => page.locator(".bag-answer").waitFor()],
  plan: ["bag/ID/2026-12-03T18:30", 1300, async (page) => {
    await page.locator(".plan .events").waitFor();
    await drawn(page, "img.timeline");
    await page.locator(".planner").evaluate((part) => scrollTo(0, part.getBoundingClientRect().top + scrollY - 16));
  }],
  archive: ["archive", 900, async (page) => {
    await page.locator(".printed button").first().click();
    await page.locator(".cell").nth(1).click();
  }],
};

export async function walk(world) {
  const folder = process.env.THAWSLIP_PICTURES;
  world.sample();
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"), "--paper", "letter");
  await world.command("cards", world.file("days/orchard-day.toml"), "-o", world.file("cards.pdf"), "--paper", "letter");
  const bags = JSON.parse(await world.command("freezer", "list", "--json"));
  const bag = bags.find(({ dish }) => dish.startsWith("Apple"));
  const desk = await world.desk();
  for (const [name, [view, height, shown]] of Object.entries(views)) {
    const page = await world.view(desk, view.replace("ID", bag.id), { height, options: { reducedMotion: "reduce" } });
    await page.locator("h1").first().waitFor();
    await page.evaluate(() => scrollTo(0, 0));
    await shown(page);
    await page.evaluate(() => document.activeElement.blur());
    // The folder's place, and why there is no printer, are of this machine alone.
    await page.evaluate(() => {
      document.querySelector("#masthead .folder")?.replaceChildren("Documents/Thawslip");
      document.querySelector(".printer .soft")?.remove();
    });
    await page.evaluate(() => document.fonts.ready);
    write_png(path.join(folder, `desk-${name}.png`), await picture_of(page, { x: 0, y: 0, width: 1280, height }));
    await page.context().close();
  }
}
