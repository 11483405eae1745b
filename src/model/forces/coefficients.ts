import { exp, log10, pow, square } from "../base";

/** Below this speed (m/s) every drag is 0. Every drag vanishes with the speed, so nothing noticeable is cut off. */
export const STILL = 1e-9;

/**
 * Drag coefficient of a long circular cylinder across the flow, on its projected area, Re = v d/ν:
 * C = 11 Re^−0.75 + 0.9 (1 − e^(−1000/Re)) + 1.2 (1 − e^(−(Re/4500)^0.7)).
 * Source: Cheng 2013, J. Hydraul. Eng. 139(3), 10.1061/(ASCE)HY.1943-7900.0000722; subcritical, Re below 2e5.
 *
 * @param reynolds above 0; +Infinity is the limit as Re → 0
 */
export function cylinderDrag(reynolds: number): number {
  if (!(reynolds >= 0)) throw new RangeError(`cylinder drag at Re = ${reynolds}: Re must not be negative`);
  if (reynolds === 0) return Infinity;
  const root = Math.sqrt(reynolds);
  return (
    11 / (root * Math.sqrt(root)) +
    0.9 * (1 - exp(-1000 / reynolds)) +
    1.2 * (1 - exp(-pow(reynolds / 4500, 0.7)))
  );
}

/*
 * The same by table, for the strips: G(x) = C·x³ with x = Re^¼ is smooth from 0 on (11 at x = 0), cubic between
 * nodes a 32nd apart. x needs two square roots and no logarithm. Above x = 40 (Re 2.56e6) the formula itself.
 */
const PER_UNIT = 32;
const UP_TO = 40;
let table: Float64Array | null = null;

function cubed(x: number): number {
  const x2 = x * x;
  const re = x2 * x2;
  return 11 + x2 * x * (re === 0 ? 0.9 : 0.9 * (1 - exp(-1000 / re)) + 1.2 * (1 - exp(-pow(re / 4500, 0.7))));
}

/** Four coefficients for each cell, in t = 0…1 across it. */
function makeTable(): Float64Array {
  const cells = PER_UNIT * UP_TO;
  const out = new Float64Array(4 * cells);
  const h = 1 / PER_UNIT;
  const d = h / 64;
  // slopes by central differences of fourth order: error far below the cubic's own
  const slopeAt = (x: number): number =>
    x === 0 ? 0 : (8 * (cubed(x + d) - cubed(x - d)) - (cubed(x + 2 * d) - cubed(x - 2 * d))) / (12 * d);
  for (let i = 0; i < cells; i++) {
    const f0 = cubed(i * h);
    const f1 = cubed((i + 1) * h);
    const s0 = slopeAt(i * h) * h;
    const s1 = slopeAt((i + 1) * h) * h;
    out[4 * i] = f0;
    out[4 * i + 1] = s0;
    out[4 * i + 2] = 3 * (f1 - f0) - 2 * s0 - s1;
    out[4 * i + 3] = 2 * (f0 - f1) + s0 + s1;
  }
  return out;
}

/** The table of `cylinderDragFast`, made at its first use. */
export const cylinderTable = (): Float64Array => (table ??= makeTable());

/** `cylinderDrag` from the table (pass `cylinderTable()`), within 1e-7 of it; Re above 0. */
export function cylinderDragFast(nodes: Float64Array, reynolds: number): number {
  const x = Math.sqrt(Math.sqrt(reynolds));
  if (!(x < UP_TO)) return cylinderDrag(reynolds);
  const u = x * PER_UNIT;
  const cell = u | 0;
  const t = u - cell;
  const i = 4 * cell;
  return (
    ((nodes[i] as number) +
      t * ((nodes[i + 1] as number) + t * ((nodes[i + 2] as number) + t * (nodes[i + 3] as number)))) /
    (x * x * x)
  );
}

/**
 * Factor on the circular cylinder's drag for a section of breadth over height r (breadth across the flow):
 * r^0.9 for r ≤ 1, min(r^0.42, 1.65) above. Fitted to ellipses 8:1 to 1:2 and the flat plate; Re 1e4–1e5.
 * Source: Hoerner 1965, Fluid-Dynamic Drag, ch. 3; Delany & Sorensen 1953, NACA TN 3038 (the section values from memory).
 */
export function sectionFactor(breadthOverHeight: number): number {
  if (!(breadthOverHeight >= 0))
    throw new RangeError(`section breadth over height ${breadthOverHeight}: must not be negative`);
  if (breadthOverHeight <= 1) return pow(breadthOverHeight, 0.9);
  return breadthOverHeight === Infinity ? 1.65 : Math.min(pow(breadthOverHeight, 0.42), 1.65);
}

/**
 * End effect on cross-flow drag: η = 1 − 23.009/(F + 122.769) − (13.006/(F + 24.368))², F = length over greatest breadth.
 * Source: Jorgensen 1977, NASA TR R-474, curve as fitted publicly for F from 1.5 to 20.
 */
export const endEffect = (fineness: number): number =>
  1 - 23.009 / (fineness + 122.769) - square(13.006 / (fineness + 24.368));

/**
 * Mean skin-friction coefficient on the wetted area of one side: max(1.328/√Re, 0.5·0.075/(log₁₀Re − 2)²), the second
 * from Re 5e4 on only. Sources: Blasius 1908; ITTC 1957 line, halved for a boundary layer that is part laminar
 * (the halving: common practice, no source).
 */
export function skinFriction(reynolds: number): number {
  const laminar = 1.328 / Math.sqrt(reynolds);
  if (!(reynolds >= 5e4)) return laminar;
  const digits = log10(reynolds) - 2;
  const turbulent = (0.5 * 0.075) / (digits * digits);
  return laminar > turbulent ? laminar : turbulent;
}

/**
 * Drag coefficient of an ellipsoid along its axis, on its frontal area: 0.44 (d/L) + 4 C_f (L/d) + 4 C_f (d/L)^½.
 * Source: Hoerner 1965, Fluid-Dynamic Drag, ch. 6 (subcritical, Re below about 5e5; formula from memory).
 *
 * @param lengthOverDiameter L/d, above 0
 * @param friction C_f at Re = u L/ν
 */
export const ellipsoidDrag = (lengthOverDiameter: number, friction: number): number =>
  0.44 / lengthOverDiameter +
  4 * friction * lengthOverDiameter +
  (4 * friction) / Math.sqrt(lengthOverDiameter);

/**
 * C_d·A of a hanging treble of mass m (kg): 5e-5 m² (m/0.37 g)^⅔, from its wires as cylinders across the flow (±50 %).
 * Common practice, no source.
 */
export const hookDragArea = (mass: number): number => 5e-5 * pow(mass / 0.37e-3, 2 / 3);
