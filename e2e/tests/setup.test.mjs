// The page of the set-up on a bench that has no check yet.
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertSound, launch, newPage } from "../lib/browser.mjs";

describe("the set-up", () => {
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
    test(`is reached from the start page and asks for photos (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/`);
      await page.getByRole("main").getByRole("link", { name: "Check your set-up" }).click();
      await assertSound(page);
      await page.getByLabel("Name of the set-up").fill("north window");
      await page.getByLabel("Photos", { exact: true }).setInputFiles({
        name: "list.jpg",
        mimeType: "image/jpeg",
        buffer: Buffer.from("a shopping list"),
      });
      await page.getByRole("button", { name: "Check the set-up" }).click();
      await page.getByRole("link", { name: /^list\.jpg: / }).waitFor();
      await assertSound(page);
      await page.context().close();
    });
  }
});
