// A phone of the house: let in by a code, looks into the freezer, reads a bag, notes it as out, and is locked out. The
// case runs in a network of its own (../run), where this computer has the address below.

import assert from "node:assert/strict";
import tls from "node:tls";
import { disk_full } from "../late.js";
import { until } from "../world.js";

const address = "10.9.8.7";

/** What the page of a phone is answered, asked as its scripts ask. */
function asked(page, path, body, key) {
  return page.evaluate(async ([where, what, with_key]) => {
    const headers = { "Content-Type": "application/json", "Thawslip-Key": with_key ?? localStorage.getItem("thawslip-key") };
    const response = await fetch(where, { method: "POST", headers, body: JSON.stringify(what) });
    return { status: response.status, answer: await response.json() };
  }, [path, body, key]);
}

async function without_fault(world, page) {
  await page.evaluate(world.axe);
  const { violations } = await page.evaluate(() => axe.run(document));
  assert.deepEqual(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]), []);
}

async function fits(page) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.equal(wide, 0, "nothing stands beside the page");
}

/** Who did something by the keyboard is not thrown back to the top of the page. */
async function stands_at(page, place) {
  await until(() => page.locator(place).evaluate((node) => node === document.activeElement), `the focus is at ${place}`);
}

/** The cook shows a code. \returns the link that a phone photographs */
async function offered(cook) {
  await cook.getByRole("button", { name: "Let a phone in" }).click();
  await cook.locator("img.pairing").waitFor();
  await stands_at(cook, ".offer h2");
  return cook.locator(".offer code").first().textContent();
}

/** With --tls: encrypted by the certificate whose fingerprint the cook sees, and the phone may use its camera. */
async function encrypted(world, small) {
  const desk = await world.desk("--kitchen", `${address}:61723`, "--tls");
  const cook = await world.view(desk, "phones");
  const link = await offered(cook);
  assert.match(link, new RegExp(`^https://${address}:61723/#pair=`));
  const shown = await cook.locator(".fingerprint").textContent();
  const seen = await new Promise((found, failed) => {
    const socket = tls.connect(61723, address, { rejectUnauthorized: false }, () => {
      found(socket.getPeerCertificate().fingerprint256);
      socket.destroy();
    }).on("error", failed);
  });
  assert.equal(shown, seen, "the fingerprint is that of the certificate");
  const phone = await world.page({ options: { ...small, ignoreHTTPSErrors: true } });
  await phone.goto(link);
  assert.equal(await phone.getByText("podría escuchar").isVisible(), false, "nobody could listen");
  await phone.getByLabel("Nombre de este teléfono").fill("Bea");
  await phone.getByRole("button", { name: "Dejar entrar" }).click();
  await phone.locator(".view.freezer h1").waitFor();
  assert.equal(await phone.evaluate(() => isSecureContext && Boolean(navigator.mediaDevices?.getUserMedia)), true);
  await world.go(phone, "bag");
  await phone.getByRole("button", { name: "Start the camera" }).waitFor();
  await without_fault(world, phone);
  await without_fault(world, cook);
  await assert.rejects(fetch(`https://${address}:61723/`), "who does not know the certificate is warned");
}

/** Whatever was answered is said, and that alone; in words where the computer's own are of another language. */
async function refused(phone) {
  const messages = JSON.stringify({ messages: [{ severity: "error", text: "the disk is full", hints: [] }] });
  for (const [status, words] of [[409, "Ya hay demasiados teléfonos"], [422, "Póngale un nombre"], [500, "the disk is full"],
    [0, "La computadora no responde"], [403, "Un código deja entrar a un teléfono"]]) {
    await phone.route("**/api/pair", (route) => (status === 0 ? route.abort()
      : route.fulfill({ status, contentType: "application/json", body: messages })));
    await phone.getByRole("button", { name: "Dejar entrar" }).click();
    await phone.locator("#pair-refused").getByText(words).waitFor();
    assert.equal(await phone.locator("#pair-refused > :not([hidden])").count(), 1);
    await phone.unroute("**/api/pair");
  }
}

export async function walk(world) {
  world.sample();
  await world.command("labels", world.file("days/orchard-day.toml"), "-o", world.file("labels.pdf"));
  const desk = await world.desk("--kitchen", address);
  const cook = await world.view(desk, "phones", { width: 1000, height: 900 });
  const link = await offered(cook);
  assert.match(link, new RegExp(`^http://${address}:\\d+/#pair=`));
  await without_fault(world, cook);

  await cook.route("**/api/phones", (route) => route.fulfill(disk_full), { times: 1 }); // after which it looks again
  await cook.getByText("The disk is full.").waitFor();

  // What is refused is also said in the console, by the browser.
  world.expect_in_console(/Failed to load resource: (the server responded with a status of (401|403|409|422|500)|net::ERR_FAILED|net::ERR_CONNECTION_REFUSED|net::ERR_INCOMPLETE_CHUNKED_ENCODING)/);
  const small = { viewport: { width: 320, height: 640 }, isMobile: true, hasTouch: true, permissions: [], locale: "es-MX" };
  const phone = await world.page({ options: small });
  await phone.goto(link);
  await phone.getByLabel("Nombre de este teléfono").fill("Ida");
  await without_fault(world, phone);
  await phone.getByLabel("Código").fill("0000-0000");
  await phone.getByRole("button", { name: "Dejar entrar" }).click();
  await phone.getByText("Un código deja entrar a un teléfono").waitFor();
  await fits(phone);
  await refused(phone);
  await phone.getByLabel("Código").fill(link.split("=")[1].toLowerCase());
  await phone.getByRole("button", { name: "Dejar entrar" }).click();
  await phone.locator(".view.freezer h1").waitFor();
  await cook.getByText("Ida is let in.").waitFor();
  assert.equal(new URL(phone.url()).hash, "", "the code stands in no history");
  await without_fault(world, phone);
  await fits(phone);
  const names = await phone.locator("nav a").allTextContents();
  assert.deepEqual(names, ["Freezer", "Bag"], "it has the views that it may have");

  const { answer } = await asked(phone, "/api/freezer", {});
  const bag = answer.bags[0];
  assert.ok((await world.command("freezer", "list")).includes(bag.id));
  await world.go(phone, `bag/${bag.id}`);
  await phone.getByRole("button", { name: "Take out" }).click();
  await phone.getByText("Taken out:").first().waitFor();
  await without_fault(world, phone);
  await fits(phone);
  assert.ok(!(await world.command("freezer", "list")).includes(bag.id), "it is noted");

  for (const [path, body] of [["/api/spool", {}], ["/api/archive/export", {}], ["/api/freezer/undo", {}],
    ["/api/freezer/note", { bags: [bag.id], state: "discarded" }], ["/api/phones/offer", {}]]) {
    assert.equal((await asked(phone, path, body)).status, 403, `${path} is the computer's`);
  }
  assert.equal((await asked(phone, "/api/freezer", {}, desk.key)).status, 401, "the cook's key is no phone's");

  const again = await world.page({ options: small });
  await again.goto(link);
  await again.getByLabel("Nombre de este teléfono").fill("Bea");
  await again.getByRole("button", { name: "Dejar entrar" }).click();
  await again.getByText("Un código deja entrar a un teléfono").waitFor(); // a code lets in one phone

  await cook.getByRole("button", { name: "Lock out: Ida" }).click();
  await cook.getByRole("dialog").getByRole("button", { name: "Lock out" }).click();
  await until(async () => (await asked(phone, "/api/freezer", {})).status === 401, "it is locked out");
  await stands_at(cook, "section:has(.phones) h2");
  await world.go(phone, "freezer");
  await phone.getByText("it was locked out at the computer").waitFor(); // and no page was opened for it to go on in
  await phone.reload();
  await phone.getByLabel("Nombre de este teléfono").waitFor();
  await desk.kill();
  await encrypted(world, small);
}
