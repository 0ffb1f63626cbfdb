// Tells how far photos have come while they are read. Without this the page looks again by itself.

import * as say from "./text.js";

for (const box of document.querySelectorAll("[data-progress]")) watch(box);

function watch(box) {
  const source = new EventSource(box.dataset.progress);
  source.addEventListener("photos", (event) => {
    const news = JSON.parse(event.data);
    if (box.dataset.untilRead) one(news);
    else all(news);
  });
  source.addEventListener("error", () => {
    // While it says "connecting", the browser tries again by itself.
    if (source.readyState === EventSource.CLOSED) setTimeout(() => location.reload(), 5000);
  });
  addEventListener("pagehide", () => source.close());

  function one(news) {
    const status = news.photos.find((photo) => String(photo.id) === box.dataset.untilRead);
    if (!status) return;
    if (status.state === "waiting" || status.state === "reading") {
      box.querySelector("[role=status] strong").textContent = status.state === "reading" ? say.beingRead() : say.waitsToBeRead();
      return;
    }
    source.close();
    location.reload();
  }

  function all(news) {
    box.querySelector("[data-sentence]").textContent = news.sentence;
    box.querySelector("progress").value = news.done;
    for (const status of news.photos) {
      const card = box.querySelector(`[data-photo="${status.id}"]`);
      if (!card) {
        // A photo that came from elsewhere, such as the phone.
        source.close();
        location.reload();
        return;
      }
      card.dataset.state = status.state;
      card.querySelector("[data-words]").textContent = status.words;
      card.querySelector("[data-why]").textContent = status.why;
    }
  }
}
