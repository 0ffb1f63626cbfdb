// Pictures of every page, for people who review them: desktop, phone, dark and print.
import { mkdir } from "node:fs/promises";
import path from "node:path";
import { pictures, screenshots, serve } from "./lib/bench.mjs";
import { launch, newPage } from "./lib/browser.mjs";
import { beginSession, judgeAll, sitDown } from "./lib/eyes.mjs";
import { beginRun, recipeFrom, shelve } from "./lib/recipe.mjs";
import { ask, fillIn, photograph } from "./lib/trial.mjs";

const LOOKS = [
  ["desktop", "desktop", {}],
  ["phone", "phone", {}],
  ["dark", "desktop", { colorScheme: "dark" }],
];

/** Scrolls past every picture that loads only when it comes near. */
async function showEverything(page) {
  for (const picture of await page.locator("img[loading=lazy]").all()) await picture.scrollIntoViewIfNeeded();
  await page.evaluate(() => scrollTo(0, 0));
  // A page that is told of progress is never idle, so its pictures are asked.
  await page.waitForFunction(() => [...document.images].every((picture) => picture.complete));
}

await mkdir(screenshots, { recursive: true });
const demo = await serve("demo");
const empty = await serve("empty");
const browser = await launch();
const studio = await serve("empty");
const own = await fillStudio();
const planned = await startFromPlan();
const dyed = await dye();
await letPhonesIn();
const judged = await judge();
const results = await (await fetch(`${demo.address}.json`)).json();
const pages = {
  "list": `${demo.origin}/`,
  "list-empty": `${empty.origin}/`,
  "ask": `${demo.origin}/ask`,
  "question": `${demo.origin}/trials/new`,
  "plan": planned.plan,
  "plan-trial": planned.trial,
  "packing": `${planned.trial}/packing`,
  "boards": `${planned.trial}/boards`,
  "strips": `${planned.trial}/tags?size=strip`,
  "pin-tags": `${planned.trial}/tags?size=pin`,
  "blind": `${planned.trial}/blind`,
  "recipes": `${studio.origin}/recipes`,
  "recipes-empty": `${empty.origin}/recipes`,
  "recipe-form": `${studio.origin}/recipes/new?example=shirts`,
  "recipe": dyed.recipe,
  "recipe-lot": `${dyed.recipe}?goods=5+kg`,
  "run": dyed.run,
  "run-sheet": `${dyed.run}/sheet`,
  "materials": `${studio.origin}/materials`,
  "materials-empty": `${empty.origin}/materials`,
  "material": dyed.material,
  "search": `${demo.origin}/search?q=napkins`,
  "search-near": `${demo.origin}/search?lab=45+36+21`,
  "rinse": `${demo.origin}/runs/1/rinse`,
  "rinse-empty": `${dyed.run}/rinse`,
  "trial": demo.address,
  "photos": `${demo.address}/photos`,
  "compare": `${demo.address}/compare`,
  "compare-gap": `${demo.address}/compare?gap=small`,
  "photo-add": `${demo.address}/photos/new`,
  "photo": `${demo.address}/photos/${results.photos.at(-1).id}`,
  "report": `${demo.address}/report`,
  "board-choose": `${demo.address}/board`,
  "board": `${demo.origin}/board`,
  "tags": `${demo.address}/tags`,
  "elsewhere": `${demo.address}/elsewhere`,
  "eyes-empty": `${demo.address}/eyes`,
  "eyes": `${judged.trial}/eyes`,
  "eyes-trial": judged.trial,
  "eyes-report": `${judged.trial}/report`,
  "judge": judged.pair,
  "setup": `${demo.origin}/setup`,
  "settings": `${demo.origin}/settings`,
  "charts": `${studio.origin}/charts`,
  "phone": `${studio.origin}/phone`,
  "phone-off": `${empty.origin}/phone`,
  "charts-empty": `${demo.origin}/charts`,
  "parts-trial": own.trial,
  "parts-photo": own.photo,
  "parts-report": `${own.trial}/report`,
  "not-found": `${demo.origin}/trials/nothing-here`,
};
for (const [look, size, options] of LOOKS) {
  const page = await newPage(browser, size, options);
  for (const [name, address] of Object.entries(pages)) {
    await page.goto(address);
    await showEverything(page);
    await page.screenshot({ path: path.join(screenshots, `${name}-${look}.png`), fullPage: true });
  }
  await page.context().close();
}
const page = await newPage(browser, "desktop");
await page.goto(pages.report);
for (const format of ["A4", "Letter"]) {
  await page.pdf({ path: path.join(screenshots, `report-${format}.pdf`), format, printBackground: true, preferCSSPageSize: false });
}
await browser.close();
await Promise.all([demo.stop(), empty.stop(), studio.stop()]);
console.log(`Pictures are in ${screenshots}`);

/** A bench with a chart of its own and a folded piece at two stages. */
async function fillStudio() {
  const page = await newPage(browser, "desktop");
  await page.goto(`${studio.origin}/charts`);
  await page.getByLabel("Name of the chart").fill("Studio chart, measured in spring");
  await page.getByLabel("Values of its patches").setInputFiles(path.join(pictures, "own-chart.csv"));
  await page.getByRole("button", { name: "Keep this chart" }).click();
  await page.getByRole("heading", { name: /^Studio chart/ }).waitFor();
  const { address, pieces } = await ask(page, studio.origin, "Folded cloth in one tub");
  for (const stage of [0, 3]) await photograph(page, address, `parts-${stage}`, { stage, code: pieces[0].code });
  const photo = page.url();
  await page.context().close();
  return { trial: address, photo };
}

/** The network switched on (the loopback stands for it), with a code to scan. */
async function letPhonesIn() {
  const page = await newPage(browser, "desktop");
  await page.goto(`${studio.origin}/phone`);
  await page.getByLabel("This computer’s address on the network").fill("127.0.0.1");
  await page.getByLabel("Port", { exact: true }).fill("0");
  await page.getByRole("button", { name: "Switch it on" }).click();
  await page.getByRole("button", { name: "Make a code" }).click();
  await page.locator(".qr").waitFor();
  await page.context().close();
}

/** A recipe and a run by it with two clocks and a departure. */
async function dye() {
  const page = await newPage(browser, "desktop");
  const material = await shelve(page, studio.origin, "turquoise", "3 bottles", "5.49 per bottle");
  const recipe = await recipeFrom(page, studio.origin, "shirts");
  const run = await beginRun(page, recipe, "First lot");
  for (const step of [1, 2]) {
    await page.locator(`#step-${step}`).getByRole("button", { name: "Start", exact: true }).click();
    await page.locator(".clocks li").nth(step - 1).waitFor();
  }
  await page.locator("#step-2").getByRole("button", { name: "powder not fully dissolved" }).click();
  await page.locator("#step-2 .notes li", { hasText: "powder" }).waitFor();
  await page.context().close();
  return { material, recipe, run };
}

/** A trial that two people judged, and a third who is at it. */
async function judge() {
  const page = await newPage(browser, "desktop");
  const { address } = await ask(page, studio.origin, "Folded or stitched, by eye");
  await beginSession(page, address);
  for (const [name, grade] of [["A. N.", "4"], ["B. O.", "3-4"]]) {
    await sitDown(page, address, name);
    await judgeAll(page, (at) => (at % 3 ? grade : "4-5"));
  }
  await page.goto(`${address}/eyes`);
  await page.getByRole("button", { name: "Close it and show the grades" }).click();
  await beginSession(page, address);
  await sitDown(page, address, "C. P.");
  const pair = page.url();
  await page.context().close();
  return { trial: address, pair };
}

/** A plan and the trial started from it. */
async function startFromPlan() {
  const page = await newPage(browser, "desktop");
  await page.goto(`${studio.origin}/ask`);
  await fillIn(page, "Does twenty minutes in agent F keep this red?");
  await page.getByRole("button", { name: "Propose a plan" }).click();
  await page.getByRole("heading", { name: "What it can show" }).waitFor();
  const plan = page.url();
  await page.getByRole("button", { name: "Start the trial" }).click();
  await page.getByRole("link", { name: "Add a photo" }).waitFor();
  const trial = page.url();
  await page.context().close();
  return { plan, trial };
}
