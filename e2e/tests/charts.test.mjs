// A chart of one's own: refused where it is none, kept, chosen for a photo, read by.
import assert from "node:assert/strict";
import path from "node:path";
import { after, before, describe, test } from "node:test";
import { pictures, serve } from "../lib/bench.mjs";
import { SIZES, assertSound, launch, newPage } from "../lib/browser.mjs";
import { ask, photograph, send } from "../lib/trial.mjs";

describe("a chart of one's own", () => {
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
    test(`is kept, chosen and read by (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/`);
      await page.getByRole("navigation", { name: "Main" }).getByRole("link", { name: "Studio" }).click();
      await page.getByRole("link", { name: "Charts" }).click();
      await page.getByRole("heading", { name: "Your charts" }).waitFor();
      await assertSound(page);
      const name = `Studio chart, ${size}`;
      await page.getByLabel("Name of the chart").fill(name);
      const file = page.getByLabel("Values of its patches");
      await file.setInputFiles({ name: "list.csv", mimeType: "text/csv", buffer: Buffer.from("alum, soda, string") });
      await page.getByRole("button", { name: "Keep this chart" }).click();
      await page.getByRole("alert").getByText("list.csv gives no chart").waitFor();
      assert.equal(await page.getByLabel("Name of the chart").inputValue(), name);
      await assertSound(page);

      await file.setInputFiles(path.join(pictures, "own-chart.csv"));
      await page.getByRole("button", { name: "Keep this chart" }).click();
      await page.getByRole("heading", { name }).waitFor();
      assert.ok(await page.getByRole("img", { name: `The patches of ${name}` }).isVisible());
      await assertSound(page);

      const { address, pieces } = await ask(page, bench.origin, `By another chart, ${size}`);
      await send(page, address, "own-chart", { stage: 0 });
      await page.getByRole("alert").filter({ visible: true }).waitFor();
      const chart = `${name}, 4 rows of 5 patches`;
      await photograph(page, address, "own-chart", { stage: 0, code: pieces[0].code, chart });
      assert.ok(await page.getByText(`the chart “${name}”`).isVisible());
      await assertSound(page);
      await page.goto(`${address}/photos/new`);
      const chosen = page.getByLabel("Chart on the photo").locator("option:checked");
      assert.equal(await chosen.innerText(), chart, "the next photo starts from it");
      await assertSound(page);
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }
});
