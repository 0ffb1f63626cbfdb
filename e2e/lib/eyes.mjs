// People who judge by eye through the app's own pages.

/** Begins a session on the page on judging by eye. */
export async function beginSession(page, trial, { stage = "5", repeats = "2" } = {}) {
  await page.goto(`${trial}/eyes`);
  await page.getByLabel("Rounds the pieces have been through").fill(stage);
  await page.getByLabel("Pairs that come twice").fill(repeats);
  await page.getByRole("button", { name: "Begin a session" }).click();
  await page.getByRole("heading", { name: "Open sessions" }).waitFor();
}

/** Lets a person begin; ends on their first pair. */
export async function sitDown(page, trial, name) {
  await page.goto(`${trial}/eyes`);
  const form = page.locator("form[action$='/judges']").first();
  if (!(await form.isVisible())) await page.getByText("Somebody else judges").first().click();
  await form.getByLabel("Name or initials").fill(name);
  await form.getByLabel("Under which light").fill("north window, noon");
  await form.getByLabel("Colour vision").selectOption("normal");
  await form.getByRole("button", { name: "Begin judging" }).click();
  await page.getByRole("heading", { name: /How great/ }).waitFor();
}

/** Which pair of how many is shown. */
export async function progress(page) {
  const text = await page.locator(".judge .progress span").textContent();
  return /pair (\d+) of (\d+)/.exec(text).slice(1).map(Number);
}

/** Gives every pair that is left the grade that `grade` says for its number. */
export async function judgeAll(page, grade) {
  for (;;) {
    const [at, all] = await progress(page);
    await page.getByRole("button", { name: new RegExp(`^${grade(at)}(?![-\\d])`) }).click();
    if (at === all) break;
    await page.getByText(`pair ${at + 1} of ${all}`).waitFor();
  }
  await page.getByRole("heading", { name: "Done, thank you" }).waitFor();
}
