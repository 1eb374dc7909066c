// What the page works out by itself: a camera's greys, months without gaps, a moment by which a bag can be thawed,
// when a curve reaches a temperature, and one ticket for a wish that is sent twice. Asked of the page's own modules.

import assert from "node:assert/strict";

async function greys(page) {
  const found = await page.evaluate(async () => {
    const { frame_size, to_grey } = await import("/camera.js");
    const pixels = [[255, 255, 255], [0, 0, 0], [255, 0, 0], [0, 255, 0], [0, 0, 255]];
    const sizes = [[640, 480], [1920, 1080], [1080, 1920], [3840, 2160]];
    return {
      greys: [...to_grey(new Uint8ClampedArray(pixels.flatMap((one) => [...one, 255])))],
      sizes: sizes.map(([videoWidth, videoHeight]) => Object.values(frame_size({ videoWidth, videoHeight }))),
    };
  });
  assert.equal(found.greys[0], 255);
  assert.equal(found.greys[1], 0);
  // The luma of pure colours: 0.299, 0.587 and 0.114 of white (ITU-R BT.601, from memory).
  for (const [at, part] of [[2, 0.299], [3, 0.587], [4, 0.114]]) {
    assert.ok(Math.abs(found.greys[at] - 255 * part) <= 1.5, `${found.greys[at]} for ${part}`);
  }
  assert.deepEqual(found.sizes, [[640, 480], [1280, 720], [405, 720], [1280, 720]]);
}

async function months(page) {
  const found = await page.evaluate(async () => {
    const { without_gaps } = await import("/months.js");
    const months = [{ month: "2026-11", bags: 3, servings: 18 }, { month: "2027-02", bags: 2, servings: 16 }];
    return [without_gaps(months), without_gaps([]), without_gaps(months.slice(1))];
  });
  assert.deepEqual(found[0].map(({ month, bags }) => [month, bags]), [["2026-11", 3], ["2026-12", 0], ["2027-01", 0],
    ["2027-02", 2]]);
  assert.deepEqual(found[1], []);
  assert.equal(found[2].length, 1);
}

async function moments(page) {
  const found = await page.evaluate(async () => {
    const { usual_time } = await import("/plan.js");
    const { reached } = await import("/core.js");
    const points = [[0, -18, -18], [60, -10, -2], [120, -4, 2], [180, -1, 4]];
    return {
      times: [usual_time("2026-10-30", [{ thaw_minutes: 2760 }]), usual_time("2026-12-31", [{}]), usual_time("2028-02-28", [])],
      reached: [reached(points, 2, 0), reached(points, 1, 0), reached(points, 1, -18)],
    };
  });
  assert.deepEqual(found.times, ["2026-11-02T18:30", "2027-01-01T18:30", "2028-02-29T18:30"]);
  assert.deepEqual(found.reached, [90, undefined, 0]);
}

async function tickets(page) {
  const [first, again, other, wide] = await page.evaluate(async () => {
    const { tickets } = await import("/deliver.js");
    const ticket = tickets();
    const wish = { bags: ["a"], printer: null };
    return [ticket(wish), ticket({ ...wish }), ticket({ ...wish, bags: ["b"] }), tickets()(wish)].map(({ text }) => text);
  });
  assert.match(first, /^[0-9a-f]{32}$/);
  assert.equal(again, first);
  assert.notEqual(other, first);
  assert.notEqual(wide, first);
}

async function weights(page) {
  const found = await page.evaluate(async () => {
    const { weight } = await import("/said.js");
    return [40, 999.4, 999.6, 2240].map(weight);
  });
  assert.deepEqual(found, ["40 g", "999 g", "1.0 kg", "2.2 kg"]);
}

async function messages_of_commands(page) {
  const found = await page.evaluate(async () => {
    const { said_messages } = await import("/ui.js");
    return said_messages('my day.toml:3:1: caution: past its best\n    dish = "Stew"\n           ^~~~\n' +
      'error: no bag\n    hint: the nearest\na.pdf: 1 label: done\n');
  });
  assert.deepEqual(found, [{ severity: "caution", text: "past its best", hints: [] },
    { severity: "error", text: "no bag", hints: ["the nearest"] }, { severity: "note", text: "a.pdf: 1 label: done", hints: [] }]);
}

export async function walk(world) {
  const page = await world.view(await world.desk(), "day/all");
  await greys(page);
  await months(page);
  await moments(page);
  await tickets(page);
  await weights(page);
  await messages_of_commands(page);
}
