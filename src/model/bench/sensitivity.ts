import type { Bait, BaitSpec, CoatSpec } from "../bait";
import type { Vec } from "../base";
import type { Surroundings } from "../forces";
import { restTrim } from "../statics";
import { netOf, offsetOf, RiseCurve } from "./rise";
import type { RiseOptions } from "./rise";
import type { SensitivityRow } from "./types";
import { again } from "./with";

export interface SensitivityOptions extends RiseOptions {
  /** Hook sizes next to each hanger's own, kg, from the box; else ± 25 % of the hook's mass (docs/model.md §3). */
  readonly neighbours?: (hanger: number) => { readonly up: number | null; readonly down: number | null };
  /** Work out the rise too. Default true. */
  readonly rise?: boolean;
  readonly curve?: RiseCurve;
}

const GRAM = 1e-4; // 0.1 g
const MILLIMETRE = 1e-3;
const HOOK_STEP = 0.25;

interface Change {
  readonly path: string;
  readonly item: string;
  readonly change: SensitivityRow["change"];
  readonly at: Vec;
  readonly spec: BaitSpec;
}

const aft = (p: Vec): Vec => ({ x: p.x - MILLIMETRE, z: p.z });
const up = (p: Vec): Vec => ({ x: p.x, z: p.z + MILLIMETRE });

/** The list with its entry at `index` changed. */
const edit = <T>(list: readonly T[], index: number, to: (one: T) => T): T[] =>
  list.map((one, i) => (i === index ? to(one) : one));

function changesOf(bait: Bait, options: SensitivityOptions): Change[] {
  const { spec } = bait;
  const out: Change[] = [];
  const label = (group: string, index: number, part: string, otherwise: string): string =>
    bait.items.find((i) => i.group === group && i.index === index && i.part === part)?.item ?? otherwise;

  spec.ballast.forEach((b, i) => {
    const path = `bait.ballast[${i}]`;
    const item = label("ballast", i, "item", b.name);
    const to = (change: Change["change"], one: (old: typeof b) => typeof b): void => {
      out.push({ path, item, change, at: b.at, spec: { ...spec, ballast: edit(spec.ballast, i, one) } });
    };
    to("0.1 g more", (o) => ({ ...o, mass: o.mass + GRAM }));
    to("1 mm aft", (o) => ({ ...o, at: aft(o.at) }));
    to("1 mm up", (o) => ({ ...o, at: up(o.at) }));
  });
  spec.fittings.forEach((f, i) => {
    const path = `bait.fittings[${i}]`;
    const item = label("fittings", i, "item", f.name);
    const to = (change: Change["change"], one: (old: typeof f) => typeof f): void => {
      out.push({ path, item, change, at: f.at, spec: { ...spec, fittings: edit(spec.fittings, i, one) } });
    };
    to("0.1 g more", (o) => ({ ...o, mass: o.mass + GRAM }));
    to("1 mm aft", (o) => ({ ...o, at: aft(o.at) }));
    to("1 mm up", (o) => ({ ...o, at: up(o.at) }));
  });
  spec.hangers.forEach((h, i) => {
    const path = `bait.hangers[${i}]`;
    const to = (item: string, change: Change["change"], one: (old: typeof h) => typeof h): void => {
      out.push({ path, item, change, at: h.at, spec: { ...spec, hangers: edit(spec.hangers, i, one) } });
    };
    const { hook, ring } = h;
    if (hook) {
      const item = label("hangers", i, "hook", h.name);
      const near = options.neighbours?.(i) ?? null;
      const massTo = (mass: number) => (o: typeof h) => (o.hook ? { ...o, hook: { ...o.hook, mass } } : o);
      to(item, "0.1 g more", massTo(hook.mass + GRAM));
      to(item, "one hook size up", massTo(near?.up ?? hook.mass * (1 + HOOK_STEP)));
      to(item, "one hook size down", massTo(near?.down ?? hook.mass * (1 - HOOK_STEP)));
    } else if (ring)
      to(label("hangers", i, "ring", h.name), "0.1 g more", (o) =>
        o.ring ? { ...o, ring: { ...o.ring, mass: o.ring.mass + GRAM } } : o,
      );
    if (hook ?? ring) {
      to(h.name, "1 mm aft", (o) => ({ ...o, at: aft(o.at) }));
      to(h.name, "1 mm up", (o) => ({ ...o, at: up(o.at) }));
    }
  });
  spec.coats.forEach((c, i) => {
    const again: CoatSpec = { ...c, name: `${c.name} again` };
    out.push({
      path: `bait.coats[${i}]`,
      item: label("coats", i, "item", c.name),
      change: "one coat more",
      at: bait.drawn.skinCentroid,
      spec: { ...spec, coats: [...spec.coats, again] },
    });
  });
  return out;
}

/**
 * What small changes do to net buoyancy (kg), rest trim (rad) and steady rise (m/s), one row a change: the bait put together
 * anew with each, the body as the bench has found it; the rise by the curve through terminal rises near the bait.
 */
export function sensitivity(
  bait: Bait,
  around: Surroundings,
  options: SensitivityOptions = {},
): SensitivityRow[] {
  const { rise = true, curve: given, neighbours: _n, ...craft } = options;
  const { density } = around;
  const net = netOf(bait, density);
  const trim = restTrim(bait).pitch;
  const curve = rise ? (given ?? new RiseCurve(bait, around, craft)) : null;
  const speed = curve?.speed(net) ?? null;
  return changesOf(bait, options).map(({ spec, ...row }): SensitivityRow => {
    const changed = again(bait, spec);
    const own = netOf(changed, density);
    const rest = restTrim(changed).pitch;
    const turned = trim === null || rest === null ? null : rest - trim;
    return {
      ...row,
      net: own - net,
      trim: turned === null ? null : Math.atan2(Math.sin(turned), Math.cos(turned)),
      speed: curve && speed !== null ? curve.speed(own, offsetOf(changed)) - speed : null,
    };
  });
}
