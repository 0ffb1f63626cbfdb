// What a page becomes on paper.

/** How many pages a PDF has: its page objects, which Chromium writes in the clear. */
export async function printedPages(page) {
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g).length;
}

/** Width and height of a PDF's first page, millimetres. */
export async function printedSize(page) {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const [, width, height] = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/.exec(pdf.toString("latin1"));
  return [width, height].map((points) => (points * 25.4) / 72);
}
