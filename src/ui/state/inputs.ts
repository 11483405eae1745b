import { fieldAt, fileEntries, PART_FILES, pathText, stretchParts, valueAt } from "../../document";
import type { FieldUnit, FileEntry, Scenario, ScenarioMove } from "../../document";
import { material } from "../../model/materials";
import { fromSI } from "../../units";

/**
 * The live inputs: which numbers of the document a maker changes at the bench, where they stand, and how a new value is
 * written. Label, unit and ranges come from the document's own schema.
 */
export interface Input {
  /** Stable within a document: names the control, the undo step and the place of a refusal. */
  readonly id: string;
  readonly label: string;
  readonly unit: FieldUnit;
  /** The value that a document has, in the unit of the file. */
  read(scenario: Scenario): number;
  readonly slider: { readonly min: number; readonly max: number; readonly step: number };
  readonly min: number;
  readonly max: number;
  /** True: `min` itself is not allowed. */
  readonly above: boolean;
  readonly help: string;
  /** The document with this input at `value`, made from the one given (that at the start of a drag). */
  write(from: Scenario, value: number): Scenario;
}

/** Inputs of one thing: one ballast, one hanger; or of the whole section where `name` is "". */
export interface InputGroup {
  readonly name: string;
  readonly inputs: readonly Input[];
}

type Step = string | number;
type Json = Record<Step, unknown>;

/** A copy of `root` with the value at `path` replaced; untouched branches are shared. */
export function withValue<T>(root: T, path: readonly Step[], value: unknown): T {
  const [head, ...rest] = path;
  if (head === undefined) return value as T;
  const copy = (Array.isArray(root) ? [...(root as unknown[])] : { ...(root as object) }) as Json;
  copy[head] = withValue(copy[head], rest, value);
  return copy as T;
}

type Extra = Partial<Omit<Input, "unit">>;

/** The longest hard body that can be meant, mm: half a metre; common practice, no source. */
const LONGEST = 500;

/** The number field of the schema at a path, as an input. */
export function inputAt(scenario: Scenario, steps: readonly Step[], extra: Extra = {}): Input {
  const path = pathText(steps);
  const field = fieldAt(path, scenario);
  if (field === null || field.kind !== "number") {
    throw new Error(`No number field at ${path}: name a field of the scenario schema.`);
  }
  const { label, unit, slider, min, max, above, help } = field;
  return {
    id: path,
    label,
    unit,
    slider,
    min,
    max,
    above,
    help,
    read: (from) => numberAt(from, steps),
    write: (from, value) => withValue(from, steps, value),
    ...extra,
  };
}

function numberAt(scenario: Scenario, steps: readonly Step[]): number {
  const value = valueAt(scenario, steps);
  if (typeof value !== "number")
    throw new Error(`No number at ${pathText(steps)}: the document changed under its inputs.`);
  return value;
}

const round = (value: number, step: number): number => Math.round(value / step) * step;
/** Thousandths of a millimetre: finer than any knife, and no tails of binary digits in the file. */
const tidy = (mm: number): number => Number(round(mm, 0.001).toFixed(3));

type Pair = readonly [number, number];

/** Everything that has a station moves along in proportion; heights and breadths stay. */
export function stretched(from: Scenario, length: number): Scenario {
  const { bait } = from;
  const factor = length / bait.length_mm;
  const along = (station: number): number => (station === bait.length_mm ? length : tidy(station * factor));
  const same = (mm: number): number => mm;
  const point = ([station, height]: Pair): [number, number] => [along(station), height];
  const curve = (knots: readonly Pair[]): [number, number][] => knots.map(point);
  const { widest, roundover } = bait;
  return {
    ...from,
    bait: {
      ...stretchParts(bait, { station: along, height: same, tall: same, wide: same }),
      length_mm: length,
      top: curve(bait.top),
      bottom: curve(bait.bottom),
      halfBreadth: curve(bait.halfBreadth),
      ...(widest === undefined ? {} : { widest: curve(widest) }),
      ...(roundover === undefined
        ? {}
        : { roundover: { above: curve(roundover.above), below: curve(roundover.below) } }),
      tie_mm: point(bait.tie_mm),
    },
  };
}

/** Greatest breadth seen from above, mm (a monotone curve has its greatest value at a knot). */
export function breadthOf(scenario: Scenario): number {
  return 2 * Math.max(...scenario.bait.halfBreadth.map(([, half]) => half));
}

/** Every half-breadth in proportion; the side view stays. */
export function widened(from: Scenario, breadth: number): Scenario {
  const factor = breadth / breadthOf(from);
  const halfBreadth = from.bait.halfBreadth.map(([station, half]): [number, number] => [
    station,
    tidy(half * factor),
  ]);
  return { ...from, bait: { ...from.bait, halfBreadth } };
}

export function waterInputs(scenario: Scenario): readonly InputGroup[] {
  return [
    {
      name: "",
      inputs: [
        inputAt(scenario, ["water", "temperature_C"]),
        inputAt(scenario, ["water", "salinity_g_kg"]),
        inputAt(scenario, ["water", "depth_m"]),
      ],
    },
  ];
}

/** The wood's density as the file has it: its own number, else the material's published one. g/mL. */
export function densityOf(scenario: Scenario): number {
  const { density_g_ml: own, material: name } = scenario.bait.body;
  if (own !== undefined) return own;
  const found = name === undefined ? null : material(name);
  if (found === null)
    throw new Error(`The body has neither a density nor a known material (${String(name)}).`);
  return fromSI(found.density, "g_mL");
}

export function bodyInputs(scenario: Scenario): readonly InputGroup[] {
  const half = inputAt(scenario, ["bait", "halfBreadth", 0, 1]);
  return [
    {
      name: "",
      inputs: [
        inputAt(scenario, ["bait", "body", "density_g_ml"], {
          label: "Body density",
          help: "Weigh your blank: wood of one kind differs by a tenth and more.",
          slider: { min: 0.08, max: 1.4, step: 0.005 },
          read: densityOf,
        }),
        inputAt(scenario, ["bait", "length_mm"], {
          help: "Stretches the drawing: everything along the bait moves in proportion; heights stay.",
          // A slip of the hand is no bait of 1234 mm; a file may hold a longer one, and it stays as it is.
          max: Math.max(LONGEST, scenario.bait.length_mm),
          write: stretched,
        }),
        {
          ...half,
          id: "bait.halfBreadth",
          label: "Width",
          help: "Greatest breadth seen from above. All breadths change in proportion; the side view stays.",
          slider: { min: 4, max: 50, step: 0.25 },
          min: 0,
          above: true,
          max: half.max * 2,
          read: breadthOf,
          write: widened,
        },
      ],
    },
  ];
}

/** Heights reach a little past the drawn edges: a slider that reaches metres would be useless. */
function heightSlider(scenario: Scenario): Extra {
  const heights = [...scenario.bait.top, ...scenario.bait.bottom].map(([, height]) => height);
  return {
    slider: {
      min: Math.floor(Math.min(...heights)) - 3,
      max: Math.ceil(Math.max(...heights)) + 3,
      step: 0.25,
    },
  };
}

/** The inputs of one kind of part, one group for each entry: each kind says which of its numbers a maker changes. */
function partInputs(scenario: Scenario, key: FileEntry["key"]): readonly InputGroup[] {
  const along: Extra = { slider: { min: 0, max: scenario.bait.length_mm, step: 0.25 } };
  return fileEntries(scenario.bait)
    .filter((one) => one.key === key)
    .map(({ file, entry, steps }) => ({
      name: (entry as { readonly name?: string }).name ?? "",
      inputs: file.turned(entry).map(({ path, slider }) => {
        const extra = slider === "along" ? along : slider === "up" ? heightSlider(scenario) : {};
        return inputAt(scenario, [...steps, ...path], extra);
      }),
    }))
    .filter((group) => group.inputs.length > 0);
}

/** A section of inputs for each kind of part that has any. The tie eye stands with the bib. */
export interface PartSection {
  /** Names the section on the page. */
  readonly key: string;
  readonly title: string;
  readonly groups: readonly InputGroup[];
  /** What the section shows of the document as it is now: a mass (g) or words. */
  gist(now: Scenario): number | string;
}

export function partSections(scenario: Scenario): readonly PartSection[] {
  return (Object.keys(PART_FILES) as FileEntry["key"][]).flatMap((key): PartSection[] => {
    const { section } = PART_FILES[key];
    if (section === null) return [];
    const groups = key === "bib" ? bibInputs(scenario) : partInputs(scenario, key);
    if (groups.length === 0) return [];
    return [{ ...section, groups, gist: (now) => gistOf(now, key) }];
  });
}

function gistOf(now: Scenario, key: FileEntry["key"]): number | string {
  const all = fileEntries(now.bait).flatMap(({ key: own, file, entry }) =>
    own === key ? [file.gist(entry)] : [],
  );
  const masses = all.filter((one) => typeof one === "number");
  return masses.length > 0 ? masses.reduce((sum, g) => sum + g, 0) : all.join(", ");
}

function bibInputs(scenario: Scenario): readonly InputGroup[] {
  const eye: InputGroup = {
    name: "Tie eye",
    inputs: [
      inputAt(scenario, ["bait", "tie_mm", 0], {
        label: "Tie eye station",
        slider: { min: -20, max: Math.round(scenario.bait.length_mm / 2), step: 0.25 },
      }),
      inputAt(scenario, ["bait", "tie_mm", 1], { label: "Tie eye height", ...heightSlider(scenario) }),
    ],
  };
  return [...partInputs(scenario, "bib"), eye];
}

export function tackleInputs(scenario: Scenario): readonly InputGroup[] {
  return [
    {
      name: "Line",
      inputs: [
        inputAt(scenario, ["tackle", "lineOut_m"]),
        inputAt(scenario, ["tackle", "rodTip_m"]),
        inputAt(scenario, ["tackle", "line", "diameter_mm"]),
      ],
    },
  ];
}

/** Where a move stands in the document: in the cadence, or in a block that repeats it. */
export type MoveSteps = readonly (string | number)[];

export const moveSteps = (entry: number, inner: number | null): MoveSteps =>
  inner === null ? ["cadence", entry] : ["cadence", entry, "moves", inner];

/**
 * The turns of the cadence. Moves of one kind with one value share one input: four equal twitches are
 * one 'twitch travel', and a pause that differs has its own.
 */
export function cadenceInputs(scenario: Scenario): readonly InputGroup[] {
  const keys: readonly { readonly key: string; readonly of: (move: ScenarioMove) => number | undefined }[] = [
    { key: "speed_m_s", of: (move) => (move.do === "reel" ? move.speed_m_s : undefined) },
    { key: "travel_m", of: (move) => (move.do === "twitch" ? move.travel_m : undefined) },
    { key: "for_s", of: (move) => (move.do === "pause" ? move.for_s : undefined) },
  ];
  const moves = scenario.cadence.flatMap((entry, i) =>
    entry.do === "repeat"
      ? entry.moves.map((move, inner) => ({ move, at: moveSteps(i, inner), name: `${i + 1}.${inner + 1}` }))
      : [{ move: entry, at: moveSteps(i, null), name: String(i + 1) }],
  );
  const inputs = keys.flatMap(({ key, of }) => {
    const alike = new Map<number, (typeof moves)[number][]>();
    for (const one of moves) {
      const value = of(one.move);
      if (value !== undefined) alike.set(value, [...(alike.get(value) ?? []), one]);
    }
    // In the order of their first move, so that a control keeps its place while its value changes.
    return [...alike.values()].map((places) => {
      const [first] = places;
      if (first === undefined) throw new Error("A group of moves is never empty.");
      const base = inputAt(scenario, [...first.at, key]);
      return {
        ...base,
        id: places.map(({ at }) => pathText([...at, key])).join(" "),
        label: alike.size > 1 ? `${base.label}, ${movesText(places.map(({ name }) => name))}` : base.label,
        write: (from: Scenario, value: number): Scenario =>
          places.reduce((next, { at }) => withValue(next, [...at, key], value), from),
      };
    });
  });
  return inputs.length === 0 ? [] : [{ name: "", inputs }];
}

function movesText(names: readonly string[]): string {
  const shown = names.slice(0, 4);
  const more = names.length > shown.length ? " …" : "";
  return `${names.length === 1 ? "move" : "moves"} ${shown.join(", ")}${more}`;
}
