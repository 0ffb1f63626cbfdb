// The report on paper: both sizes, nothing cut off, its pictures inside.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { assertQuiet, launch, newPage } from "../lib/browser.mjs";
import { printedPages, printedSize } from "../lib/print.mjs";

/** Name, width and height in millimetres (ISO 216; ANSI/ASME Y14.1), and what its margins leave in width, in CSS pixels. */
const PAPERS = [
  ["A4", 210, 297, Math.floor(((210 - 30) / 25.4) * 96)],
  ["Letter", 215.9, 279.4, Math.floor(((215.9 - 30) / 25.4) * 96)],
];

describe("the report on paper", () => {
  let bench, browser;
  before(async () => {
    bench = await serve("demo");
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  for (const [format, width, height, inside] of PAPERS) {
    test(`fits ${format}`, async () => {
      const page = await newPage(browser, "desktop");
      await page.setViewportSize({ width: inside, height: 1000 });
      await page.goto(`${bench.address}/report`);
      await page.emulateMedia({ media: "print" });
      const tooWide = await page.evaluate(() => {
        const most = document.documentElement.clientWidth + 1;
        const boxes = [...document.querySelectorAll("main *")].filter((box) => box.getBoundingClientRect().right > most);
        return boxes.slice(0, 5).map((box) => `${box.tagName} ${box.className} ${Math.round(box.getBoundingClientRect().right)} of ${most}`);
      });
      assert.deepEqual(tooWide, []);
      for (const [k, side] of (await printedSize(page, format)).entries()) {
        assert.ok(Math.abs(side - [width, height][k]) < 0.5, `${side} mm`);
      }
      const pages = await printedPages(page, format);
      assert.ok(pages > 3 && pages < 25, `${pages} pages`);
      assertQuiet(page);
      await page.context().close();
    });
  }
});
