import type { Bait, BaitSpec } from "../bait";
import { atan2, cos, sin } from "../base";
import type { Surroundings } from "../forces";
import { entriesOf, type NextSizes, replaced } from "../parts";
import { restTrim } from "../statics";
import { netOf } from "./net";
import { offsetOf, RiseCurve } from "./rise";
import type { RiseOptions } from "./rise";
import type { SensitivityRow } from "./types";
import { again } from "./with";

export interface SensitivityOptions extends RiseOptions {
  /** Hook sizes next to each hanger's own, kg, from the box; else ± 25 % of the hook's mass (docs/model.md §3). */
  readonly neighbours?: (hanger: number) => NextSizes;
  /** Work out the rise too. Default true. */
  readonly rise?: boolean;
  readonly curve?: RiseCurve;
}

interface Change extends Pick<SensitivityRow, "path" | "item" | "change" | "at"> {
  readonly spec: BaitSpec;
}

/** Every small change that the bait's parts offer, in the order of the account. */
function changesOf({ spec, items, drawn }: Bait, options: SensitivityOptions): Change[] {
  return entriesOf(spec).flatMap((entry): Change[] => {
    const { part, index, path } = entry;
    const name = part.name(entry.spec);
    const rowOf = (piece: string): string | undefined =>
      items.find((i) => part.groups.includes(i.group) && i.index === index && i.part === piece)?.item;
    return part
      .changes(entry.spec, () => options.neighbours?.(index) ?? null)
      .map(({ piece, change, at, entries }) => ({
        path,
        item: piece === null ? name : (rowOf(piece) ?? name),
        change,
        at: at ?? drawn.skinCentroid,
        spec: { ...spec, ...replaced(spec, entry, entries) },
      }));
  });
}

/**
 * What small changes do to net buoyancy (kg), rest trim (rad) and steady rise (m/s): one row for each change. For each
 * change the bait is put together anew, with the body as the bench readings gave it. The rise comes from the curve through
 * terminal rises near the bait.
 */
export function sensitivity(
  bait: Bait,
  around: Surroundings,
  options: SensitivityOptions = {},
): SensitivityRow[] {
  const { rise = true, curve: given, neighbours: _n, ...calibrated } = options;
  const { density } = around;
  const net = netOf(bait, density);
  const trim = restTrim(bait).pitch;
  const curve = rise ? (given ?? new RiseCurve(bait, around, calibrated)) : null;
  const speed = curve?.speed(net) ?? null;
  return changesOf(bait, options).map(({ spec, ...row }): SensitivityRow => {
    const changed = again(bait, spec);
    const own = netOf(changed, density);
    const rest = restTrim(changed).pitch;
    const turned = trim === null || rest === null ? null : rest - trim;
    return {
      ...row,
      net: own - net,
      trim: turned === null ? null : atan2(sin(turned), cos(turned)),
      speed: curve && speed !== null ? curve.speed(own, offsetOf(changed)) - speed : null,
    };
  });
}
