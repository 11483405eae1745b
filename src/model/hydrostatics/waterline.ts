import type { Vec } from "../base";
import { hookLength } from "../parts";
import { ELEMENT, type Elements, elementsOf } from "./elements";
import { pieceDepth, pieceShift, pieceVolume, sphereDepth, sphereVolume } from "./going-under";
import { HOOK_CENTRE, HOOK_HALF, hookUnder } from "./hanging";
import { type Slab, slabsOf } from "./slabs";
import { add, type Sum } from "./sum";
import type { Cuttable } from "./types";

interface Geometry {
  readonly slabs: readonly Slab[];
  readonly elements: Elements;
  /** Greatest distance from G of anything that displaces, m. */
  readonly reach: number;
}

/**
 * Where the surface tilts across a slab by less than this share of the section's height, its effect is computed by a
 * series.
 */
const LEVEL = 1e-3;

/**
 * What of a swimmer lies under the still surface Z = 0: the buoyant volume with its potential energy, and the share under
 * water of every strip, the bib and the hooks.
 *
 * Each strip is a slab of the body between two stations, with one section. Its immersed volume is ∫ A((λ − ξ sin θ)/cos θ)
 * dξ over its thickness; λ is the depth of G's level at its middle, A the section's Bonjean curve. With B = ∫A and C = ∫B
 * this volume and its moments are closed forms at the slab's two faces, also for a bait on its head. All numbers derive
 * from the one potential U = ρg ∫ depth dV of the immersed parts: so floating and diving through the surface neither make
 * nor lose energy (except for what the slabs' series lose, below 1e-8).
 */
export class Waterline implements Sum {
  /** Volume under water (m³) and its first moments about G in body axes (m⁴). */
  volume = 0;
  x = 0;
  z = 0;
  /** Its moment ∫(x cos θ − z sin θ)dV and ∫depth dV, m⁴. */
  moment = 0;
  depth = 0;
  /** Share under water of the body's volume, of each strip's, of the bib's length and of each hook. */
  bodyShare = 0;
  readonly share: Float64Array;
  bladeShare = 0;
  readonly hookShare: Float64Array;
  readonly #swimmer: Cuttable;
  readonly #hookLengths: Float64Array;
  readonly #wholeBody: number;
  /** Volume of each strip's slabs, m³. */
  readonly #strips: Float64Array;
  /** Set where all shares are equal: 0 or 1. */
  #even = NaN;
  /** Made when the surface is near for the first time: a bait that stays under water never needs them. */
  #geometry: Geometry | null = null;
  /** The half section at a slab's two faces: A″, A′, A, B, C and ζB − 2C. */
  readonly #fore = new Float64Array(6);
  readonly #aft = new Float64Array(6);

  constructor(swimmer: Cuttable) {
    this.#swimmer = swimmer;
    const n = swimmer.strips.length;
    this.share = new Float64Array(n);
    this.#strips = new Float64Array(n);
    this.hookShare = new Float64Array(swimmer.hooks.length);
    this.#hookLengths = Float64Array.from(swimmer.hooks, (h) => hookLength(h.mass));
    this.#wholeBody = swimmer.strips.reduce((sum, s) => sum + s.volume, 0);
  }

  /** Everything that displaces lies within this distance of G, m. */
  get reach(): number {
    return this.#geo().reach;
  }

  #geo(): Geometry {
    if (!this.#geometry) {
      this.#geometry = geometryOf(this.#swimmer, this.#hookLengths, this.#wholeBody);
      for (const slab of this.#geometry.slabs)
        this.#strips[slab.strip] = (this.#strips[slab.strip] as number) + slab.volume;
    }
    return this.#geometry;
  }

  /** All under water: the volume of the whole account at B, every share 1. `Z`: height of G, m. */
  under(Z: number, sin: number, cos: number): void {
    const { rigid } = this.#swimmer;
    const bx = rigid.B.x - rigid.G.x;
    const bz = rigid.B.z - rigid.G.z;
    this.volume = rigid.displaced;
    this.x = this.volume * bx;
    this.z = this.volume * bz;
    this.moment = this.x * cos - this.z * sin;
    this.depth = -this.volume * (Z + bx * sin + bz * cos);
    this.#all(1);
  }

  /** All out of the water. */
  dry(): void {
    this.volume = this.x = this.z = this.moment = this.depth = 0;
    this.#swimmer.hooks.forEach(
      (hook, i) => (this.depth -= hook.displaced * HOOK_CENTRE * num(this.#hookLengths, i)),
    );
    this.#all(0);
  }

  #all(share: number): void {
    if (this.#even === share) return;
    this.#even = share;
    this.bodyShare = share;
    this.bladeShare = share;
    this.share.fill(share);
    this.hookShare.fill(share);
  }

  /** For any place of the surface. `Z`: height of G, m. */
  cut(Z: number, sin: number, cos: number): void {
    this.#even = NaN;
    this.volume = this.x = this.z = this.moment = this.depth = 0;
    this.#cutBody(Z, sin, cos);
    this.#cutBoxes(Z, sin, cos);
    this.#cutRods(Z, sin, cos);
    this.#cutSpheres(Z, sin, cos);
    this.#cutHooks(Z, sin, cos);
    this.#cutBlade(Z, sin, cos);
    this.moment += this.x * cos - this.z * sin;
  }

  #cutBody(Z: number, sin: number, cosine: number): void {
    const { slabs } = this.#geo();
    const { share } = this;
    share.fill(0);
    const upright = cosine >= 0;
    // a bait within 1e-12 of standing on its end counts as that far from it
    const c = Math.max(Math.abs(cosine), 1e-12);
    let under = 0;
    for (let i = 0; i < slabs.length; i++) {
      const slab = slabs[i] as Slab;
      const { half, strip } = slab;
      // belly-up everything is mirrored: heights then run from G's level to what hangs below it
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
        this.x += volume * slab.x;
        this.z += volume * centroidZ;
        this.depth += volume * (depth - centroidZ * cosine);
        under += volume;
        continue;
      }
      const zeta = depth / c;
      const delta = a / c;
      const tilt = S / c; // dζ/d(−ξ)
      const ds = 2 * half;
      const p = this.#fore;
      let v: number;
      let momentX: number;
      let momentZ: number;
      if (delta < LEVEL * (section.top - section.bottom)) {
        section.below(zeta, p);
        const second = p[0] as number;
        const first = p[1] as number;
        const sixth = (delta * delta) / 6;
        v = ds * ((p[2] as number) + sixth * second);
        this.depth += ds * c * ((p[3] as number) + sixth * first);
        momentZ = ds * (zeta * (p[2] as number) - (p[3] as number) + sixth * (first + zeta * second));
        momentX = (-tilt * first * ds * half * half) / 3;
      } else {
        const m = this.#aft;
        section.below(zeta + delta, p);
        section.below(zeta - delta, m);
        const steep = sine / c;
        const gapB = (p[3] as number) - (m[3] as number);
        const gapC = (p[4] as number) - (m[4] as number);
        v = gapB / steep;
        this.depth += (c * gapC) / steep;
        momentZ = ((p[5] as number) - (m[5] as number)) / steep;
        momentX = (gapC - delta * ((p[3] as number) + (m[3] as number))) / (tilt * steep);
      }
      share[strip] = (share[strip] as number) + v;
      const z = momentZ + slope * momentX;
      this.x += slab.x * v + momentX;
      this.z += upright ? z : -z;
      under += v;
    }
    for (let k = 0; k < share.length; k++) {
      const whole = this.#strips[k] as number;
      share[k] = whole > 0 ? (share[k] as number) / whole : 0;
    }
    this.volume += under;
    this.bodyShare = under / this.#wholeBody;
  }

  /** Patches of the coats. */
  #cutBoxes(Z: number, sin: number, cos: number): void {
    const list = this.#geo().elements.boxes;
    for (let k = 0; k < list.length; k += ELEMENT) {
      const x = num(list, k);
      const z = num(list, k + 1);
      const dx = num(list, k + 2);
      const dz = num(list, k + 3);
      // half the height of an even box with the same second moment: smooth through level trim
      const half = Math.sqrt(dx * dx * sin * sin + dz * dz * cos * cos);
      const halfByPitch = half > 0 ? (sin * cos * (dx * dx - dz * dz)) / half : 0;
      this.#cutPiece(x, z, -Z - x * sin - z * cos, half, halfByPitch, num(list, k + 4));
    }
  }

  #cutRods(Z: number, sin: number, cos: number): void {
    const list = this.#geo().elements.rods;
    for (let k = 0; k < list.length; k += ELEMENT) {
      const x = num(list, k);
      const z = num(list, k + 1);
      const rise = num(list, k + 2) * sin + num(list, k + 3) * cos;
      const lean = num(list, k + 2) * cos - num(list, k + 3) * sin;
      const depth = -Z - x * sin - z * cos;
      this.#cutPiece(x, z, depth, Math.abs(rise), rise >= 0 ? lean : -lean, num(list, k + 4));
    }
  }

  /** One even piece with its middle at (x, z). */
  #cutPiece(x: number, z: number, depth: number, half: number, halfByPitch: number, whole: number): void {
    const part = pieceVolume(whole, depth, half);
    if (part === 0) return;
    add(this, part, x, z);
    this.depth += pieceDepth(part, depth, half);
    if (depth < half) this.moment -= pieceShift(whole, depth, half) * halfByPitch;
  }

  #cutSpheres(Z: number, sin: number, cos: number): void {
    const list = this.#geo().elements.spheres;
    for (let k = 0; k < list.length; k += 4) {
      const x = num(list, k);
      const z = num(list, k + 1);
      const depth = -Z - x * sin - z * cos;
      const whole = num(list, k + 3);
      const part = sphereVolume(whole, depth, num(list, k + 2));
      if (part === 0) continue;
      // lift at the centre: the part's centroid stands below it, on the same vertical
      add(this, part, x, z);
      this.depth += sphereDepth(whole, depth, num(list, k + 2));
    }
  }

  /** Hooks and rings hang below their eyes, and their lift acts at the eye. (At rest they count as always under.) */
  #cutHooks(Z: number, sin: number, cos: number): void {
    const { hooks } = this.#swimmer;
    for (let i = 0; i < hooks.length; i++) {
      const { at, displaced } = hooks[i] as (typeof hooks)[number];
      const length = num(this.#hookLengths, i);
      const below = HOOK_CENTRE * length;
      const depth = -Z - at.x * sin - at.z * cos + below;
      const share = hookUnder(depth, length);
      const part = share * displaced;
      this.hookShare[i] = share;
      add(this, part, at.x, at.z);
      this.depth += pieceDepth(part, depth, HOOK_HALF * length) - displaced * below;
    }
  }

  #cutBlade(Z: number, sin: number, cos: number): void {
    const { blade } = this.#swimmer;
    if (!blade) return;
    const depthAt = (p: Vec): number => -Z - p.x * sin - p.z * cos;
    const root = depthAt(blade.root);
    const tip = depthAt(blade.tip);
    const deep = Math.max(root, tip);
    const high = Math.min(root, tip);
    this.bladeShare = high >= 0 ? 1 : deep <= 0 ? 0 : deep / (deep - high);
  }
}

/** An entry of a list that is known to exist. */
function num(list: Float64Array, i: number): number {
  return list[i] as number;
}

function geometryOf(swimmer: Cuttable, hookLengths: Float64Array, body: number): Geometry {
  const slabs = slabsOf(swimmer);
  const elements = elementsOf(swimmer);
  const hooks = swimmer.hooks.reduce((sum, h) => sum + h.displaced, 0);
  const parts = body + elements.volume + hooks;
  if (!(Math.abs(parts - swimmer.rigid.displaced) <= 1e-9 * swimmer.rigid.displaced))
    throw new RangeError(
      `${swimmer.bait.spec.name}: its parts displace ${parts} m³, its account says ${swimmer.rigid.displaced} m³`,
    );
  return { slabs, elements, reach: reachOf(swimmer, elements, hookLengths) };
}

function reachOf(swimmer: Cuttable, elements: Elements, hookLengths: Float64Array): number {
  const { blade, hooks, strips } = swimmer;
  const far = (x: number, z: number, more = 0): number => Math.sqrt(x * x + z * z) + more;
  const spans = strips.flatMap((s) => [far(s.x, s.top, s.ds / 2), far(s.x, s.bottom, s.ds / 2)]);
  hooks.forEach((h, i) => spans.push(far(h.at.x, h.at.z, hookLengths[i])));
  if (blade) spans.push(far(blade.root.x, blade.root.z), far(blade.tip.x, blade.tip.z));
  const { boxes, rods, spheres } = elements;
  for (const list of [boxes, rods])
    for (let k = 0; k < list.length; k += ELEMENT)
      spans.push(far(num(list, k), num(list, k + 1), far(num(list, k + 2), num(list, k + 3))));
  for (let k = 0; k < spheres.length; k += 4)
    spans.push(far(num(spheres, k), num(spheres, k + 1), num(spheres, k + 2)));
  return Math.max(...spans) * (1 + 1e-9);
}
