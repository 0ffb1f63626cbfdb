// Draws the areas of all pieces over the photo, the chosen one with corners to take hold of.
import * as say from "./text.js";
import { corners, middle } from "./polygon.js";

// Half the side of what a finger can hit, pixels on the screen.
const REACH = 25;

const shape = (name, attributes) => {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
};

/** `pixel` is how many pixels of the photo one pixel of the screen shows. */
export function draw(layer, pieces, chosen, { letters, pixel, onFocus }) {
  const groups = [];
  pieces.forEach((piece, index) => {
    const points = corners(piece.field.value);
    if (points.length < 3) return;
    const text = points.map((p) => p.join(",")).join(" ");
    const group = shape("g", { "data-piece": index, class: piece === chosen ? "chosen" : "" });
    const centre = middle(points);
    const area = shape("polygon", { class: "area", points: text, tabindex: 0, role: "button", "aria-label": say.areaOf(piece.code) });
    const name = shape("text", { class: "area-name", x: centre[0], y: centre[1], "font-size": letters });
    name.textContent = piece.code;
    group.append(shape("polygon", { class: "under", points: text }), area, name);
    if (piece === chosen) group.append(...points.flatMap((point, corner) => grip(piece, points, centre, corner, pixel)));
    else area.addEventListener("focus", () => onFocus(piece));
    groups.push(group);
  });
  const held = layer.contains(document.activeElement) ? document.activeElement : null;
  const again = held && { piece: held.closest("[data-piece]").dataset.piece, corner: held.dataset.corner };
  layer.replaceChildren(...groups);
  if (again) focus(layer, again.piece, again.corner);
}

export function focus(layer, piece, corner) {
  const what = corner === undefined ? ".area" : `[data-corner="${corner}"]`;
  layer.querySelector(`[data-piece="${piece}"] ${what}`)?.focus();
}

function grip(piece, points, centre, corner, pixel) {
  const [x, y] = points[corner];
  // What can be hit lies a little outwards, so that a small area can still be moved.
  const away = Math.hypot(x - centre[0], y - centre[1]) || 1;
  const [dx, dy] = [(x - centre[0]) / away, (y - centre[1]) / away].map((v) => v * REACH * 0.5 * pixel);
  return [
    shape("circle", { class: "grip", r: 7 * pixel, cx: x, cy: y }),
    shape("circle", {
      class: "reach", r: REACH * pixel, cx: x + dx, cy: y + dy, "data-corner": corner,
      tabindex: 0, role: "button", "aria-label": say.cornerOf(corner + 1, points.length, piece.code),
    }),
  ];
}
