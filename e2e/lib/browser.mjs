// A browser that notes what no page of ours may do.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { chromium } from "playwright-core";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export const SIZES = {
  desktop: { viewport: { width: 1280, height: 900 } },
  phone: { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true, deviceScaleFactor: 2 },
};

export function launch() {
  const root = process.getuid?.() === 0;
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    // The browser's own sandbox can't be set up by root, as in a container.
    args: root ? ["--no-sandbox"] : [],
  });
}

/** A page of the given size that keeps a record of faults. */
export async function newPage(browser, size, options = {}) {
  const context = await browser.newContext({ ...SIZES[size], ...options });
  const page = await context.newPage();
  page.faults = [];
  page.on("pageerror", (error) => page.faults.push(`script error on ${page.url()}: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error") page.faults.push(`console on ${page.url()}: ${message.text()}`);
  });
  context.on("request", (request) => {
    const { protocol, hostname } = new URL(request.url());
    const local = hostname === "127.0.0.1" || ["data:", "blob:"].includes(protocol);
    if (!local) page.faults.push(`request leaves this machine: ${request.url()}`);
  });
  return page;
}

/** No script error, no console error, no request that left this machine. */
export function assertQuiet(page) {
  assert.deepEqual(page.faults, []);
}

/** No accessibility rule of axe is broken, nothing makes the page scroll sideways, and the way's words lie beside each other. */
export async function assertSound(page) {
  await page.evaluate(axeSource);
  const broken = await page.evaluate(async () => {
    const found = await globalThis.axe.run(document, { resultTypes: ["violations"] });
    return found.violations.map((v) => `${v.impact}: ${v.help} (${v.id}) at ${v.nodes.map((n) => n.target.join(" ")).slice(0, 4).join("; ")}`);
  });
  assert.deepEqual(broken, [], `accessibility of ${page.url()}`);
  const over = await page.evaluate(() => [...document.querySelectorAll(".way .said")].filter((said) => said.clientWidth > 1 && said.scrollWidth > said.clientWidth + 1).map((said) => said.textContent));
  assert.deepEqual(over, [], `words of the way on ${page.url()} that lie over their neighbours`);
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(sideways <= 0, `${page.url()} is ${sideways} px wider than its window`);
}
