// Readings from elsewhere: typed, shown before they are added, withdrawn; grades by eye.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertSound, launch, newPage } from "../lib/browser.mjs";
import { ask } from "../lib/trial.mjs";

describe("readings from elsewhere", () => {
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
    test(`are typed, looked at, added and withdrawn (${size})`, async () => {
      const page = await newPage(browser, size);
      const { address, pieces } = await ask(page, bench.origin, `Measured elsewhere, ${size}`);
      await page.getByRole("link", { name: "Add readings from elsewhere" }).click();
      await assertSound(page);

      // A table that can't be read comes back with a sentence and what was typed.
      const typed = page.getByLabel("Or type them");
      await typed.fill("piece; L; a; b\nnobody; 41,2; 20; 5");
      await page.getByRole("button", { name: "Show what will be added" }).click();
      await page.getByRole("main").getByText("nobody").first().waitFor();
      await assertSound(page);
      await page.goto(`${address}/elsewhere`);

      const rows = pieces.map(({ code }, i) => `${code}; ${41 + i},2; 20; 5`);
      await typed.fill(["piece; L; a; b", ...rows].join("\n"));
      await page.getByLabel("Who measured").fill("A friend");
      await page.getByRole("button", { name: "Show what will be added" }).click();
      await page.getByRole("button", { name: /^Add/ }).first().waitFor();
      await assertSound(page);
      await page.getByRole("button", { name: /^Add/ }).first().click();
      // The trial shows them with their source.
      await page.getByRole("heading", { name: "Readings", exact: true }).waitFor();
      assert.equal(await page.locator("table.readings tbody tr").count(), pieces.length);
      await assertSound(page);
      await page.goto(`${address}/elsewhere`);
      const added = page.getByRole("region", { name: "What was added" });
      assert.equal(await added.getByRole("button", { name: "Withdraw" }).count(), pieces.length);
      await assertSound(page);

      await page.getByLabel("Grade", { exact: true }).selectOption("3-4");
      await page.getByLabel("Who judged").fill("A friend");
      await page.getByLabel("Under which light").fill("north window");
      await page.getByRole("button", { name: "Add the grade" }).click();
      await page.getByRole("heading", { name: "Grades judged by eye" }).waitFor();
      await page.goto(`${address}/elsewhere`);
      await added.getByText(/: 3-4, against/).waitFor();
      await added.getByLabel(`Why the reading of ${pieces[0].code} is withdrawn`).fill("the cloth was damp");
      await added.getByRole("button", { name: "Withdraw" }).first().click();
      await page.waitForURL(/#added$/);
      const { readings, eye_grades: grades } = await (await fetch(`${address}.json`)).json();
      assert.equal(readings.length, pieces.length - 1);
      assert.equal(grades.length, 1);
      await assertSound(page);
      // The browser itself logs an answer of 4xx; nothing else may be logged.
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }
});
