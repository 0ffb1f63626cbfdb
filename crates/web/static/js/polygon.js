// Areas as text and as points. Text is "x,y x,y x,y", in pixels of the upright photo.

export function corners(text) {
  const points = text.trim().split(/[\s;]+/).filter(Boolean).map((pair) => pair.split(",").map(Number));
  return points.every((p) => p.length === 2 && p.every(Number.isFinite)) ? points : [];
}

export function write(points) {
  return points.map((p) => p.map((v) => Math.round(v * 10) / 10).join(",")).join(" ");
}

export function box([x1, y1], [x2, y2]) {
  const [left, right] = [Math.min(x1, x2), Math.max(x1, x2)];
  const [top, bottom] = [Math.min(y1, y2), Math.max(y1, y2)];
  return [[left, top], [right, top], [right, bottom], [left, bottom]];
}

// Moved as a whole, and stopped at the edge of the photo.
export function shifted(points, [dx, dy], { width, height }) {
  if (!points.length) return points;
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  const x = Math.min(Math.max(dx, -Math.min(...xs)), width - Math.max(...xs));
  const y = Math.min(Math.max(dy, -Math.min(...ys)), height - Math.max(...ys));
  return points.map((p) => [p[0] + x, p[1] + y]);
}

export function withCorner(points, index, to) {
  return points.map((p, i) => (i === index ? to : p));
}

export function middle(points) {
  return [0, 1].map((i) => points.reduce((sum, p) => sum + p[i], 0) / points.length);
}
