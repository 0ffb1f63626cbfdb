// A photo becomes a new stage: sent, marked, read. What is no photo is refused.
import assert from "node:assert/strict";
import { writeFile } from "node:fs/promises";
import path from "node:path";
import { after, before, describe, test } from "node:test";
import { serve, vaulted } from "../lib/bench.mjs";
import { SIZES, assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { withComment } from "../lib/jpeg.mjs";

describe("a photo of a new stage", () => {
  let bench, browser, trial, known;
  before(async () => {
    bench = await serve("demo");
    browser = await launch();
    trial = bench.address;
    const results = await (await fetch(`${trial}.json`)).json();
    // The last photo of the demo, and where each of its pieces lies on it.
    const last = results.photos.at(-1);
    const codes = new Map(results.trial.pieces.map((piece) => [piece.id, piece.code]));
    known = {
      bytes: await vaulted(bench.home, last.hash),
      areas: last.areas.map(({ piece, polygon }) => ({ code: codes.get(piece), polygon })),
    };
  });
  after(async () => {
    await browser?.close();
    await bench?.stop();
  });

  const file = async (name, bytes) => {
    const at = path.join(bench.home, name);
    await writeFile(at, bytes);
    return at;
  };
  const send = async (page, at, stage) => {
    await page.goto(`${trial}/photos/new`);
    await page.getByLabel("Rounds the pieces have been through").fill(String(stage));
    await page.getByLabel("Photos", { exact: true }).setInputFiles(at);
    await page.getByRole("button", { name: "Add the photos" }).click();
  };

  for (const [index, size] of Object.keys(SIZES).entries()) {
    test(`is sent with progress, marked by hand and read (${size})`, async () => {
      const stage = 7 + index;
      const page = await newPage(browser, size);
      await page.goto(`${trial}/photos/new`);
      await assertSound(page);
      // Progress comes and goes within a moment on loopback: note what it says.
      await page.evaluate(() => {
        const status = document.querySelector("[data-upload-status]");
        new MutationObserver(() => sessionStorage.setItem("progress", `${sessionStorage.getItem("progress") ?? ""}|${status.textContent}`))
          .observe(status, { childList: true, characterData: true, subtree: true });
      });
      await page.getByLabel("Rounds the pieces have been through").fill(String(stage));
      const photo = await file(`round-${stage}.jpg`, withComment(known.bytes, `round ${stage}`));
      await page.getByLabel("Photos", { exact: true }).setInputFiles(photo);
      await page.getByRole("button", { name: "Add the photos" }).click();

      await page.getByRole("heading", { name: "Where the pieces lie" }).waitFor();
      assert.match(await page.evaluate(() => sessionStorage.getItem("progress")), /Sen[dt]/);
      assert.ok(await page.getByText(`round-${stage}.jpg`).isVisible());
      await assertSound(page);

      for (const { code, polygon } of known.areas) {
        await page.locator("[data-list] label").filter({ hasText: code }).click();
        const sheet = page.locator("[data-sheet] > svg");
        await sheet.scrollIntoViewIfNeeded();
        const corners = await sheet.evaluate((svg, points) => points.map(([x, y]) => {
          const at = new DOMPoint(x, y).matrixTransform(svg.getScreenCTM());
          return [at.x, at.y];
        }), inside(polygon));
        await page.mouse.move(...corners[0]);
        await page.mouse.down();
        await page.mouse.move(...corners[1], { steps: 4 });
        await page.mouse.up();
      }
      const marked = await page.locator("[data-list] .state", { hasText: "✓ marked" }).count();
      assert.equal(marked, known.areas.length);
      await assertSound(page);
      await page.getByRole("button", { name: "Read the colours" }).click();

      await page.getByRole("heading", { name: "Readings", exact: true }).waitFor({ timeout: 120_000 });
      const rows = page.locator("table.readings tbody tr");
      assert.equal(await rows.count(), known.areas.length);
      for (const { code } of known.areas) {
        assert.ok(await page.getByRole("rowheader", { name: code, exact: true }).isVisible(), code);
      }
      await assertSound(page);

      await page.getByRole("link", { name: "To the verdict" }).click();
      const plotted = page.getByRole("region", { name: "Swatches by stage" });
      assert.match(await plotted.innerText(), new RegExp(`\\b${stage} rounds`));
      assertQuiet(page);
      await page.context().close();
    });
  }

  test("marks can be placed and moved by the keyboard alone", async () => {
    const page = await newPage(browser, "desktop");
    await send(page, await file("keyboard.jpg", withComment(known.bytes, "keyboard")), 10);
    await page.getByRole("heading", { name: "Where the pieces lie" }).waitFor();
    const field = page.locator("input[data-code]").first();
    await page.getByRole("button", { name: "Place a box in the middle" }).press("Enter");
    const placed = await field.inputValue();
    assert.match(placed, /^[\d.]+,[\d.]+( [\d.]+,[\d.]+){3}$/);
    await page.keyboard.press("Shift+ArrowRight");
    const moved = await field.inputValue();
    assert.notEqual(moved, placed);
    // On to the first corner: it moves alone, and the loupe shows it at full size.
    await page.keyboard.press("Tab");
    await page.keyboard.press("ArrowDown");
    const stretched = await field.inputValue();
    assert.deepEqual(stretched.split(" ").slice(1), moved.split(" ").slice(1));
    assert.notEqual(stretched, moved);
    await page.locator("[data-loupe] image").first().waitFor({ state: "attached" });
    assert.ok(await page.locator("[data-loupe]").isVisible());
    await assertSound(page);
    // Back, change by change.
    await page.keyboard.press("Control+z");
    assert.equal(await field.inputValue(), moved);
    await page.getByRole("button", { name: "Undo the last change" }).click();
    assert.equal(await field.inputValue(), placed);
    assertQuiet(page);
    await page.context().close();
  });

  test("marks are drawn and stretched by a finger, and the page stays where it is", async () => {
    const page = await newPage(browser, "phone");
    await send(page, await file("finger.jpg", withComment(known.bytes, "finger")), 12);
    await page.getByRole("heading", { name: "Where the pieces lie" }).waitFor();
    const sheet = page.locator("[data-sheet] > svg").first();
    await sheet.scrollIntoViewIfNeeded();
    const touch = await page.context().newCDPSession(page);
    const stroke = async (...points) => {
      const at = ([x, y]) => [{ x, y, radiusX: 4, radiusY: 4 }];
      const scrolled = await page.evaluate(() => scrollY);
      await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: at(points[0]) });
      for (const point of points.slice(1)) await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: at(point) });
      const glass = await page.locator("[data-loupe]").isVisible();
      await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
      assert.equal(await page.evaluate(() => scrollY), scrolled, "drawing does not scroll the page");
      return glass;
    };
    const box = await sheet.boundingBox();
    const on = (x, y) => [box.x + x * box.width, box.y + y * box.height];
    assert.ok(await stroke(on(0.2, 0.2), on(0.3, 0.4), on(0.5, 0.6)), "the loupe shows while a finger draws");
    const field = page.locator("input[data-code]").first();
    const drawn = await field.inputValue();
    assert.match(drawn, /^[\d.]+,[\d.]+( [\d.]+,[\d.]+){3}$/);
    await page.locator("[data-list] label").first().click();
    const reach = await page.locator("[data-corner='2']").boundingBox();
    assert.ok(reach.width >= 48 && reach.height >= 48, `a corner can be hit over ${reach.width} px`);
    await sheet.scrollIntoViewIfNeeded();
    const again = await page.locator("[data-corner='2']").boundingBox();
    const corner = [again.x + again.width / 2, again.y + again.height / 2];
    await stroke(corner, [corner[0] + 10, corner[1] + 6], [corner[0] + 20, corner[1] + 12]);
    const stretched = await field.inputValue();
    assert.notEqual(stretched, drawn);
    assert.deepEqual(stretched.split(" ").slice(0, 2), drawn.split(" ").slice(0, 2));
    assert.equal(await page.locator("[data-loupe]").isVisible(), false);
    assertQuiet(page);
    await page.context().close();
  });

  const bad = [
    ["a text file named .jpg", "notes.jpg", () => Buffer.from("Round 3: forgot the camera.\n")],
    ["an empty file", "empty.jpg", () => Buffer.alloc(0)],
    ["a photo cut short", "cut.jpg", () => known.bytes.subarray(0, Math.floor(known.bytes.length / 3))],
    ["a header that claims 60,000 by 60,000 pixels", "vast.png", vastPng],
  ];
  for (const [what, name, bytes] of bad) {
    test(`${what} is refused in a sentence, and nothing of it is kept`, async () => {
      const page = await newPage(browser, "desktop");
      const before = (await (await fetch(`${trial}.json`)).json()).photos.length;
      await send(page, await file(name, bytes()), 11);
      const said = page.getByRole("alert").filter({ visible: true });
      await said.waitFor();
      assert.match(await said.innerText(), /^\S.{15,}/s);
      assert.ok(page.url().endsWith("/photos/new"), "the person stays at the form");
      await assertSound(page);
      const now = (await (await fetch(`${trial}.json`)).json()).photos.length;
      assert.equal(now, before);
      // The browser itself logs an answer of 4xx; nothing else may be logged.
      assert.deepEqual(page.faults.filter((fault) => !/status of 4\d\d/.test(fault)), []);
      await page.context().close();
    });
  }
});

/** Two opposite corners of a box well inside a polygon. */
function inside(polygon) {
  const middle = (values) => values.reduce((sum, v) => sum + v, 0) / values.length;
  const [xs, ys] = [0, 1].map((axis) => polygon.map((point) => point[axis]));
  const [x, y] = [middle(xs), middle(ys)];
  const reach = (values) => 0.3 * (Math.max(...values) - Math.min(...values));
  return [[x - reach(xs), y - reach(ys)], [x + reach(xs), y + reach(ys)]];
}

/** The start of a PNG whose header claims 60,000 by 60,000 pixels (ISO/IEC 15948). */
function vastPng() {
  const header = Buffer.alloc(33);
  Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]).copy(header);
  header.writeUInt32BE(13, 8);
  header.write("IHDR", 12, "latin1");
  header.writeUInt32BE(60_000, 16);
  header.writeUInt32BE(60_000, 20);
  header.set([8, 2, 0, 0, 0], 24);
  header.writeUInt32BE(crc32(header.subarray(12, 29)), 29);
  return header;
}

function crc32(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit += 1) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0);
  }
  return (rest ^ 0xffffffff) >>> 0;
}
