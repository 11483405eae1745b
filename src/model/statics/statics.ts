import { cos, sin } from "../base";
import type { Bait } from "../bait";
import { Floater } from "./floating";
import { restTrim } from "./rest";
import type { AccountRow, Floating, RestTrim, Statics, Upright } from "./types";

/** Standard gravity, m/s² (CGPM 1901). */
export const STANDARD_GRAVITY = 9.80665;

/** Surface tension of water at 20 °C, N/m. IAPWS R1-76 (2014): 72.7361 mN/m. */
const SURFACE_TENSION = 0.0727361;

/**
 * Every item's mass, displacement and net lift in water of a density (kg/m³): one row for each item, in the order of the
 * document. The rows add up to the totals.
 */
export function account(bait: Bait, density: number): AccountRow[] {
  return bait.items.map(({ item, group, mass, filler, displaced }) => ({
    item,
    group,
    mass,
    filler,
    displaced,
    net: density * displaced - mass,
  }));
}

/** Righting lever GZ = BG·sin(heel) under water, m, for a heel in rad (docs/model.md §5). */
export const submergedLever = (BG: number, heel: number): number => BG * sin(heel);

/** Stability in roll under water and afloat. */
export function upright(rest: RestTrim, floating: Floating | null): Upright {
  return {
    BG: rest.BG,
    GM: floating?.GM ?? null,
    bellyDownUnderWater: rest.pitch === null ? null : cos(rest.pitch) > 0,
    uprightAfloat: floating === null ? null : floating.GM > 0,
  };
}

const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)}°`;

function notes(bait: Bait, s: Omit<Statics, "notes">): string[] {
  const said: string[] = [];
  const { rest, floating, netBuoyancy } = s;
  if (rest.pitch === null)
    said.push("B and G are less than 0.1 mm apart: under water the bait rests in any attitude.");
  if (rest.others.length > 0)
    said.push(
      `The loose balls can rest at either end: so the bait also rests at ${rest.others.map(degrees).join(", ")}. The figure is the one nearest to the trim with the balls at mid-length.`,
    );
  if (floating) {
    // A difference of 10° or more is told; common practice, no source.
    if (rest.pitch !== null && Math.abs(rest.pitch - floating.pitch) > Math.PI / 18)
      said.push("The rest trim is only the first moment of the rise: afloat the bait lies differently.");
    if (floating.GM < 0)
      said.push(
        "Afloat the bait lies on its side (GM below 0). Trim and draft are those of the bait held upright.",
      );
    if (floating.others.length > 0)
      said.push(
        `The bait floats stably at ${floating.others.length + 1} trims: also at ${floating.others.map((o) => degrees(o.pitch)).join(", ")}.`,
      );
  }
  // Surface tension along a waterline round the whole bait (two lengths): σP/g, 1.5 g on 0.2 m. A quarter of it as the limit
  // is common practice, no source.
  const held = (SURFACE_TENSION * 2 * bait.shape.length) / STANDARD_GRAVITY;
  if (Math.abs(netBuoyancy) < held / 4)
    said.push(
      `Near neutral: surface tension along the waterline can hold up to ${(held * 1e3).toFixed(1)} g, and decides whether the bait breaks the surface.`,
    );
  return said;
}

/** All statics of a bait in water of a density (kg/m³). SI; no rounding. */
export function staticsOf(bait: Bait, density: number): Statics {
  const rest = restTrim(bait);
  const floater = new Floater(bait, density, rest);
  const floating = floater.equilibrium();
  const { mass, displaced } = bait.rigid(rest.side);
  const statics = {
    density,
    mass,
    displaced,
    netBuoyancy: floater.netBuoyancy,
    bodyVolume: bait.shape.volume,
    skinArea: bait.drawn.skinArea,
    G: rest.G,
    B: rest.B,
    BG: rest.BG,
    rest,
    floating,
    upright: upright(rest, floating),
    account: account(bait, density),
    bench: { bodyDensity: bait.bodyDensity, volumeFactor: bait.volumeFactor, residuals: bait.bench },
    warnings: bait.warnings,
  };
  return { ...statics, notes: notes(bait, statics) };
}
