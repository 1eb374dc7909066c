// A cook without a mouse.

import assert from "node:assert/strict";

const most = 300; // presses of Tab: more than any view has to offer

/** The words by which a screen reader would know what has the focus. */
async function focused(page) {
  return page.evaluate(() => {
    const node = document.activeElement;
    const labels = [...(node.labels ?? [])].map((label) => label.textContent);
    return (node.getAttribute("aria-label") || labels.join(" ") || node.textContent || "").replace(/\s+/g, " ").trim();
  });
}

/** Presses Tab until what has the focus is called `name` (a text, or a pattern). */
export async function reach(page, name, key = "Tab") {
  const fits = (words) => (typeof name === "string" ? words === name : name.test(words));
  const seen = [];
  for (let pressed = 0; pressed < most; pressed += 1) {
    await page.keyboard.press(key);
    const words = await focused(page);
    if (fits(words)) {
      return;
    }
    seen.push(words.slice(0, 40));
  }
  assert.fail(`${name} is not reached by ${key}; what is: ${[...new Set(seen)].join(" | ")}`);
}

/** Writes into the field called `name`, in place of what stands there. */
export async function write(page, name, text) {
  await reach(page, name);
  await page.keyboard.press("Control+A");
  await page.keyboard.type(text);
}
