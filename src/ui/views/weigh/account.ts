import {
  BARE_TEST,
  fileEntryOf,
  hasBareTest,
  hungForTest,
  ownStage,
  rowStages,
  STAGES,
} from "../../../document";
import type { Scenario, Stage, Taken } from "../../../document";
import { assemble } from "../../../model/bait";
import type { Item } from "../../../model/bait";
import { whatOf } from "../../../model/parts";
import { restTrim } from "../../../model/statics";
import { faultText, withValue } from "../../state";
import type { Worked } from "../../state";
import { WEIGH } from "../../words/weigh";
import type { WeighWords } from "../../words/weigh";
import type { FileWords } from "./plan";

/** One line of the account at its stage. kg, m³; net above 0 lifts. */
export interface Line {
  /** Its name in the bait, in English. */
  readonly item: string;
  /** A line that only this account has; null: a row of the bait. */
  readonly own: "uncut" | "cutAway" | null;
  readonly group: Item["group"];
  readonly mass: number;
  /** Density of the body's wood, kg/m³; null: it is no wood. */
  readonly wood: number | null;
  /** How much of the mass is filler in the hole of a weight, kg. */
  readonly filler: number;
  readonly displaced: number;
  /** ρ·displaced − mass. */
  readonly net: number;
  /** Where the maker may choose: its list in the document, its place there, and where it is now. */
  readonly seat: Seat | null;
  /** A hook or ring whose mass is a catalogue's, not a scale's. */
  readonly unweighed: boolean;
  /** What in the document says when it comes onto the bait; null: nothing does (the body, loose balls). */
  readonly staged: Staged | null;
  /** The hook or ring whose mass may have been weighed. */
  readonly scaled: Scaled | null;
  /** What a pointer finds on it in the picture; null: it has no place of its own there. */
  readonly what: string | null;
}

/** What a line is called on the page. */
export const nameOf = ({ own, item }: Line, words: WeighWords, file: FileWords): string =>
  own === null ? file.of(item) : words.tell(`account.${own}`);

/** A part of the bait that has a stage. Ring and hook of one hanger come on together. */
export interface Staged {
  readonly group: Item["group"];
  readonly index: number;
  /** As the document says; null: the usual one. */
  readonly own: Stage | null;
}

export interface Scaled {
  readonly index: number;
  readonly part: "hook" | "ring";
}

export interface Seat {
  readonly list: "ballast" | "fittings";
  readonly index: number;
  readonly where: "inside" | "outside";
}

/** A stage of making with what comes onto the bait, and the bait as it then is. */
export interface StageAccount {
  readonly stage: Stage;
  readonly lines: readonly Line[];
  readonly mass: number;
  readonly displaced: number;
  readonly net: number;
  /** What is still to come, as net (below 0 it will pull down): of the coats, and of everything else. */
  readonly coatsToCome: number;
  readonly restToCome: number;
}

function seatOf({ scenario }: Worked, item: Item): Seat | null {
  if (item.part !== "item") return null;
  if (item.group !== "ballast" && item.group !== "fittings") return null;
  const where = scenario.bait[item.group][item.index]?.where;
  return where === undefined ? null : { list: item.group, index: item.index, where };
}

function stagedOf({ scenario }: Worked, { group, index, part }: Item): Staged | null {
  const found = fileEntryOf(scenario.bait, { group, index });
  if (found === null || found.file.fixedStage?.includes(part) === true) return null;
  return { group, index, own: ownStage(found) };
}

function scaledOf({ scenario }: Worked, { group, index, part }: Item): Scaled | null {
  if (group !== "hangers" || (part !== "hook" && part !== "ring")) return null;
  return scenario.bait.hangers[index]?.[part] === undefined ? null : { index, part };
}

/** What leaves the bait with a line of the account; null: only its own drawing can change it (body, bib, wire, chamber). */
export function takenOf({ staged, scaled }: Line): Omit<Taken, "pieces"> | null {
  if (staged === null) return null;
  const { group, index } = staged;
  if (group === "hangers") return scaled === null ? null : { group, index, part: scaled.part };
  return group === "ballast" || group === "fittings" || group === "coats"
    ? { group, index, part: "item" }
    : null;
}

/** The document with a part at another stage of making; null: at the usual one. */
export function withStage(from: Scenario, { group, index }: Staged, stage: Stage | null): Scenario {
  const found = fileEntryOf(from.bait, { group, index });
  if (found === null) return from;
  const { stage: _, ...rest } = found.entry as { readonly stage?: Stage };
  return withValue(from, found.steps, stage === null ? rest : { ...rest, stage });
}

/** The document with a hook's or ring's mass as read off a scale, or as a catalogue has it. */
export function withWeighed(from: Scenario, { index, part }: Scaled, weighed: boolean): Scenario {
  const one = from.bait.hangers[index]?.[part];
  if (one === undefined) return from;
  const { weighed: _, ...rest } = one;
  return withValue(from, ["bait", "hangers", index, part], weighed ? { ...rest, weighed } : rest);
}

/**
 * The account in the order of making. The blank is whole; wood that a hole, a chamber, a wire or the slot takes
 * away leaves with what it is cut for. The last stage's sums are those of the finished bait.
 */
export function accountByStage(worked: Worked): readonly StageAccount[] {
  const { bait } = worked.compiled;
  const { density } = worked.statics;
  type Named = Item | Exclude<Line["own"], null>;
  const english = WEIGH.in("en");
  const line = (named: Named, group: Line["group"], mass: number, displaced: number): Line => {
    const [own, of] = typeof named === "string" ? [named] : [null, named];
    const scaled = of === undefined ? null : scaledOf(worked, of);
    const part = scaled === null ? undefined : worked.scenario.bait.hangers[scaled.index]?.[scaled.part];
    return {
      item: typeof named === "string" ? english.tell(`account.${named}`) : named.item,
      own,
      group,
      mass,
      wood: own === "uncut" ? bait.bodyDensity : null,
      filler: of?.filler ?? 0,
      displaced,
      net: density * displaced - mass,
      seat: of === undefined ? null : seatOf(worked, of),
      unweighed: part !== undefined && part.weighed !== true,
      staged: of === undefined ? null : stagedOf(worked, of),
      scaled,
      what: of === undefined ? (group === "body" ? "body" : null) : whatOf(bait.spec, of),
    };
  };
  const staged = rowStages(worked.scenario.bait, bait);
  const linesOf = (stage: Stage): readonly Line[] => {
    const there = bait.items.filter((_, i) => staged[i] === stage);
    const own = there.flatMap((item): Line[] => {
      if (item.group === "body")
        return [line("uncut", "body", bait.bodyDensity * bait.shape.volume, item.displaced)];
      // A void has no weight of its own: only the wood that it takes away.
      if (item.mass === 0 && item.displaced === 0) return [];
      return [line(item, item.group, item.mass, item.displaced)];
    });
    const cut = there.reduce((sum, item) => sum + item.removed, 0);
    return cut > 0 ? [...own, line("cutAway", "body", -bait.bodyDensity * cut, 0)] : own;
  };
  const stages = STAGES.map((stage) => ({ stage, lines: linesOf(stage) }));
  const sum = (lines: readonly Line[], of: (one: Line) => number): number =>
    lines.reduce((total, one) => total + of(one), 0);
  return stages.map(({ stage, lines }, i) => {
    const there = stages.slice(0, i + 1).flatMap((one) => one.lines);
    const later = stages.slice(i + 1).flatMap((one) => one.lines);
    return {
      stage,
      lines,
      mass: sum(there, (one) => one.mass),
      displaced: sum(there, (one) => one.displaced),
      net: sum(there, (one) => one.net),
      coatsToCome: sum(
        later.filter((one) => one.group === "coats"),
        (one) => one.net,
      ),
      restToCome: sum(
        later.filter((one) => one.group !== "coats"),
        (one) => one.net,
      ),
    };
  });
}

/** The first tub test, bare with hooks: what hangs on the bait for it, and the bait with it. */
export interface BareTest extends Omit<StageAccount, "stage" | "lines"> {
  readonly stage: typeof BARE_TEST;
  /** What the closed bait has more on it then. */
  readonly hung: Pick<StageAccount, "mass" | "displaced" | "net">;
}

/** Null: that test is of no other bait than one of the stages. */
export function bareTest(worked: Worked, account: readonly StageAccount[]): BareTest | null {
  const { scenario, compiled, statics } = worked;
  const closed = account.find((one) => one.stage === "closed");
  if (closed === undefined || !hasBareTest(scenario.bait, compiled.bait)) return null;
  const rows = hungForTest(scenario.bait, compiled.bait);
  const mass = rows.reduce((sum, one) => sum + one.mass, 0);
  const displaced = rows.reduce((sum, one) => sum + one.displaced, 0);
  const net = statics.density * displaced - mass;
  return {
    stage: BARE_TEST,
    hung: { mass, displaced, net },
    mass: closed.mass + mass,
    displaced: closed.displaced + displaced,
    net: closed.net + net,
    coatsToCome: closed.coatsToCome,
    restToCome: closed.restToCome - net,
  };
}

/** What the other choice of inside or outside does: differences of net (kg) and of rest trim (rad), or why it cannot be. */
export type Otherwise =
  | { readonly ok: true; readonly net: number; readonly trim: number | null }
  | { readonly ok: false; readonly why: string };

export const otherWhere = (where: Seat["where"]): Seat["where"] =>
  where === "inside" ? "outside" : "inside";

export function otherwise(worked: Worked, { list, index, where }: Seat): Otherwise {
  const { spec, bait } = worked.compiled;
  const moved = spec[list].map((one, i) => (i === index ? { ...one, where: otherWhere(where) } : one));
  try {
    const other = assemble({ ...spec, [list]: moved }, { drawn: bait.drawn });
    const rest = restTrim(other);
    const { mass, displaced } = other.rigid(rest.side);
    const before = worked.statics.rest.pitch;
    return {
      ok: true,
      net: worked.statics.density * displaced - mass - worked.statics.netBuoyancy,
      trim: rest.pitch === null || before === null ? null : rest.pitch - before,
    };
  } catch (fault) {
    return { ok: false, why: faultText(fault) };
  }
}
