// Three ways to use a page: a mouse, a finger, a keyboard alone. Each can do the same things, and
// fails where a person would be stuck.
import assert from "node:assert/strict";

/** So many presses of Tab are more than any page has stops. */
const MOST_TABS = 400;

/** By mouse. */
export const mouse = (page) => ({
  press: (target) => target.click(),
  tick: (target) => target.check(),
  write: (target, text) => target.fill(text),
  choose: (target, label) => target.selectOption({ label }),
  attach: (target, file) => target.setInputFiles(file),
  page,
});

/** By finger. Everything that is touched must be large enough for a wet one. */
export const finger = (page) => {
  const tap = async (target) => {
    await target.tap();
  };
  return {
    press: async (target) => {
      await target.scrollIntoViewIfNeeded();
      const { height } = await target.boundingBox();
      const inText = await target.evaluate((e) => getComputedStyle(e).display === "inline");
      assert.ok(inText || height >= 47.5, `${await name(target)} is ${height} px high`);
      await tap(target);
    },
    tick: tap,
    write: async (target, text) => {
      await tap(target);
      await target.fill(text);
    },
    choose: (target, label) => target.selectOption({ label }),
    attach: (target, file) => target.setInputFiles(file),
    page,
  };
};

/** By keyboard alone: every stop is reached by Tab or Shift and Tab, and shows that it has the focus. */
export const keyboard = (page) => {
  // With somebody who listens from the start, no chooser opens before the browser is told to hand it over.
  page.on("filechooser", () => {});
  const key = (keys) => page.keyboard.press(keys);
  return {
    press: async (target) => {
      await tabTo(page, target);
      await key("Enter");
    },
    // Tab stops once in a group of radio buttons, at the one that is chosen; arrows choose another.
    tick: async (target) => {
      const group = await target.evaluate((e) => `input[type=radio][name="${e.name}"]`);
      await tabTo(page, page.locator(`${group}:checked`));
      const all = await page.locator(group).count();
      for (let k = 1; !(await target.isChecked()); k += 1) {
        assert.ok(k < all, `arrows don't choose ${await name(target)}`);
        await key("ArrowDown");
      }
    },
    write: async (target, text) => {
      await tabTo(page, target);
      await key("Control+A");
      await page.keyboard.insertText(text);
      assert.equal(await target.inputValue(), text);
    },
    choose: async (target, label) => {
      await tabTo(page, target);
      const shown = () => target.evaluate((select) => select.selectedOptions[0]?.label.trim());
      const all = await target.evaluate((select) => select.options.length);
      await key("Home");
      for (let k = 1; (await shown()) !== label; k += 1) {
        assert.ok(k < all, `no choice ${label} in ${await name(target)}`);
        await key("ArrowDown");
      }
    },
    attach: async (target, file) => {
      await tabTo(page, target);
      const chooser = page.waitForEvent("filechooser");
      await key("Space");
      await (await chooser).setFiles(file);
    },
    page,
  };
};

/** What a person would call it. */
const name = (target) => target.evaluate((e) => (e.labels?.[0]?.innerText ?? e.innerText ?? e.id).trim().slice(0, 60));

/**
 * Presses Tab, or Shift and Tab where the target comes earlier, until the target has the focus; fails
 * after more presses than a page has stops, and where the focus can't be seen.
 */
export async function tabTo(page, target) {
  await target.waitFor({ state: "attached" });
  for (let presses = 0; ; presses += 1) {
    const place = await target.evaluate((wanted) => {
      const now = document.activeElement;
      if (now === wanted) return "here";
      if (!now || now === document.body) return "later";
      return now.compareDocumentPosition(wanted) & Node.DOCUMENT_POSITION_PRECEDING ? "earlier" : "later";
    });
    if (place === "here") break;
    if (presses === MOST_TABS) throw new Error(`${await name(target)} on ${page.url()} is not reached by ${MOST_TABS} presses of Tab`);
    await page.keyboard.press(place === "earlier" ? "Shift+Tab" : "Tab");
  }
  const seen = await target.evaluate((e) => {
    const { top, bottom, left, right, width, height } = e.getBoundingClientRect();
    const style = getComputedStyle(e);
    return {
      lies: width > 0 && height > 0 && bottom > 0 && right > 0 && top < innerHeight && left < innerWidth,
      ring: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
    };
  });
  assert.deepEqual(seen, { lies: true, ring: true }, `the focus on ${await name(target)}, ${page.url()}, can be seen`);
}
