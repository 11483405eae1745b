import type { EyeMotion, LinePull, MovingLine, RodEnd } from "./moving";
import type { LineSpec } from "./types";

/**
 * Damping of the line's material as a time constant, s: tension = k·(stretch + τ·rate of stretch). The loss tangent of wet
 * nylon is about 0.06 near 5 Hz, and tan δ = ω·τ (Kelvin–Voigt). From memory. Its only effect is to damp the oscillation
 * after a jerk.
 */
export const MATERIAL_DAMPING = 0.002;

/** Share of a step by which a stiff line is computed ahead: 0 up to ωh = ½, the whole step from ωh = 2 on. */
const ahead = (omegaH: number): number => Math.min(1, Math.max(0, (omegaH - 0.5) / 1.5));

/**
 * A line without weight and drag: a spring from tie eye to rod tip, of stiffness k = EA/L, that pulls but cannot push.
 *
 * In a leapfrog step the place of the eye is taken as the mean (x₋ + 2x₀ + x₊)/4 = x₀ + h²/4·a and its velocity as v₋ +
 * h/2·a (Newmark's average acceleration, 1959: stable at any stiffness, second order, no damping of its own). Here a = a₀ +
 * W·F contains the pull F = T·e itself. So along the line's direction e (eye to rod tip) T is in one equation,
 *
 *   T = k (ℓ − L) + c (dℓ/dt − dL/dt),  c = k·τ,  ℓ and dℓ/dt each less by their share of (eᵀWe)·T,
 *
 * and T = 0 where that is negative, or where there is no stretch.
 *
 * In a very stiff line (ωh > ½ with ω² = k·eᵀWe: a metre of braid or less) the eye would swing through in a step or two.
 * Its stretch would be felt late and would throw the eye back faster than it came. So such a line is computed with the
 * place and velocity ahead, up to the step's end (implicit Euler), which damps.
 */
export function tether(spec: LineSpec): MovingLine {
  const drawn = new Float64Array(4);
  return {
    points: 2,
    pull(h, eye, rod, out) {
      drawn[0] = eye.x;
      drawn[1] = eye.z;
      drawn[2] = rod.x;
      drawn[3] = rod.z;
      out.tension = rod.free ? 0 : tension(spec, h, eye, rod, out);
      out.slack = out.tension === 0;
      out.x *= out.tension;
      out.z *= out.tension;
    },
    draw(out, offset) {
      out.set(drawn, offset);
    },
  };
}

/** Tension, N; leaves the unit vector from eye to rod tip in `direction`. */
function tension(spec: LineSpec, h: number, eye: EyeMotion, rod: RodEnd, direction: LinePull): number {
  const dx0 = rod.x - eye.x;
  const dz0 = rod.z - eye.z;
  const distance0 = Math.sqrt(dx0 * dx0 + dz0 * dz0);
  if (distance0 === 0) return 0;
  const k = spec.EA / rod.length;
  const inverseMass =
    (dx0 * dx0 * eye.wxx + 2 * dx0 * dz0 * eye.wxz + dz0 * dz0 * eye.wzz) / (distance0 * distance0);
  const s = ahead(h * Math.sqrt(k * inverseMass));
  // the place s·h ahead with the velocity of the step's end; for the rest of the step the mean of the places
  const lead = s * h;
  const square = (s + (1 - s) / 4) * h * h;
  const dx = dx0 + lead * (rod.vx - eye.vx) - square * eye.ax;
  const dz = dz0 + lead * (rod.vz - eye.vz) - square * eye.az;
  const distance = Math.sqrt(dx * dx + dz * dz);
  const stretch = distance - rod.length - lead * rod.lengthRate;
  if (stretch <= 0) return 0;
  const ex = dx / distance;
  const ez = dz / distance;
  direction.x = ex;
  direction.z = ez;
  const c = k * MATERIAL_DAMPING;
  const part = ((1 + s) / 2) * h;
  const rate =
    ex * (rod.vx - eye.vx - part * eye.ax) + ez * (rod.vz - eye.vz - part * eye.az) - rod.lengthRate;
  return Math.max(0, (k * stretch + c * rate) / (1 + inverseMass * (k * square + c * part)));
}
