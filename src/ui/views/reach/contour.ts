/** A point in grid coordinates: column and row, whole at the nodes. */
export interface GridPoint {
  readonly x: number;
  readonly y: number;
}

/**
 * Lines along which a field on a grid has one value: marching squares with linear interpolation on the edges (Lorensen &
 * Cline 1987 in the plane). The two ambiguous squares are decided by the mean of their corners. Squares with a corner that
 * has no value carry no line: nothing is drawn into where the bait does not run.
 *
 * @param at value at column i, row j; null where there is none
 */
export function contour(
  columns: number,
  rows: number,
  at: (i: number, j: number) => number | null,
  level: number,
): readonly (readonly GridPoint[])[] {
  const pieces: [GridPoint, GridPoint][] = [];
  for (let i = 0; i + 1 < columns; i++)
    for (let j = 0; j + 1 < rows; j++) {
      const corners = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      const [a, b, c, d] = corners;
      if (!isNumber(a) || !isNumber(b) || !isNumber(c) || !isNumber(d)) continue;
      // A corner exactly on the level counts as above it, so that every crossing lies strictly inside an edge or at its end.
      const over = [a, b, c, d].map((value) => value >= level);
      const share = (from: number, to: number): number => (level - from) / (to - from);
      const edges: (GridPoint | null)[] = [
        over[0] === over[1] ? null : { x: i + share(a, b), y: j },
        over[1] === over[2] ? null : { x: i + 1, y: j + share(b, c) },
        over[2] === over[3] ? null : { x: i + 1 - share(c, d), y: j + 1 },
        over[3] === over[0] ? null : { x: i, y: j + 1 - share(d, a) },
      ];
      const crossed = edges.filter((point) => point !== null);
      const [p, q, r, s] = crossed;
      if (p === undefined || q === undefined) continue;
      if (r === undefined || s === undefined) pieces.push([p, q]);
      else if ((a + b + c + d) / 4 >= level === over[0]) pieces.push([p, q], [r, s]);
      else pieces.push([s, p], [q, r]);
    }
  return joined(pieces);
}

const isNumber = (value: number | null | undefined): value is number => typeof value === "number";

const SAME = 1e-9;
const same = (a: GridPoint, b: GridPoint): boolean =>
  Math.abs(a.x - b.x) < SAME && Math.abs(a.y - b.y) < SAME;

/** Pieces that share ends, as few long lines. */
function joined(pieces: readonly (readonly [GridPoint, GridPoint])[]): readonly (readonly GridPoint[])[] {
  const left = [...pieces];
  const lines: GridPoint[][] = [];
  for (let first = left.pop(); first !== undefined; first = left.pop()) {
    const line: GridPoint[] = [...first];
    for (let grew = true; grew;) {
      grew = false;
      for (let k = 0; k < left.length; k++) {
        const [p, q] = left[k] ?? [];
        const [head, tail] = [line[0], line[line.length - 1]];
        if (p === undefined || q === undefined || head === undefined || tail === undefined) continue;
        if (same(p, tail)) line.push(q);
        else if (same(q, tail)) line.push(p);
        else if (same(q, head)) line.unshift(p);
        else if (same(p, head)) line.unshift(q);
        else continue;
        left.splice(k, 1);
        grew = true;
        break;
      }
    }
    lines.push(line);
  }
  return lines;
}

/** A patch of nodes that do not run for one and the same reason. */
export interface Region {
  readonly why: string;
  /** The longest row of it, nearest to its middle: columns `from` to `to`, both included. */
  readonly row: number;
  readonly from: number;
  readonly to: number;
  readonly size: number;
}

/** Connected patches of one reason, and where in each there is most room for words. */
export function regions(
  columns: number,
  rows: number,
  why: (i: number, j: number) => string | null,
): readonly Region[] {
  const seen = new Set<number>();
  const found: Region[] = [];
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++) {
      const reason = why(i, j);
      if (reason === null || seen.has(i * rows + j)) continue;
      const members: (readonly [number, number])[] = [];
      const stack: (readonly [number, number])[] = [[i, j]];
      seen.add(i * rows + j);
      for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
        members.push(at);
        const [x, y] = at;
        for (const [nx, ny] of [
          [x + 1, y],
          [x - 1, y],
          [x, y + 1],
          [x, y - 1],
        ] as const) {
          if (nx < 0 || ny < 0 || nx >= columns || ny >= rows || seen.has(nx * rows + ny)) continue;
          if (why(nx, ny) !== reason) continue;
          seen.add(nx * rows + ny);
          stack.push([nx, ny]);
        }
      }
      const middle = members.reduce((sum, [, y]) => sum + y, 0) / members.length;
      const runs: Region[] = [];
      for (const row of new Set(members.map(([, y]) => y))) {
        const inRow = members
          .filter(([, y]) => y === row)
          .map(([x]) => x)
          .sort((a, b) => a - b);
        let from = inRow[0] ?? 0;
        inRow.forEach((x, k) => {
          const next = inRow[k + 1];
          if (next === x + 1) return;
          runs.push({ why: reason, row, from, to: x, size: members.length });
          if (next !== undefined) from = next;
        });
      }
      const off = ({ row }: Region): number => Math.abs(row - middle);
      const [best] = runs.sort((a, b) => b.to - b.from - (a.to - a.from) || off(a) - off(b));
      if (best !== undefined) found.push(best);
    }
  return found;
}

/** The different reasons of some patches, in their order. */
export function reasonsIn(patches: readonly Region[]): readonly string[] {
  return [...new Set(patches.map(({ why }) => why))];
}

/** What a label must not lie on, px: its middle, and half its width and height. */
export interface Taken {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

/**
 * Where on a line (px) its label stands: as near to the line's middle as it meets nothing that is there already. Where it meets
 * something everywhere it stands at the place that is farthest from all of it.
 */
export function labelPlace(
  line: readonly GridPoint[],
  label: { readonly halfWidth: number; readonly halfHeight: number },
  taken: readonly Taken[],
): GridPoint | null {
  /** px between the label and the nearest of them; below 0 where they meet. */
  const room = (p: GridPoint): number =>
    Math.min(
      ...taken.map((one) =>
        Math.max(
          Math.abs(p.x - one.x) - one.halfWidth - label.halfWidth,
          Math.abs(p.y - one.y) - one.halfHeight - label.halfHeight,
        ),
      ),
      Infinity,
    );
  const middle = (line.length - 1) / 2;
  const order = line.map((p, i) => ({ p, off: Math.abs(i - middle) })).sort((a, b) => a.off - b.off);
  const free = order.find(({ p }) => room(p) > 0);
  if (free !== undefined) return free.p;
  return order.reduce<GridPoint | null>(
    (best, { p }) => (best === null || room(p) > room(best) ? p : best),
    null,
  );
}
