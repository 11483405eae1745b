import type { Scenario } from "../../document";
import { isPlanned } from "../maker";

/** What the guided first run leads to. Grams and degrees of the file; nose-up is plus. */
export const GOAL = { net_g: 0.4, trim_deg: -6 } as const;
/** A number typed in another unit is rounded: so near it is the same, g. */
const SAME_G = 0.005;
const SAME_DEG = 0.05;

/** What the guide looks at: the open bait, and where one is on the page. */
export interface Seen {
  /** A bait of one's own, begun after the guide. */
  readonly made: boolean;
  readonly scenario: Scenario;
  /** The box has weights. */
  readonly weights: boolean;
  /** The bait is within its target's tolerances. */
  readonly met: boolean;
  readonly view: string;
}

type StepKey = "made" | "floats" | "net" | "down" | "trim" | "box" | "plan" | "float";

export interface GuideStep {
  readonly key: StepKey;
  readonly done: (seen: Seen) => boolean;
  /** The control that does it, as a selector; then the ways there, the nearest first. */
  readonly at: readonly string[];
}

const WEIGH = ['[data-guide="on-weigh"]', 'header nav a[href="#weigh"]:not([aria-current])'];
const TARGET = ['[data-guide="step-target"]', ...WEIGH];
const PLAN = ['[data-guide="step-plan"]:not([aria-current])', ...WEIGH];

export const STEPS: readonly GuideStep[] = [
  {
    key: "made",
    done: ({ made }) => made,
    at: ["make", "menu-new", "own", "new", "menu"].map((one) => `[data-guide="${one}"]`),
  },
  {
    key: "floats",
    done: ({ scenario }) => scenario.target?.behaves === "floats",
    at: ['main [data-guide="floats"]', ...TARGET],
  },
  {
    key: "net",
    done: ({ scenario: { target } }) =>
      target !== undefined && target.netFrom !== "rise" && Math.abs(target.net_g - GOAL.net_g) < SAME_G,
    at: ['main [data-guide="net"]', ...TARGET],
  },
  {
    key: "down",
    done: ({ scenario }) => (scenario.target?.trim_deg ?? 0) < 0,
    at: ['main [data-guide="down"]', ...TARGET],
  },
  {
    key: "trim",
    done: ({ scenario: { target } }) => Math.abs((target?.trim_deg ?? 0) - GOAL.trim_deg) < SAME_DEG,
    at: ['main [data-guide="trim"]', ...TARGET],
  },
  {
    key: "box",
    done: ({ weights, scenario }) => weights || isPlanned(scenario),
    at: ['[data-guide="usual"]', ...PLAN],
  },
  {
    key: "plan",
    done: ({ scenario, met }) => met && isPlanned(scenario),
    at: ['[data-guide="take"]:enabled', '[data-guide="find"]:enabled', ...PLAN],
  },
  {
    key: "float",
    done: ({ view }) => view === "float",
    at: ['header nav a[href="#float"]'],
  },
];

/** The first step that is not done yet, by its place in the list; all are done: the list's length. */
export function stepNow(seen: Seen): number {
  const next = STEPS.findIndex(({ done }) => !done(seen));
  return next < 0 ? STEPS.length : next;
}
