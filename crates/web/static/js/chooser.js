// The list of pieces beside the photo, of which one is chosen.

import * as say from "./text.js";

export function fill(list, pieces, onChoose) {
  pieces.forEach((piece, index) => {
    const item = document.createElement("li");
    const label = document.createElement("label");
    label.dataset.index = index;
    const radio = Object.assign(document.createElement("input"), { type: "radio", name: "chosen-piece", value: piece.code });
    radio.addEventListener("change", () => onChoose(piece));
    const words = document.createElement("span");
    const about = Object.assign(document.createElement("small"), { textContent: piece.about });
    words.append(piece.code, about);
    const state = Object.assign(document.createElement("span"), { className: "state" });
    label.append(radio, words, state);
    item.append(label);
    list.append(item);
  });
}

export function show(list, pieces, chosen, isMarked) {
  for (const item of list.querySelectorAll("label")) {
    const piece = pieces[Number(item.dataset.index)];
    item.querySelector("input").checked = piece === chosen;
    item.querySelector(".state").textContent = isMarked(piece) ? say.marked() : say.toMark();
  }
}
