// Notices that a phone was paired while its code is shown. Without this the page has a link to look again.

import * as say from "./text.js";

const box = document.querySelector("[data-pairing]");
const said = box.querySelector("[data-paired]");

async function look() {
  try {
    const { devices, code } = await (await fetch("/phone.json")).json();
    if (devices.length !== Number(box.dataset.pairing)) {
      location.assign("/phone#devices");
      location.reload();
      return;
    }
    if (!code) {
      said.textContent = say.codeIsNotGood();
      return;
    }
  } catch {
    // The program may have ended; the next look tells.
  }
  setTimeout(look, 2000);
}
setTimeout(look, 2000);
