import type { Scenario } from "../../../document";
import { BIB_SPREAD, LINE_SPREAD, MUNK_BAND } from "../../../runner";
import type { DepthEnds, ReachCell } from "../../../runner";
import { STROUHAL } from "../../../model/tow";
import { attitudeWords, degrees } from "../../state";
import type { Units, Why } from "../../state";
import { FILE } from "../../words/file";
import type { ReachWords } from "../../words/reach";

/** One number at a point of the map, as it stands on the page. */
export interface PointFigure {
  readonly key: string;
  readonly label: string;
  readonly text: string;
  readonly words: string;
  why(): Why;
}

/** The least and the greatest depth over all bands; null where nothing of it runs. */
export function spreadOf(cell: ReachCell): {
  readonly low: number;
  readonly high: number;
  /** Some end of a band does not run. */
  readonly open: boolean;
} | null {
  if (cell.depth === null || cell.bands === null) return null;
  const ends = [cell.bands.bib, cell.bands.munk, cell.bands.line].flatMap((band) => band ?? []);
  const depths = [cell.depth, ...ends.filter((one) => one !== null)];
  return {
    low: Math.min(...depths),
    high: Math.max(...depths),
    open: ends.some((one) => one === null),
  };
}

function endsText([low, high]: DepthEnds, units: Units, words: ReachWords): string {
  const one = (depth: number | null): string =>
    depth === null ? words.tell("doesNotRun") : units.bare(depth, "m", 2);
  const ends = { low: one(low), high: one(high) };
  return high === null
    ? words.tell("ends", ends)
    : words.tell("endsUnit", { ...ends, unit: units.unit("m") });
}

export const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

/** A positive number with two figures that count. */
export function twoFigures(value: number, words: ReachWords): string {
  const rounded = Number(value.toPrecision(2));
  return words.number(rounded, Math.max(0, 1 - Math.floor(Math.log10(rounded))));
}

export function pointFigures(
  cell: ReachCell,
  scenario: Scenario,
  speed: number,
  units: Units,
  words: ReachWords,
): readonly PointFigure[] {
  const { depth, pitch, tension, lineAngle, whole, bands } = cell;
  if (depth === null || pitch === null || tension === null || lineAngle === null) return [];
  const file = FILE.in(words.language);
  const line = whole?.row.line ?? null;
  const beat = whole?.beat ?? null;
  const factor = scenario.calibration?.bibFactor ?? 1;
  const spread = spreadOf(cell);
  const bibAngle = whole?.row.bibAngle ?? null;
  const attitude = attitudeWords(degrees(pitch), words.language);
  const towSpeed = { name: words.tell("towSpeed"), value: units.show(speed, "m/s", 2) };
  const lineOut = { name: words.tell("lineOut"), value: units.show(scenario.tackle.lineOut_m, "m", 1) };
  const lineSource = words.tell("lineSource");
  const attitudeSource = words.tell("attitudeSource");
  const figures: PointFigure[] = [
    {
      key: "depth",
      label: words.tell("depth.label"),
      text: units.show(depth, "m", 2),
      words: [
        ...(cell.why === null ? [] : [file.of(cell.why)]),
        ...(spread === null
          ? // The bands come a moment after the depth, and what stands below keeps its place.
            cell.bands === null
            ? [words.tell("depth.bands", { low: "…", high: "…" })]
            : []
          : [
              words.tell(spread.open ? "depth.bandsOpen" : "depth.bands", {
                low: units.bare(spread.low, "m", 2),
                high: units.show(spread.high, "m", 2),
              }),
            ]),
      ].join("; "),
      why: () => ({
        title: words.tell("depth.title"),
        value: units.show(depth, "m", 2),
        meaning: words.tell("depth.means"),
        formula: words.tell("depth.formula"),
        inputs: [
          towSpeed,
          lineOut,
          {
            name: words.tell("depth.line", { material: file.of(scenario.tackle.line.material) }),
            value: units.show(scenario.tackle.line.diameter_mm, "mm", 3),
          },
          { name: words.tell("depth.rodTip"), value: units.show(scenario.tackle.rodTip_m, "m", 2) },
          { name: words.tell("depth.tension"), value: units.show(tension, "N", 3) },
          { name: words.tell("depth.angle"), value: units.show(degrees(lineAngle), "°", 1) },
          { name: words.tell("depth.factor"), value: words.number(factor, 3) },
          ...(!bands?.bib
            ? []
            : [
                {
                  name: words.tell("depth.withBib", { share: percent(BIB_SPREAD) }),
                  value: endsText(bands.bib, units, words),
                },
              ]),
          ...(bands === null
            ? []
            : [
                {
                  name: words.tell("depth.withMunk", munkEnds(words)),
                  value: endsText(bands.munk, units, words),
                },
                {
                  name: words.tell("depth.withLine", { share: percent(LINE_SPREAD) }),
                  value: endsText(bands.line, units, words),
                },
              ]),
        ],
        source: words.tell("depth.source", { line: lineSource }),
        note: words.tell("honest"),
      }),
    },
    {
      key: "pitch",
      label: words.tell("pitch.label"),
      text: units.show(degrees(pitch), "°", 1, true),
      words: attitude,
      why: () => ({
        title: words.tell("pitch.title"),
        value: `${units.show(degrees(pitch), "°", 1, true)} · ${attitude}`,
        meaning: words.tell("pitch.means"),
        formula: "M_e(θ) = M − x_e Z + z_e X = 0,  dM_e/dθ < 0",
        inputs: [
          towSpeed,
          ...(bibAngle === null
            ? []
            : [
                { name: words.tell("pitch.bib"), value: units.show(degrees(bibAngle), "°", 1) },
                { name: words.tell("pitch.against"), value: units.show(degrees(bibAngle - pitch), "°", 1) },
              ]),
          ...(whole?.row.roots ?? []).map((root, i) => ({
            name: words.tell(root.stable ? "pitch.stable" : "pitch.unstable", { count: i + 1 }),
            value: units.show(degrees(root.pitch), "°", 1, true),
          })),
        ],
        source: attitudeSource,
        note: words.tell("honest"),
      }),
    },
    {
      key: "tension",
      label: words.tell("tension.label"),
      text: units.show(tension, "N", 3),
      words: "",
      why: () => ({
        title: words.tell("tension.title"),
        value: units.show(tension, "N", 3),
        meaning: words.tell("tension.means"),
        formula: "T₀ cos φ₀ = −F_X,  T₀ sin φ₀ = −F_Z",
        inputs: [
          { name: words.tell("tension.drag"), value: units.show(tension * Math.cos(lineAngle), "N", 3) },
          { name: words.tell("tension.pull"), value: units.show(tension * Math.sin(lineAngle), "N", 3) },
          { name: words.tell("tension.angle"), value: units.show(degrees(lineAngle), "°", 1) },
        ],
        source: attitudeSource,
      }),
    },
  ];
  if (line !== null) {
    figures.push(
      {
        key: "rod",
        label: words.tell("rod.label"),
        text: units.show(line.tensionAtRod, "N", 3),
        words: "",
        why: () => ({
          title: words.tell("rod.label"),
          value: units.show(line.tensionAtRod, "N", 3),
          meaning: words.tell("rod.means"),
          formula: words.tell("rod.formula"),
          inputs: [
            { name: words.tell("rod.eye"), value: units.show(tension, "N", 3) },
            { name: words.tell("rod.surface"), value: units.show(line.tensionAtSurface, "N", 3) },
            { name: words.tell("rod.wet"), value: units.show(line.wetLength, "m", 2) },
          ],
          source: lineSource,
        }),
      },
      {
        key: "distance",
        label: words.tell("distance.label"),
        text: units.show(line.reach, "m", 2),
        words: words.tell("distance.words", { length: units.show(line.wetLength, "m", 1) }),
        why: () => ({
          title: words.tell("distance.title"),
          value: units.show(line.reach, "m", 2),
          meaning: words.tell("distance.means"),
          formula: words.tell("distance.formula"),
          inputs: [lineOut, { name: words.tell("distance.wet"), value: units.show(line.wetLength, "m", 2) }],
          source: lineSource,
        }),
      },
    );
  }
  if (beat !== null) {
    const text = words.tell("ends", { low: twoFigures(beat.low, words), high: twoFigures(beat.high, words) });
    figures.push({
      key: "beat",
      label: words.tell("beat.label"),
      text,
      words: words.tell("beat.words"),
      why: () => ({
        title: words.tell("beat.title"),
        value: words.tell("beat.second", { count: text }),
        meaning: words.tell("beat.means"),
        formula: words.tell("beat.formula"),
        inputs: [
          { name: "St", value: units.bare(STROUHAL, "", 2) },
          { name: words.tell("beat.speed"), value: units.show(speed, "m/s", 2) },
          { name: words.tell("beat.width"), value: units.showSI(beat.width, "mm", 1) },
          {
            name: words.tell("beat.middle"),
            value: words.tell("beat.second", { count: twoFigures(beat.frequency, words) }),
          },
        ],
        source: words.tell("beat.source"),
      }),
    });
  }
  return figures;
}

/** The band of the Munk share, as it is told. */
export const munkEnds = (words: ReachWords): { readonly low: string; readonly high: string } => ({
  low: words.number(MUNK_BAND[0], 1),
  high: words.number(MUNK_BAND[1], 1),
});

/** A round step for contours: 1, 2 or 5 times a power of ten, about `count` of them in a span. */
export function roundStep(span: number, count: number): number {
  const raw = span / count;
  const power = 10 ** Math.floor(Math.log10(raw));
  return [1, 2, 5, 10].map((one) => one * power).find((one) => one >= raw * 0.999) ?? 10 * power;
}
