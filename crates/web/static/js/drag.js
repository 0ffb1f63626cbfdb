// Drawing, moving and stretching by mouse, finger or pen.
import { box, shifted, withCorner } from "./polygon.js";

/**
 * `table` has `pieces`, `chosen()`, `choose(piece)`, `polygon(piece)`, `set(piece, points)`,
 * `restore(piece, text)`, `remember(piece, text)` and `drawn(piece)`, told when a new area is there.
 * Gives whether something is being dragged.
 */
export function drags(svg, size, loupe, table) {
  let drag = null;
  const within = ([x, y]) => [Math.min(Math.max(x, 0), size.width), Math.min(Math.max(y, 0), size.height)];
  const at = (event) => {
    const p = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return within([p.x, p.y]);
  };

  svg.addEventListener("pointerdown", (event) => {
    // A second finger zooms; it draws nothing.
    if (event.button !== 0 || !event.isPrimary) return;
    const group = event.target.closest("[data-piece]");
    const { corner } = event.target.dataset;
    const start = at(event);
    if (group) table.choose(table.pieces[Number(group.dataset.piece)]);
    const piece = table.chosen();
    const kind = !group ? "draw" : corner === undefined ? "move" : "corner";
    drag = { piece, kind, corner: Number(corner), start, from: table.polygon(piece), text: piece.field.value };
    svg.setPointerCapture(event.pointerId);
    event.preventDefault();
  });

  svg.addEventListener("pointermove", (event) => {
    if (!drag || !event.isPrimary) return;
    const now = at(event);
    const by = [now[0] - drag.start[0], now[1] - drag.start[1]];
    let seen = now;
    if (drag.kind === "draw") table.set(drag.piece, box(drag.start, now));
    else if (drag.kind === "move") table.set(drag.piece, shifted(drag.from, by, size));
    else {
      // The corner stays as far from the finger as it was taken hold of.
      const [x, y] = drag.from[drag.corner];
      seen = within([x + by[0], y + by[1]]);
      table.set(drag.piece, withCorner(drag.from, drag.corner, seen));
    }
    loupe.show(seen, table.polygon(drag.piece), now[0] < size.width / 2);
  });

  function end() {
    const was = drag;
    drag = null;
    loupe.hide();
    return was;
  }

  svg.addEventListener("pointerup", (event) => {
    if (!drag || !event.isPrimary) return;
    const now = at(event);
    const { piece, kind, start, text } = end();
    const isSmall = Math.hypot(now[0] - start[0], now[1] - start[1]) < size.width / 150;
    if (kind === "draw" && isSmall) {
      table.restore(piece, text);
      return;
    }
    table.remember(piece, text);
    if (kind === "draw") table.drawn(piece);
  });
  svg.addEventListener("pointercancel", () => {
    if (!drag) return;
    const { piece, text } = end();
    table.restore(piece, text);
  });

  return () => drag !== null;
}
