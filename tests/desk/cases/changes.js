// What is noted in one place is gone from the list in another, without taking anything away from who is at work there.
// How a stream of events is read: WHATWG, HTML Living Standard, section 9.2.6, with its own examples.

import assert from "node:assert/strict";
import { event_reader } from "../../../src/desk/page/event_stream.js";
import { until } from "../world.js";

/** The events of a text that comes in pieces of so many bytes. */
function events_of(text, size = 1) {
  const events = [];
  const pauses = [];
  const take = event_reader({ heard: (event) => events.push(event), retry: (pause) => pauses.push(pause) });
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length; at += size) {
    take(bytes.subarray(at, at + size));
  }
  return { events, pauses };
}

const heard = (text, size) => events_of(text, size).events.map(({ type, data, id }) => [type, data, id]);

function streams() {
  for (const size of [1, 2, 3, 1000]) {
    assert.deepEqual(heard("data: YHOO\ndata: +2\ndata: 10\n\n", size), [["message", "YHOO\n+2\n10", ""]]);
    assert.deepEqual(heard(": test stream\n\ndata: first event\nid: 1\n\ndata:second event\nid\n\ndata:  third event\n\n", size),
      [["message", "first event", "1"], ["message", "second event", ""], ["message", " third event", ""]]);
    assert.deepEqual(heard("data\n\ndata\ndata\n\ndata:", size), [["message", "", ""], ["message", "\n", ""]]);
    assert.deepEqual(heard("data:test\n\ndata: test\n\n", size), [["message", "test", ""], ["message", "test", ""]]);
    assert.deepEqual(heard("event: add\ndata: 73857293\n\nevent: remove\ndata: 2153\n\n", size),
      [["add", "73857293", ""], ["remove", "2153", ""]]);
    // Each of the line ends, and of a line feed behind a carriage return; a byte-order mark in front.
    assert.deepEqual(heard("\uFEFFdata: a\r\n\r\ndata: b\r\rdata: c\n\n", size), ["a", "b", "c"].map((data) => ["message", data, ""]));
    assert.deepEqual(heard("id: 7\n\nid: 8\0\ndata: ü\n\nevent: none\n\ndata: x\n\n", size),
      [["message", "ü", "7"], ["message", "x", "7"]]);
    assert.deepEqual(events_of("retry: 1000\nretry: 2s\nretry:\ncolour: red\nconstructor: x\n\n", size), { events: [], pauses: [1000] });
  }
}

async function bag_ids(page) {
  return page.locator(".bag-row .go").evaluateAll((links) => links.map((link) => link.hash.split("/")[2]));
}

const gone = (page, bag) => until(async () => !(await bag_ids(page)).includes(bag), `${bag} is gone from the list`);

/** Who types, has chosen, and has looked into a history is left in peace, and the page says what went. */
async function while_at_work(world, at_work, elsewhere) {
  const [first, second, third] = await bag_ids(at_work);
  const row = at_work.locator(".bag-row", { has: at_work.locator(`a[href="#/bag/${third}"]`) });
  await row.locator("input").check();
  await row.locator("summary").click();
  await row.locator(".history time").first().waitFor();
  const place = at_work.getByLabel("Move to");
  await place.fill("Top dr");
  await elsewhere.locator(".bag-row button").first().click();
  await gone(at_work, first);
  assert.match(await at_work.locator(".news").textContent(), /^Gone from this list meanwhile: .+ \(1 bag\)\.$/);
  assert.equal(await elsewhere.locator(".news").textContent(), "", "who did it is not told that it was done");
  assert.equal(await place.inputValue(), "Top dr");
  assert.ok(await place.evaluate((field) => field === document.activeElement), "who types stays there");
  assert.ok(await row.locator("input").isChecked());
  assert.ok(await row.locator(".history time").first().isVisible());
  await world.command("freezer", "out", second);
  await gone(at_work, second);
  await gone(elsewhere, second);
  await world.command("freezer", "out", third); // that one was chosen: nothing is to be moved any longer
  await gone(at_work, third);
  await at_work.locator(".chosen").waitFor({ state: "hidden" });
}

async function bag_view(world, page) {
  const [bag] = await bag_ids(page);
  await world.go(page, `bag/${bag}`);
  await page.locator(".noting").getByText("in the freezer").waitFor();
  await page.locator(".noting input").fill("Shelf");
  await world.command("freezer", "move", bag, "--to", "Cellar");
  await page.locator(".news", { hasText: "Cellar" }).waitFor();
  assert.equal(await page.locator(".noting input").inputValue(), "Shelf", "what was typed is there");
  await world.command("freezer", "out", bag);
  await page.locator(".news", { hasText: "taken out" }).waitFor();
  await page.locator(".noting").getByRole("button", { name: "Take out" }).waitFor({ state: "detached" });
}

/** Undo beside a note takes back that note alone: what was noted of the bag since stays. */
async function undo_of_a_note(world, page) {
  await world.go(page, "freezer");
  await page.locator(".bag-row").first().waitFor();
  const [bag] = await bag_ids(page);
  const row = page.locator(".bag-row", { has: page.locator(`a[href="#/bag/${bag}"]`) });
  await row.getByRole("button", { name: /^Take out/ }).click();
  const undo = page.locator("#said").getByRole("button", { name: "Undo" });
  await undo.waitFor();
  await world.command("freezer", "eaten", bag);
  await undo.click();
  await page.getByText("Something else was noted or taken back since").waitFor();
  const state = async () => JSON.parse(await world.command("freezer", "list", "--all", "--json")).find(({ id }) => id === bag).state;
  assert.equal(await state(), "eaten");
  await page.getByRole("button", { name: "Take the last change back" }).click(); // which says what it does
  await until(async () => await state() === "out", "the last change is taken back");
}

async function archive_view(world, page) {
  await world.go(page, "archive");
  const prints = await page.locator(".printed").count();
  await page.locator(".printed button").first().click();
  await page.locator(".opened form, .opened fieldset").first().waitFor();
  const opened = await page.locator(".opened").first().textContent();
  await world.command("cards", world.file("days/orchard-day.toml"), "-o", world.file("cards.pdf"));
  await until(async () => await page.locator(".printed").count() > prints, "the print is there");
  assert.ok((await page.locator(".opened").allTextContents()).includes(opened), "the open form stays");
}

/** A page that is not seen listens to nothing, and asks when it is seen again. */
async function hidden(world, page, desk) {
  const see = (state) => page.evaluate((now) => {
    Object.defineProperty(document, "visibilityState", { value: now, configurable: true });
    document.dispatchEvent(new Event("visibilitychange"));
  }, state);
  await world.go(page, "freezer");
  const [bag] = await bag_ids(page);
  await see("hidden");
  await world.command("freezer", "out", bag);
  const answer = await fetch(`${desk.origin}/api/state`, { headers: { "Thawslip-Key": desk.key } });
  assert.ok(answer.ok);
  assert.ok((await bag_ids(page)).includes(bag), "it is not asked for");
  await see("visible");
  await gone(page, bag);
}

export async function walk(world) {
  streams();
  world.expect_in_console(/status of 409/); // a note that is the last no longer
  world.sample();
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"));
  const desk = await world.desk();
  const at_work = await world.view(desk, "freezer");
  const elsewhere = await world.view(desk, "freezer", { width: 320, height: 640 });
  await while_at_work(world, at_work, elsewhere);
  await at_work.evaluate(world.axe);
  const { violations } = await at_work.evaluate(() => axe.run(document));
  assert.deepEqual(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]), []);
  await bag_view(world, elsewhere);
  await archive_view(world, elsewhere);
  await hidden(world, at_work, desk);
  await undo_of_a_note(world, elsewhere);
  const link = await elsewhere.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name).join(" "));
  assert.ok(!link.includes(desk.key), "the key stands in no address");
}
