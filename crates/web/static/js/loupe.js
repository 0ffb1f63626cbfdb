// A magnifying glass over the photo: the full-size picture around a point, fetched in squares.

const SIDE = 512; // of a square, pixels of the photo
const SHARE = 0.03; // of the photo's longer side that is seen across
const MOST = 24; // squares kept

const made = (name, attributes) => {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
};

export function Loupe(glass, { width, height }) {
  const svg = made("svg", {});
  const squares = made("g", {});
  const outline = made("polygon", { class: "area" });
  const under = made("polygon", { class: "under" });
  const cross = made("path", { class: "cross" });
  svg.append(squares, under, outline, cross);
  glass.append(svg);
  const span = Math.max(80, Math.max(width, height) * SHARE);

  function square(column, row) {
    const name = `${column}/${row}`;
    if (squares.querySelector(`[data-name="${name}"]`)) return;
    const size = { width: Math.min(SIDE, width - column * SIDE), height: Math.min(SIDE, height - row * SIDE) };
    squares.append(made("image", { "data-name": name, href: `${glass.dataset.loupe}/${name}`, x: column * SIDE, y: row * SIDE, ...size }));
    if (squares.childElementCount > MOST) squares.firstElementChild.remove();
  }

  /** Shows what lies around a point, with an area's outline; `onLeft` says where the hand is. */
  this.show = ([x, y], points, onLeft) => {
    const [left, top] = [x - span / 2, y - span / 2];
    svg.setAttribute("viewBox", `${left} ${top} ${span} ${span}`);
    const within = (v, most) => Math.floor(Math.min(Math.max(v, 0), most - 1) / SIDE);
    for (const column of new Set([within(left, width), within(left + span, width)])) {
      for (const row of new Set([within(top, height), within(top + span, height)])) square(column, row);
    }
    const text = points.map((p) => p.join(",")).join(" ");
    for (const line of [outline, under]) line.setAttribute("points", text);
    const arm = span * 0.06;
    cross.setAttribute("d", `M${x - arm} ${y}h${2 * arm}M${x} ${y - arm}v${2 * arm}`);
    glass.classList.toggle("right", onLeft);
    glass.hidden = false;
  };
  this.hide = () => { glass.hidden = true; };
}
