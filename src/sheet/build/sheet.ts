import { attitudeWords, cautions, cautionsAt, floatWords, targetWords } from "../../document";
import type { Caution, Stage } from "../../document";
import { formatIn, formatNumber, fromSI } from "../../units";
import type { SheetJob } from "../job";
import type { Column, Flow } from "../paper/flow";
import { TYPE } from "../paper/pen";
import { degText } from "../templates/words";
import { identity } from "./identity";
import { grams, partRows } from "./parts";
import { bareTestOf, stagesOf, type MomentFigures, type StageFigures } from "./stages";

/** What is done at each stage. */
const WORK: Readonly<Record<Stage, string>> = {
  blank: "Saw the blank to the side and top outlines, carve and sand it to the section gauges. Let it dry.",
  sealed: "Seal the bare wood thinly, also in holes and slot, so that it takes up no water in the tub.",
  "laid out": "Cut slot, grooves, pockets and holes by the drill map. Lay everything in, still loose.",
  closed: "Check that all is in. Glue, fill the holes, let it cure, and clean the joint.",
  painted: "Sand lightly, prime and paint.",
  "clear-coated": "Clear-coat and let it cure.",
  dressed: "Fit rings and hooks last.",
};

/** What to look into where scale or tub say something else. */
const OTHERWISE: Readonly<Record<Stage, string>> = {
  blank:
    "Another mass is no fault: woods differ. Enter it on the view Weigh before anything else is chosen; all figures below follow from it, so print this sheet anew.",
  sealed: "Much heavier: the wood drank sealer or is not dry yet. Weigh again tomorrow.",
  "laid out":
    "Off by more: weigh each piece by itself and enter what the scale said. Change the ballast now, while it is loose.",
  closed:
    "Off by more: enter the tub's reading on the view Float. Ballast can still be drilled out or added from below.",
  painted: "Off by more: enter the mass of the coat on the view Weigh, and leave less for the clear coat.",
  "clear-coated": "Off by more: enter the tub's reading on the view Float, and choose other rings or hooks.",
  dressed:
    "Off by more: enter the tub's reading on the view Float. Its swaps say which ring or hook brings the bait nearest.",
};

function carefulAt({ scenario }: SheetJob, stage: Stage): readonly Caution[] {
  const own = cautionsAt(scenario, stage);
  const more =
    stage === "blank"
      ? [cautions.knives]
      : stage === "laid out"
        ? [cautions.knives]
        : // Every joint is glued, also on a bait without a coat.
          stage === "closed"
          ? [cautions.coating]
          : [];
  return [...new Set([...own, ...more])];
}

const STEP: readonly Column[] = [
  { head: "On the scale", share: 0.2 },
  { head: "In the tub", share: 0.28 },
  { head: "Under water", share: 0.22 },
  { head: "What mine did", share: 0.3 },
];

/** What scale and tub should say, and room for what they did. */
function row({ statics, massWithin, netWithin }: MomentFigures): readonly string[] {
  const rest = statics.rest.pitch;
  return [
    `${grams(statics.mass)} g ± ${grams(massWithin)}`,
    `${floatWords(fromSI(statics.netBuoyancy, "g"))} ± ${grams(netWithin)}`,
    attitudeWords(rest === null ? null : fromSI(rest, "deg")),
    "",
  ];
}

/** The first tub test, before the coats. */
function firstTest(flow: Flow, job: SheetJob): void {
  const then = bareTestOf(job);
  if (then === null) return;
  flow.together((to) => {
    to.heading("First tub test");
    to.paragraph(
      "Hang its hooks and rings on, bare as it is, and try it in the tub. Then take them off again for the coats.",
    );
    to.table(STEP, [row(then)], TYPE.text, 9);
  });
}

/** @param told cautions that stand in full further up: from there on their short form is enough */
function step(flow: Flow, job: SheetJob, told: Set<Caution>, { stage, items, ...then }: StageFigures): void {
  const { words } = job;
  const names = items.map(({ item, mass }) =>
    mass > 0 ? `${words(item)} ${words(`${grams(mass)} g`)}` : words(item),
  );
  const title = words(stage);
  const careful = carefulAt(job, stage);
  const filler = items.reduce((sum, one) => sum + one.filler, 0);
  flow.together((to) => {
    to.heading(`${title[0]?.toUpperCase() ?? ""}${title.slice(1)}`);
    to.paragraph(WORK[stage]);
    if (stage !== "blank" && items.length > 0)
      to.paragraph(`Comes on: ${names.join(", ")}.`, { size: TYPE.small });
    for (const one of careful) {
      const said = told.has(one) ? words(one.brief) : `${words(one.brief)} ${words(one.text)}`;
      to.paragraph(`Caution, ${words(one.title.toLowerCase())}: ${said}`, { size: TYPE.small });
    }
    to.table(STEP, [row(then)], TYPE.text, 9);
    if (stage === "laid out" && filler > 0)
      to.paragraph(
        `The ${grams(filler)} g of filler in the holes are counted here, and come in when the bait is closed: until then the scale says so much less.`,
        { size: TYPE.small },
      );
    to.paragraph(OTHERWISE[stage], { size: TYPE.small });
  });
  careful.forEach((one) => told.add(one));
  if (stage === "closed") firstTest(flow, job);
}

/** The target in words; null: the file has none. */
function wish({ scenario, words: told }: SheetJob): string | null {
  const words = targetWords(scenario);
  if (words === null) return null;
  const { behaves, net, netTolerance, trim, trimTolerance, depth, rise } = words;
  const parts = [
    behaves === null ? null : `It ${behaves}`,
    net === null ? null : `net buoyancy ${formatNumber(fromSI(net, "g"), 2, true)} g`,
    rise === null
      ? null
      : `${rise < 0 ? "sinks" : "rises"} ${formatNumber(Math.abs(fromSI(rise, "mm_s")), 0)} mm/s`,
    netTolerance === null ? null : `within ± ${grams(netTolerance)} g`,
    trim === null
      ? null
      : `hangs at ${degText(trim)}${trimTolerance === null ? "" : ` ± ${degText(trimTolerance)}`}, nose-up counted positive`,
    depth === null ? null : `runs ${formatIn(depth, "m", 1)} deep`,
  ].filter((one) => one !== null);
  return `${parts.map(told).join(", ")}.`;
}

const empty = (rows: number, columns: number): string[][] =>
  Array.from({ length: rows }, () => Array<string>(columns).fill(""));

/** Order of work, parts list, and a form for the tests. */
export function buildSheet(flow: Flow, job: SheetJob): void {
  const { scenario, compiled } = job;
  const { water } = compiled;
  flow.part(`Build sheet: ${scenario.name}`, []);
  identity(flow, job);
  const meant = wish(job);
  if (meant !== null) flow.paragraph(`Meant: ${meant}`);
  if (scenario.notes !== undefined && scenario.notes !== "")
    flow.paragraph(scenario.notes, { size: TYPE.small, grey: 0.25, own: true });

  flow.heading("Parts list");
  const boxed = job.box !== null;
  flow.table(
    [
      { head: "Part", share: boxed ? 0.24 : 0.3 },
      { head: "What", share: boxed ? 0.4 : 0.56 },
      { head: "Mass", share: boxed ? 0.12 : 0.14, right: true },
      ...(boxed ? [{ head: "In the box", share: 0.24 }] : []),
    ],
    partRows(job),
  );

  flow.heading("Order of work", 60);
  flow.paragraph(
    `Figures are for water of ${formatNumber(water.temperature, 0)} °C with ${formatNumber(water.salinity, 0)} g of salt in a kilogram. After ± stands what 95 of 100 baits made so keep within: it comes from the uncertainty of what was weighed and drawn, and shrinks with every weighing that you enter.`,
    { size: TYPE.small },
  );
  const told = new Set<Caution>();
  for (const one of stagesOf(job)) step(flow, job, told, one);

  flow.heading("Tub tests", 50);
  flow.table(
    [
      { head: "Date, stage", share: 0.2 },
      { head: "Water, °C and salt", share: 0.18 },
      { head: "Floats, hangs, sinks; 300 mm in s", share: 0.3 },
      { head: "What I changed", share: 0.32 },
    ],
    empty(4, 4),
    TYPE.small,
    10,
  );
  flow.heading("Swim tests", 50);
  flow.table(
    [
      { head: "Date, line", share: 0.2 },
      { head: "Speed, line out", share: 0.18 },
      { head: "Depth, action, blows out at", share: 0.3 },
      { head: "What I changed", share: 0.32 },
    ],
    empty(4, 4),
    TYPE.small,
    10,
  );
}
