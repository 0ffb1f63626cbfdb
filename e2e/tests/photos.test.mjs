// Several photos at once: each sent for itself, followed while they are read, stopped, read again.
import assert from "node:assert/strict";
import { writeFile } from "node:fs/promises";
import path from "node:path";
import { after, before, describe, test } from "node:test";
import { serve, vaulted } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { withComment } from "../lib/jpeg.mjs";

describe("several photos at once", () => {
  let bench, browser, trial, bytes, last;
  before(async () => {
    bench = await serve("demo");
    browser = await launch();
    trial = bench.address;
    const results = await (await fetch(`${trial}.json`)).json();
    last = results.photos.at(-1);
    bytes = await vaulted(bench.home, last.hash);
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  const file = async (name, content) => {
    const at = path.join(bench.home, name);
    await writeFile(at, content);
    return at;
  };
  const count = async () => (await (await fetch(`${trial}.json`)).json()).photos.length;

  for (const [index, size] of Object.keys(SIZES).entries()) {
    test(`are sent, and a bad one among them spoils none (${size})`, async () => {
      const page = await newPage(browser, size);
      const before = await count();
      await page.goto(`${trial}/photos/new`);
      await page.getByLabel("Rounds the pieces have been through").fill(String(20 + index));
      const same = await file(`same-${size}.jpg`, withComment(bytes, `a ${size}`));
      await page.getByLabel("Photos", { exact: true }).setInputFiles([
        same,
        await file(`other-${size}.jpg`, withComment(bytes, `b ${size}`)),
        await file(`copy-${size}.jpg`, withComment(bytes, `a ${size}`)),
        await file(`letter-${size}.jpg`, Buffer.from("Dear dyer, the camera was in the pocket.")),
      ]);
      assert.equal(await page.locator("[data-files] li").count(), 4);
      // Chosen once more, it is still sent once.
      await page.getByLabel("Photos", { exact: true }).setInputFiles([same]);
      assert.equal(await page.locator("[data-files] li").count(), 4);
      await assertSound(page);
      await page.getByRole("button", { name: "Add the photos" }).click();
      await page.getByText("1 of 4 photos were not taken").waitFor({ timeout: 120_000 });
      const row = page.locator("[data-files] li[data-state=refused]");
      assert.match(await row.innerText(), /letter.*\n▲ .*\n[\s\S]*Send the picture itself/);
      assert.equal(await page.locator("[data-files] li", { hasText: "was here already; kept once" }).count(), 1);
      assert.equal(await page.getByLabel("Rounds the pieces have been through").inputValue(), String(20 + index));
      await assertSound(page);
      assert.equal(await count(), before + 2);

      await page.goto(`${trial}/photos`);
      assert.match(await page.locator("[data-sentence]").innerText(), /^\d+ of \d+ read, .*to be marked/);
      assert.ok(await page.getByRole("link", { name: `Mark the pieces on other-${size}.jpg` }).isVisible());
      await assertSound(page);
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }

  test("are dropped onto the page, and one is stopped on its way", async () => {
    const page = await newPage(browser, "desktop");
    const before = await count();
    await page.goto(`${trial}/photos/new`);
    const data = await page.evaluateHandle(() => {
      const all = new DataTransfer();
      for (const name of ["one.jpg", "two.jpg"]) all.items.add(new File([new Uint8Array(4_000_000)], name, { type: "image/jpeg" }));
      return all;
    });
    await page.dispatchEvent("form[data-upload]", "drop", { dataTransfer: data });
    assert.equal(await page.locator("[data-files] li").count(), 2);
    await page.getByRole("button", { name: "Leave out: two.jpg" }).click();
    assert.equal(await page.locator("[data-files] li:visible").count(), 1);
    // Held up, so that there is time to stop it.
    let free;
    const held = new Promise((resolve) => { free = resolve; });
    await page.route("**/photos", async (route) => { await held; await route.abort(); });
    await page.getByRole("button", { name: "Add the photos" }).click();
    await page.getByRole("button", { name: "Stop: one.jpg" }).click();
    await page.getByText("stopped; nothing of it was kept").waitFor();
    free();
    assert.equal(await count(), before);
    await assertSound(page);
    await page.context().close();
  });

  test("are followed on their page while they are read, without reloading it", async () => {
    const page = await newPage(browser, "desktop");
    await page.goto(`${trial}/photos`);
    const card = page.locator(`[data-photo="${last.id}"]`);
    await card.getByRole("button", { name: /^Read again/ }).waitFor();
    await page.evaluate(() => { window.stayed = true; });
    // Asked for from elsewhere, the page is told, however soon the reading is over.
    const other = await page.context().newPage();
    await other.goto(`${trial}/photos/${last.id}`);
    await page.evaluate((id) => {
      window.seen = [];
      const card = document.querySelector(`[data-photo="${id}"]`);
      new MutationObserver(() => window.seen.push(card.dataset.state)).observe(card, { attributes: true });
    }, last.id);
    await other.getByRole("button", { name: "Read it again as marked" }).click();
    await page.waitForFunction(() => window.seen.includes("read"), null, { timeout: 120_000 });
    assert.ok(await page.evaluate(() => window.stayed));
    await other.getByRole("heading", { name: "Earlier readings of this photo" }).waitFor({ timeout: 60_000 });
    await assertSound(other);
    assertQuiet(page);
    await page.context().close();
  });

  test("show what was found in layers, with scripts off too", async () => {
    const page = await newPage(browser, "desktop", { javaScriptEnabled: false });
    await page.goto(`${trial}/photos/${last.id}`);
    const light = page.locator("[data-layer=light]");
    assert.equal(await light.isVisible(), false);
    await page.getByRole("checkbox", { name: "Light" }).check();
    assert.ok(await light.isVisible());
    await page.getByRole("checkbox", { name: "Patches" }).check();
    assert.equal(await page.locator("[data-layer=patches] .patch").count(), 24);
    await page.getByRole("checkbox", { name: "Areas" }).uncheck();
    assert.equal(await page.locator("[data-layer=areas]").isVisible(), false);
    await page.context().close();
  });

  test("are sent with scripts off", async () => {
    const page = await newPage(browser, "desktop", { javaScriptEnabled: false });
    const before = await count();
    await page.goto(`${trial}/photos/new`);
    await page.getByLabel("Rounds the pieces have been through").fill("30");
    await page.getByLabel("Photos", { exact: true }).setInputFiles([
      await file("plain-1.jpg", withComment(bytes, "p1")),
      await file("plain-2.jpg", withComment(bytes, "p2")),
    ]);
    await page.getByRole("button", { name: "Add the photos" }).click();
    await page.getByRole("heading", { name: "Photos", exact: true }).waitFor({ timeout: 60_000 });
    assert.equal(await count(), before + 2);
    await page.context().close();
  });
});
