// Fetches a part of the page that is still being worked out and puts it in its place. Without this a link shows the
// page again.

import * as say from "./text.js";

const FIRST_MS = 100;
const EVERY_MS = 300;
const MOST_TIMES = 1000;

for (const section of document.querySelectorAll("[data-awaited]")) {
  // What is there from the start is told when it changes.
  const told = Object.assign(document.createElement("p"), { className: "sr" });
  told.setAttribute("role", "status");
  section.before(told);
  let asked = 0;
  const again = () => ask(section, told, asked++ < MOST_TIMES ? again : () => {});
  setTimeout(again, FIRST_MS);
}

async function ask(section, told, again) {
  const answer = await fetch(section.dataset.awaited).catch(() => null);
  if (answer?.status === 200) {
    put(section, await answer.text());
    told.textContent = say.workedOut();
  } else if (!answer || answer.status === 202) setTimeout(again, EVERY_MS);
}

/** Puts the part below the section's heading; what is being read stays where it is on the screen. */
function put(section, html) {
  const part = new DOMParser().parseFromString(html, "text/html").body;
  const heading = section.querySelector("h2");
  const held = section.contains(document.activeElement);
  // The browser's own way of holding on to what is read differs, so that one way is taken.
  document.documentElement.style.overflowAnchor = "none";
  const above = section.getBoundingClientRect().top < 0;
  const before = section.getBoundingClientRect().bottom;
  while (heading.nextSibling) heading.nextSibling.remove();
  heading.after(...part.childNodes);
  if (above) scrollBy({ top: section.getBoundingClientRect().bottom - before, behavior: "instant" });
  delete section.dataset.awaited;
  if (held) {
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
  }
}
