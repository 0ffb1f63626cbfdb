// Keeps the clocks of a run going. They are computed from the instants in the page, so that a
// phone that slept shows the right time at once; without this the page says the time it was made.

import * as say from "./text.js";

const now = document.querySelector("[data-now]");
const ring = document.querySelector("[data-ring]");
const clocks = [...document.querySelectorAll("[data-clock]")].filter(({ dataset }) => Number(dataset.since) > 0);

if (now && clocks.length) {
  // The server's clock counts, not this one's.
  const ahead = Date.now() / 1000 - Number(now.dataset.now);
  const plain = document.title;
  document.querySelector("[data-still]")?.remove();
  const rung = new Set();

  const length = (seconds) => {
    const all = Math.abs(Math.trunc(seconds));
    const two = (n) => String(n).padStart(2, "0");
    const [hours, minutes] = [Math.floor(all / 3600), Math.floor(all / 60) % 60];
    return hours ? `${hours}:${two(minutes)}:${two(all % 60)}` : `${minutes}:${two(all % 60)}`;
  };

  const show = () => {
    const seconds = Date.now() / 1000 - ahead;
    const over = new Set();
    for (const clock of clocks) {
      const { ran, since, planned, title } = clock.dataset;
      const gone = Number(ran) + Math.max(0, Math.floor(seconds - Number(since)));
      const left = Number(planned) - gone;
      const text = planned === undefined ? length(gone)
        : (left < 0 ? say.timeOver : say.timeLeft)(length(gone), length(left));
      if (clock.textContent !== text) clock.textContent = text;
      const ended = planned !== undefined && left <= 0;
      clock.classList.toggle("over", ended);
      if (ended) over.add(title);
    }
    document.title = over.size ? `▲ ${[...over].join(", ")} · ${plain}` : plain;
    for (const title of over) {
      if (rung.has(title)) continue;
      rung.add(title);
      ring.textContent = say.plannedTimeIsOver(title);
      navigator.vibrate?.(400);
    }
  };

  show();
  setInterval(show, 1000);
  for (const event of ["pageshow", "focus"]) addEventListener(event, show);
  document.addEventListener("visibilitychange", show);
}
