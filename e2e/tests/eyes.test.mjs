// Judging by eye: blind pairs by finger and by key, a break, a correction, results at the end.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { beginSession, judgeAll, progress, sitDown } from "../lib/eyes.mjs";
import { ask } from "../lib/trial.mjs";

describe("judging by eye", () => {
  let bench, browser;
  before(async () => {
    bench = await serve("empty");
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  for (const size of Object.keys(SIZES)) {
    test(`two people judge blind, then all is shown (${size})`, async () => {
      const page = await newPage(browser, size);
      const { address, pieces } = await ask(page, bench.origin, `By eye, ${size}`);
      await page.getByRole("link", { name: "Let people grade them blind" }).click();
      await assertSound(page);
      await beginSession(page, address);
      await assertSound(page);
      await sitDown(page, address, "A. N.");
      await assertSound(page);
      const text = await page.locator("main").innerHTML();
      for (const told of ["Folded", "Stitched", ...pieces.map(({ code }) => `>${code}<`)]) {
        assert.ok(!text.includes(told), `${told} is told`);
      }
      for (const button of await page.locator(".grades button").all()) {
        const { width, height } = await button.boundingBox();
        assert.ok(width >= 48 && height >= 48, `a button of ${width} by ${height}`);
      }
      // By key; the remark's field takes figures as text.
      await page.keyboard.press("7");
      await page.getByText(/pair 2 of/).waitFor();
      await page.getByLabel(/^Remark/).fill("9 threads pulled");
      assert.deepEqual((await progress(page))[0], 2);
      await page.getByRole("button", { name: /^3(?![-\d])/ }).click();
      await page.getByText(/pair 3 of/).waitFor();
      await page.getByRole("link", { name: "Correct the last one" }).click();
      await page.getByText("You gave this pair 3.").waitFor();
      assert.equal(await page.getByLabel(/^Remark/).inputValue(), "9 threads pulled");
      await assertSound(page);
      await page.getByRole("button", { name: /Can.t tell/ }).click();
      await page.getByText(/pair 3 of/).waitFor();
      // A break, then on where it stopped.
      await page.goto(`${address}/eyes`);
      await page.getByRole("link", { name: "Go on as A. N." }).click();
      assert.deepEqual((await progress(page))[0], 3);
      await judgeAll(page, () => "4");
      await assertSound(page);
      await sitDown(page, address, "B. O.");
      await judgeAll(page, (at) => (at % 2 ? "4" : "3-4"));
      await page.getByRole("link", { name: "Back to the sessions" }).click();
      await page.getByRole("button", { name: "Close it and show the grades" }).click();
      await page.getByRole("heading", { name: "How far eyes agree" }).waitFor();
      await assertSound(page);
      await page.goto(address);
      await page.getByRole("heading", { name: /^By eye:/ }).waitFor();
      await assertSound(page);
      await page.goto(`${address}/report`);
      await page.getByRole("heading", { name: "How far eyes agree" }).waitFor();
      await assertSound(page);
      assertQuiet(page);
      await page.context().close();
    });
  }

  test("works with scripts off", async () => {
    const page = await newPage(browser, "desktop", { javaScriptEnabled: false });
    const { address } = await ask(page, bench.origin, "By eye without scripts");
    await beginSession(page, address, { repeats: "0" });
    await sitDown(page, address, "A. N.");
    await judgeAll(page, () => "4-5");
    await page.context().close();
  });
});
