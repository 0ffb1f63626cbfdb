// Recipes and runs by the app's own forms.

/** Keeps an example as a recipe; gives its address. */
export async function recipeFrom(page, origin, example) {
  await page.goto(`${origin}/recipes/new?example=${example}`);
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.getByRole("heading", { name: "Where the dye goes" }).waitFor();
  return page.url();
}

/** Begins a run by a recipe; gives its address. */
export async function beginRun(page, recipe, title) {
  await page.goto(recipe);
  await page.getByLabel("Call this run").fill(title);
  await page.getByRole("button", { name: "Begin a run" }).click();
  await page.getByRole("heading", { name: "Clocks" }).waitFor();
  return page.url().split("#")[0];
}
