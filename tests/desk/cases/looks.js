// Every view is for everybody: no finding of axe-core in light and in dark, all of it at 320 px and with type twice
// as large without scrolling sideways, and nothing to press that is too small to be pressed.
//
// W3C, Web Content Accessibility Guidelines (WCAG) 2.2, 2024: 1.4.4 Resize Text, 1.4.10 Reflow (320 CSS pixels),
// 2.5.8 Target Size (24 by 24 CSS pixels).

import assert from "node:assert/strict";
import fs from "node:fs";
import { until } from "../world.js";

const smallest_target = 24; // CSS px

/** Views, and what is done there until all of it is to be seen. */
const views = {
  "day/all": (page) => page.locator("table.days").waitFor(),
  "day/1": (page) => page.locator(".form .dish-form").first().waitFor(),
  "print/1": (page) => page.locator(".view.print h1").waitFor(),
  freezer: async (page) => {
    await page.locator(".bag-row").first().waitFor();
    await page.locator(".bag-row input").first().check();
    await page.locator(".bag-row summary").first().click();
    await page.locator(".history li").first().waitFor();
    await page.locator("form.next button").click();
    await page.locator(".dinners li").first().waitFor();
  },
  bag: (page) => page.locator(".way button").first().waitFor(),
  "bag/ID/2026-12-03T18:30": (page) => page.locator(".plan .events").waitFor(),
  setup: (page) => page.locator(".setup-form select").first().waitFor(),
  archive: async (page) => {
    await page.locator(".printed button").first().click();
    await page.locator(".stock .cell").first().click();
    await page.mouse.move(0, 0);
  },
};

async function look_with_axe(page, what) {
  const found = await page.evaluate(() => globalThis.axe.run({ resultTypes: ["violations"], runOnly: {
    type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] } }));
  const said = found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html, failureSummary }) =>
    `${html.slice(0, 160)} (${failureSummary})`).join("; ")}`);
  assert.deepEqual(said, [], `axe has nothing to find: ${what}`);
}

async function look_at_width(page, what) {
  const over = await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    const wide = [...document.querySelectorAll("main *")].filter((node) => node.getBoundingClientRect().right > clientWidth + 1);
    return scrollWidth > clientWidth ? wide.slice(0, 3).map((node) => node.outerHTML.slice(0, 120)) : [];
  });
  assert.deepEqual(over, [], `no scrolling sideways: ${what}`);
}

/** A control is as large as itself and its label together; a link in a sentence is excepted (2.5.8, Inline). */
async function look_at_targets(page, what) {
  const small = await page.evaluate((least) => {
    const inline = (node) => node.tagName === "A" && getComputedStyle(node).display === "inline";
    const boxes = (node) => [node, ...(node.labels ?? [])].map((one) => one.getBoundingClientRect()).filter(({ width }) => width > 0);
    return [...document.querySelectorAll("a, button, input, select, textarea, summary")]
      .filter((node) => !inline(node) && boxes(node).length > 0 && !node.closest("[inert]"))
      .filter((node) => !node.classList.contains("skip"))
      .filter((node) => !boxes(node).some(({ width, height }) => width >= least && height >= least))
      .map((node) => `${node.outerHTML.slice(0, 120)} ${JSON.stringify(boxes(node))}`);
  }, smallest_target);
  assert.deepEqual(small, [], `large enough to be pressed: ${what}`);
}

async function with_large_type(page) {
  await page.evaluate(() => {
    const twice = new CSSStyleSheet();
    twice.replaceSync(":root { font-size: 200%; }");
    document.adoptedStyleSheets = [twice];
  });
}

async function look_at_all(world, desk, bag, how) {
  const page = await world.view(desk, "day/all", how);
  await page.evaluate(world.axe); // one document has all the views
  for (const [view, shown] of Object.entries(views)) {
    const what = `${view}, ${JSON.stringify(how)}`;
    await world.go(page, view.replace("ID", bag.id));
    await shown(page);
    if (how.large) {
      await with_large_type(page);
    }
    await until(() => page.evaluate(() => document.getAnimations().every(({ playState }) => playState !== "running")), "still");
    await look_at_width(page, what);
    await look_at_targets(page, what);
    await look_with_axe(page, what);
  }
  await page.context().close();
}

/** A word that is longer than a phone is wide, as German has them, in place of the names of dishes. */
function with_long_words(world) {
  const file = world.file("days/orchard-day.toml");
  const text = fs.readFileSync(file, "utf8");
  let number = 0;
  fs.writeFileSync(file, text.replace(/^(dish\s*=\s*")[^"]*/gm, (line, begin) => `${begin}Obstgartenpflückmannschaftsabendbroteintopf${number += 1}`));
}

export async function walk(world) {
  world.sample();
  with_long_words(world);
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"));
  const [bag] = JSON.parse(await world.command("freezer", "list", "--json"));
  const desk = await world.desk();
  for (const how of [{ scheme: "light" }, { scheme: "dark" }, { width: 320 }, { large: true }]) {
    await look_at_all(world, desk, bag, how);
  }
  await desk.kill();
  for (const language of ["de", "es"]) { // whose words are longer
    world.settings(`language = "${language}"\n`);
    const other = await world.desk();
    await look_at_all(world, other, bag, { width: 320, scheme: "dark", language });
    await other.kill();
  }
}
