// Where the dye of a run went: jars typed in, a correction, a bad reading, on the phone and without scripts.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { beginRun, readWater, recipeFrom } from "../lib/recipe.mjs";

describe("the waters of a run", () => {
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
    test(`become a balance, by keyboard and with a correction (${size})`, async () => {
      const page = await newPage(browser, size);
      const run = await beginRun(page, await recipeFrom(page, bench.origin, "napkins"), `Waters on a ${size}`);
      await page.getByRole("link", { name: /^Where the dye went/ }).click();
      await page.getByRole("heading", { name: "Where the dye went" }).waitFor();
      await assertSound(page);
      await readWater(page, "bath", "4.5 L", "1:5");
      await readWater(page, "rinse", "5 L", "1:20");

      // By keyboard alone.
      await page.getByLabel("How much water").last().focus();
      await page.keyboard.type("5 L");
      await page.keyboard.press("Tab");
      await page.keyboard.type("1:64");
      await page.keyboard.press("Enter");
      await page.getByText("Rinse 3").or(page.locator("option", { hasText: "rinse 3" })).first().waitFor({ state: "attached" });
      const rows = page.getByRole("region", { name: "Shares of the dye, as a table" }).locator("tbody tr");
      assert.equal(await rows.count(), 6, "put in, bath, two rinses, washed out, goods");
      assert.match(await rows.last().innerText(), /On the goods\s+75\s% \(68 to 81\s%\)/);
      assert.ok(await page.locator("figure.plot svg").isVisible());
      assert.match(await page.getByRole("listitem").filter({ hasText: "more rinses" }).innerText(), /below 0\.1\s% of the dye/);
      await assertSound(page);
      const small = await page.evaluate(() => [...document.querySelectorAll("main button, main summary, main input:not([type=hidden]), main select")]
        .filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 47.5).map((e) => e.outerHTML.slice(0, 80)));
      assert.deepEqual(small, []);

      const reading = page.locator(".notes > li", { hasText: "Rinse 1" });
      await reading.locator("summary").first().click();
      await reading.getByLabel("Looks like the step").fill("1:10");
      await reading.getByRole("button", { name: "Keep the correction" }).click();
      await page.locator(".notes > li", { hasText: "looks like 1:10" }).waitFor();
      await page.getByLabel(/A rinse is clear below/).fill("5");
      await page.getByRole("button", { name: "Count anew" }).click();
      await page.getByText("it was clear").waitFor();

      await page.getByLabel("How much water").last().fill("5 buckets");
      await page.getByLabel("Looks like the step").last().fill("1:100");
      await page.getByRole("button", { name: "Add the reading" }).click();
      await page.getByRole("alert").waitFor();
      assert.equal(await page.getByLabel("How much water").last().inputValue(), "5 buckets");
      await assertSound(page);
      const { events } = await (await fetch(`${run}/rinse.json`)).json();
      assert.equal(events.length, 4);
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }

  test("are read without scripts too, with a photometer", async () => {
    const page = await newPage(browser, "phone", { javaScriptEnabled: false });
    const run = await beginRun(page, await recipeFrom(page, bench.origin, "napkins"), "Plain");
    await page.goto(`${run}/rinse`);
    await page.getByText("With a photometer: standards").click();
    await page.getByLabel("Standards of known concentration").fill("0 mg/L = 0.002\n5 mg/L = 0.106\n10 mg/L = 0.209\n20 mg/L = 0.417");
    await page.getByRole("button", { name: "Keep the standards" }).click();
    await page.getByRole("button", { name: "Take them back" }).waitFor();
    await page.getByLabel("Of which water").selectOption({ label: "the spent bath" });
    await page.getByLabel("How much water").last().fill("4.5 L");
    await page.getByLabel("or absorbance").last().fill("0.271 0.268 0.273");
    await page.getByText("Sample diluted, how sure").last().click();
    await page.getByLabel("Sample diluted before").last().fill("1:10");
    await page.getByRole("button", { name: "Add the reading" }).click();
    await page.getByRole("heading", { name: "The balance" }).waitFor();
    assert.ok(await page.getByText(/^The goods took 82\s%/).isVisible());
    assertQuiet(page);
    await page.context().close();
  });
});
