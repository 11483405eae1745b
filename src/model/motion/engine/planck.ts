/**
 * The only file that imports the physics engine, planck. The order of these imports matters (steady-on). So do the
 * settings: shapes read them when they are made, so they stand here, before any shape.
 */
import "./steady-on";
import * as planck from "planck";
import "./steady-off";
import { builtin } from "./steady-on";
import { sin } from "../../base";

export { Circle, Edge, Polygon, RevoluteJoint, World } from "planck";
export type { Body, Fixture, Joint, TimeStep } from "planck";

/** The engine makes its boxes wider than their contents by this, m. Wide boxes seldom have to be made anew. */
export const BOX_MARGIN = 0.1;

/** Corners that a hull may have: the engine's own scratch is made for these, before any setting can change. */
export const HULL_CORNERS = 12;

/** Greatest error of joints and contacts, m. */
export const SLOP = 2e-5;

// Tolerances for a 10 cm body with 4 mm balls, in metres: the engine's own are for bodies of 0.1–10 m (its contact slop
// of 5 mm is thicker than a ball). Found by trial: with these a ball rests within 0.02 mm of its wall.
Object.assign(planck.Settings, {
  linearSlop: SLOP,
  velocityThreshold: 0.02,
  aabbExtension: BOX_MARGIN,
  maxLinearCorrection: 0.002,
  linearSleepTolerance: 1e-5,
});

/** Skin that the engine keeps round polygons and edges, m: surfaces meet this far outside the drawn ones. */
export const SKIN = planck.Settings.polygonRadius;

/**
 * True where the engine uses base's sine. Where an argument is found at which the built-in one differs in a bit, the
 * engine's must equal base's. (Where none is found, the two are the same.)
 */
export function engineIsSteady(): boolean {
  for (let i = 1; i <= 4096; i++) {
    const x = i * 0.001953;
    if (builtin.sin(x) !== sin(x)) return new planck.Rot(x).s === sin(x);
  }
  return true;
}
