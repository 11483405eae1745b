import { pow, square } from "../base";

/** Added mass of an ellipsoid in an ideal fluid, as shares of the displaced fluid. */
export interface EllipsoidCoefficients {
  /** κ_i = ∫₀^∞ r_i r_j r_k dλ / √((r_i²+λ)³(r_j²+λ)(r_k²+λ)); the three add up to 2. */
  readonly kappaX: number;
  readonly kappaY: number;
  readonly kappaZ: number;
  /** k_i = κ_i/(2 − κ_i): added over displaced mass for motion along each axis. */
  readonly kX: number;
  readonly kY: number;
  readonly kZ: number;
  /** Added pitch inertia (turning in the x–z plane) over ρV, m². */
  readonly pitchPerVolume: number;
}

/**
 * Carlson's symmetric integral R_D(x, y, z) = (3/2)∫₀^∞ dt / [(t+z)√((t+x)(t+y)(t+z))] by his duplication theorem:
 * no cancellation however near the arguments are to each other. Relative error below 1e-15.
 * Source: Carlson 1995, Numer. Algorithms 10:13–26 (algorithm R_D); DLMF 19.16.5, 19.36.2.
 */
function carlsonRD(x: number, y: number, z: number): number {
  let sum = 0;
  let factor = 1;
  for (let n = 0; n < 60; n++) {
    const mean = (x + y + 3 * z) / 5;
    const X = (mean - x) / mean;
    const Y = (mean - y) / mean;
    const Z = (mean - z) / mean;
    if (Math.max(Math.abs(X), Math.abs(Y), Math.abs(Z)) < 1e-3) {
      const XY = X * Y;
      const ZZ = Z * Z;
      const E2 = XY - 6 * ZZ;
      const E3 = (3 * XY - 8 * ZZ) * Z;
      const E4 = 3 * (XY - ZZ) * ZZ;
      const E5 = XY * ZZ * Z;
      // DLMF 19.36.2, left-out terms of sixth order: below 1e-18
      const series =
        1 - (3 / 14) * E2 + E3 / 6 + (9 / 88) * E2 * E2 - (3 / 22) * E4 - (9 / 52) * E2 * E3 + (3 / 26) * E5;
      return 3 * sum + (factor * series) / (mean * Math.sqrt(mean));
    }
    const rx = Math.sqrt(x);
    const ry = Math.sqrt(y);
    const rz = Math.sqrt(z);
    const shift = rx * ry + ry * rz + rz * rx;
    sum += factor / (rz * (z + shift));
    factor /= 4;
    x = (x + shift) / 4;
    y = (y + shift) / 4;
    z = (z + shift) / 4;
  }
  throw new RangeError(`R_D did not converge at (${x}, ${y}, ${z})`);
}

/**
 * Added-mass coefficients of the ellipsoid with semi-axes r_x, r_y, r_z (any one unit, all above 0).
 *
 * κ_i = (2/3)·r_x r_y r_z·R_D(r_j², r_k², r_i²), and in pitch, with Δ = r_x² − r_z² and g = (κ_z − κ_x)/Δ:
 * P/(ρV) = Δ² g / (5 [2 − (r_x² + r_z²) g]), which is Lamb's form with one Δ cancelled, so that r_x → r_z has no 0/0.
 * Source: Lamb 1932, Hydrodynamics, arts 114–115; Tuckerman 1925, NACA Report 210.
 */
export function ellipsoidCoefficients(rx: number, ry: number, rz: number): EllipsoidCoefficients {
  for (const [name, r] of [
    ["r_x", rx],
    ["r_y", ry],
    ["r_z", rz],
  ] as const)
    if (!(r > 0 && r < Infinity))
      throw new RangeError(`ellipsoid semi-axis ${name} = ${r}: give a length above 0`);
  // Lengths over the greatest axis: the coefficients depend on ratios only.
  const size = Math.max(rx, ry, rz);
  const x = square(rx / size);
  const y = square(ry / size);
  const z = square(rz / size);
  const product = (2 / 3) * Math.sqrt(x * y * z);
  const kappaX = product * carlsonRD(y, z, x);
  const kappaY = product * carlsonRD(z, x, y);
  const kappaZ = product * carlsonRD(x, y, z);
  const delta = x - z;
  const g = slope(x, y, z, kappaX, kappaZ);
  return {
    kappaX,
    kappaY,
    kappaZ,
    kX: kappaX / (2 - kappaX),
    kY: kappaY / (2 - kappaY),
    kZ: kappaZ / (2 - kappaZ),
    pitchPerVolume: (size * size * delta * delta * g) / (5 * (2 - (x + z) * g)),
  };
}

/**
 * g = (κ_z − κ_x)/(x − z) of the squared axes. It is even in x − z about their mean. So for differences below 1e-4 the
 * value at that difference is used: the error is 1e-8 of a term that is itself below 1e-9 of ρV r².
 */
function slope(x: number, y: number, z: number, kappaX: number, kappaZ: number): number {
  const mean = (x + z) / 2;
  if (Math.abs(x - z) > 1e-4 * mean) return (kappaZ - kappaX) / (x - z);
  const a = mean * (1 + 0.5e-4);
  const b = mean * (1 - 0.5e-4);
  const product = (2 / 3) * Math.sqrt(a * y * b);
  return (product * (carlsonRD(a, y, b) - carlsonRD(y, b, a))) / (a - b);
}

/**
 * Added-mass factor of a rectangular plate moving along its normal: a_n = C_A·ρ(π/4)a²b with a ≤ b its sides (m).
 * C_A = 1/(1 + 0.7275 (b/a)^−1.16), fitted to a vortex-ring panel solution; DNV-RP-C205 gives 0.579 for a square
 * (that figure from memory) and 1 for the endless strip.
 */
export function plateAddedMassFactor(side1: number, side2: number): number {
  const a = Math.min(side1, side2);
  const b = Math.max(side1, side2);
  if (!(a > 0 && b < Infinity)) throw new RangeError(`plate ${side1} × ${side2} m: give two sides above 0`);
  return 1 / (1 + 0.7275 * pow(b / a, -1.16));
}

/** The same as mass per unit density, m³: C_A (π/4) a² b. */
export const plateAddedVolume = (side1: number, side2: number): number =>
  plateAddedMassFactor(side1, side2) * (Math.PI / 4) * side1 * side2 * Math.min(side1, side2);
