// Draws and moves areas on the photo. The text fields stay the truth: every change is written to them.
import * as say from "./text.js";
import { corners, write, box, shifted, withCorner } from "./polygon.js";
import { drags } from "./drag.js";
import { draw, focus } from "./overlay.js";
import { fill, show } from "./chooser.js";
import { Loupe } from "./loupe.js";

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

for (const form of document.querySelectorAll("form[data-mark]")) start(form);

function start(form) {
  const sheet = form.querySelector("[data-sheet]");
  const svg = sheet.querySelector("svg");
  const layer = svg.querySelector("[data-areas]");
  const list = form.querySelector("[data-list]");
  const said = form.querySelector("[data-said]");
  const undoing = form.querySelector("[data-undo]");
  const size = { width: Number(svg.dataset.width), height: Number(svg.dataset.height) };
  const pieces = [...form.querySelectorAll("input[data-code]")].map((field) => ({
    field, code: field.dataset.code, about: field.dataset.about,
  }));
  if (!pieces.length) return;
  const loupe = new Loupe(sheet.querySelector("[data-loupe]"), size);
  const past = [];
  let chosen = pieces.find((p) => !p.field.value) ?? pieces[0];

  const tell = (text) => { said.textContent = text; };
  const polygon = (piece) => corners(piece.field.value);
  const isMarked = (piece) => polygon(piece).length > 2;
  const isLeft = ([x]) => x < size.width / 2;

  function redraw() {
    const pixel = 1 / (svg.getScreenCTM()?.a || 1);
    draw(layer, pieces, chosen, { letters: Number(svg.dataset.letters), pixel, onFocus: choose });
    show(list, pieces, chosen, isMarked);
  }
  function choose(piece) {
    chosen = piece;
    redraw();
  }
  function set(piece, points) {
    piece.field.value = write(points);
    redraw();
  }
  // Notes how a piece was before a change, for undoing it.
  function remember(piece, text) {
    if (piece.field.value === text) return;
    past.push({ piece, text });
    undoing.disabled = false;
  }
  function change(piece, points) {
    const before = piece.field.value;
    set(piece, points);
    remember(piece, before);
  }
  function undo() {
    const last = past.pop();
    undoing.disabled = !past.length;
    if (!last) return;
    last.piece.field.value = last.text;
    choose(last.piece);
    tell(say.undone(last.piece.code));
  }
  function remove(piece) {
    change(piece, []);
    tell(say.boxRemoved(piece.code));
  }

  const isDragging = drags(svg, size, loupe, {
    pieces, choose, polygon, set, remember,
    chosen: () => chosen,
    restore(piece, text) {
      piece.field.value = text;
      redraw();
    },
    drawn(piece) {
      tell(say.pieceIsMarked(piece.code));
      const next = pieces.find((p) => !isMarked(p));
      if (next) choose(next);
    },
  });

  svg.addEventListener("keydown", (event) => {
    const group = event.target.closest("[data-piece]");
    if (!group) return;
    const piece = pieces[Number(group.dataset.piece)];
    const { corner } = event.target.dataset;
    if (ARROWS[event.key]) {
      const far = (event.shiftKey ? 10 : 1) * Math.max(1, size.width / 1000);
      const by = ARROWS[event.key].map((v) => v * far);
      const points = polygon(piece);
      const moved = corner === undefined ? shifted(points, by, size)
        : withCorner(points, Number(corner), shifted([points[corner]], by, size)[0]);
      change(piece, moved);
      focus(layer, group.dataset.piece, corner);
      look();
    } else if (event.key === "Delete" || event.key === "Backspace") remove(piece);
    else return;
    event.preventDefault();
  });
  form.addEventListener("keydown", (event) => {
    if (event.key !== "z" || !(event.ctrlKey || event.metaKey) || event.target.matches("input:not([type=radio])")) return;
    undo();
    event.preventDefault();
  });

  // On the keyboard the loupe is over the corner that has the focus.
  function look() {
    const { corner } = document.activeElement.dataset;
    if (isDragging()) return;
    if (corner === undefined || !layer.contains(document.activeElement)) return loupe.hide();
    const point = polygon(chosen)[corner];
    loupe.show(point, polygon(chosen), isLeft(point));
  }
  layer.addEventListener("focusin", look);
  layer.addEventListener("focusout", () => { if (!isDragging()) loupe.hide(); });

  fill(list, pieces, choose);
  sheet.dataset.live = "";
  form.querySelector("[data-chooser]").hidden = false;
  if (!form.querySelector("[data-typed] [aria-invalid]")) form.querySelector("[data-typed]").open = false;
  form.querySelector("[data-place]").addEventListener("click", () => {
    const [w, h] = [size.width, size.height];
    change(chosen, box([w * 0.45, h * 0.45], [w * 0.55, h * 0.55]));
    focus(layer, pieces.indexOf(chosen));
    tell(say.boxIsPlaced(chosen.code));
  });
  form.querySelector("[data-remove]").addEventListener("click", () => remove(chosen));
  undoing.addEventListener("click", undo);
  for (const piece of pieces) {
    let before = piece.field.value;
    piece.field.addEventListener("focus", () => { before = piece.field.value; });
    piece.field.addEventListener("change", () => remember(piece, before));
    piece.field.addEventListener("input", redraw);
  }
  addEventListener("resize", redraw);
  redraw();
}
