// A run with wet hands: clocks side by side, notes by one tap, asleep, without scripts, on paper.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertSound, launch, newPage } from "../lib/browser.mjs";
import { printedPages } from "../lib/print.mjs";
import { beginRun, recipeFrom } from "../lib/recipe.mjs";

describe("a run", () => {
  let bench, browser;
  before(async () => {
    bench = await serve("empty");
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  const step = (page, number) => page.locator(`#step-${number}`);
  const events = async (run) => (await (await fetch(`${run}.json`)).json()).events;

  for (const size of Object.keys(SIZES)) {
    test(`keeps clocks and notes by single taps (${size})`, async () => {
      const page = await newPage(browser, size);
      const run = await beginRun(page, await recipeFrom(page, bench.origin, "shirts"), `Run on a ${size}`);
      await assertSound(page);
      await step(page, 1).getByLabel("minutes ago").fill("5");
      await step(page, 1).getByRole("button", { name: "Start", exact: true }).click();
      await page.locator(".clocks .clock").first().waitFor();
      await step(page, 2).getByRole("button", { name: "Start", exact: true }).click();
      await page.locator(".clocks li").nth(1).waitFor();
      await assertSound(page);

      // Everything that is tapped is large enough for a wet finger.
      const small = await page.evaluate(() => [...document.querySelectorAll("main button, main summary, main input:not([type=hidden]), .clocks a")]
        .filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 47.5).map((e) => e.outerHTML.slice(0, 80)));
      assert.deepEqual(small, []);

      // The clock goes on by itself, from the instant that is kept.
      const clock = step(page, 1).locator(".clock");
      assert.match(await clock.innerText(), /^5:\d\d · 2[45]:\d\d left$/);
      assert.equal(await page.getByText("Reload for the time now").count(), 0);
      const first = await clock.innerText();
      await page.waitForFunction((text) => document.querySelector("#step-1 .clock").textContent !== text, first);

      await step(page, 2).getByRole("button", { name: "powder not fully dissolved" }).click();
      await step(page, 2).locator(".notes li", { hasText: "powder not fully dissolved" }).waitFor();
      await page.goto(`${run}#step-4`);
      await step(page, 4).evaluate((details) => { details.open = true; });
      await step(page, 4).getByRole("button", { name: /60\s°C, as planned/ }).click();
      await step(page, 4).locator(".notes li", { hasText: "it was at 60 °C" }).waitFor();
      await step(page, 4).getByLabel("Temperature, °C").fill("rather hot");
      await step(page, 4).getByRole("button", { name: "Note it" }).first().click();
      await page.getByRole("alert").waitFor();
      await assertSound(page);
      await page.goto(`${run}#step-2`);

      // A correction is one more event; the first stays.
      const before = (await events(run)).length;
      await step(page, 2).locator(".notes li", { hasText: "powder" }).locator("summary").click();
      await step(page, 2).getByLabel("It should say").fill("powder lumped");
      await step(page, 2).getByRole("button", { name: "Keep the correction" }).last().click();
      await step(page, 2).locator(".notes li", { hasText: "powder lumped" }).waitFor();
      assert.equal((await events(run)).length, before + 1);
      assert.ok(JSON.stringify(await events(run)).includes("powder not fully dissolved"));

      // Long notes make the letters on paper smaller, not the sheets more.
      for (const number of [2, 4]) {
        await step(page, number).evaluate((details) => { details.open = true; });
        await step(page, number).getByLabel("In your own words").fill("the telephone rang and the pot went on alone ".repeat(10));
        await step(page, number).getByRole("button", { name: "Note as a departure" }).click();
        await step(page, number).locator(".notes li", { hasText: "the telephone rang" }).waitFor();
      }
      for (const paper of ["letter", "a4"]) {
        await page.goto(`${run}/sheet?paper=${paper}`);
        assert.equal(await printedPages(page), 1, paper);
      }
      await assertSound(page);
      assert.ok(await page.getByText("powder lumped").isVisible());
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }

  test("shows the right time after a sleep, and says when the planned time is over", async () => {
    const page = await newPage(browser, "phone");
    await page.clock.install();
    const run = await beginRun(page, await recipeFrom(page, bench.origin, "napkins"), "Asleep");
    await step(page, 1).getByLabel("minutes ago").fill("10");
    await step(page, 1).getByRole("button", { name: "Start", exact: true }).click();
    await page.locator("#step-1 .clock").waitFor();
    assert.match(await page.locator("#step-1 .clock").innerText(), /^10:0\d · /);
    // Asleep for 25 minutes: no timer fires, and then the page is looked at again.
    await page.clock.fastForward("25:00");
    await page.waitForFunction(() => document.querySelector("#step-1 .clock").textContent.startsWith("35:0"));
    assert.match(await page.locator("#step-1 .clock").innerText(), /5:0\d over$/);
    assert.match(await page.title(), /^▲ Soak the goods/);
    assert.match(await page.getByRole("status").innerText(), /planned time is over/);
    await page.goto(run);
    await page.context().close();
  });

  test("is dyed by without scripts too", async () => {
    const page = await newPage(browser, "phone", { javaScriptEnabled: false });
    const run = await beginRun(page, await recipeFrom(page, bench.origin, "scarf"), "Plain");
    await step(page, 1).getByLabel("minutes ago").fill("31");
    await step(page, 1).getByRole("button", { name: "Start", exact: true }).click();
    await page.goto(run);
    assert.match(await page.locator("#step-1 .clock").innerText(), /^31:\d\d · 1:\d\d over$/);
    assert.ok(await page.getByText("Reload for the time now").isVisible());
    await step(page, 1).getByRole("button", { name: "Stop" }).click();
    assert.equal((await events(run)).length, 2);
    await page.getByRole("button", { name: "Finish the run" }).click();
    await page.getByText("This run is over").waitFor();
    assert.ok(await page.getByText(/may have been left out/).first().isVisible());
    await page.context().close();
  });
});
