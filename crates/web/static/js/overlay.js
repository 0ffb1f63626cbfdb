// Draws the areas of all pieces over the photo.
import { corners } from "./polygon.js";

const shape = (name, attributes) => {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
};

export function draw(layer, pieces, chosen, letters, onFocus) {
  const groups = [];
  pieces.forEach((piece, index) => {
    const points = corners(piece.field.value);
    if (points.length < 3) return;
    const text = points.map((p) => p.join(",")).join(" ");
    const group = shape("g", {
      "data-piece": index,
      tabindex: 0,
      role: "button",
      "aria-label": `Area of ${piece.code}`,
      class: piece === chosen ? "chosen" : "",
    });
    const middle = [0, 1].map((i) => points.reduce((sum, p) => sum + p[i], 0) / points.length);
    const name = shape("text", { class: "area-name", x: middle[0], y: middle[1], "font-size": letters });
    name.textContent = piece.code;
    group.append(shape("polygon", { class: "under", points: text }), shape("polygon", { class: "area", points: text }), name);
    if (piece === chosen) {
      points.forEach(([x, y], corner) => {
        const at = { cx: x, cy: y, "data-corner": corner };
        group.append(shape("circle", { class: "grip", r: letters * 0.5, ...at }));
        group.append(shape("circle", { class: "reach", r: letters * 1.2, ...at }));
      });
    } else {
      group.addEventListener("focus", () => onFocus(piece));
    }
    groups.push(group);
  });
  const focused = layer.contains(document.activeElement) ? document.activeElement.dataset.piece : undefined;
  layer.replaceChildren(...groups);
  if (focused !== undefined) layer.querySelector(`[data-piece="${focused}"]`)?.focus();
}
