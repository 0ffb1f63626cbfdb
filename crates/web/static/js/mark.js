// Draws and moves areas on the photo. The text fields stay the truth: every change is written to them.
import { corners, write, box, shifted, withCorner } from "./polygon.js";
import { draw } from "./overlay.js";

for (const form of document.querySelectorAll("form[data-mark]")) new Marking(form).start();

function Marking(form) {
  const sheet = form.querySelector("[data-sheet]");
  const svg = sheet.querySelector("svg");
  const layer = svg.querySelector("[data-areas]");
  const list = form.querySelector("[data-list]");
  const said = form.querySelector("[data-said]");
  const size = { width: Number(svg.dataset.width), height: Number(svg.dataset.height) };
  const pieces = [...form.querySelectorAll("input[data-code]")].map((field) => ({
    field, code: field.dataset.code, about: field.dataset.about,
  }));
  let chosen = pieces.find((p) => !p.field.value) ?? pieces[0];
  let drag = null;

  const say = (text) => { said.textContent = text; };
  const polygon = (piece) => corners(piece.field.value);

  const set = (piece, points) => {
    piece.field.value = write(points);
    redraw();
  };

  const choose = (piece) => {
    chosen = piece;
    redraw();
  };

  function redraw() {
    draw(layer, pieces, chosen, Number(svg.dataset.letters), (piece) => choose(piece));
    for (const item of list.querySelectorAll("label")) {
      const piece = pieces[Number(item.dataset.index)];
      item.querySelector("input").checked = piece === chosen;
      item.querySelector(".state").textContent = polygon(piece).length > 2 ? "✓ marked" : "to mark";
    }
  }

  function fillList() {
    pieces.forEach((piece, index) => {
      const item = document.createElement("li");
      const label = document.createElement("label");
      label.dataset.index = index;
      const radio = Object.assign(document.createElement("input"), { type: "radio", name: "chosen-piece", value: piece.code });
      radio.addEventListener("change", () => choose(piece));
      const words = document.createElement("span");
      const about = Object.assign(document.createElement("small"), { textContent: piece.about });
      words.append(piece.code, about);
      const state = Object.assign(document.createElement("span"), { className: "state" });
      label.append(radio, words, state);
      item.append(label);
      list.append(item);
    });
  }

  const at = (event) => {
    const p = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return [Math.min(Math.max(p.x, 0), size.width), Math.min(Math.max(p.y, 0), size.height)];
  };

  svg.addEventListener("pointerdown", (event) => {
    if (event.button !== 0 || !chosen) return;
    const group = event.target.closest("[data-piece]");
    const start = at(event);
    if (group) {
      choose(pieces[Number(group.dataset.piece)]);
      const corner = event.target.dataset.corner;
      drag = { kind: corner === undefined ? "move" : "corner", corner: Number(corner), start, from: polygon(chosen) };
    } else {
      drag = { kind: "draw", start, from: polygon(chosen) };
    }
    svg.setPointerCapture(event.pointerId);
    event.preventDefault();
  });

  svg.addEventListener("pointermove", (event) => {
    if (!drag) return;
    const now = at(event);
    const by = [now[0] - drag.start[0], now[1] - drag.start[1]];
    if (drag.kind === "draw") set(chosen, box(drag.start, now));
    else if (drag.kind === "move") set(chosen, shifted(drag.from, by, size));
    else set(chosen, withCorner(drag.from, drag.corner, now));
  });

  const end = (event) => {
    if (!drag) return;
    const now = at(event);
    const small = Math.hypot(now[0] - drag.start[0], now[1] - drag.start[1]) < size.width / 150;
    const was = drag;
    drag = null;
    if (was.kind === "draw" && small) {
      set(chosen, was.from);
      return;
    }
    if (was.kind !== "draw") return;
    say(`${chosen.code} is marked.`);
    const next = pieces.find((p) => polygon(p).length < 3);
    if (next) choose(next);
  };
  svg.addEventListener("pointerup", end);
  svg.addEventListener("pointercancel", () => { if (drag) set(chosen, drag.from); drag = null; });

  svg.addEventListener("keydown", (event) => {
    const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
    const group = event.target.closest("[data-piece]");
    if (!group) return;
    const piece = pieces[Number(group.dataset.piece)];
    if (steps[event.key]) {
      const far = (event.shiftKey ? 10 : 1) * Math.max(1, size.width / 1000);
      set(piece, shifted(polygon(piece), steps[event.key].map((v) => v * far), size));
      layer.querySelector(`[data-piece="${group.dataset.piece}"]`)?.focus();
    } else if (event.key === "Delete" || event.key === "Backspace") {
      remove(piece);
    } else return;
    event.preventDefault();
  });

  function remove(piece) {
    set(piece, []);
    say(`The box of ${piece.code} is removed.`);
  }

  this.start = () => {
    if (!pieces.length) return;
    fillList();
    sheet.dataset.live = "";
    form.querySelector("[data-chooser]").hidden = false;
    if (!form.querySelector("[data-typed] [aria-invalid]")) form.querySelector("[data-typed]").open = false;
    form.querySelector("[data-place]").addEventListener("click", () => {
      const [w, h] = [size.width, size.height];
      set(chosen, box([w * 0.45, h * 0.45], [w * 0.55, h * 0.55]));
      layer.querySelector(".chosen")?.focus();
      say(`A box for ${chosen.code} lies in the middle of the photo; move it with the arrow keys.`);
    });
    form.querySelector("[data-remove]").addEventListener("click", () => remove(chosen));
    for (const piece of pieces) piece.field.addEventListener("input", redraw);
    redraw();
  };
}
