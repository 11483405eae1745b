import type { Scenario } from "../../document";

/** A fact about harm, shown where the step happens. Labels, data sheets, the law and physicians come first. */
export interface Caution {
  readonly key: string;
  readonly title: string;
  readonly text: string;
}

const LEAD: Caution = {
  key: "lead",
  title: "Lead",
  text:
    "No safe blood level is known: wash hands, keep it from mouths, food and children. Melting makes fumes, and water in hot metal explodes. " +
    "Rules on lead tackle differ by water, size and kind: ask the authority. Tungsten, bismuth, tin, steel and brass do the same work.",
};

const DUST: Caution = {
  key: "dust",
  title: "Dust",
  text:
    "Wood dust can cause asthma, hardwood dust is a carcinogen, red cedar sensitises; glass-laminate fibres irritate. " +
    "Extraction, mask and eye protection.",
};

const COATING: Caution = {
  key: "coating",
  title: "Glue, resin and lacquer",
  text:
    "Epoxy and UV resin can sensitise for life: wear the gloves that the data sheet names, keep it off the skin, shield the lamp. " +
    "Cyanoacrylate bonds skin and eyes, and on cotton or wool can heat and burn. Sprayed isocyanates need air-fed breathing apparatus: " +
    "leave them to licensed shops. Ventilate solvents, no flames; no food oven; oily rags heat by themselves.",
};

const HOOKS: Caution = {
  key: "hooks",
  title: "Hooks",
  text: "Fit them last, guard the points, protect the eyes. Deep or facial wounds are for medical care.",
};

const WOODLESS = /carbonate|acryl|epoxy|foam|resin|plastic|nylon/i;

/** The cautions of each section of the inputs, for this document. */
export function cautionsFor(scenario: Scenario): {
  readonly body: readonly Caution[];
  readonly ballast: readonly Caution[];
  readonly hooks: readonly Caution[];
  readonly coats: readonly Caution[];
} {
  const { bait } = scenario;
  const lead = [...bait.ballast, ...bait.chambers.flatMap((one) => (one.balls === undefined ? [] : [one.balls]))].some(
    (one) => /\blead\b/i.test(one.material ?? ""),
  );
  return {
    body: WOODLESS.test(bait.body.material ?? "") ? [] : [DUST],
    ballast: lead ? [LEAD] : [],
    hooks: bait.hangers.some((one) => one.hook !== undefined) ? [HOOKS] : [],
    coats: bait.coats.length > 0 ? [COATING] : [],
  };
}
