// A question asked and photos sent through the app's own forms.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { pictures } from "./bench.mjs";

/** Enters a trial of two arms of two pieces without a plan; gives the trial's address and its pieces. */
export async function ask(page, origin, title) {
  await page.goto(`${origin}/trials/new`);
  await page.getByLabel("Title", { exact: true }).fill(title);
  await page.getByLabel("Question", { exact: true }).fill("Does it hold its colour?");
  await page.getByLabel(/the margin/).fill("1.5");
  await page.getByLabel("Name of arm 1").fill("Folded");
  await page.getByLabel("Name of arm 2").fill("Stitched");
  await page.getByLabel("Test pieces per arm").fill("2");
  await page.getByLabel("Rounds of washing and drying").fill("5");
  await page.getByRole("button", { name: "Start the trial" }).click();
  await page.getByRole("heading", { name: title }).waitFor();
  const address = page.url();
  const { trial } = await (await fetch(`${address}.json`)).json();
  return { address, pieces: trial.pieces };
}

/** Fills in the form for two arms of which one has a product. */
export async function fillIn(page, question) {
  await page.getByLabel("Question", { exact: true }).fill(question);
  await page.getByLabel("Name of arm 1").fill("Plain soak");
  await page.getByLabel("Name of arm 2").fill("Fixing agent");
  await page.getByLabel("Product, if any").nth(1).fill("agent F");
  await page.getByLabel("Amount").nth(1).fill("2 tbsp");
  await page.getByLabel("To water").nth(1).fill("1 gal");
  await page.getByLabel("Minutes").nth(1).fill("20");
  await page.getByLabel("At °C").nth(1).fill("40");
  await page.getByLabel("Fibre", { exact: true }).fill("cotton");
}

/** Sends a rendered photo. */
export async function send(page, trial, name, { stage, chart }) {
  await page.goto(`${trial}/photos/new`);
  await page.getByLabel("Rounds the pieces have been through").fill(String(stage));
  if (chart) await page.getByLabel("Chart on the photo").selectOption({ label: chart });
  await page.getByLabel("Photos", { exact: true }).setInputFiles(path.join(pictures, `${name}.jpg`));
  await page.getByRole("button", { name: "Add the photos" }).click();
}

/** Sends a rendered photo and has a piece read where it lies. */
export async function photograph(page, trial, name, { stage, code, chart }) {
  await send(page, trial, name, { stage, chart });
  await page.getByRole("heading", { name: "Where the pieces lie" }).waitFor({ timeout: 60_000 });
  // The page's script closes the list of numbers when it shows the chooser.
  await page.locator("[data-chooser]").waitFor();
  const typed = page.locator("details[data-typed]");
  await typed.evaluate((details) => { details.open = true; });
  const corners = await readFile(path.join(pictures, `${name}.txt`), "utf8");
  await page.getByLabel(`Corners of ${code}`, { exact: true }).fill(corners);
  await page.getByRole("button", { name: "Read the colours" }).click();
  await page.getByRole("heading", { name: "Readings", exact: true }).waitFor({ timeout: 120_000 });
}
