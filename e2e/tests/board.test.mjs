// Boards and tags: chosen on a page, printed on one sheet.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { printedPages, printedSize } from "../lib/print.mjs";

describe("board and tags", () => {
  let bench, browser, trial;
  before(async () => {
    bench = await serve("demo");
    browser = await launch();
    trial = bench.address;
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  for (const size of Object.keys(SIZES)) {
    test(`are chosen from the trial and shown (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(trial);
      await page.getByRole("link", { name: "Print a board and tags" }).click();
      await page.getByRole("heading", { name: "Board and tags" }).waitFor();
      await assertSound(page);
      await page.getByLabel("Windows").selectOption("12");
      await page.getByLabel("Paper").selectOption("letter");
      await page.getByLabel("Rounds gone through").fill("3");
      await page.getByLabel("For", { exact: true }).selectOption({ label: "this trial alone" });
      await page.getByRole("button", { name: "Show the board" }).click();
      await page.waitForURL(/\/board\?/);
      assert.ok(await page.locator("svg").first().isVisible());
      await page.goBack();
      await page.getByRole("link", { name: "Tags on A4", exact: true }).click();
      const { trial: asked } = await (await fetch(`${trial}.json`)).json();
      for (const { code } of asked.pieces.slice(0, 3)) {
        assert.ok(await page.getByText(code, { exact: true }).first().isVisible(), code);
      }
      assertQuiet(page);
      await page.context().close();
    });
  }

  for (const [paper, mm] of [["a4", [210, 297]], ["letter", [215.9, 279.4]]]) {
    for (const windows of [6, 12]) {
      test(`a board of ${windows} windows prints on one sheet of ${paper}`, async () => {
        const page = await newPage(browser, "desktop");
        await page.goto(`${bench.origin}/board?windows=${windows}&paper=${paper}`);
        assert.equal(await printedPages(page), 1);
        for (const [k, side] of (await printedSize(page)).entries()) {
          assert.ok(Math.abs(side - mm[k]) < 0.5, `${side} mm instead of ${mm[k]} mm`);
        }
        await page.context().close();
      });
    }
  }

  test("the demo's tags print on one sheet", async () => {
    const page = await newPage(browser, "desktop");
    await page.goto(`${trial}/tags?paper=a4`);
    assert.equal(await printedPages(page), 1);
    await page.context().close();
  });

  test("sheets fit a phone and break no rule of access", async () => {
    for (const size of Object.keys(SIZES)) {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/board`);
      await assertSound(page);
      await page.goto(`${trial}/tags`);
      await assertSound(page);
      assertQuiet(page);
      await page.context().close();
    }
  });
});
