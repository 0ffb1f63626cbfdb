// A recipe by form and by text, worked out, and its run sheet on paper.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { printedPages, printedSize } from "../lib/print.mjs";
import { recipeFrom } from "../lib/recipe.mjs";

describe("a recipe", () => {
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
    test(`is written by form, mended at its field, changed and put back (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/recipes`);
      await assertSound(page);
      await page.getByRole("link", { name: "Write a recipe" }).first().click();
      await page.getByLabel("What do you call it?").fill(`Bath on a ${size}`);
      await page.getByLabel("Dry weight of all").fill("250 g");
      await page.getByLabel("Class of dye").or(page.locator("#class")).selectOption({ value: "reactive-warm" });
      await page.getByLabel("Dye", { exact: true }).fill("blue");
      await page.locator("#dye-1-amount").fill("1 % owf");
      await page.locator("#auxiliary-1-name").fill("salt");
      await page.locator("#auxiliary-1-amount").fill("1//3 cup");
      await page.getByRole("button", { name: "Add a dye" }).click();
      await page.locator("#dye-2-name").waitFor();
      assert.equal(await page.locator("#auxiliary-1-amount").inputValue(), "1//3 cup");
      await assertSound(page);

      // Enter works it out; what is wrong stands at its field with the character at fault.
      await page.locator("#auxiliary-1-amount").press("Enter");
      await page.getByRole("alert").waitFor();
      assert.equal(await page.locator("#auxiliary-1-amount").getAttribute("aria-invalid"), "true");
      assert.match(await page.locator("#auxiliary-1-amount-problem").innerText(), /at character 3/);
      await assertSound(page);
      await page.locator("#auxiliary-1-amount").fill("35 g/L");
      await page.getByRole("button", { name: "Work it out" }).click();
      await page.getByRole("heading", { name: "Where the dye goes" }).waitFor();
      await assertSound(page);

      // No soda: said before everything else, and cautions stand before the steps.
      const [missing, beware, steps] = await Promise.all([
        page.getByText(/There is no alkali in the bath/).boundingBox(),
        page.getByRole("heading", { name: "Before you begin" }).boundingBox(),
        page.getByRole("heading", { name: "Steps", exact: true }).boundingBox(),
      ]);
      assert.ok(missing.y < beware.y && beware.y < steps.y);
      assert.ok(await page.getByRole("img", { name: /^Temperature of the bath over time/ }).isVisible());

      const recipe = page.url();
      await page.getByRole("link", { name: "Change it" }).click();
      await page.locator("#auxiliary-2-name, #auxiliary-1-name").first().waitFor();
      await page.getByRole("button", { name: "Add another" }).click();
      await page.locator("#auxiliary-2-name").fill("soda ash");
      await page.locator("#auxiliary-2-amount").fill("10 g/L");
      await page.getByRole("button", { name: "Keep as a new revision" }).click();
      await page.getByRole("heading", { name: "Revisions" }).waitFor();
      assert.equal(await page.getByText(/There is no alkali/).count(), 0);

      await page.getByText("See or edit it").click();
      const text = page.getByLabel("Recipe text (TOML)");
      await text.fill("class = ");
      await page.getByRole("button", { name: "Keep this text" }).click();
      await page.getByRole("alert").waitFor();
      assert.equal(await text.inputValue(), "class =");
      await assertSound(page);

      await page.goto(`${recipe}?goods=5+kg`);
      assert.match(await page.locator("section", { has: page.locator("#lot") }).innerText(), /5\skg/);
      await assertSound(page);
      await page.goto(`${recipe}?revision=1`);
      await page.getByRole("button", { name: "Go back to this one" }).click();
      await page.getByText("Back to revision 1").waitFor();
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }

  test("prints its run sheet on one page of either paper, a long one too", async () => {
    const page = await newPage(browser, "desktop");
    const sheets = [];
    for (const example of ["napkins", "shirts", "scarf"]) sheets.push(await recipeFrom(page, bench.origin, example));
    // Two more after-treatments, six more materials and names that need room.
    await page.goto(`${sheets[1]}/edit`);
    for (let k = 2; k <= 6; k += 1) {
      await page.getByRole("button", { name: "Add another" }).click();
      await page.locator(`#auxiliary-${k}-name`).fill(`a material with quite a long name, number ${k}`);
      await page.locator(`#auxiliary-${k}-amount`).fill(`${k} g/L`);
    }
    for (let k = 2; k <= 3; k += 1) {
      await page.getByRole("button", { name: "Add an after-treatment" }).click();
      for (const [field, value] of [["name", `resin fixative ${k}`], ["amount", "20 ml/L"], ["temperature", "60 C"], ["time", "30 min"], ["material", "resin fixative"], ["arms", "fixed"]]) {
        await page.locator(`#after-${k}-${field}`).fill(value);
      }
    }
    await page.getByRole("button", { name: "Keep as a new revision" }).click();
    await page.getByRole("heading", { name: "Revisions" }).waitFor();
    for (const recipe of sheets) {
      for (const [paper, mm] of [["a4", [210, 297]], ["letter", [215.9, 279.4]]]) {
        await page.goto(`${recipe}/sheet?paper=${paper}`);
        await assertSound(page);
        assert.equal(await printedPages(page), 1, `${recipe} on ${paper}`);
        for (const [k, side] of (await printedSize(page)).entries()) assert.ok(Math.abs(side - mm[k]) < 0.5);
        const [beware, first] = await Promise.all([page.getByText("Before you begin").boundingBox(), page.getByRole("table").boundingBox()]);
        assert.ok(beware.y < first.y);
      }
    }
    assertQuiet(page);
    await page.context().close();
  });
});
