// What a page becomes on paper.

/** A page as a PDF, in Latin 1; on the paper that it names itself, or else on `format`. */
const printed = async (page, format) =>
  (await page.pdf({ preferCSSPageSize: true, printBackground: true, format })).toString("latin1");

/** How many pages a PDF has: its page objects, which Chromium writes in the clear. */
export async function printedPages(page, format) {
  return (await printed(page, format)).match(/\/Type\s*\/Page\b(?!s)/g).length;
}

/** Width and height of a PDF's first page, millimetres. */
export async function printedSize(page, format) {
  const [, width, height] = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/.exec(await printed(page, format));
  return [width, height].map((points) => (points * 25.4) / 72);
}
