// The demo from the list of trials to its verdict, plot and report.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { after, before, describe, test } from "node:test";
import { pathToFileURL } from "node:url";
import { serve, terminal } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";

test("the terminal shows readings, grades, verdicts and where the report is", async () => {
  const text = await readFile(terminal, "utf8");
  for (const word of [/invented/i, /readings/i, /grade/i, /visible/, /alike/, /Report: .*report\.html/]) {
    assert.match(text, word);
  }
});

describe("the demo trial", () => {
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
    test(`leads from the list to the verdict and the report (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/`);
      await assertSound(page);
      const entry = page.getByRole("listitem").filter({ hasText: "invented" });
      await entry.getByRole("link").first().click();

      await page.getByRole("heading", { name: "Verdict", exact: true }).waitFor();
      assert.match(page.url(), /\/trials\/[a-z0-9-]+$/);
      assert.ok(await page.getByText("invented trial").isVisible());
      const verdicts = page.locator("article.verdict");
      assert.equal(await verdicts.filter({ visible: true }).count(), 3, "three arms make three pairs");
      for (const [kind, count] of [["visible", 2], ["alike", 1]]) {
        assert.equal(await page.locator(`article.verdict.${kind}`).filter({ visible: true }).count(), count, kind);
      }
      const plot = page.getByRole("region", { name: "Change of each arm" });
      assert.ok(await plot.isVisible());
      assert.ok(await page.locator("figure.plot svg").isVisible());
      const curves = page.locator(".fades svg.fade");
      assert.equal(await curves.count(), 3, "a fade curve for each arm");
      assert.match(await curves.last().textContent(), /by the curve alone.*% left.*below grade 4: after/s);
      const stains = page.getByRole("region", { name: "Staining of pale cloth" }).locator("tbody tr");
      assert.equal(await stains.count(), 9, "three witness cloths after three stages");
      assert.match(await stains.last().textContent(), /is stained to grade/);
      const eyes = page.getByRole("region", { name: "Judged by eye" });
      assert.match(await eyes.innerText(), /After 5 rounds, the cloths themselves: 2 people judged/);
      await eyes.getByText("Beside the verdicts of readings").click();
      for (const [kind, count] of [["visible", 2], ["alike", 1]]) {
        assert.equal(await eyes.locator(`article.by-eye.${kind}`).filter({ visible: true }).count(), count, `by eye: ${kind}`);
      }
      const rows = await page.locator("table.swatches tbody tr").count();
      assert.equal(rows, 3, "a row of swatches for each arm");
      await assertSound(page);

      await eyes.getByRole("link", { name: "How far eyes agree" }).click();
      await page.getByRole("heading", { name: "How far eyes agree" }).waitFor();
      for (const name of ["Ida Fenn (invented)", "Joss Marl (invented)"]) {
        assert.ok(await page.getByText(name).first().isVisible(), name);
      }
      await assertSound(page);
      await page.goBack();

      await page.getByRole("link", { name: "Read the report" }).click();
      await page.getByText("Trial report").waitFor();
      assert.ok(await page.getByText("Invented trial.", { exact: true }).isVisible());
      assert.ok(await page.getByRole("heading", { name: "Verdict", exact: true }).isVisible());
      await assertSound(page);
      assertQuiet(page);
      await page.context().close();
    });
  }

  test("has a recipe, a finished run and readings of its waters, all marked as invented", async () => {
    const page = await newPage(browser, "desktop");
    await page.goto(`${bench.origin}/recipes`);
    assert.ok(await page.getByRole("link", { name: "brick-red napkins (invented)" }).isVisible());
    await page.getByRole("link", { name: "Napkins for Quillet Harbour, invented" }).click();
    await page.getByText("This run is over").waitFor();
    await page.getByRole("link", { name: /^Where the dye went/ }).click();
    const rows = page.getByRole("region", { name: "Shares of the dye, as a table" }).locator("tbody tr");
    assert.equal(await rows.count(), 8, "put in, bath, four rinses, washed out, goods");
    await assertSound(page);
    await page.goto(`${bench.address}/report`);
    assert.ok(await page.getByRole("heading", { name: /^Where its dye went/ }).isVisible());
    assert.ok(await page.getByRole("listitem").filter({ hasText: "it was at 53 °C instead of 60 °C" }).isVisible());
    assertQuiet(page);
    await page.context().close();
  });

  test("the address printed at the start opens the trial itself", async () => {
    const page = await newPage(browser, "desktop");
    const answer = await page.goto(bench.address);
    assert.equal(answer.status(), 200);
    assert.match(new URL(page.url()).pathname, /^\/trials\/.+/);
    await page.context().close();
  });

  test("the report kept as a file fetches nothing, has no script, and prints", async () => {
    const page = await newPage(browser, "desktop");
    await page.goto(bench.address);
    const link = page.getByRole("link", { name: "Keep the report as a file" });
    const [kept] = await Promise.all([page.waitForEvent("download"), link.click()]);
    assert.match(kept.suggestedFilename(), /-report\.html$/);
    const file = path.join(bench.home, "kept.html");
    await kept.saveAs(file);
    assert.doesNotMatch(await readFile(file, "utf8"), /<script/i);

    const alone = await newPage(browser, "desktop", { offline: true });
    const asked = [];
    alone.on("request", (request) => asked.push(request.url()));
    await alone.goto(pathToFileURL(file).href);
    await alone.getByText("Trial report").waitFor();
    assert.deepEqual(asked.filter((url) => !url.startsWith("data:")), [alone.url()]);
    const pictures = await alone.locator("img").evaluateAll((all) => all.map((img) => img.complete && img.naturalWidth > 0));
    assert.ok(pictures.length > 0 && pictures.every(Boolean), "every picture is inside the file");
    const pdf = await alone.pdf({ format: "A4", printBackground: true });
    assert.equal(pdf.subarray(0, 5).toString("latin1"), "%PDF-");
    assertQuiet(page);
    await alone.context().close();
    await page.context().close();
  });

  test("list and trial read without scripts", async () => {
    const page = await newPage(browser, "phone", { javaScriptEnabled: false });
    await page.goto(`${bench.origin}/`);
    await page.getByRole("listitem").getByRole("link").first().click();
    await page.getByRole("heading", { name: "Verdict", exact: true }).waitFor();
    assert.ok(await page.locator("article.verdict").first().isVisible());
    await page.context().close();
  });

  test("the keyboard reaches the content past the masthead", async () => {
    const page = await newPage(browser, "desktop");
    await page.goto(bench.address);
    await page.keyboard.press("Tab");
    const skip = page.getByRole("link", { name: "Skip to the content" });
    assert.ok(await skip.evaluate((link) => link === document.activeElement));
    await page.keyboard.press("Enter");
    assert.equal(new URL(page.url()).hash, "#main");
    await page.context().close();
  });
});
