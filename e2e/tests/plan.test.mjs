// From a question to a plan, a started trial, its labels and its packing list.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { printedPages, printedSize } from "../lib/print.mjs";
import { fillIn } from "../lib/trial.mjs";

describe("a plan", () => {
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
    test(`leads from a question to a packing list (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/`);
      await page.getByRole("main").getByRole("link", { name: "Ask a question" }).click();
      await assertSound(page);
      await fillIn(page, `Does agent F keep this red, asked on a ${size}?`);

      // Refused at the field, with what was typed still there.
      await page.getByLabel("Amount").nth(1).fill("a glug");
      await page.getByRole("button", { name: "Propose a plan" }).click();
      await page.getByRole("alert").waitFor();
      assert.equal(await page.getByLabel("Amount").nth(1).getAttribute("aria-invalid"), "true");
      assert.equal(await page.getByLabel("Name of arm 2").inputValue(), "Fixing agent");
      await assertSound(page);
      await page.getByLabel("Amount").nth(1).fill("2 tbsp");
      await page.getByRole("button", { name: "Propose a plan" }).click();
      await page.getByRole("heading", { name: "What it can show" }).waitFor();
      await assertSound(page);
      assert.ok(await page.getByText(/you'd miss a grade 4 fade .+ in 10/).first().isVisible());

      // A flaw put in as text is found, mended with one press, and nothing is lost.
      await page.getByText("See or edit it").click();
      const text = page.getByLabel("Plan text (TOML)");
      const proposed = await text.inputValue();
      await text.fill("no plan at all");
      await page.getByRole("button", { name: "Keep this text" }).click();
      await page.getByRole("alert").waitFor();
      assert.equal(await text.inputValue(), "no plan at all");
      await assertSound(page);
      await text.fill(proposed.replace(/keepers = \d+/, "keepers = 0"));
      await page.getByRole("button", { name: "Keep this text" }).click();
      const mend = page.getByRole("button", { name: /a keeper$/ });
      await mend.waitFor();
      await assertSound(page);
      await mend.click();
      await mend.waitFor({ state: "detached" });
      await page.getByRole("link", { name: "See revision 1" }).click();
      await page.getByRole("button", { name: "Go back to this one" }).click();
      assert.equal(await page.getByText("Back to revision 1").count(), 1);
      await page.getByRole("button", { name: "Draw the order again" }).click();
      await page.getByText(/Order drawn from seed/).waitFor();

      await page.getByRole("button", { name: "Start the trial" }).click();
      await page.getByRole("link", { name: "Add a photo" }).waitFor();
      const trial = page.url();
      await assertSound(page);
      await page.getByRole("link", { name: "packing list" }).click();
      await page.getByRole("heading", { name: "Packing list" }).waitFor();
      await assertSound(page);

      await page.goto(`${trial}/blind`);
      await assertSound(page);
      assert.equal(await page.getByRole("table").count(), 0);
      await page.getByRole("button", { name: "Open the codes" }).click();
      await page.getByRole("table").waitFor();
      await assertSound(page);
      for (const sheet of ["boards", "tags?size=strip", "tags?size=pin", "blind/labels"]) {
        await page.goto(`${trial}/${sheet}`);
        await assertSound(page);
      }
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }

  for (const size of Object.keys(SIZES)) {
    test(`is there before its figures, which come without moving what is read (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/ask`);
      await fillIn(page, `Which of many, asked on a ${size}?`);
      await page.getByRole("button", { name: "Propose a plan" }).click();
      await page.getByText("See or edit it").click();
      const arms = Array.from({ length: 24 }, (_, arm) => `[[arms]]\nname = "arm ${arm}"\npieces = 60\n`);
      await page.getByLabel("Plan text (TOML)").fill(
        `question = "Which of many, on a ${size}?"\nasks = "which_is_best"\nmargin = "grade 4"\nrounds = 2\n${arms.join("")}` +
          `[[steps]]\nkind = "wash"\nloads = ["wash 1", "wash 2", "wash 3"]\n`,
      );
      await page.getByRole("button", { name: "Keep this text" }).click();
      const awaited = page.getByText("Being worked out");
      await awaited.waitFor();
      await assertSound(page);
      const read = page.getByRole("heading", { name: "The whole plan as text" });
      await read.scrollIntoViewIfNeeded();
      const before = (await read.boundingBox()).y;
      await page.getByRole("columnheader", { name: "show a difference by chance" }).waitFor({ timeout: 60_000 });
      assert.ok(Math.abs((await read.boundingBox()).y - before) < 2);
      assert.equal(await awaited.count(), 0);
      assert.equal(await page.getByRole("status").first().innerText(), "Worked out.");
      await assertSound(page);
      assert.deepEqual(page.faults, []);
      await page.context().close();
    });
  }

  test("is shown again by a link where there are no scripts", async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(`${bench.origin}/ask`);
    await fillIn(page, "Which of many, asked without scripts?");
    await page.getByRole("button", { name: "Propose a plan" }).click();
    await page.getByText("See or edit it").click();
    const arms = Array.from({ length: 24 }, (_, arm) => `[[arms]]\nname = "arm ${arm}"\npieces = 61\n`);
    await page.getByLabel("Plan text (TOML)").fill(
      `question = "Which of many?"\nasks = "which_is_best"\nmargin = "grade 4"\nrounds = 2\n${arms.join("")}`,
    );
    await page.getByRole("button", { name: "Keep this text" }).click();
    const again = page.getByRole("link", { name: "See whether it is there" });
    await again.waitFor();
    for (let looks = 0; looks < 200 && (await again.count()) > 0; looks += 1) {
      await again.click();
      await page.waitForTimeout(100);
    }
    await page.getByRole("columnheader", { name: "show a difference by chance" }).waitFor();
    await context.close();
  });

  test("prints on as many sheets as it needs, in the paper's size", async () => {
    const page = await newPage(browser, "desktop");
    await page.goto(`${bench.origin}/ask`);
    await fillIn(page, "What does it take to print?");
    await page.getByRole("button", { name: "Propose a plan" }).click();
    await page.getByRole("button", { name: "Start the trial" }).click();
    await page.getByRole("link", { name: "Add a photo" }).waitFor();
    const trial = page.url();
    const { trial: started } = await (await fetch(`${trial}.json`)).json();
    const pieces = started.pieces.length;
    const laid = started.pieces.filter(({ role }) => role !== "witness").length;
    for (const [paper, mm] of [["a4", [210, 297]], ["letter", [215.9, 279.4]]]) {
      // What fits by the sizes: whole labels and gaps of 4 mm within edges of 10 mm.
      const sheets = (width, height, count) => {
        const fit = (side, label) => Math.floor((side - 20 + 4) / (label + 4));
        return Math.ceil(count / (fit(mm[0], width) * fit(mm[1], height)));
      };
      for (const [sheet, expected] of [
        [`boards?paper=${paper}`, Math.ceil(laid / 12)],
        [`tags?size=strip&paper=${paper}`, sheets(100, 17, pieces)],
        [`tags?size=pin&paper=${paper}`, sheets(24, 34, pieces)],
        [`blind/labels?paper=${paper}`, sheets(64, 17, laid)],
      ]) {
        await page.goto(`${trial}/${sheet}`);
        assert.equal(await printedPages(page), expected, sheet);
        for (const [k, side] of (await printedSize(page)).entries()) {
          assert.ok(Math.abs(side - mm[k]) < 0.5, `${sheet}: ${side} mm instead of ${mm[k]} mm`);
        }
      }
    }
    await page.goto(`${trial}/packing`);
    assert.ok((await printedPages(page)) <= 2);
    assertQuiet(page);
    await page.context().close();
  });
});
