import { cos, sin, tan } from "../../model/base";
import { bibPlate } from "../../model/bait";
import { bibOutline, slotAngle } from "../../model/parts";
import { Pen, TYPE } from "../paper/pen";
import { mm } from "./figure";
import type { BibSpec } from "../../model/bait";
import type { Drawing } from "../paper/page";
import type { Template, TemplateJob } from "./types";
import { degText, heightText, mmText } from "./words";

/** A smaller bend than this nobody makes, rad. */
const STRAIGHT = 0.25 * (Math.PI / 180);

/**
 * By how much two lengths that meet in a sharp bend are longer than the sheet that is bent round a bar as thick as it is itself.
 * The middle of the sheet keeps its length: two tangents of its arc against the arc.
 */
function excess({ thickness }: BibSpec, bend: number): number {
  const radius = 1.5 * thickness;
  return radius * (2 * tan(Math.abs(bend) / 2) - Math.abs(bend));
}

/** The bent bib edge on, the tongue level, the nose to the right. */
function bentDrawing({ fonts, words }: TemplateJob, bib: BibSpec, bend: number): Drawing {
  const pen = new Pen(fonts, words);
  const [tongue, plate] = [mm(bib.slot), mm(bib.length)];
  // y is down: a plate that is bent down has a positive angle here.
  const end = { x: plate * cos(bend), y: -plate * sin(bend) };
  pen.line("mark", { x: -tongue, y: 0 }, { x: 0, y: 0 }, end);
  pen.line("hidden", { x: 0, y: 0 }, { x: Math.max(8, 0.6 * plate), y: 0 });
  pen.text({ x: -tongue - 2, y: 0 }, "tongue", { size: TYPE.small, anchor: 1 });
  pen.text({ x: end.x / 2, y: Math.max(0, end.y) + 6 }, degText(Math.abs(bend)), {
    size: TYPE.text,
    weight: "bold",
    anchor: 0.5,
  });
  return pen.drawing("bib-bend");
}

export function bibTemplate(job: TemplateJob): Template | null {
  const { bait, fonts, words } = job;
  const { bib } = bait.spec;
  if (!bib) return null;
  const pen = new Pen(fonts, words);
  const { tongue } = bibPlate(bib, (s) => bait.drawn.section(s).halfBreadth);
  // x along the plate from its root, z across; the tip to the right.
  const plate = bibOutline(bib).map(({ x, z }) => ({ x: mm(x), y: -mm(z) }));
  const half = mm(tongue.width / 2);
  const back = -mm(bib.slot);
  if (bib.slot > 0)
    pen.ring("cut", [
      ...plate,
      { x: 0, y: half },
      { x: back, y: half },
      { x: back, y: -half },
      { x: 0, y: -half },
    ]);
  else pen.ring("cut", plate);
  const wide = mm(bib.width / 2);
  pen.line("hidden", { x: 0, y: -wide - 3 }, { x: 0, y: wide + 3 });
  pen.line("axis", { x: back - 4, y: 0 }, { x: mm(bib.length) + 4, y: 0 });
  const bend = slotAngle(bib) - bib.angle;
  const bent = bib.slot > 0 && Math.abs(bend) > STRAIGHT;
  const root = bib.slot > 0 && !bent ? "root" : "root: bend here";
  pen.text({ x: 0, y: wide + 6.4 }, root, { size: TYPE.small, anchor: 0.5 });
  return {
    title: "Bib",
    notes: [
      bib.slot > 0
        ? `Outside the body ${mmText(bib.length)} long and ${mmText(bib.width)} wide; the tongue goes ${mmText(bib.slot)} into the slot and is ${mmText(tongue.width)} wide there. Stock ${mmText(bib.thickness)} thick. The dashed line is the root: it stands at the body's skin.`
        : `${mmText(bib.length)} long and ${mmText(bib.width)} wide from its root, the dashed line; stock ${mmText(bib.thickness)} thick. The file gives no tongue: add what your way of fixing needs (a bend, a tab for a screw) beyond the root. A bent tab begins at the dashed line: one that lies along the datum line is bent by ${degText(bib.angle)} there.`,
      ...(bent
        ? [
            `Bend it by ${degText(Math.abs(bend))} at the dashed line, ${bend < 0 ? "the part outside downward" : "the part outside upward"}, as the second drawing shows it edge on. The lengths hold for a sharp bend; round a bar as thick as the stock the sheet comes out ${mmText(excess(bib, bend), 2)} too long, so cut the tongue shorter by that.`,
          ]
        : []),
      "The thin full line is the cut line: cut on its outer side and dress to its middle.",
    ],
    drawings: [pen.drawing("bib"), ...(bent ? [bentDrawing(job, bib, bend)] : [])],
  };
}

/** Smallest angle that a wedge of card can hold, rad. */
const LEAST = 3 * (Math.PI / 180);
const ARM = 60;

export function wedgeTemplate({ bait, fonts, words }: TemplateJob): Template | null {
  const { bib } = bait.spec;
  if (!bib) return null;
  const { root } = bib;
  const angle = slotAngle(bib);
  const pen = new Pen(fonts, words);
  const a = Math.abs(angle);
  const open = a >= LEAST && a <= Math.PI - LEAST;
  if (open) {
    // The lower arm lies along the datum line, the upper one along the slot; nose to the right.
    const tip = { x: ARM * cos(a), y: -ARM * sin(a) };
    pen.ring("cut", [{ x: 0, y: 0 }, { x: ARM, y: 0 }, tip]);
    const r = 14;
    const arc = Array.from({ length: 33 }, (_, i) => {
      const t = (a * i) / 32;
      return { x: r * cos(t), y: -r * sin(t) };
    });
    pen.line("mark", ...arc);
    pen.text({ x: ARM / 2, y: 4 }, "along the datum line", { size: TYPE.small, anchor: 0.5 });
    const flat = a < 0.4 ? { x: ARM + 2, y: -ARM * tan(a / 2) } : null;
    const inside = { x: (r + 3) * cos(a / 2), y: -(r + 3) * sin(a / 2) + 1 };
    pen.text(flat ?? inside, degText(a), { size: TYPE.text, weight: "bold" });
  } else {
    pen.line("mark", { x: 0, y: 0 }, { x: ARM, y: 0 });
    pen.text({ x: 0, y: 5 }, `${degText(a)}: along the datum line, no wedge needed`, { size: TYPE.small });
  }
  return {
    title: "Wedge for the slot's angle",
    notes: [
      `The slot opens ${degText(angle)} from the datum line's forward direction, downward. Its root is ${mmText(-root.x)} from the nose and ${heightText(root.z)} the datum line. Lay one edge of the wedge along the datum line with the corner at the root; the other edge is the slot's direction.`,
    ],
    drawings: [pen.drawing("wedge")],
  };
}
