// Another site in the same browser gets nothing: neither what is inside nor a change, by whatever it tries.

import assert from "node:assert/strict";
import http from "node:http";

/** A site of somebody else, on a port of its own. */
async function other_site() {
  const server = http.createServer((request, response) => {
    response.writeHead(200, { "Content-Type": "text/html" });
    response.end("<!doctype html><title>another site</title><body></body>");
  });
  await new Promise((up) => server.listen(0, "127.0.0.1", up));
  return { server, port: server.address().port };
}

/** What a page can try, each with what came of it: "nothing", or what it has got. */
async function tried(page, origin, key) {
  return page.evaluate(async ([target, stolen]) => {
    const fetched = async (path, options) => {
      try {
        const response = await fetch(target + path, options);
        return response.type === "opaque" ? "nothing" : `${response.status} ${await response.text()}`;
      } catch {
        return "nothing";
      }
    };
    const loaded = (tag, source) => new Promise((over) => {
      const node = document.createElement(tag);
      node.onload = () => over("loaded");
      node.onerror = () => over("nothing");
      node.src = target + source;
      document.body.append(node);
    });
    const json = { method: "POST", headers: { "Content-Type": "application/json", "Thawslip-Key": stolen }, body: "{}" };
    return {
      state: await fetched("/api/state", { headers: { "Thawslip-Key": stolen } }),
      note: await fetched("/api/freezer/undo", json),
      plain: await fetched("/api/freezer/undo", { method: "POST", mode: "no-cors", body: "{}" }),
      module: await loaded("script", "/desk.js"),
      picture: await loaded("img", "/icon.svg"),
    };
  }, [origin, key]);
}

export async function walk(world) {
  world.sample();
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"));
  const before = await world.command("freezer", "list");
  const desk = await world.desk();
  const { server, port } = await other_site();
  try {
    // The browser says in the console what it has refused, and that is how it should be.
    world.expect_in_console(/blocked by CORS policy|Failed to load resource|Cross-Origin-Opener-Policy header/);
    const elsewhere = await world.page();
    for (const site of [`http://127.0.0.1:${port}/`, `http://evil.test:${port}/`]) {
      await elsewhere.goto(site);
      const got = await tried(elsewhere, desk.origin, desk.key);
      assert.deepEqual([...new Set(Object.values(got))], ["nothing"], `${site} gets nothing: ${JSON.stringify(got)}`);
    }
    // A name that leads here (DNS rebinding) is not the program's: RFC 9110, section 15.5.20.
    const rebound = await elsewhere.goto(desk.origin.replace("127.0.0.1", "evil.test"));
    assert.equal(rebound.status(), 421);
    assert.ok(!/Thawslip-Key|desk\.js/.test(await rebound.text()));
    // Who has no key sees no view, and is told why.
    const keyless = await world.page();
    await keyless.goto(desk.origin);
    await keyless.locator("#keyless").waitFor();
  } finally {
    server.close();
  }
  assert.equal(await world.command("freezer", "list"), before, "nothing has changed");
}
