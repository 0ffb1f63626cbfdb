// The whole way of a person who has read no manual: from the first page to a verdict on photos of
// their own and a report to hand on. By mouse, by keyboard alone, and by finger on a phone.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { after, before, describe, test } from "node:test";
import { pictures, serve } from "../lib/bench.mjs";
import { assertQuiet, assertSound, launch, newPage } from "../lib/browser.mjs";
import { finger, keyboard, mouse } from "../lib/hands.mjs";

/** Reading a photo of ten pieces may take this long on a slow machine, ms. */
const READ_MS = 180_000;

const HANDS = [
  ["by mouse", "desktop", mouse, true],
  // The same pages at the same size: looked at by the mouse.
  ["by keyboard alone", "desktop", keyboard, false],
  ["by finger on a phone", "phone", finger, true],
];

describe("the whole way on a new trial", () => {
  let bench, browser;
  before(async () => {
    browser = await launch();
  });
  after(() => browser?.close());

  for (const [how, size, hands, looksCloser] of HANDS) {
    test(`leads from the first page to a report ${how}`, async () => {
      bench = await serve("empty");
      const page = await newPage(browser, size);
      try {
        await walk(page, hands(page), looksCloser);
      } finally {
        await page.context().close();
        await bench.stop();
      }
    });
  }

  async function walk(page, { press, tick, write, choose, attach }, looksCloser) {
    const link = (text) => page.getByRole("main").getByRole("link", { name: text });
    const button = (text) => page.getByRole("button", { name: text, exact: true });
    const field = (text, nth = 0) => page.getByLabel(text, { exact: true }).nth(nth);
    const heading = (text, timeout) => page.getByRole("heading", { name: text, exact: true }).waitFor({ timeout });
    // A wide window shows what is next at its place on the way, a narrow one in a line below.
    const onward = page.locator(".way .onward a, .way li.next a").filter({ visible: true }).first();
    /** Every page that is passed is sound, and the way says what is done and what is next. */
    const passed = async (way, next) => {
      if (way) {
        const states = await page.locator(".way li .sr").allTextContents();
        assert.equal(states.map((said) => /done|next|later|left out/.exec(said)[0][0]).join(""), way, page.url());
      }
      if (next) assert.match(await onward.innerText(), next);
      if (looksCloser) await assertSound(page);
    };

    // Ask.
    await page.goto(`${bench.origin}/`);
    await passed();
    await press(link("Ask a question"));
    await heading("Ask a question");
    await passed("nllllll");
    await write(field("Question"), "Does agent F keep this madder red?");
    await write(field("Short title"), "Agent F on red");
    await write(field("Name of arm 1"), "Plain soak");
    await write(field("Name of arm 2"), "Fixing agent");
    await write(field("Product, if any", 1), "agent F");
    await write(field("Amount", 1), "2 tbsp");
    await write(field("To water", 1), "1 gal");
    await write(field("Minutes", 1), "20");
    await write(field("At °C", 1), "40");
    await write(field("Fibre"), "cotton");
    await tick(page.getByRole("radio", { name: /Grade 4-5/ }));
    await write(field("Pieces in all, keepers among them"), "10");
    await press(button("Propose a plan"));

    // Plan, and what is printed of it.
    await heading("What it can show");
    await passed("dnlllll");
    await press(button("Start the trial"));
    await heading("Agent F on red");
    await passed("ddnllll", /write a recipe/);
    await press(link("packing list"));
    await heading("Packing list");
    await passed();
    await press(link("Agent F on red"));
    await press(link("Print a board and tags"));
    await page.getByRole("heading", { level: 1 }).waitFor();
    await passed();
    await press(link("Agent F on red"));
    await heading("Agent F on red");

    // Baths.
    await press(onward);
    await heading("Write a recipe");
    await passed("ddnllll");
    await write(field("What do you call it?"), "Red cotton");
    await write(field("Dry weight of all"), "500 g");
    await choose(page.locator("#class"), "direct dye: cotton, linen, hemp, viscose");
    await write(field("Dye"), "madder-red direct");
    await write(field("How much"), "2 % owf");
    await write(field("Ratio or volume"), "20:1");
    await write(field("The pot holds, to its brim"), "15 L");
    await press(page.locator(".actions").getByRole("button", { name: "Work it out" }));
    await heading("Where the dye goes");
    await passed("dddnlll", /begin a run/);

    // Run, with clocks, to its end.
    await write(field("Call this run"), "Sunday’s pot");
    await press(button("Begin a run"));
    await heading("Clocks");
    await passed("dddnlll");
    const steps = await page.locator("details.run-step").count();
    for (let number = 1; number <= steps; number += 1) {
      const step = page.locator(`#step-${number}`);
      await step.locator(":scope[open]").waitFor();
      await press(step.getByRole("button", { name: "Start", exact: true }));
      await step.locator(".clock").waitFor();
      if (number === 1) {
        await write(step.getByLabel("In your own words"), "the tap ran cold");
        await press(step.getByRole("button", { name: "Note it" }).last());
        await step.locator(".notes li", { hasText: "the tap ran cold" }).waitFor();
        await passed("dddnlll", /a run goes on/);
      }
      await press(step.getByRole("button", { name: "Stop", exact: true }));
      await step.getByText(/^done/).waitFor();
    }
    await press(button("Finish the run"));
    await page.getByText("This run is over").waitFor();
    await passed("ddddnll", /photograph before the first wash/);

    // Look: three stages, one of them sent as another.
    await press(onward);
    for (const [sent, round] of [[0, 0], [2, 2], [4, 5]]) {
      await heading("Add photos");
      if (round === 0) await passed("ddddnll");
      await write(field("Rounds the pieces have been through"), String(sent));
      await attach(field("Photos"), path.join(pictures, `whole-${round}.jpg`));
      await press(button("Add the photos"));
      await heading("Where the pieces lie", READ_MS);
      await page.locator("[data-chooser]").waitFor();
      if (round === 0) await passed("ddddnll", /mark the pieces on a photo/);
      await press(page.getByText("Corners as numbers"));
      for (const [code, corners] of await outlines(page.url(), round)) {
        await write(field(`Corners of ${code}`), corners);
      }
      await press(button("Read the colours"));
      await heading("Readings", READ_MS);
      assert.equal(await page.locator("table.readings tbody tr").count(), 10);
      if (round === 0) await passed("ddddnll", /wash, then photograph again/);
      if (round < 5) await press(link("Add another photo"));
    }
    assert.match(await onward.innerText(), /4 of 5 rounds seen/);
    await press(page.getByText("Taken after another number of rounds?"));
    await write(field("Rounds the pieces had been through"), "5");
    await press(button("Move the photo to that stage"));
    await heading("Photo after 5 rounds");
    await page.getByText("and so are its readings").waitFor();
    await passed("ddddddn", /hand on the report/);

    // Decide.
    await press(link("To the verdict"));
    await heading("Agent F on red");
    const verdict = page.locator("article.verdict").filter({ visible: true });
    assert.equal(await verdict.count(), 1);
    assert.match(await verdict.innerText(), /Visible difference.*After 5 rounds, Plain soak has clearly faded further than Fixing agent/s);
    await passed("ddddddn");
    await press(link("Journal of this trial"));
    await heading("Journal");
    await page.getByText("the tap ran cold").waitFor();
    await page.getByText("from round 4 to round 5").waitFor();
    await passed("ddddddn");
    await press(link("Agent F on red"));

    // Publish: read it, come back, keep it as a file, which knows of no app.
    await press(link("Read the report"));
    await page.getByText("Trial report").waitFor();
    await passed();
    await press(page.getByRole("link", { name: "Back to the trial" }));
    await heading("Agent F on red");
    const kept = page.waitForEvent("download");
    await press(link("Keep the report as a file"));
    const file = await readFile(await (await kept).path(), "utf8");
    assert.match(file, /Plain soak has clearly faded further than Fixing agent/);
    assert.doesNotMatch(file, /Back to the trial|href="\//);
    assertQuiet(page);
  }

  /** Codes of the pieces on a photo with their corners: the first arm's are `A` on it, the other's `B`. */
  async function outlines(photo, round) {
    const { trial } = await (await fetch(`${photo.split("/photos/")[0]}.json`)).json();
    const lines = (await readFile(path.join(pictures, `whole-${round}.txt`), "utf8")).trim().split("\n");
    const corners = new Map(lines.map((line) => [line.slice(0, 2), line.slice(3)]));
    const named = trial.arms.flatMap(({ id }, arm) => {
      const pieces = trial.pieces.filter((piece) => piece.arm === id);
      const tests = pieces.filter(({ role }) => role === "test").map(({ code }, k) => [code, `${"AB"[arm]}${k + 1}`]);
      const keeper = pieces.find(({ role }) => role === "keeper");
      return [...tests, [keeper.code, `${"AB"[arm]}K`]];
    });
    return named.map(([code, name]) => [code, corners.get(name)]);
  }
});
