// A phone is paired by a code, takes a photo, notes a run, and is out once it is revoked.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import path from "node:path";
import { pictures, serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { beginRun, recipeFrom } from "../lib/recipe.mjs";
import { ask } from "../lib/trial.mjs";

describe("a phone", () => {
  let bench, browser;
  before(async () => {
    bench = await serve("empty");
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  test("is paired, takes a photo and taps a run", async () => {
    const desk = await newPage(browser, "desktop");
    const { address: trial } = await ask(desk, bench.origin, "Folded cloth by phone");
    const run = await beginRun(desk, await recipeFrom(desk, bench.origin, "shirts"), "Lot by phone");

    await desk.goto(`${bench.origin}/phone`);
    assert.ok(await desk.getByText("Nothing but this computer reaches Woadstone.").isVisible());
    await assertSound(desk);
    // What can't be is said at its field.
    await desk.getByLabel("This computer’s address on the network").fill("8.8.8.8");
    await desk.getByRole("button", { name: "Switch it on" }).click();
    await desk.getByRole("alert").waitFor();
    await assertSound(desk);
    // The loopback stands for the network: another listener at another port.
    await desk.getByLabel("This computer’s address on the network").fill("127.0.0.1");
    await desk.getByLabel("Port", { exact: true }).fill("0");
    await desk.getByRole("button", { name: "Switch it on" }).click();
    await desk.getByRole("button", { name: "Make a code" }).click();
    const picture = desk.getByRole("img", { name: "Code to scan with the phone’s camera" });
    await picture.waitFor();
    await assertSound(desk);
    const code = (await desk.locator(".pairing-code").innerText()).replace("–", "");
    const origin = (await desk.locator(".notice strong").nth(1).innerText()).trim();
    assert.match(origin, /^http:\/\/127\.0\.0\.1:\d+$/);
    assert.notEqual(origin, bench.origin);

    const phone = await newPage(browser, "phone");
    const closed = await phone.goto(`${origin}/`);
    assert.equal(closed.status(), 401);
    await phone.getByRole("heading", { name: "Pair this device" }).waitFor();
    await assertSound(phone);
    await phone.goto(`${origin}/pair?code=WRONGONE`);
    await phone.getByRole("button", { name: "Pair this device" }).click();
    await phone.getByRole("alert").waitFor();
    await assertSound(phone);
    // As scanned.
    await phone.goto(`${origin}/pair?code=${code}`);
    await phone.getByLabel("What this device is called").fill("Kitchen phone");
    await phone.getByRole("button", { name: "Pair this device" }).click();
    await phone.getByRole("link", { name: "Folded cloth by phone" }).first().waitFor();
    await assertSound(phone);

    // The computer notices by itself.
    await desk.getByRole("rowheader", { name: "Kitchen phone" }).waitFor();
    assert.equal(await picture.count(), 0);
    await assertSound(desk);

    const own = (address) => address.replace(bench.origin, origin);
    await phone.goto(`${own(trial)}/photos/new`);
    assert.ok(await phone.getByLabel("Or take one with this device").isVisible());
    await phone.getByLabel("Rounds the pieces have been through").fill("0");
    await phone.getByLabel("Or take one with this device").setInputFiles(path.join(pictures, "parts-0.jpg"));
    await phone.getByRole("button", { name: "Add the photos" }).click();
    await phone.getByRole("heading", { name: "Where the pieces lie" }).waitFor({ timeout: 60_000 });
    await phone.goto(own(run));
    await phone.locator("#step-1").getByRole("button", { name: "Start", exact: true }).click();
    await phone.locator(".clocks .clock").first().waitFor();
    await desk.goto(run);
    assert.ok(await desk.locator(".clocks .clock").first().isVisible());

    // What belongs to the computer stays there.
    assert.equal((await phone.goto(`${origin}/phone`)).status(), 403);
    await desk.goto(`${bench.origin}/phone`);
    await desk.getByRole("button", { name: "Revoke Kitchen phone" }).click();
    await desk.getByText("None yet.").waitFor();
    assert.equal((await phone.goto(`${origin}/`)).status(), 401);

    await desk.getByRole("button", { name: "Switch it off" }).click();
    await desk.getByText("Nothing but this computer reaches Woadstone.").waitFor();
    await assert.rejects(fetch(`${origin}/pair`));
    const said = (page) => page.faults.filter((fault) => !/status of 4\d\d/.test(fault));
    assert.deepEqual([said(desk), said(phone)], [[], []]);
    await desk.context().close();
    await phone.context().close();
  });

  test("is switched on and off by the keyboard alone", async () => {
    const page = await newPage(browser, "desktop");
    await page.goto(`${bench.origin}/phone`);
    await page.getByLabel("This computer’s address on the network").focus();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("127.0.0.1");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Control+a");
    await page.keyboard.type("0");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Switch it off" }).press("Enter");
    await page.getByText("Nothing but this computer reaches Woadstone.").waitFor();
    assertQuiet(page);
    await page.context().close();
  });

  for (const size of Object.keys(SIZES)) {
    test(`has a page that is sound (${size}, dark)`, async () => {
      const page = await newPage(browser, size, { colorScheme: "dark" });
      await page.goto(`${bench.origin}/phone`);
      await assertSound(page);
      assertQuiet(page);
      await page.context().close();
    });
  }
});
