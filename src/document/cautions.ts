import { material } from "../model/materials";
import type { Scenario } from "./schema";
import { BARE_TEST } from "./stages";
import type { Moment } from "./stages";

/** A fact about harm, shown where the step happens. Labels, data sheets, the law and physicians come first. */
export interface Caution {
  readonly key: string;
  readonly title: string;
  /** What to do, in a line. */
  readonly brief: string;
  readonly text: string;
}

const LEAD: Caution = {
  key: "lead",
  title: "Lead",
  brief: "Wash hands; keep it from mouths, food and children.",
  text:
    "No safe blood level is known. Melting makes fumes, and water in hot metal explodes. " +
    "Rules on lead tackle differ by water, size and kind: ask the authority. Tungsten, bismuth, tin, steel and brass do the same work.",
};

const DUST: Caution = {
  key: "dust",
  title: "Dust",
  brief: "Extraction, mask, eye protection.",
  text:
    "Wood dust can cause asthma, hardwood dust is a carcinogen, red cedar sensitises; glass-laminate fibres irritate. " +
    "Extraction, mask and eye protection.",
};

const KNIVES: Caution = {
  key: "knives",
  title: "Knives, saws, drills",
  brief: "Cut away from the hand; clamp the work.",
  text:
    "A blank that is held in the hand turns under the tool: clamp it, and keep the other hand behind the edge. " +
    "Sharp tools need less force. Eye protection; no gloves or loose sleeves at turning tools. Deep cuts are for medical care.",
};

const COATING: Caution = {
  key: "coating",
  title: "Glue, resin, lacquer",
  brief: "Gloves, air, no flames; keep it off the skin.",
  text:
    "Epoxy and UV resin can sensitise for life: wear the gloves that the data sheet names, keep it off the skin, shield the lamp. " +
    "Cyanoacrylate bonds skin and eyes, and on cotton or wool can heat and burn. Sprayed isocyanates need air-fed breathing apparatus: " +
    "leave them to licensed shops. Ventilate solvents, no flames; no food oven; oily rags heat by themselves.",
};

const HOOKS: Caution = {
  key: "hooks",
  title: "Hooks",
  brief: "Fit them last, guard the points, protect the eyes.",
  text: "Deep or facial wounds are for medical care.",
};

/** All cautions, for steps that know themselves that one applies. */
export const cautions = { lead: LEAD, dust: DUST, knives: KNIVES, coating: COATING, hooks: HOOKS } as const;

/** As the table of materials names it. */
const LEAD_NAME = "lead";

/** The cautions of each section of the inputs, for this document. */
export function cautionsFor(scenario: Scenario): {
  readonly body: readonly Caution[];
  readonly ballast: readonly Caution[];
  readonly hooks: readonly Caution[];
  readonly coats: readonly Caution[];
} {
  const { bait } = scenario;
  const known = bait.body.material === undefined ? null : material(bait.body.material);
  // A body of which only the density is known may well be wood.
  const wooden = known === null || known.kind === "wood";
  const lead = [
    ...bait.ballast,
    ...bait.chambers.flatMap((one) => (one.balls === undefined ? [] : [one.balls])),
  ].some((one) => one.material !== undefined && material(one.material)?.name === LEAD_NAME);
  return {
    body: wooden ? [DUST] : [],
    ballast: lead ? [LEAD] : [],
    hooks: bait.hangers.some((one) => one.hook !== undefined) ? [HOOKS] : [],
    coats: bait.coats.length > 0 ? [COATING] : [],
  };
}

/** What to take care of at a moment of making. */
export function cautionsAt(scenario: Scenario, at: Moment): readonly Caution[] {
  const { body, ballast, coats, hooks } = cautionsFor(scenario);
  const of: Readonly<Record<Moment, readonly Caution[]>> = {
    blank: body,
    sealed: coats,
    "laid out": [...body, ...ballast],
    closed: coats,
    [BARE_TEST]: hooks,
    painted: coats,
    "clear-coated": coats,
    dressed: hooks,
  };
  return of[at];
}
