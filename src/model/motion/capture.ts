import type { Vec, Wrench } from "../base";
import { addForce, addWrench, clearWrench, wrench } from "../base";
import type { ChamberSpec } from "../bait";
import type { Swimmer, ForceKey, Surroundings } from "../forces";
import type { LooseBall } from "./chamber";
import { beyondModel, MotionError } from "./error";
import { COLUMN, layout, LINE, type Layout } from "./layout";
import type { Stepper } from "./stepper";
import type { MovingLine } from "../line";
import type { HangingHook, RecordingMeta } from "./types";

/** What a frame is made from. */
export interface CaptureParts {
  readonly stepper: Stepper;
  /** The forces that act on the bait at the present moment, each by itself; body axes about the swimmer's G. */
  readonly acting: ReadonlyMap<ForceKey, Wrench>;
  readonly swimmer: Swimmer;
  readonly around: Surroundings;
  readonly hooks: readonly HangingHook[];
  readonly chambers: readonly ChamberSpec[];
  readonly balls: readonly LooseBall[];
  readonly line: MovingLine | null;
  readonly meta: RecordingMeta;
}

/**
 * Limits beyond which nothing on a line moves: m/s, and rad/s (160 turns a second; the engine itself turns no more than π/2
 * a step).
 */
const FASTEST = 60;
const FASTEST_TURN = 1000;

/**
 * Writes one frame of the present moment.
 *
 * The forces are grouped as in the account, for the whole bait: weight and buoyancy count hooks at their eyes and balls
 * where they are. What a hook pulls beyond its weight in water (drag, swing) stands under "hooks". What balls, floor and
 * walls push beyond the balls' weight stands under "contact". So at rest only weight and buoyancy are left, and the sum of
 * all is what acts on the bait.
 */
export class Capture {
  private readonly parts: CaptureParts;
  private readonly layout: Layout;
  private readonly byKey: ReadonlyMap<ForceKey, Wrench>;
  private readonly wholeMass: number;

  constructor(parts: CaptureParts) {
    this.parts = parts;
    this.layout = layout(parts.meta);
    this.byKey = new Map(parts.meta.forces.map(({ key }) => [key, wrench()]));
    const apart = [...parts.hooks, ...parts.balls].reduce((sum, { mass }) => sum + mass, 0);
    this.wholeMass = parts.swimmer.rigid.mass + apart;
  }

  private of(key: ForceKey): Wrench {
    const found = this.byKey.get(key);
    if (found === undefined) throw new RangeError(`no column for the force "${key}"`);
    return found;
  }

  /** Writes the frame to `data` from `offset` on. Throws MotionError where a number is out of all bounds. */
  write(data: Float64Array, offset: number): void {
    const { stepper, meta } = this.parts;
    const { state, velocity } = stepper.bait;
    const { pull, rod } = stepper.rig;
    const put = (column: number, value: number): void => {
      data[offset + column] = value;
    };
    this.check("X (m)", state.X);
    this.check("Z (m)", state.Z);
    this.check("pitch (rad)", state.pitch);
    this.check("forward speed (m/s)", state.u, FASTEST);
    this.check("upward speed (m/s)", state.w, FASTEST);
    this.check("pitch rate (rad/s)", state.q, FASTEST_TURN);
    this.check("tension (N)", pull.tension);
    put(COLUMN.X, state.X);
    put(COLUMN.Z, state.Z);
    put(COLUMN.pitch, state.pitch);
    put(COLUMN.VX, velocity.x);
    put(COLUMN.VZ, velocity.z);
    put(COLUMN.q, state.q);
    put(COLUMN.tension, pull.tension);
    const there = this.parts.line !== null && !rod.gone;
    put(COLUMN.line, !there ? LINE.none : pull.slack ? LINE.slack : LINE.taut);
    const balls = this.writeBalls(put);
    this.writeHooks(put);
    if (this.parts.line !== null) this.parts.line.draw(data, offset + this.layout.line);
    const { G, B } = this.gather(balls);
    put(COLUMN.Gx, G.x + meta.centre.x);
    put(COLUMN.Gz, G.z + meta.centre.z);
    put(COLUMN.Bx, B.x + meta.centre.x);
    put(COLUMN.Bz, B.z + meta.centre.z);
    meta.forces.forEach(({ key }, i) => {
      const f = this.of(key);
      const first = this.layout.forces + 3 * i;
      put(first, f.x);
      put(first + 1, f.z);
      // from the G of the moving body to the G of the whole bait
      put(first + 2, f.m - G.x * f.z + G.z * f.x);
    });
  }

  private check(name: string, value: number, limit = Infinity): void {
    if (!Number.isFinite(value) || Math.abs(value) > limit)
      throw beyondModel(name, value, this.parts.stepper.time, this.parts.meta.legs);
  }

  private writeHooks(put: (column: number, value: number) => void): void {
    this.parts.stepper.bodies.hooks.forEach((body, i) => {
      const angle = body.getAngle();
      this.check(`angle of hook ${i}`, angle);
      put(this.layout.hooks + i, angle);
    });
  }

  /** Balls relative to the moving body's G, body axes; none may have left its chamber. */
  private writeBalls(put: (column: number, value: number) => void): Vec[] {
    const { stepper, balls, chambers, meta } = this.parts;
    const { state, sin: s, cos: c } = stepper.bait;
    return stepper.bodies.balls.map((body, i) => {
      const at = body.getPosition();
      const dx = at.x - state.X;
      const dz = at.y - state.Z;
      const p = { x: dx * c + dz * s, z: dz * c - dx * s };
      const x = p.x + meta.centre.x;
      const z = p.z + meta.centre.z;
      this.check(`place of ball ${i}`, x + z);
      const chamber = chambers[balls[i]?.chamber ?? -1];
      if (
        chamber === undefined ||
        -x < chamber.from ||
        -x > chamber.to ||
        Math.abs(z - chamber.height) > chamber.tall / 2
      )
        throw new MotionError(
          `place of ball ${i} (m)`,
          `[${-x}, ${z}]`,
          stepper.time,
          `it has left the chamber "${chamber?.name ?? "?"}"`,
          "Use larger balls, or move the bait more gently",
        );
      put(this.layout.balls + 2 * i, x);
      put(this.layout.balls + 2 * i + 1, z);
      return p;
    });
  }

  /** Fills the wrenches by force, about the moving body's G in body axes; gives the whole bait's G and B from there. */
  private gather(ballPlaces: readonly Vec[]): { G: Vec; B: Vec } {
    const { stepper, acting, swimmer, around, hooks, balls, meta } = this.parts;
    const { sin: s, cos: c } = stepper.bait;
    const { pull } = stepper.rig;
    const { now: held } = stepper.held;
    for (const w of this.byKey.values()) clearWrench(w);
    for (const [key, force] of acting) addWrench(this.of(key), force);

    const weight = this.of("weight");
    const buoyancy = this.of("buoyancy");
    const inHooks = this.of("hooks");
    const contact = this.of("contact");
    /** Adds an upward force of `lift` N at a point. */
    const up = (out: Wrench, p: Vec, lift: number): void => {
      addForce(out, p.x, p.z, lift * s, lift * c);
    };
    let mx = 0;
    let mz = 0;
    let bx = 0;
    let bz = 0;
    let lifted = buoyancy.x * s + buoyancy.z * c;
    const own = this.centreOfBuoyancy(buoyancy);
    bx += lifted * own.x;
    bz += lifted * own.z;

    contact.x += held.x * c + held.z * s;
    contact.z += held.z * c - held.x * s;
    contact.m += held.m;
    const rate = 1 / stepper.h;
    hooks.forEach((hook, i) => {
      const eye = { x: hook.at.x - meta.centre.x, z: hook.at.z - meta.centre.z };
      const joint = stepper.bodies.joints[i]?.getReactionForce(rate);
      if (joint === undefined) throw new RangeError(`hook ${i} has no joint`);
      // The joint's force on the bait is the opposite of that on the hook.
      const x = -(joint.x * c + joint.y * s);
      const z = -(joint.y * c - joint.x * s);
      addForce(inHooks, eye.x, eye.z, x, z);
      addForce(contact, eye.x, eye.z, -x, -z);
      const own = around.gravity * hook.mass;
      const lift = around.gravity * around.density * hook.displaced * stepper.hooks.underWater(i);
      up(weight, eye, -own);
      up(buoyancy, eye, lift);
      up(inHooks, eye, own - lift);
      mx += hook.mass * eye.x;
      mz += hook.mass * eye.z;
      bx += lift * eye.x;
      bz += lift * eye.z;
      lifted += lift;
    });
    balls.forEach((ball, i) => {
      const p = ballPlaces[i];
      if (p === undefined) return;
      up(weight, p, -around.gravity * ball.mass);
      up(contact, p, around.gravity * ball.mass);
      mx += ball.mass * p.x;
      mz += ball.mass * p.z;
    });
    const line = this.of("line");
    addForce(line, swimmer.tie.x, swimmer.tie.z, pull.x * c + pull.z * s, pull.z * c - pull.x * s);

    const G = { x: mx / this.wholeMass, z: mz / this.wholeMass };
    return { G, B: lifted > 0 ? { x: bx / lifted, z: bz / lifted } : own };
  }

  /** The point on the buoyancy's line of action nearest to the wholly immersed body's centre of buoyancy. */
  private centreOfBuoyancy(f: Wrench): Vec {
    const { rigid } = this.parts.swimmer;
    const x = rigid.B.x - rigid.G.x;
    const z = rigid.B.z - rigid.G.z;
    const square = f.x * f.x + f.z * f.z;
    if (square === 0) return { x, z };
    const about = f.m - x * f.z + z * f.x;
    return { x: x + (about * f.z) / square, z: z - (about * f.x) / square };
  }
}
