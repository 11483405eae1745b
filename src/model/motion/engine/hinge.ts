import { cos, sin } from "../../base";
import { type Body, RevoluteJoint, SLOP, type TimeStep } from "./planck";

/** What a joint sees of a body while the engine solves; the engine does not tell its type. */
interface Solved {
  readonly c_position: { readonly c: { x: number; y: number }; a: number };
  readonly c_velocity: { readonly v: { x: number; y: number }; w: number };
  /** 1/kg, 1/(kg·m²) */
  readonly m_invMass: number;
  readonly m_invI: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** What joins two bodies. Places in the bodies' own axes, m. */
export interface HingePlan {
  readonly a: Body;
  readonly b: Body;
  readonly pinA: Point;
  readonly pinB: Point;
}

/**
 * The engine's revolute joint without limits and motor, for bodies whose centres are at their origins. It does the same
 * sums in the same order, to the last bit, but in plain numbers. The engine's own joint makes small objects for each
 * vector; that took an eighth of the time of a bait with two hooks on its line.
 */
export class Hinge extends RevoluteJoint {
  readonly #a: Body & Solved;
  readonly #b: Body & Solved;
  readonly #pinA: Point;
  readonly #pinB: Point;
  /** From the bodies' centres to the pin, world axes, m. */
  #ax = 0;
  #ay = 0;
  #bx = 0;
  #by = 0;
  /** How a pull at the pin moves it: inverse mass, symmetric, 1/kg, and one over its determinant. */
  #xx = 0;
  #xy = 0;
  #yy = 0;
  #over = 0;
  /** Impulse of this step on body B, N·s. */
  #px = 0;
  #py = 0;

  constructor({ a, b, pinA, pinB }: HingePlan) {
    super({ bodyA: a, bodyB: b, localAnchorA: pinA, localAnchorB: pinB, referenceAngle: 0 });
    this.#a = a as Body & Solved;
    this.#b = b as Body & Solved;
    this.#pinA = pinA;
    this.#pinB = pinB;
  }

  override getReactionForce(perSecond: number): ReturnType<RevoluteJoint["getReactionForce"]> {
    const force = super.getReactionForce(perSecond);
    force.x = this.#px * perSecond;
    force.y = this.#py * perSecond;
    return force;
  }

  override initVelocityConstraints({ dtRatio }: TimeStep): void {
    const { m_invMass: mA, m_invI: iA } = this.#a;
    const { m_invMass: mB, m_invI: iB } = this.#b;
    const pinA = this.#pinA;
    const pinB = this.#pinB;
    const qa = this.#a.getTransform().q;
    const qb = this.#b.getTransform().q;
    const ax = qa.c * pinA.x - qa.s * pinA.y;
    const ay = qa.s * pinA.x + qa.c * pinA.y;
    const bx = qb.c * pinB.x - qb.s * pinB.y;
    const by = qb.s * pinB.x + qb.c * pinB.y;
    const xx = mA + mB + ay * ay * iA + by * by * iB;
    const xy = -ay * ax * iA - by * bx * iB;
    const yy = mA + mB + ax * ax * iA + bx * bx * iB;
    this.#ax = ax;
    this.#ay = ay;
    this.#bx = bx;
    this.#by = by;
    this.#xx = xx;
    this.#xy = xy;
    this.#yy = yy;
    this.#over = 1 / (xx * yy - xy * xy);
    // begins with the impulse of the step before
    const px = this.#px * dtRatio;
    const py = this.#py * dtRatio;
    this.#px = px;
    this.#py = py;
    const va = this.#a.c_velocity;
    const vb = this.#b.c_velocity;
    va.v.x -= mA * px;
    va.v.y -= mA * py;
    va.w -= iA * (ax * py - ay * px);
    vb.v.x += mB * px;
    vb.v.y += mB * py;
    vb.w += iB * (bx * py - by * px);
  }

  override solveVelocityConstraints(): void {
    const { m_invMass: mA, m_invI: iA, c_velocity: va } = this.#a;
    const { m_invMass: mB, m_invI: iB, c_velocity: vb } = this.#b;
    const ax = this.#ax;
    const ay = this.#ay;
    const bx = this.#bx;
    const by = this.#by;
    const wa = va.w;
    const wb = vb.w;
    const xy = this.#xy;
    // how fast the pin's two halves part
    const x = vb.v.x - wb * by - (va.v.x - wa * ay);
    const y = vb.v.y + wb * bx - (va.v.y + wa * ax);
    const px = this.#over * (xy * y - this.#yy * x);
    const py = this.#over * (xy * x - this.#xx * y);
    this.#px += px;
    this.#py += py;
    va.v.x -= mA * px;
    va.v.y -= mA * py;
    va.w = wa - iA * (ax * py - ay * px);
    vb.v.x += mB * px;
    vb.v.y += mB * py;
    vb.w = wb + iB * (bx * py - by * px);
  }

  override solvePositionConstraints(): boolean {
    const { m_invMass: mA, m_invI: iA, c_position: a } = this.#a;
    const { m_invMass: mB, m_invI: iB, c_position: b } = this.#b;
    const pinA = this.#pinA;
    const pinB = this.#pinB;
    const sa = sin(a.a);
    const ca = cos(a.a);
    const sb = sin(b.a);
    const cb = cos(b.a);
    const ax = ca * pinA.x - sa * pinA.y;
    const ay = sa * pinA.x + ca * pinA.y;
    const bx = cb * pinB.x - sb * pinB.y;
    const by = sb * pinB.x + cb * pinB.y;
    // how far they are apart
    const x = b.c.x + bx - (a.c.x + ax);
    const y = b.c.y + by - (a.c.y + ay);
    const xx = mA + mB + iA * ay * ay + iB * by * by;
    const xy = -iA * ax * ay - iB * bx * by;
    const yy = mA + mB + iA * ax * ax + iB * bx * bx;
    const over = 1 / (xx * yy - xy * xy);
    const px = over * (xy * y - yy * x);
    const py = over * (xy * x - xx * y);
    a.c.x -= mA * px;
    a.c.y -= mA * py;
    a.a -= iA * (ax * py - ay * px);
    b.c.x += mB * px;
    b.c.y += mB * py;
    b.a += iB * (bx * py - by * px);
    return Math.sqrt(x * x + y * y) <= SLOP;
  }
}
