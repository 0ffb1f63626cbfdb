// The settings: chosen by mouse, finger and keyboard, refused in words, and followed by other pages.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { beginRun, recipeFrom, shelve } from "../lib/recipe.mjs";

/** Chooses on the page of settings: values of radio buttons, and the currency's code. */
async function choose(page, origin, currency, values) {
  await page.goto(`${origin}/settings`);
  for (const value of values) await page.locator(`input[value="${value}"]`).check();
  await page.getByLabel("Currency", { exact: true }).fill(currency);
  await page.getByRole("button", { name: "Keep the settings" }).click();
}

const AMERICAN = ["us_customary", "code_first", "month_named", "hours12"];
const AS_EVER = ["metric", "code_last", "iso", "hours24"];

describe("the settings", () => {
  let demo, empty, browser;
  before(async () => {
    demo = await serve("demo");
    empty = await serve("empty");
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await demo?.stop();
    await empty?.stop();
  });

  for (const size of Object.keys(SIZES)) {
    test(`are chosen, and other pages follow (${size})`, async () => {
      const page = await newPage(browser, size);
      await choose(page, empty.origin, "", AS_EVER);
      await page.goto(`${empty.origin}/studio`);
      await page.getByRole("link", { name: "Settings", exact: true }).click();
      await assertSound(page);
      const small = await page.evaluate(() => [...document.querySelectorAll("main button, main label:has(input), main input:not([type=hidden], [type=radio])")]
        .filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 47.5).map((e) => e.outerHTML.slice(0, 80)));
      assert.deepEqual(small, []);

      await page.getByLabel(/^US customary/).check();
      await page.getByLabel("Currency", { exact: true }).fill("usd");
      await page.getByLabel(/(USD|EUR)\s8\.50/).check();
      await page.getByLabel(/Nov\s26, 2026/).check();
      await page.getByLabel(/6:05\spm/).check();
      await page.getByRole("button", { name: "Keep the settings" }).click();
      await page.getByRole("status").getByText("Kept.").waitFor();
      await page.getByText("USD 8.50 per 3.53 oz (100 g)").waitFor();
      await assertSound(page);

      const shelf = await shelve(page, empty.origin, `madder ${size}`, "1 lb", "9.50 per 4 oz");
      await page.getByText("USD 9.50 per 4 oz").waitFor();
      await page.getByRole("heading", { name: /^Lot of [A-Z][a-z]{2}\s\d+, \d{4}: 1\slb \(454\sg\) left$/ }).waitFor();
      await assertSound(page);

      const recipe = await recipeFrom(page, empty.origin, "napkins");
      const text = await page.locator("main").innerText();
      for (const part of [/oz \(\d/, /US\sgal \(\d/, /\d\s°F \(\d+\s°C\)/, /EUR\s\d+\.\d\d/]) assert.match(text, part);
      assert.equal(await page.locator("svg.programme text", { hasText: "°F" }).count(), 1);
      await assertSound(page);
      const run = await beginRun(page, recipe, `Run on a ${size}`);
      await page.getByText(/^Begun [A-Z][a-z]{2}\s\d+, \d{4}/).waitFor();
      assert.match(await page.locator(".lede").innerText(), /US\sgal \(/);
      await page.locator("#step-3").evaluate((details) => { details.open = true; });
      await page.locator("#step-3").getByLabel("Temperature, °F").fill("140");
      await page.locator("#step-3").getByRole("button", { name: "Note it" }).first().click();
      await page.getByText("it was at 140 °F (60 °C)").first().waitFor();
      await page.locator("#step-3 .notes .when", { hasText: /\d:\d\d\s[ap]m/ }).first().waitFor();
      await assertSound(page);
      const data = await (await fetch(`${run}.json`)).json();
      assert.ok(JSON.stringify(data.sheet.steps).includes("°C") && !JSON.stringify(data.sheet).includes("US gal"), "data stays metric");
      await page.goto(`${run}/sheet`);
      assert.match(await page.locator("body").innerText(), /°F/);

      // Back again: the same run in grams.
      await choose(page, empty.origin, "", AS_EVER);
      await page.goto(run);
      assert.doesNotMatch(await page.locator(".lede").innerText(), /US\sgal/);
      await page.goto(shelf);
      await page.getByText("USD 9.50 per 4 oz").or(page.getByText("9.50 USD per 4 oz")).waitFor();
      assertQuiet(page);
      await page.context().close();
    });

    test(`reach the demo's trial and its report (${size})`, async () => {
      const page = await newPage(browser, size);
      await choose(page, demo.origin, "GBP", ["us_customary", "code_last", "day_first", "hours24"]);
      await page.goto(demo.address);
      const trial = await page.locator("main").innerText();
      assert.match(trial, /\d\d\/\d\d\/\d{4}/);
      assert.match(trial, /oz \(/);
      await assertSound(page);
      await page.goto(`${demo.address}/report`);
      const report = await page.locator("body").innerText();
      assert.match(report, /report made on \d\d\/\d\d\/\d{4}/);
      assert.match(report, /Days are written day, month, year\./);
      await assertSound(page);
      assertQuiet(page);
      await page.context().close();
    });
  }

  test("are refused in words at their field, with what was typed", async () => {
    const page = await newPage(browser, "phone");
    await choose(page, empty.origin, "", AS_EVER);
    for (const [code, words] of [["JPY", "Sums in JPY have 0 decimals"], ["KWD", "3 decimals"], ["euro", "is no currency's code"], ["ABC", "There is no currency ABC"]]) {
      await choose(page, empty.origin, code, AMERICAN);
      await page.locator("#currency-problem", { hasText: words }).waitFor();
      assert.equal(await page.getByLabel("Currency", { exact: true }).inputValue(), code);
      assert.ok(await page.locator('input[value="month_named"]').isChecked(), "what was chosen beside it stays");
      await assertSound(page);
    }
    await page.getByRole("alert").getByRole("link").click();
    assert.equal(await page.evaluate(() => document.activeElement?.id), "currency");
    await page.goto(`${empty.origin}/settings`);
    assert.ok(await page.locator('input[value="iso"]').isChecked(), "nothing was kept");
    await page.context().close();
  });

  test("are chosen by keyboard, without scripts and in the dark", async () => {
    const page = await newPage(browser, "desktop", { javaScriptEnabled: false, colorScheme: "dark" });
    await choose(page, empty.origin, "", AS_EVER);
    await page.goto(`${empty.origin}/settings`);
    await page.locator('input[value="metric"]').focus();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Tab");
    await page.keyboard.type("chf");
    await page.keyboard.press("Enter");
    await page.getByRole("status").getByText("Kept.").waitFor();
    assert.ok(await page.locator('input[value="us_customary"]').isChecked());
    assert.equal(await page.getByLabel("Currency", { exact: true }).inputValue(), "CHF");
    await page.context().close();
  });
});
