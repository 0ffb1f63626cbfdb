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

/** Adds a reading of a water to the run whose page of waters is open. */
export async function readWater(page, water, volume, step) {
  await page.getByLabel("Of which water").selectOption(water);
  await page.getByLabel("How much water").last().fill(volume);
  await page.getByLabel("Looks like the step").last().fill(step);
  await page.getByRole("button", { name: "Add the reading" }).click();
  await page.locator(".notes > li", { hasText: `${volume}, looks like ${step}` }).first().waitFor();
}

/** Puts a dye with its first lot on the shelf; gives its address. */
export async function shelve(page, origin, name, amount, price) {
  await page.goto(`${origin}/materials`);
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("How much").fill(amount);
  await page.getByLabel("Price", { exact: true }).fill(price);
  await page.getByRole("button", { name: "Put it on the shelf" }).click();
  await page.getByRole("heading", { name, exact: true }).waitFor();
  return page.url();
}
