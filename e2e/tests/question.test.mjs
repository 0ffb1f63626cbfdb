// An empty bench, a question asked on it, and what a wrong form or address gets.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";

describe("an empty bench", () => {
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
    test(`offers the demo and a question of one's own (${size})`, async () => {
      const page = await newPage(browser, size);
      await page.goto(`${bench.origin}/`);
      await assertSound(page);
      if (size === "desktop") {
        assert.ok(await page.getByText("Your bench is empty.").isVisible());
        assert.ok(await page.getByRole("button", { name: "Open the demo trial" }).isVisible());
      }
      await page.getByRole("link", { name: "Enter a trial without a plan" }).click();
      await assertSound(page);

      await page.getByLabel("Title", { exact: true }).fill(`Ochre ribbons, ${size}`);
      await page.getByLabel("Question", { exact: true }).fill("Does a second soaping keep ochre on silk ribbon?");
      await page.getByLabel(/the margin/).fill("no number");
      await page.getByLabel("Name of arm 1").fill("Soaped once");
      await page.getByLabel("Name of arm 2").fill("Soaped twice");
      for (const arm of [1, 2]) {
        const treatment = page.getByLabel("What is done to it").nth(arm - 1);
        await treatment.fill(arm === 1 ? "Soaped for ten minutes." : "Soaped for ten minutes, twice.");
      }
      await page.getByLabel("Test pieces per arm").fill("4");
      await page.getByLabel("Rounds of washing and drying").fill("5");
      await page.getByRole("button", { name: "Start the trial" }).click();

      // Refused at the field, with what was typed still there.
      await page.getByRole("alert").waitFor();
      const margin = page.getByLabel(/the margin/);
      assert.equal(await margin.getAttribute("aria-invalid"), "true");
      assert.equal(await page.getByLabel("Name of arm 2").inputValue(), "Soaped twice");
      await assertSound(page);

      await margin.fill("1.5");
      await page.getByRole("button", { name: "Start the trial" }).click();
      await page.getByRole("heading", { name: `Ochre ribbons, ${size}` }).waitFor();
      assert.ok(await page.getByRole("link", { name: "Add a photo" }).isVisible());
      assert.equal(await page.getByText("invented").count(), 0);
      await assertSound(page);
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }

  test("an address without a page leads back to the list", async () => {
    const page = await newPage(browser, "desktop");
    const answer = await page.goto(`${bench.origin}/trials/nothing-here`);
    assert.equal(answer.status(), 404);
    await assertSound(page);
    await page.getByRole("link", { name: "To the list of trials" }).click();
    await page.getByRole("heading", { name: "Trials" }).waitFor();
    await page.context().close();
  });

  test("a change from another site, without its token or under another name is refused", async () => {
    const post = (headers, body = "") => fetch(`${bench.origin}/trials/new`, {
      method: "POST", redirect: "manual", body, headers: { "Content-Type": "application/x-www-form-urlencoded", ...headers },
    });
    assert.equal((await post({ Origin: "http://example.com" })).status, 403);
    const noToken = await post({ Origin: bench.origin });
    assert.ok(noToken.status >= 400 && noToken.status < 500, String(noToken.status));
    const page = await newPage(browser, "desktop");
    await page.goto(`${bench.origin}/`);
    const policy = (await page.request.get(`${bench.origin}/`)).headers()["content-security-policy"];
    assert.match(policy, /default-src 'none'/);
    assert.doesNotMatch(policy, /unsafe/);
    assertQuiet(page);
    await page.context().close();
  });
});
