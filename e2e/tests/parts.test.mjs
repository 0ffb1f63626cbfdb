// A folded piece before and after it took up another dye: pale and deep, each on its own.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { ask, photograph } from "../lib/trial.mjs";

describe("pale and deep parts", () => {
  let bench, browser, trial, code, photo;
  before(async () => {
    bench = await serve("empty");
    browser = await launch();
    const page = await newPage(browser, "desktop");
    const asked = await ask(page, bench.origin, "Folded cloth in one tub");
    [trial, code] = [asked.address, asked.pieces[0].code];
    await photograph(page, trial, "parts-0", { stage: 0, code });
    await photograph(page, trial, "parts-3", { stage: 3, code });
    photo = page.url();
    assertQuiet(page);
    await page.context().close();
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  for (const size of Object.keys(SIZES)) {
    test(`stand on the photo, the trial and the report (${size})`, async () => {
      const page = await newPage(browser, size);
      for (const address of [photo, trial, `${trial}/report`]) {
        await page.goto(address);
        const parts = page.getByRole("region", { name: "Pale and deep parts by stage" });
        await parts.waitFor();
        for (const part of ["pale", "deep"]) {
          const row = parts.getByRole("row").filter({ hasText: `${code}, ${part}` });
          assert.match(await row.innerText(), /change \d+\.\d\d \(\d+\.\d\d to \d+\.\d\d\)/, `${part} on ${address}`);
          assert.ok(await row.locator("svg.swatch").last().isVisible());
        }
        assert.ok(await page.getByText("another piece’s dye shows").isVisible());
        await assertSound(page);
      }
      assertQuiet(page);
      await page.context().close();
    });
  }

  test("are in the data, and the table counts whole pieces apart", async () => {
    const data = await (await fetch(`${trial}.json`)).json();
    assert.deepEqual(data.parts.map((at) => [at.part, at.stage]), [["pale", 0], ["pale", 3], ["deep", 0], ["deep", 3]]);
    const [pale, deep] = [1, 3].map((i) => data.parts[i].change);
    assert.ok(pale.low > 5, "the pale part took up dye");
    assert.ok(deep.high < pale.low, "the deep part hid it");
    const table = (await (await fetch(`${trial}.csv`)).text()).trim().split("\n");
    assert.equal(table.filter((line) => line.includes(",whole,")).length, 2);
    assert.equal(table.length, 1 + 2 * 3);
  });
});
