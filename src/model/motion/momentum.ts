import type { Sym3 } from "../base";
import { sym3 } from "../base";

/** Velocity of the bait through the water: m/s forward and up in body axes, rad/s. */
export interface Nu {
  u: number;
  w: number;
  q: number;
}

/**
 * The momentum of the bait together with that of the water that moves with it: (x, z) in world axes, N·s, and l about G,
 * N·m·s.
 *
 * In these variables Kirchhoff's equations keep only one of their inertia terms: dp/dt = force, dl/dt = moment − v × p. So
 * the impulses of joints and contacts are added as they are, and the sum over all bodies is conserved up to rounding.
 */
export class Momentum {
  x = 0;
  z = 0;
  l = 0;
  private readonly mass: Sym3 = sym3();
  /** M⁻¹ */
  readonly inverse: Sym3 = sym3();
  private readonly nu: Nu = { u: 0, w: 0, q: 0 };
  private readonly kept: Sym3 = sym3();

  /** p = R M ν for a first mass matrix. `s`, `c`: sine and cosine of the pitch, here and below. */
  start(mass: Sym3, s: number, c: number, nu: Nu): void {
    this.take(mass);
    this.set(s, c, mass, nu);
  }

  private set(s: number, c: number, m: Sym3, { u, w, q }: Nu): void {
    const pu = m.a11 * u + m.a13 * w + m.a15 * q;
    const pw = m.a13 * u + m.a33 * w + m.a35 * q;
    this.x = pu * c - pw * s;
    this.z = pu * s + pw * c;
    this.l = m.a15 * u + m.a35 * w + m.a55 * q;
  }

  /** ν = M⁻¹(Rᵀp, l) for the momentum (x, z, l). */
  velocity(s: number, c: number, x: number, z: number, l: number, out: Nu): void {
    const w = this.inverse;
    const pu = x * c + z * s;
    const pw = z * c - x * s;
    out.u = w.a11 * pu + w.a13 * pw + w.a15 * l;
    out.w = w.a13 * pu + w.a33 * pw + w.a35 * l;
    out.q = w.a15 * pu + w.a35 * pw + w.a55 * l;
  }

  /**
   * The mass matrix of the present moment, and the added mass of what has gone under since the last one. What comes out
   * sheds its water with the bait's own velocity. What goes under takes the momentum of the water set moving from the bait
   * (the slam), which leaves the whole momentum as it was: p = R (M − entered) ν with the velocity before. Neither gains
   * energy. Returns true where anything has changed.
   */
  change(mass: Sym3, entered: Sym3, s: number, c: number): boolean {
    const m = this.mass;
    if (
      m.a11 === mass.a11 &&
      m.a13 === mass.a13 &&
      m.a15 === mass.a15 &&
      m.a33 === mass.a33 &&
      m.a35 === mass.a35 &&
      m.a55 === mass.a55
    )
      return false;
    this.velocity(s, c, this.x, this.z, this.l, this.nu);
    this.take(mass);
    const { kept } = this;
    kept.a11 = mass.a11 - entered.a11;
    kept.a13 = mass.a13 - entered.a13;
    kept.a15 = mass.a15 - entered.a15;
    kept.a33 = mass.a33 - entered.a33;
    kept.a35 = mass.a35 - entered.a35;
    kept.a55 = mass.a55 - entered.a55;
    this.set(s, c, kept, this.nu);
    return true;
  }

  private take(mass: Sym3): void {
    const m = this.mass;
    m.a11 = mass.a11;
    m.a13 = mass.a13;
    m.a15 = mass.a15;
    m.a33 = mass.a33;
    m.a35 = mass.a35;
    m.a55 = mass.a55;
    invert(m, this.inverse);
  }
}

/** Inverse of a symmetric positive definite matrix by cofactors. */
function invert(m: Sym3, out: Sym3): void {
  const c11 = m.a33 * m.a55 - m.a35 * m.a35;
  const c13 = m.a15 * m.a35 - m.a13 * m.a55;
  const c15 = m.a13 * m.a35 - m.a15 * m.a33;
  const k = 1 / (m.a11 * c11 + m.a13 * c13 + m.a15 * c15);
  out.a11 = k * c11;
  out.a13 = k * c13;
  out.a15 = k * c15;
  out.a33 = k * (m.a11 * m.a55 - m.a15 * m.a15);
  out.a35 = k * (m.a13 * m.a15 - m.a11 * m.a35);
  out.a55 = k * (m.a11 * m.a33 - m.a13 * m.a13);
}
