// Every page that links lead to.

/** An address without what differs from thing to thing: numbers and what is asked with. */
const kind = (url) => new URL(url).pathname.replace(/\d+/g, "N");

/**
 * Follows links from `start` within its origin and gives one address of each kind of page,
 * as `{ url, from }`. Addresses of data and of files to keep are left out.
 */
export async function crawl(context, start) {
  const { origin } = new URL(start);
  const found = new Map();
  const queue = [{ url: start, from: "the start" }];
  while (queue.length > 0) {
    const next = queue.shift();
    if (found.has(kind(next.url))) continue;
    const response = await context.request.get(next.url);
    if (!response.ok()) throw new Error(`${next.url}, a link on ${next.from}, answers ${response.status()}`);
    if (!(response.headers()["content-type"] ?? "").startsWith("text/html")) continue;
    found.set(kind(next.url), next);
    const html = await response.text();
    for (const [, attributes] of html.matchAll(/<a\s([^>]*)>/g)) {
      const href = /href="([^"]*)"/.exec(attributes)?.[1]?.replaceAll("&amp;", "&").replaceAll("&#38;", "&");
      if (href === undefined || href.startsWith("#") || /\sdownload/.test(` ${attributes}`)) continue;
      const url = new URL(href, next.url);
      url.hash = "";
      if (url.origin !== origin) throw new Error(`${next.url} leads away, to ${url}`);
      queue.push({ url: url.href, from: next.url });
    }
  }
  return [...found.values()];
}
