import type { Vec } from "../base";
import { ELEMENT, type Floaters, floatersOf, hookLength } from "./floaters";
import { type Slab, slabsOf } from "./slabs";
import type { Craft } from "./types";

interface Geometry {
  readonly slabs: readonly Slab[];
  readonly floaters: Floaters;
  /** Greatest distance from G of anything that displaces, m. */
  readonly reach: number;
}

/** Below this share of a section's height the tilt of the surface across a slab is taken by series. */
const LEVEL = 1e-3;

/**
 * What of a craft lies under the still surface Z = 0, from where: buoyancy with its potential, and the immersed share
 * of every strip, the bib and the hooks, with its rate.
 *
 * Each strip is a slab of the body between two stations with one section; its immersed volume is
 * ∫ A((λ − ξ sin θ)/cos θ) dξ over its thickness, λ the depth of G's level at its middle, A the section's Bonjean curve.
 * With B = ∫A and C = ∫B that and its moments are closed forms at the slab's two faces, also for a bait on its head.
 * All numbers derive from the one potential U = ρg ∫ depth dV of the immersed parts: floating and diving through the
 * surface neither makes nor loses energy (but for the bits lost at the slabs' series, below 1e-8).
 */
export class Waterline {
  /** Immersed volume (m³), its moment ∫(x cos θ − z sin θ)dV (m⁴) and ∫depth dV (m⁴). */
  volume = 0;
  moment = 0;
  depth = 0;
  /** First moments of the immersed volume about G in body axes, m⁴. */
  firstX = 0;
  firstZ = 0;
  /** Share of the body's volume under water, and of each strip's, with its rate (1/s). */
  bodyShare = 0;
  readonly share: Float64Array;
  readonly rate: Float64Array;
  bodyRate = 0;
  bladeShare = 0;
  bladeRate = 0;
  readonly hookShare: Float64Array;
  readonly #craft: Craft;
  readonly #hookLengths: Float64Array;
  readonly #wholeBody: number;
  /** Volume of each strip's slabs, m³. */
  readonly #strips: Float64Array;
  /** Set where all shares are alike: 0 or 1. */
  #even = NaN;
  /** Made when the surface is first near: a bait that stays under never needs them. */
  #geometry: Geometry | null = null;
  /** The half section at a slab's two faces: A″, A′, A, B, C and ζB − 2C. */
  readonly #fore = new Float64Array(6);
  readonly #aft = new Float64Array(6);

  constructor(craft: Craft) {
    this.#craft = craft;
    const n = craft.strips.length;
    this.share = new Float64Array(n);
    this.rate = new Float64Array(n);
    this.#strips = new Float64Array(n);
    this.hookShare = new Float64Array(craft.hooks.length);
    this.#hookLengths = Float64Array.from(craft.hooks, (h) => hookLength(h.mass));
    this.#wholeBody = craft.strips.reduce((sum, s) => sum + s.volume, 0);
  }

  /** Everything that displaces lies within this distance of G, m. */
  get reach(): number {
    return this.#geo().reach;
  }

  #geo(): Geometry {
    if (!this.#geometry) {
      this.#geometry = geometryOf(this.#craft, this.#hookLengths, this.#wholeBody);
      for (const slab of this.#geometry.slabs)
        this.#strips[slab.strip] = (this.#strips[slab.strip] as number) + slab.volume;
    }
    return this.#geometry;
  }

  /** All under: the whole account's volume at B, every share 1. `Z`: height of G, m. */
  under(Z: number, sin: number, cos: number): void {
    const { rigid } = this.#craft;
    const bx = rigid.B.x - rigid.G.x;
    const bz = rigid.B.z - rigid.G.z;
    this.volume = rigid.displaced;
    this.firstX = this.volume * bx;
    this.firstZ = this.volume * bz;
    this.moment = this.firstX * cos - this.firstZ * sin;
    this.depth = -this.volume * (Z + bx * sin + bz * cos);
    this.#all(1);
  }

  /** All out of the water. */
  dry(): void {
    this.volume = this.moment = this.depth = this.firstX = this.firstZ = 0;
    this.#craft.hooks.forEach(
      (hook, i) => (this.depth -= (hook.displaced * 2 * num(this.#hookLengths, i)) / 3),
    );
    this.#all(0);
  }

  #all(share: number): void {
    if (this.#even === share) return;
    this.#even = share;
    this.bodyShare = share;
    this.bodyRate = 0;
    this.bladeShare = share;
    this.bladeRate = 0;
    this.share.fill(share);
    this.rate.fill(0);
    this.hookShare.fill(share);
  }

  /**
   * Wherever the surface cuts. `Z`, `rising`: height of G (m) and its rate (m/s); `turning`: pitch rate (rad/s).
   */
  cut(Z: number, sin: number, cos: number, rising: number, turning: number): void {
    this.#even = NaN;
    this.volume = this.moment = this.depth = this.firstX = this.firstZ = 0;
    this.#cutBody(Z, sin, cos, rising, turning);
    this.#cutBoxes(Z, sin, cos);
    this.#cutRods(Z, sin, cos);
    this.#cutSpheres(Z, sin, cos);
    this.#cutHooks(Z, sin, cos);
    this.#cutBlade(Z, sin, cos, rising, turning);
    this.moment += this.firstX * cos - this.firstZ * sin;
  }

  #cutBody(Z: number, sin: number, cosine: number, rising: number, turning: number): void {
    const { slabs } = this.#geo();
    const { share, rate } = this;
    share.fill(0);
    rate.fill(0);
    const upright = cosine >= 0;
    // a bait within 1e-12 of standing on its end is taken as that much off it
    const c = Math.max(Math.abs(cosine), 1e-12);
    const cByPitch = upright ? -sin : sin;
    let under = 0;
    let underRate = 0;
    for (let i = 0; i < slabs.length; i++) {
      const slab = slabs[i] as Slab;
      const { half, strip } = slab;
      // belly-up everything is mirrored: heights are then measured from G's level to what hangs down
      const section = upright ? slab.backUp : slab.bellyUp;
      const slope = upright ? slab.slope : -slab.slope;
      const S = sin + slope * c;
      const sine = Math.abs(S);
      const depth = -Z - slab.x * sin;
      const a = half * sine;
      if (depth + a <= c * section.bottom) continue;
      if (depth - a >= c * section.top) {
        const { volume, centroidZ } = slab;
        share[strip] = (share[strip] as number) + volume;
        this.firstX += volume * slab.x;
        this.firstZ += volume * centroidZ;
        this.depth += volume * (depth - centroidZ * cosine);
        under += volume;
        continue;
      }
      const zeta = depth / c;
      const delta = a / c;
      const tilt = S / c; // dζ/d(−ξ)
      const ds = 2 * half;
      const SByPitch = cosine + slope * cByPitch;
      const p = this.#fore;
      let v: number;
      let momentX: number;
      let momentZ: number;
      let vByDepth: number;
      let vByPitch: number;
      if (delta < LEVEL * (section.top - section.bottom)) {
        section.below(zeta, p);
        const second = p[0] as number;
        const first = p[1] as number;
        const sixth = (delta * delta) / 6;
        const tiltByPitch = (SByPitch - tilt * cByPitch) / c;
        v = ds * ((p[2] as number) + sixth * second);
        this.depth += ds * c * ((p[3] as number) + sixth * first);
        momentZ = ds * (zeta * (p[2] as number) - (p[3] as number) + sixth * (first + zeta * second));
        momentX = (-tilt * first * ds * half * half) / 3;
        vByDepth = (ds * first) / c;
        vByPitch = ds * ((-first * zeta * cByPitch) / c + (half * half * tilt * tiltByPitch * second) / 3);
      } else {
        const m = this.#aft;
        section.below(zeta + delta, p);
        section.below(zeta - delta, m);
        const steep = sine / c;
        const gapB = (p[3] as number) - (m[3] as number);
        const gapC = (p[4] as number) - (m[4] as number);
        const gapZA = (zeta + delta) * (p[2] as number) - (zeta - delta) * (m[2] as number);
        v = gapB / steep;
        this.depth += (c * gapC) / steep;
        momentZ = ((p[5] as number) - (m[5] as number)) / steep;
        momentX = (gapC - delta * ((p[3] as number) + (m[3] as number))) / (tilt * steep);
        vByDepth = ((p[2] as number) - (m[2] as number)) / sine;
        // V = c ΔB/|S| with faces at ζ = (λ ± half·|S|)/c: by c, and by |S|
        const byC = (gapB - gapZA) / sine;
        const bySine = (half * ((p[2] as number) + (m[2] as number)) - (c * gapB) / sine) / sine;
        vByPitch = byC * cByPitch + bySine * (S >= 0 ? SByPitch : -SByPitch);
      }
      const gain = vByDepth * (-rising - slab.x * cosine * turning) + vByPitch * turning;
      share[strip] = (share[strip] as number) + v;
      rate[strip] = (rate[strip] as number) + gain;
      const z = momentZ + slope * momentX;
      this.firstX += slab.x * v + momentX;
      this.firstZ += upright ? z : -z;
      under += v;
      underRate += gain;
    }
    for (let k = 0; k < share.length; k++) {
      const whole = this.#strips[k] as number;
      share[k] = whole > 0 ? (share[k] as number) / whole : 0;
      rate[k] = whole > 0 ? (rate[k] as number) / whole : 0;
    }
    this.volume += under;
    this.bodyShare = under / this.#wholeBody;
    this.bodyRate = underRate / this.#wholeBody;
  }

  /** An element of half height a whose middle is λ deep: ∫depth = (λ+a)²/4a while the surface cuts it. */
  #cutBoxes(Z: number, sin: number, cos: number): void {
    const list = this.#geo().floaters.boxes;
    for (let k = 0; k < list.length; k += ELEMENT) {
      const x = num(list, k);
      const z = num(list, k + 1);
      const dx = num(list, k + 2);
      const dz = num(list, k + 3);
      // the upright extent of an even box with the same second moment: smooth through level trim
      const a = Math.sqrt(dx * dx * sin * sin + dz * dz * cos * cos);
      const aByPitch = a > 0 ? (sin * cos * (dx * dx - dz * dz)) / a : 0;
      this.#element(x, z, -Z - x * sin - z * cos, a, aByPitch, num(list, k + 4));
    }
  }

  #cutRods(Z: number, sin: number, cos: number): void {
    const list = this.#geo().floaters.rods;
    for (let k = 0; k < list.length; k += ELEMENT) {
      const x = num(list, k);
      const z = num(list, k + 1);
      const rise = num(list, k + 2) * sin + num(list, k + 3) * cos;
      const lean = num(list, k + 2) * cos - num(list, k + 3) * sin;
      this.#element(x, z, -Z - x * sin - z * cos, Math.abs(rise), rise >= 0 ? lean : -lean, num(list, k + 4));
    }
  }

  #element(x: number, z: number, depth: number, a: number, aByPitch: number, volume: number): void {
    if (depth <= -a) return;
    if (depth >= a) {
      this.volume += volume;
      this.firstX += volume * x;
      this.firstZ += volume * z;
      this.depth += volume * depth;
      return;
    }
    const part = (volume * (depth + a)) / (2 * a);
    this.volume += part;
    this.firstX += part * x;
    this.firstZ += part * z;
    this.depth += (part * (depth + a)) / 2;
    this.moment -= ((volume * (a - depth) * (a + depth)) / (4 * a * a)) * aByPitch;
  }

  /** Spherical caps: V = (π/3)h²(3R − h), h the height under. */
  #cutSpheres(Z: number, sin: number, cos: number): void {
    const list = this.#geo().floaters.spheres;
    for (let k = 0; k < list.length; k += 4) {
      const x = num(list, k);
      const z = num(list, k + 1);
      const R = num(list, k + 2);
      const depth = -Z - x * sin - z * cos;
      if (depth <= -R) continue;
      const whole = num(list, k + 3);
      const h = depth + R;
      const scale = whole / (4 * R * R * R); // π/3 by the sphere's own volume
      const part = depth >= R ? whole : scale * h * h * (3 * R - h);
      this.volume += part;
      this.firstX += part * x;
      this.firstZ += part * z;
      this.depth += depth >= R ? whole * depth : scale * h * h * h * (R - h / 4);
    }
  }

  /**
   * Hooks and rings hang below their eyes and are under until the eye stands more than a third of the hook's length
   * above the surface (the statics take them as always under); from there they leave the water evenly until the eye
   * is a whole length above it. Their lift acts at the eye.
   */
  #cutHooks(Z: number, sin: number, cos: number): void {
    const { hooks } = this.#craft;
    for (let i = 0; i < hooks.length; i++) {
      const hook = hooks[i] as (typeof hooks)[number];
      const { x, z } = hook.at;
      const third = num(this.#hookLengths, i) / 3;
      const eye = -Z - x * sin - z * cos;
      const depth = eye + 2 * third;
      const share = depth >= third ? 1 : depth <= -third ? 0 : (depth + third) / (2 * third);
      const part = share * hook.displaced;
      this.hookShare[i] = share;
      this.volume += part;
      this.firstX += part * x;
      this.firstZ += part * z;
      this.depth +=
        depth >= third ? hook.displaced * eye : (part * (depth + third)) / 2 - hook.displaced * 2 * third;
    }
  }

  #cutBlade(Z: number, sin: number, cos: number, rising: number, turning: number): void {
    const { blade } = this.#craft;
    if (!blade) return;
    const depthAt = (p: Vec): number => -Z - p.x * sin - p.z * cos;
    const rateAt = (p: Vec): number => -rising - (p.x * cos - p.z * sin) * turning;
    const root = depthAt(blade.root);
    const tip = depthAt(blade.tip);
    if (root >= 0 && tip >= 0) this.bladeShare = 1;
    else if (root <= 0 && tip <= 0) this.bladeShare = 0;
    else {
      const deep = root > tip ? root : tip;
      const high = root > tip ? tip : root;
      const deepRate = root > tip ? rateAt(blade.root) : rateAt(blade.tip);
      const highRate = root > tip ? rateAt(blade.tip) : rateAt(blade.root);
      const span = deep - high;
      this.bladeShare = deep / span;
      this.bladeRate = (deep * highRate - high * deepRate) / (span * span);
      return;
    }
    this.bladeRate = 0;
  }
}

/** An entry of a list that is known to be there. */
function num(list: Float64Array, i: number): number {
  return list[i] as number;
}

function geometryOf(craft: Craft, hookLengths: Float64Array, body: number): Geometry {
  const slabs = slabsOf(craft);
  const floaters = floatersOf(craft);
  const hooks = craft.hooks.reduce((sum, h) => sum + h.displaced, 0);
  const parts = body + floaters.volume + hooks;
  if (!(Math.abs(parts - craft.rigid.displaced) <= 1e-9 * craft.rigid.displaced))
    throw new RangeError(
      `${craft.bait.spec.name}: its parts displace ${parts} m³, its account says ${craft.rigid.displaced} m³`,
    );
  return { slabs, floaters, reach: reachOf(craft, floaters, hookLengths) };
}

function reachOf(craft: Craft, floaters: Floaters, hookLengths: Float64Array): number {
  const { blade, hooks, strips } = craft;
  const far = (x: number, z: number, more = 0): number => Math.sqrt(x * x + z * z) + more;
  const spans = strips.flatMap((s) => [far(s.x, s.top, s.ds / 2), far(s.x, s.bottom, s.ds / 2)]);
  hooks.forEach((h, i) => spans.push(far(h.at.x, h.at.z, hookLengths[i])));
  if (blade) spans.push(far(blade.root.x, blade.root.z), far(blade.tip.x, blade.tip.z));
  const { boxes, rods, spheres } = floaters;
  for (const list of [boxes, rods])
    for (let k = 0; k < list.length; k += ELEMENT)
      spans.push(far(num(list, k), num(list, k + 1), far(num(list, k + 2), num(list, k + 3))));
  for (let k = 0; k < spheres.length; k += 4)
    spans.push(far(num(spheres, k), num(spheres, k + 1), num(spheres, k + 2)));
  return Math.max(...spans) * (1 + 1e-9);
}
