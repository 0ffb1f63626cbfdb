// What holds on every page that links lead to, on the demo and on an empty bench.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { serve } from "../lib/bench.mjs";
import { assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { crawl } from "../lib/crawl.mjs";

/** What a page may weigh without its photos, in bytes. */
const MOST_BYTES = 150_000;
/** Sheets that are printed or handed on by themselves: no page of the app, so without its frame. */
const ALONE = [/\/report$/, /\/board$/, /\/boards$/, /\/tags$/, /\/sheet$/, /\/labels$/];
const LOOKS = [
  ["desktop", {}],
  ["desktop", { colorScheme: "dark" }],
  ["phone", {}],
];

describe("every page", () => {
  let browser;
  const benches = {};
  const pages = [];
  before(async () => {
    browser = await launch();
    const context = await browser.newContext();
    for (const kind of ["demo", "empty"]) {
      benches[kind] = await serve(kind);
      for (const page of await crawl(context, `${benches[kind].origin}/`)) pages.push(page.url);
    }
    await context.close();
  });
  after(async () => {
    await browser?.close();
    for (const bench of Object.values(benches)) await bench.stop();
  });

  test("is reached by links, dozens of them", () => {
    assert.ok(pages.length > 25, pages.join("\n"));
  });

  for (const [size, options] of LOOKS) {
    test(`is sound and quiet (${size}, ${options.colorScheme ?? "light"})`, async () => {
      const page = await newPage(browser, size, options);
      for (const url of pages) {
        await page.goto(url);
        await assertSound(page);
      }
      assertQuiet(page);
      await page.context().close();
    });
  }

  test("is light, and has a way on", async () => {
    const page = await newPage(browser, "desktop");
    for (const url of pages) {
      const alone = ALONE.some((sheet) => sheet.test(new URL(url).pathname));
      let bytes = 0;
      const count = async (response) => {
        const kind = response.headers()["content-type"] ?? "";
        if (kind.startsWith("image/jpeg")) return;
        bytes += (await response.body().catch(() => "")).length;
      };
      page.on("response", count);
      // A page that is told of progress is never idle.
      await page.goto(url, { waitUntil: "load" });
      page.off("response", count);
      // A report has its photos inside.
      if (!url.endsWith("/report")) assert.ok(bytes < MOST_BYTES, `${url} weighs ${bytes} bytes`);
      if (!alone) assert.ok(await page.locator('a[href="/"]').count(), `${url} has no way home`);
    }
    await page.context().close();
  });

  test("says what it is about without scripts", async () => {
    const page = await newPage(browser, "desktop", { javaScriptEnabled: false });
    for (const url of pages) {
      await page.goto(url);
      assert.ok((await page.title()).length > 3, url);
      const text = await page.locator("body").innerText();
      assert.ok(text.trim().length > 40, `${url} says nothing without scripts`);
    }
    await page.context().close();
  });
});
