import type { Vec } from "../model/base";
import type { Snapshot } from "../model/motion";
import {
  arrowKey,
  arrowLength,
  arrowRuler,
  forceText,
  LEAST_FORCE,
  LEAST_LENGTH,
  longestArrow,
  roundForceText,
  SCALE_WORDS,
  type ArrowRuler,
  type ArrowScale,
} from "./arrows";
import { onScreen, pointOnScreen, type Ground } from "./ground";
import { forceWords, SUM_WORDS } from "./legend";
import type { Mark, Paint } from "./mark";
import type { Placer } from "./placer";
import type { Point, Posed } from "./types";
import type { PictureWords } from "./words";

/** How the forces are shown. */
export interface ForceLook {
  readonly scale: ArrowScale;
  /** Head to tail from G, with their sum, instead of each where it acts. Lengths are then linear. */
  readonly sum: boolean;
  /** The size beside each letter. */
  readonly values: boolean;
}

const HALO: Paint = { role: "waterTop", to: "waterDeep", t: 0.5 };
/** Length of an arrow's head, px. */
const HEAD = 11;
/** A force below this is no force: it is not listed either. N. */
const NOTHING = 5e-6;
/** Breadth of a letter of 11 px and of 13 px in bold, px. */
const LETTER = 6.4;
const BOLD_LETTER = 7.8;
/** Height of a line of the list, px. */
const LINE = 15;
/** Half the flag's height and a letter's, and where its right end and a gap are past, px. */
const FLAG = 17;
const PAST_FLAG = 68;

interface Words {
  readonly letter: string;
  readonly label: string;
  readonly colour: string;
}

interface Arrow {
  readonly from: Point;
  readonly to: Point;
  /** Where its words stand, and on which side: rad, counter-clockwise as seen. */
  readonly name: Point;
  readonly side: number;
  readonly newton: number;
  readonly words: Words;
}

interface Force {
  readonly at: Vec;
  readonly force: Vec;
  readonly newton: number;
  readonly words: Words;
}

/** The sum of all forces of a moment, N: what accelerates the bait and the water that moves with it. */
export function sumOf(forces: Snapshot["forces"]): Vec {
  let x = 0;
  let z = 0;
  for (const { force } of forces) {
    x += force.x;
    z += force.z;
  }
  return { x, z };
}

/** Force arrows with their letters (and values), the key to them, and a list of those too small to draw. Screen px. */
export function forceMarks(
  ground: Ground,
  bait: Posed,
  look: ForceLook,
  placer: Placer,
  told: PictureWords,
): Mark[] {
  const forces = bait.snapshot.forces
    .map(({ key, at, force }): Force => {
      return { at, force, newton: Math.hypot(force.x, force.z), words: forceWords(key) };
    })
    .filter(({ newton }) => newton >= NOTHING)
    // Long ones first, so that a short one on the same line stays in sight.
    .sort((a, b) => b.newton - a.newton);
  const most = forces[0]?.newton ?? 0;
  if (most < LEAST_FORCE) return [];
  const sum = { at: bait.snapshot.G, force: sumOf(bait.snapshot.forces), words: SUM_WORDS };
  const total: Force = { ...sum, newton: Math.hypot(sum.force.x, sum.force.z) };
  const { ruler, arrows } = look.sum
    ? headToTail(ground, forces, total)
    : whereTheyAct(ground, forces, look.scale, most);
  const drawn = new Set(arrows.map(({ words }) => words));
  const small = [...forces, ...(look.sum ? [total] : [])].filter(({ words }) => !drawn.has(words));
  const flag = ground.at(bait.snapshot.eye).y;
  const notes = keyMarks(ground, ruler, small, look.sum, flag, placer, told);
  for (const { from, to } of arrows) blockAlong(placer, from, to);
  return [
    ...arrows.flatMap((arrow) => arrowMarks(arrow, told)),
    ...arrows.flatMap((arrow) => nameMarks(arrow, look.values && !ground.narrow, placer, told)),
    ...notes,
  ];
}

/** Each force from the point where it acts. */
function whereTheyAct(
  { at, size }: Ground,
  forces: readonly Force[],
  scale: ArrowScale,
  most: number,
): { ruler: ArrowRuler; arrows: Arrow[] } {
  const ruler = arrowRuler(scale, most, longestArrow(size.width, size.height));
  const arrows = forces.flatMap(({ at: point, force, newton, words }): Arrow[] => {
    const length = arrowLength(newton, ruler);
    if (length < LEAST_LENGTH) return [];
    const from = at(point);
    const to = moved(from, force, length / newton);
    return [{ from, to, name: to, side: Math.atan2(force.z, force.x), newton, words }];
  });
  return { ruler, arrows };
}

/**
 * The forces head to tail from G in the order of their directions, which keeps the chain from crossing itself, and
 * their sum from G to the end of the chain.
 */
function headToTail(
  { at, size, rulers, narrow }: Ground,
  forces: readonly Force[],
  total: Force,
): { ruler: ArrowRuler; arrows: Arrow[] } {
  const turn = ({ force }: Force): number => Math.atan2(force.z, force.x);
  const chain = [...forces].sort((a, b) => turn(a) - turn(b));
  const start = at(total.at);
  const ends = [{ x: 0, z: 0 }];
  for (const { force } of chain) {
    const last = ends[ends.length - 1] ?? { x: 0, z: 0 };
    ends.push({ x: last.x + force.x, z: last.z + force.z });
  }
  const [xs, zs] = [ends.map(({ x }) => x), ends.map(({ z }) => z)];
  // Room for the chain on each side of G; the key, and on a phone the camera's buttons, have the lowest lines.
  const most = chain.reduce((sofar, { newton }) => Math.max(sofar, newton), 0);
  const rooms = [
    [Math.max(...xs), size.width - 24 - start.x],
    [-Math.min(...xs), start.x - rulers.left - 24],
    [Math.max(...zs), start.y - 20],
    [-Math.min(...zs), size.height - rulers.bottom - (narrow ? 100 : 44) - start.y],
  ] as const;
  const fits = ({ newton, px }: ArrowRuler): boolean =>
    rooms.every(([reach, room]) => (reach * px) / newton <= Math.max(40, room));
  let ruler = arrowRuler("linear", most, longestArrow(size.width, size.height));
  while (!fits(ruler)) ruler = arrowRuler("linear", 1.01 * ruler.newton, ruler.px);
  const perNewton = ruler.px / ruler.newton;
  const place = (p: Vec): Point => moved(start, p, perNewton);
  const arrow = (from: Point, { force, newton, words }: Force): Arrow[] => {
    if (newton * perNewton < LEAST_LENGTH) return [];
    const to = moved(from, force, perNewton);
    const name = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    return [{ from, to, name, side: Math.atan2(force.z, force.x) - Math.PI / 2, newton, words }];
  };
  return {
    ruler,
    arrows: [
      ...chain.flatMap((one, i) => arrow(place(ends[i] ?? { x: 0, z: 0 }), one)),
      ...arrow(start, total),
    ],
  };
}

const moved = (from: Point, by: Vec, scale: number): Point => ({
  x: from.x + by.x * scale,
  y: from.y - by.z * scale,
});

function arrowMarks({ from, to, newton, words }: Arrow, { name, number }: PictureWords): Mark[] {
  const ends = { from: pointOnScreen(from), to: pointOnScreen(to), head: HEAD };
  const colour: Paint = { role: "ink", hex: words.colour };
  const broad = words === SUM_WORDS ? 4.5 : 2.75;
  return [
    // A dark edge keeps every colour of the palette, yellow too, apart from paper and water.
    { kind: "arrow", what: null, ...ends, stroke: { role: "edge", px: broad + 1.75 } },
    {
      kind: "arrow",
      what: null,
      ...ends,
      title: `${words.letter}: ${name(words.label)}, ${number(forceText(newton))}`,
      fill: colour,
      stroke: { ...colour, px: broad },
    },
  ];
}

/** Keeps words off an arrow's shaft. */
function blockAlong(placer: Placer, from: Point, to: Point): void {
  const count = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 9);
  for (let i = 0; i < count; i++) {
    const t = (i + 0.5) / count;
    placer.block(from.x + t * (to.x - from.x), from.y + t * (to.y - from.y), 8, 8);
  }
}

/** An arrow's letter, with its value where asked for and where there is room; without room for either, nothing. */
function nameMarks(
  { name, side, newton, words }: Arrow,
  values: boolean,
  placer: Placer,
  { number }: PictureWords,
): Mark[] {
  const texts = values ? [`${words.letter} ${number(forceText(newton))}`, words.letter] : [words.letter];
  for (const text of texts) {
    const spot = placer.find(name, side, BOLD_LETTER * text.length + 2, 15);
    if (spot !== null)
      return [
        {
          kind: "text",
          what: null,
          at: pointOnScreen(spot),
          words: text,
          size: 13,
          bold: true,
          anchor: { x: 0.5, y: 0.5 },
          fill: { role: "ink" },
          halo: { role: "paper" },
        },
      ];
  }
  return [];
}

/**
 * Bars of round forces above the distance scale, with what an arrow's length goes with; above them the forces too small
 * to draw, with their values. All of it stands beside the flag of the depth where that is as high: `flag`, px.
 */
function keyMarks(
  { size, rulers, narrow }: Ground,
  ruler: ArrowRuler,
  small: readonly Force[],
  sum: boolean,
  flag: number,
  placer: Placer,
  told: PictureWords,
): Mark[] {
  // In a narrow picture the camera's buttons take the place right above the scale.
  const y = size.height - rulers.bottom - (narrow ? 62 : 12);
  const marks: Mark[] = [];
  const note = (words: string, x: number, height: number, role: "ink" | "inkSoft"): Mark => ({
    kind: "text",
    what: null,
    at: onScreen(x, height),
    words,
    size: 11,
    anchor: { x: 0, y: 0.5 },
    fill: { role },
    halo: HALO,
  });
  const listed = small.map(({ words: { letter }, newton }) => `${letter} ${told.number(forceText(newton))}`);
  const linesFrom = (start: number): string[] =>
    wrapped(listed, Math.floor((size.width - start - 16) / LETTER), told.small);
  const near = rulers.left + 10;
  const beside = flag > y - LINE * linesFrom(near).length - FLAG && flag < y + FLAG;
  const left = beside ? rulers.left + PAST_FLAG : near;
  const lines = linesFrom(left);
  let x = left;
  for (const { newton, length } of arrowKey(ruler, 0.3 * size.width)) {
    const words = told.number(roundForceText(newton));
    marks.push(
      {
        kind: "lines",
        what: null,
        paths: [
          [onScreen(x, y), onScreen(x + length, y)],
          ...[x, x + length].map((end) => [onScreen(end, y - 3), onScreen(end, y + 3)]),
        ],
        stroke: { role: "ink", px: 1.5 },
      },
      note(words, x + length + 5, y, "ink"),
    );
    x += length + 14 + LETTER * words.length;
  }
  const scale = told.name(SCALE_WORDS[ruler.scale]);
  const words = sum ? told.chain(scale) : scale;
  const width = x - left + LETTER * words.length;
  placer.block(left + width / 2, y, width, 15);
  lines.forEach((line, i) => {
    const height = y - LINE * (lines.length - i);
    marks.push(note(line, left, height, "inkSoft"));
    placer.block(left + (LETTER * line.length) / 2, height, LETTER * line.length, 15);
  });
  return [...marks, note(words, x, y, "inkSoft")];
}

/** A list in lines of at most so many letters, headed by what it lists. */
function wrapped(items: readonly string[], most: number, head: PictureWords["small"]): string[] {
  const lines: string[] = [];
  items.forEach((item, i) => {
    const last = lines.length - 1;
    const line = lines[last];
    const text = i === 0 ? head(item) : item;
    if (line === undefined) lines.push(text);
    else if (line.length + 3 + text.length <= most) lines[last] = `${line}, ${text}`;
    else {
      lines[last] = `${line},`;
      lines.push(text);
    }
  });
  return lines;
}
