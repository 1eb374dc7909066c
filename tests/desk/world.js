// A kitchen of its own: a scratch home and folder of days, the real program on them, a real browser on its page.

import assert from "node:assert/strict";
import { execFile, spawn } from "node:child_process";
import fs from "node:fs";
import { createRequire } from "node:module";
import os from "node:os";
import path from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);
const today = "1792238400"; // 2026-10-17T12:00Z, the packing day of samples/orchard-day.toml
const patience = Number(process.env.THAWSLIP_PATIENCE ?? 60_000); // ms: a machine that does much else is slow

/** The program, as it is started by hand: its link stands in what it prints. */
function start(program, args, env) {
  const child = spawn(program, args, { env, stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  const link = new Promise((found, failed) => {
    const hear = (bytes) => {
      said += bytes;
      const at = /http:\/\/\S+#\S+/.exec(said);
      if (at) {
        found(at[0]);
      }
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.on("exit", (code) => failed(new Error(`the desk has ended with ${code}: ${said}`)));
    child.on("error", failed);
  });
  const ended = new Promise((over) => child.on("exit", over));
  link.catch(() => {}); // said by whoever waits for it
  return { child, link, ended };
}

const browser_options = [
  "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream", "--host-resolver-rules=MAP *.test 127.0.0.1",
  "--disable-background-networking", "--disable-component-update", "--no-first-run",
];

class World {
  constructor({ program, build, source }) {
    Object.assign(this, { program, source, build, consoles: [], pages: [], running: [], browser: null, expected: [] });
    this.scratch = fs.mkdtempSync(path.join(os.tmpdir(), "thawslip-desk-"));
    this.days = path.join(this.scratch, "days");
    fs.mkdirSync(this.days);
    this.env = { PATH: process.env.PATH, HOME: this.scratch, TMPDIR: this.scratch, SOURCE_DATE_EPOCH: today, TZ: "UTC",
      LC_ALL: "C.UTF-8" };
    const require = createRequire(path.join(build, "package.json"));
    this.chromium = require("playwright-core").chromium;
    this.axe = fs.readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
  }

  /** The cook's settings, in TOML. */
  settings(text) {
    const folder = this.file(".config/thawslip");
    fs.mkdirSync(folder, { recursive: true });
    fs.writeFileSync(path.join(folder, "settings.toml"), text);
  }

  /** What a command of the program prints. */
  async command(...args) {
    const { stdout } = await run(this.program, args, { env: this.env, cwd: this.scratch });
    return stdout;
  }

  async tool(name, ...args) {
    await run(name, args, { env: this.env, cwd: this.scratch });
  }

  file(name) {
    return path.join(this.scratch, name);
  }

  /** Puts a day of the samples into the folder. */
  sample(name = "orchard-day.toml") {
    fs.copyFileSync(path.join(this.source, "samples", name), path.join(this.days, name));
  }

  /** Starts the desk. \returns {link, origin, key, kill} */
  async desk(...options) {
    const running = start(this.program, ["desk", "--no-open", ...options, this.days], this.env);
    this.running.push(running);
    const link = await running.link;
    return { link, origin: new URL(link).origin, key: /key=([^&]+)/.exec(link)?.[1], async kill() {
      running.child.kill("SIGKILL");
      await running.ended;
    } };
  }

  /** \param camera a film in YUV4MPEG2 that stands for the camera */
  async open_browser({ camera } = {}) {
    const args = [...browser_options, ...(camera ? [`--use-file-for-fake-video-capture=${camera}`] : []),
      ...(process.getuid() === 0 ? ["--no-sandbox"] : [])];
    this.browser = await this.chromium.launch({ executablePath: process.env.CHROMIUM, args, timeout: patience,
      env: { ...this.env, HOME: this.scratch } });
    return this.browser;
  }

  /** A page whose console is listened to. `scheme` is light or dark. */
  async page({ width = 1280, height = 900, scheme = "light", options = {} } = {}) {
    const browser = this.browser ?? await this.open_browser();
    const context = await browser.newContext({ viewport: { width, height }, colorScheme: scheme, acceptDownloads: true,
      permissions: ["camera"], ...options });
    const page = await context.newPage();
    page.setDefaultTimeout(patience);
    page.on("console", (message) => this.consoles.push(`${message.text()} (${message.location().url}, at ${page.url()})`));
    page.on("pageerror", (error) => this.consoles.push(error.stack ?? String(error)));
    this.pages.push(page);
    return page;
  }

  /** The desk's page at a view, once it is shown. */
  async view(desk, view = "", how = {}) {
    const page = await this.page(how);
    await page.goto(desk.link);
    await page.locator("h1").first().waitFor();
    await this.go(page, view);
    return page;
  }

  async go(page, view) {
    if (view) {
      await page.evaluate((hash) => { location.hash = hash; }, `#/${view}`);
      const name = view.split("/")[0];
      await page.locator(`.view.${name} h1`).waitFor();
    }
  }

  /** Text that a console may have: what the browser itself says of an answer that was to be refused. */
  expect_in_console(pattern) {
    this.expected.push(pattern);
  }

  look_at_consoles() {
    const left = this.consoles.filter((text) => !this.expected.some((pattern) => pattern.test(text)));
    assert.deepEqual(left, [], "the consoles are empty");
  }

  /** For whoever looks why it went wrong. */
  async keep_pictures(name) {
    for (const [at, page] of this.pages.entries()) {
      const picture = path.join(this.build, `${name}-${at + 1}.png`);
      await page.screenshot({ path: picture, fullPage: true }).then(() => console.error(`see ${picture}`), () => {});
    }
    console.error(this.consoles.join("\n"));
  }

  async close() {
    await this.browser?.close().catch(() => {});
    for (const { child, ended } of this.running) {
      child.kill("SIGKILL");
      await ended;
    }
    fs.rmSync(this.scratch, { recursive: true, force: true });
  }
}

export async function make_world(given) {
  return new World(given);
}

/** Waits until `holds` gives something true. */
export async function until(holds, what) {
  const end = Date.now() + patience;
  for (;;) {
    const found = await holds();
    if (found) {
      return found;
    }
    assert.ok(Date.now() < end, `waited in vain: ${what}`);
    await new Promise((over) => setTimeout(over, 50));
  }
}
