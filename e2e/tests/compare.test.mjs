// Side by side: two of anything that was read, by form, with the grades around the first.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";

describe("side by side", () => {
  let bench, browser;
  before(async () => {
    bench = await serve("demo");
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  for (const size of Object.keys(SIZES)) {
    test(`two pieces are chosen and compared (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(bench.address);
      await page.getByRole("link", { name: /side by side/ }).click();
      await page.getByRole("heading", { name: "What each grade looks like" }).waitFor();
      await assertSound(page);
      assert.equal(await page.locator(".ladder li").count(), 9);
      assert.equal(await page.locator(".ladder .here").count(), 1);
      const options = await page.getByLabel("Second", { exact: true }).locator("option").count();
      await page.getByLabel("Second", { exact: true }).selectOption({ index: options - 1 });
      await page.getByLabel("Edges").selectOption("small");
      await page.getByRole("button", { name: "Show them" }).click();
      await page.waitForURL(/gap=small/);
      await page.getByRole("heading", { name: "What each grade looks like" }).waitFor();
      await assertSound(page);
      assertQuiet(page);
      await page.context().close();
    });
  }

  test("works by keyboard and with scripts off", async () => {
    const page = await newPage(browser, "desktop", { javaScriptEnabled: false });
    await page.goto(`${bench.address}/compare`);
    const first = await page.locator("#two").textContent();
    await page.getByLabel("First", { exact: true }).focus();
    await page.keyboard.press("ArrowDown");
    await page.getByRole("button", { name: "Show them" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/a=/);
    assert.notEqual(await page.locator("#two").textContent(), first);
    await page.context().close();
  });
});
