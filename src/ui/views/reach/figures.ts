import type { Scenario } from "../../../document";
import { BIB_SPREAD, LINE_SPREAD, MUNK_BAND } from "../../../runner";
import type { DepthEnds, ReachCell } from "../../../runner";
import { attitudeWords, degrees } from "../../state";
import type { Units, Why } from "../../state";

/** One number at a point of the map, as it stands on the page. */
export interface PointFigure {
  readonly key: string;
  readonly label: string;
  readonly text: string;
  readonly words: string;
  why(): Why;
}

const ATTITUDE =
  "Added mass: Lamb 1932. Munk moment less its loss at the tail: Roddy 1990, DTRC/SHD-1298-08. Cross-flow: Cheng 2013; Jorgensen 1977, " +
  "NASA TR R-474. Along the body: Hoerner 1965. Bib: Polhamus 1966, NASA TN D-3767; Lamar & Gloss 1975; ECN-C--03-025, 2003. docs/model.md §6 and §7.";
const LINE =
  "Normal drag of the line: Cheng 2013, J. Hydraul. Eng. 139(3). Its equilibrium is integrated with Dormand & Prince 1980; the part in air is a catenary. docs/model.md §7.";

/** Depth good to this share until a run has been measured (docs/model.md §10). */
const HONEST = "Depth under tow is good to 20–30 % until a measured run calibrates it, running pitch to ±6°.";

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

function endsText(ends: DepthEnds, units: Units): string {
  const one = (depth: number | null): string => (depth === null ? "does not run" : units.bare(depth, "m", 2));
  return `${one(ends[0])} to ${one(ends[1])}${ends[1] === null ? "" : `\u202f${units.unit("m")}`}`;
}

export const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

export function pointFigures(
  cell: ReachCell,
  scenario: Scenario,
  speed: number,
  units: Units,
): readonly PointFigure[] {
  const { depth, pitch, tension, lineAngle, whole, bands } = cell;
  if (depth === null || pitch === null || tension === null || lineAngle === null) return [];
  const line = whole?.row.line ?? null;
  const beat = whole?.beat ?? null;
  const factor = scenario.calibration?.bibFactor ?? 1;
  const spread = spreadOf(cell);
  const bibAngle = whole?.row.bibAngle ?? null;
  const figures: PointFigure[] = [
    {
      key: "depth",
      label: "Runs at",
      text: units.show(depth, "m", 2),
      words: [
        ...(cell.why === null ? [] : [cell.why]),
        ...(spread === null
          ? []
          : [
              `${units.bare(spread.low, "m", 2)} to ${units.show(spread.high, "m", 2)} within the bands${spread.open ? "; at an end of one it does not run" : ""}`,
            ]),
      ].join("; "),
      why: () => ({
        title: "Depth in a steady tow",
        value: units.show(depth, "m", 2),
        meaning:
          "How deep the tie eye runs after a long, even retrieve. A cast is a short one: the bait is on this depth only when line and attitude have settled.",
        formula:
          "depth = ∫₀^s sin φ ds\ndT/ds = f_t cos φ|cos φ| + w sin φ,  T dφ/ds = −f_n sin φ|sin φ| + w cos φ\nfrom T and φ at the eye up to where the line leaves the water",
        inputs: [
          { name: "tow speed", value: units.show(speed, "m/s", 2) },
          { name: "line out", value: units.show(scenario.tackle.lineOut_m, "m", 1) },
          {
            name: `line: ${scenario.tackle.line.material}`,
            value: units.show(scenario.tackle.line.diameter_mm, "mm", 3),
          },
          { name: "rod tip above the water", value: units.show(scenario.tackle.rodTip_m, "m", 2) },
          { name: "T, tension at the eye", value: units.show(tension, "N", 3) },
          { name: "φ, line above the horizontal there", value: units.show(degrees(lineAngle), "°", 1) },
          { name: "bib factor", value: factor.toFixed(3) },
          ...(!bands?.bib
            ? []
            : [{ name: `with the bib factor ±${percent(BIB_SPREAD)}`, value: endsText(bands.bib, units) }]),
          ...(bands === null
            ? []
            : [
                {
                  name: `with k_M ${MUNK_BAND[0]} to ${MUNK_BAND[1]}`,
                  value: endsText(bands.munk, units),
                },
                {
                  name: `with the line's drag +${percent(LINE_SPREAD)} to −${percent(LINE_SPREAD)}`,
                  value: endsText(bands.line, units),
                },
              ]),
        ],
        source: `${LINE} Bands: bib docs/model.md §6.7; k_M Roddy 1990; line's drag common practice, no source.`,
        note: HONEST,
      }),
    },
    {
      key: "pitch",
      label: "Attitude",
      text: units.show(degrees(pitch), "°", 1, true),
      words: attitudeWords(degrees(pitch), units.language),
      why: () => ({
        title: "Running attitude",
        value: `${units.show(degrees(pitch), "°", 1, true)} · ${attitudeWords(degrees(pitch), units.language)}`,
        meaning:
          "The pitch at which all moments about the tie eye balance while it is towed, and to which it comes back when it is disturbed. " +
          "It is the first such attitude met when the bait turns from its rest trim.",
        formula: "M_e(θ) = M − x_e Z + z_e X = 0,  dM_e/dθ < 0",
        inputs: [
          { name: "tow speed", value: units.show(speed, "m/s", 2) },
          ...(bibAngle === null
            ? []
            : [
                { name: "β, bib angle", value: units.show(degrees(bibAngle), "°", 1) },
                {
                  name: "β − θ, bib against the flow",
                  value: units.show(degrees(bibAngle - pitch), "°", 1),
                },
              ]),
          ...(whole?.row.roots ?? []).map((root, i) => ({
            name: `balance ${i + 1}: ${root.stable ? "stable" : "not stable"}`,
            value: units.show(degrees(root.pitch), "°", 1, true),
          })),
        ],
        source: ATTITUDE,
        note: HONEST,
      }),
    },
    {
      key: "tension",
      label: "Line tension at the eye",
      text: units.show(tension, "N", 3),
      words: "",
      why: () => ({
        title: "Line tension at the tie eye",
        value: units.show(tension, "N", 3),
        meaning: "What the line has to hold at the bait: it balances all other forces on it.",
        formula: "T₀ cos φ₀ = −F_X,  T₀ sin φ₀ = −F_Z",
        inputs: [
          { name: "drag, backward", value: units.show(tension * Math.cos(lineAngle), "N", 3) },
          { name: "pull downward", value: units.show(tension * Math.sin(lineAngle), "N", 3) },
          { name: "φ₀, line above the horizontal", value: units.show(degrees(lineAngle), "°", 1) },
        ],
        source: ATTITUDE,
      }),
    },
  ];
  if (line !== null) {
    figures.push(
      {
        key: "rod",
        label: "Line tension at the rod tip",
        text: units.show(line.tensionAtRod, "N", 3),
        words: "",
        why: () => ({
          title: "Line tension at the rod tip",
          value: units.show(line.tensionAtRod, "N", 3),
          meaning: "What the hand feels: the bait's pull and the drag of the line in the water.",
          formula: "T at the end of the integration, with the line's weight in air",
          inputs: [
            { name: "tension at the eye", value: units.show(tension, "N", 3) },
            {
              name: "tension where the line leaves the water",
              value: units.show(line.tensionAtSurface, "N", 3),
            },
            { name: "line in the water", value: units.show(line.wetLength, "m", 2) },
          ],
          source: LINE,
        }),
      },
      {
        key: "distance",
        label: "Behind the rod tip",
        text: units.show(line.reach, "m", 2),
        words: `${units.show(line.wetLength, "m", 1)} of line in the water`,
        why: () => ({
          title: "Distance behind the rod tip",
          value: units.show(line.reach, "m", 2),
          meaning: "Level distance from the rod tip to the tie eye.",
          formula: "∫₀^s cos φ ds, and the catenary's run in air",
          inputs: [
            { name: "line out", value: units.show(scenario.tackle.lineOut_m, "m", 1) },
            { name: "of it in the water", value: units.show(line.wetLength, "m", 2) },
          ],
          source: LINE,
        }),
      },
    );
  }
  if (beat !== null)
    figures.push({
      key: "beat",
      label: "Beats a second, estimate",
      text: `${beat.low.toPrecision(2)} to ${beat.high.toPrecision(2)}`,
      words: "an order of size, ±50 %: side-to-side action is not simulated",
      why: () => ({
        title: "Beats a second: an estimate",
        value: `${beat.low.toPrecision(2)} to ${beat.high.toPrecision(2)} in a second`,
        meaning:
          "How fast a bib of this width would shed eddies to one side and the other. The swing itself is not simulated: take it as an order of size.",
        formula: "f = St · U / b, b the bib's width",
        inputs: [
          { name: "St", value: "0.15" },
          { name: "U, tow speed", value: units.show(speed, "m/s", 2) },
          { name: "b, width of the bib", value: units.showSI(beat.width, "mm", 1) },
          { name: "middle of the band", value: `${beat.frequency.toPrecision(2)} in a second` },
        ],
        source:
          "St about 0.15 on the projected width of a bluff plate, from memory; ±50 %, docs/model.md §10.",
      }),
    });
  return figures;
}

/** A round step for contours: 1, 2 or 5 times a power of ten, about `count` of them in a span. */
export function roundStep(span: number, count: number): number {
  const raw = span / count;
  const power = 10 ** Math.floor(Math.log10(raw));
  return [1, 2, 5, 10].map((one) => one * power).find((one) => one >= raw * 0.999) ?? 10 * power;
}
