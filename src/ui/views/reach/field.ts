/** Points of the picture between two nodes of the map, in each direction: of a whole map, and while it is worked out. */
const FINE = 12;
const ROUGH = 2;
/** Shades from shallow to deep. */
const SHADES = 96;

type Rgb = readonly [number, number, number];

/** The shades between two colours of the page, as the browser mixes them; null where it has no canvas. */
function shadesOf(shallow: string, deep: string): readonly Rgb[] | null {
  const canvas = document.createElement("canvas");
  canvas.width = SHADES;
  canvas.height = 1;
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (context === null) return null;
  for (let i = 0; i < SHADES; i++) {
    context.fillStyle = `color-mix(in oklab, ${deep} ${((100 * i) / (SHADES - 1)).toFixed(1)}%, ${shallow})`;
    context.fillRect(i, 0, 1, 1);
  }
  const { data } = context.getImageData(0, 0, SHADES, 1);
  return Array.from({ length: SHADES }, (_, i): Rgb => [
    data[4 * i] ?? 0,
    data[4 * i + 1] ?? 0,
    data[4 * i + 2] ?? 0,
  ]);
}

/**
 * The depths between the nodes: bilinear between the four round a place, or between those of them that have a value; null
 * where the nearest node has none, so that the field ends half-way to what does not run.
 */
function between(
  columns: number,
  rows: number,
  at: (i: number, j: number) => number | null,
  x: number,
  y: number,
): number | null {
  const inside = (value: number, count: number): number => Math.min(Math.max(value, 0), count - 1);
  const [gx, gy] = [inside(x, columns), inside(y, rows)];
  if (at(Math.round(gx), Math.round(gy)) === null) return null;
  const [i, j] = [Math.floor(gx), Math.floor(gy)];
  const [u, v] = [gx - i, gy - j];
  let sum = 0;
  let weights = 0;
  for (const [di, dj, weight] of [
    [0, 0, (1 - u) * (1 - v)],
    [1, 0, u * (1 - v)],
    [0, 1, (1 - u) * v],
    [1, 1, u * v],
  ] as const) {
    const value = weight === 0 ? null : at(i + di, j + dj);
    if (value === null) continue;
    sum += weight * value;
    weights += weight;
  }
  return weights === 0 ? null : sum / weights;
}

/** The map's depths as one smooth picture over all its fields, row 0 below; null where nothing runs or nothing can be painted. */
export function fieldPicture(
  columns: number,
  rows: number,
  at: (i: number, j: number) => number | null,
  deepest: number,
  whole: boolean,
  colours: { readonly shallow: string; readonly deep: string },
): string | null {
  if (columns === 0 || rows === 0 || deepest <= 0) return null;
  const shades = shadesOf(colours.shallow, colours.deep);
  const fine = whole ? FINE : ROUGH;
  const canvas = document.createElement("canvas");
  canvas.width = columns * fine;
  canvas.height = rows * fine;
  const context = canvas.getContext("2d");
  if (context === null || shades === null) return null;
  const picture = context.createImageData(canvas.width, canvas.height);
  for (let py = 0; py < canvas.height; py++)
    for (let px = 0; px < canvas.width; px++) {
      const depth = between(columns, rows, at, (px + 0.5) / fine - 0.5, rows - 1 - ((py + 0.5) / fine - 0.5));
      if (depth === null) continue;
      const shade = shades[Math.round((Math.min(depth, deepest) / deepest) * (SHADES - 1))];
      if (shade === undefined) continue;
      picture.data.set([...shade, 255], 4 * (py * canvas.width + px));
    }
  context.putImageData(picture, 0, 0);
  return canvas.toDataURL("image/png");
}
