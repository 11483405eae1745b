import type { EyeMotion, LinePull, MovingLine, RodEnd } from "./moving";
import type { LineSpec } from "./types";

/**
 * Damping of the line's material as a time constant: tension = k·(stretch + τ·rate of stretch), s. Wet nylon's loss
 * tangent is about 0.06 near 5 Hz, and tan δ = ω·τ (Kelvin–Voigt). From memory; it only calms the ring after a jerk.
 */
export const MATERIAL_DAMPING = 0.002;

/**
 * A line without weight and drag: a spring from tie eye to rod tip, of stiffness k = EA/L, that pulls but cannot push.
 *
 * In a leapfrog step the place of the eye is taken as the mean (x₋ + 2x₀ + x₊)/4 = x₀ + h²/4·a and its velocity as
 * v₋ + h/2·a (Newmark's average acceleration, 1959: stable at any stiffness, and without damping of its own), where
 * a = a₀ + W·F holds the pull F = T·e itself. Along the line's direction e (eye to rod tip) that is one equation in T:
 *
 *   T = k (ℓ − L) + c (dℓ/dt − dL/dt)  with  ℓ = ℓ₀ − h²/4·(eᵀWe)·T,  dℓ/dt = ℓ₀′ − h/2·(eᵀWe)·T,  c = k·τ,
 *
 * and T = 0 where that is negative, or where there is no stretch.
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
  const quarter = (h * h) / 4;
  const dx = rod.x - (eye.x + quarter * eye.ax);
  const dz = rod.z - (eye.z + quarter * eye.az);
  const distance = Math.sqrt(dx * dx + dz * dz);
  if (distance <= rod.length) return 0;
  const ex = dx / distance;
  const ez = dz / distance;
  direction.x = ex;
  direction.z = ez;
  const k = spec.EA / rod.length;
  const c = k * MATERIAL_DAMPING;
  const rate = ex * (rod.vx - eye.vx - (h / 2) * eye.ax) + ez * (rod.vz - eye.vz - (h / 2) * eye.az);
  const inverseMass = ex * ex * eye.wxx + 2 * ex * ez * eye.wxz + ez * ez * eye.wzz;
  const pull = k * (distance - rod.length) + c * (rate - rod.lengthRate);
  return Math.max(0, pull / (1 + inverseMass * (k * quarter + (c * h) / 2)));
}
