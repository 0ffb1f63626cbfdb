// What stands on the shelves, and the notebook searched.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { beginRun, recipeFrom, shelve } from "../lib/recipe.mjs";

/** No table of the page has to be scrolled sideways. */
async function assertFits(page) {
  const wide = await page.evaluate(() => [...document.querySelectorAll(".scroll")]
    .filter((box) => box.scrollWidth > box.clientWidth).map((box) => `${box.getAttribute("aria-label")}: ${box.scrollWidth} of ${box.clientWidth} px`));
  assert.deepEqual(wide, []);
}

describe("the shelves and the search", () => {
  let bench, demo, browser;
  before(async () => {
    bench = await serve("empty");
    demo = await serve("demo");
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
    await demo?.stop();
  });

  for (const size of Object.keys(SIZES)) {
    test(`a lot is put on the shelf, used by hand and by a run, and found (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/materials`);
      await assertSound(page);
      const name = `yellow ${size}`;
      const shelf = await shelve(page, bench.origin, name, "50 g", "9.50 per 100 g");
      await page.goto(`${bench.origin}/materials`);
      await page.getByRole("row", { name: new RegExp(name) }).getByText("9.50 per 100 g").waitFor();
      await assertFits(page);
      await assertSound(page);
      await page.goto(shelf);
      await assertSound(page);
      const lot = page.locator("article.lot").first();
      await lot.getByLabel("Used").fill("5 ml");
      await lot.getByLabel("for", { exact: true }).fill("a sample");
      await lot.getByRole("button", { name: "Note it" }).click();
      await page.getByRole("alert").waitFor();
      assert.equal(await lot.getByLabel("for", { exact: true }).inputValue(), "a sample");
      await assertSound(page);
      await lot.getByLabel("Used").fill("5 g");
      await page.keyboard.press("Enter");
      await page.getByRole("heading", { name: /45\sg left/ }).waitFor();
      const small = await page.evaluate(() => [...document.querySelectorAll("main button, main input:not([type=hidden]), main select")]
        .filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 47.5).map((e) => e.outerHTML.slice(0, 80)));
      assert.deepEqual(small, []);

      await page.goto(`${bench.origin}/recipes/new?example=napkins`);
      await page.getByLabel("Dye", { exact: true }).first().fill(name);
      assert.equal(await page.locator(`#prices option[label^="${name}, lot of"]`).getAttribute("value"), "9.50 per 100 g");
      await page.getByRole("button", { name: "Work it out" }).click();
      await page.getByRole("heading", { name: "Where the dye goes" }).waitFor();
      await beginRun(page, page.url(), `By ${name}`);
      await page.goto(shelf);
      await page.getByRole("heading", { name: /43\sg left/ }).waitFor();
      await page.getByRole("link", { name: `By ${name}` }).waitFor();
      await page.getByRole("button", { name: /^It is used up/ }).click();
      await page.getByText("Used up.").waitFor();
      await assertSound(page);

      await page.getByRole("link", { name: "Find it in the notebook" }).click();
      const kinds = page.locator(".trials .tag");
      await kinds.first().waitFor();
      assert.deepEqual((await kinds.allInnerTexts()).sort(), ["material", "recipe", "run"]);
      await assertSound(page);
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });

    test(`readings near a colour are found (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${demo.origin}/search`);
      await assertSound(page);
      await page.getByLabel("L*, a* and b*").fill("45 36 21");
      await page.getByRole("button", { name: "Find by numbers" }).click();
      const rows = page.getByRole("region", { name: "Readings near the colour" }).locator("tbody tr");
      await rows.first().waitFor();
      assert.equal(await rows.count(), 24);
      // On a phone the number stands behind its column's name.
      const off = (await rows.locator("td.number").allInnerTexts()).map((text) => Number(text.split(" ").at(-1)));
      assert.ok(off.every(Number.isFinite), String(off));
      assert.deepEqual(off, [...off].sort((a, b) => a - b), "the nearest first");
      await assertFits(page);
      await assertSound(page);
      await page.getByLabel("or pick a colour").fill("#ffffff");
      await page.getByRole("button", { name: "Find by eye" }).click();
      await page.getByText("No reading for D65/10 lies within").waitFor();
      await assertSound(page);
      assertQuiet(page);
      await page.context().close();
    });
  }
});
