import type { Vec, Wrench } from "../base";
import { cos, hashNumbers, sin, rotate } from "../base";
import type { ForceKey } from "../forces";
import { MotionError } from "./error";
import { COLUMN, layout, LINE, type Layout } from "./layout";
import type { Channel, Mark, Recording, RecordingChunk, RecordingMeta, Snapshot } from "./types";

/** A recording to which chunks of frames are appended as the run goes on. */
export class GrowingRecording implements Recording {
  readonly meta: RecordingMeta;
  private readonly layout: Layout;
  private readonly data: Float64Array;
  private readonly channels: Readonly<Record<Channel, Float64Array>>;
  private count = 0;

  constructor(meta: RecordingMeta) {
    this.meta = meta;
    this.layout = layout(meta);
    if (this.layout.stride !== meta.stride)
      throw new MotionError(
        "stride",
        meta.stride,
        null,
        `${this.layout.stride} numbers a frame expected`,
        "Use one version of the program",
      );
    this.data = new Float64Array(meta.frames * meta.stride);
    const channel = (): Float64Array => new Float64Array(meta.frames);
    this.channels = {
      depth: channel(),
      pitch: channel(),
      speed: channel(),
      tension: channel(),
      x: channel(),
      rise: channel(),
      top: channel(),
      low: channel(),
      slack: channel(),
    };
  }

  get frameRate(): number {
    return this.meta.frameRate;
  }
  /** Frames so far. */
  get frames(): number {
    return this.count;
  }
  /** Time of the last frame so far, s. */
  get duration(): number {
    return Math.max(0, this.count - 1) / this.meta.frameRate;
  }
  get marks(): readonly Mark[] {
    return this.meta.marks;
  }
  /** Whether the whole run is in. */
  get complete(): boolean {
    return this.count === this.meta.frames;
  }

  /** Adds the frames that follow the last one. */
  append(chunk: RecordingChunk): void {
    const { stride } = this.meta;
    if (chunk.firstFrame !== this.count || chunk.firstFrame + chunk.frames > this.meta.frames)
      throw new MotionError(
        "firstFrame",
        chunk.firstFrame,
        this.duration,
        `frame ${this.count} of ${this.meta.frames} follows`,
        "Append the chunks of one run in their order",
      );
    if (chunk.data.length !== chunk.frames * stride)
      throw new MotionError(
        "data.length",
        chunk.data.length,
        this.duration,
        `${chunk.frames * stride} numbers expected`,
        "Append chunks as the run gave them",
      );
    this.data.set(chunk.data, chunk.firstFrame * stride);
    this.count += chunk.frames;
    for (let frame = chunk.firstFrame; frame < this.count; frame++) this.fillChannels(frame);
  }

  private fillChannels(frame: number): void {
    const number = this.reader(frame * this.meta.stride);
    const pitch = number(COLUMN.pitch);
    const { tie, centre, hull } = this.meta;
    const s = sin(pitch);
    const c = cos(pitch);
    const eye = rotate({ x: tie.x - centre.x, z: tie.z - centre.z }, s, c);
    const G = rotate({ x: number(COLUMN.Gx) - centre.x, z: number(COLUMN.Gz) - centre.z }, s, c);
    const q = number(COLUMN.q);
    const VX = number(COLUMN.VX) - q * G.z;
    const VZ = number(COLUMN.VZ) + q * G.x;
    this.channels.depth[frame] = -(number(COLUMN.Z) + eye.z);
    this.channels.pitch[frame] = pitch;
    this.channels.speed[frame] = Math.sqrt(VX * VX + VZ * VZ);
    this.channels.tension[frame] = number(COLUMN.tension);
    this.channels.x[frame] = number(COLUMN.X) + eye.x;
    this.channels.rise[frame] = VZ;
    let high = -Infinity;
    let low = Infinity;
    for (const p of hull) {
      const z = s * (p.x - centre.x) + c * (p.z - centre.z);
      if (z > high) high = z;
      if (z < low) low = z;
    }
    this.channels.top[frame] = -(number(COLUMN.Z) + high);
    this.channels.low[frame] = -(number(COLUMN.Z) + low);
    this.channels.slack[frame] = number(COLUMN.line) === LINE.slack ? 1 : 0;
  }

  /**
   * The same run at another length: what is recorded of it is taken over. `meta` must be of the same run; only its end may
   * be another.
   */
  atLength(meta: RecordingMeta): GrowingRecording {
    const other = new GrowingRecording(meta);
    other.count = Math.min(this.count, meta.frames);
    other.data.set(this.data.subarray(0, other.count * meta.stride));
    for (const [name, values] of Object.entries(this.channels))
      other.channels[name as Channel].set(values.subarray(0, other.count));
    return other;
  }

  private reader(base: number): (column: number) => number {
    const { data } = this;
    return (column) => {
      const value = data[base + column];
      if (value === undefined) throw new RangeError(`column ${column} of the frame at ${base} is not there`);
      return value;
    };
  }

  channel(name: Channel): Float64Array {
    return this.channels[name].subarray(0, this.count);
  }

  wrench(frame: number): ReadonlyMap<ForceKey, Wrench> {
    if (!Number.isInteger(frame) || frame < 0 || frame >= this.count)
      throw new MotionError(
        "frame",
        frame,
        null,
        `there are ${this.count} frames`,
        "Ask for a frame from 0 on",
      );
    const number = this.reader(frame * this.meta.stride);
    return new Map(
      this.meta.forces.map(({ key }, i) => {
        const first = this.layout.forces + 3 * i;
        return [key, { x: number(first), z: number(first + 1), m: number(first + 2) }];
      }),
    );
  }

  at(time: number): Snapshot {
    if (this.count === 0)
      throw new MotionError("frames", 0, time, "nothing is recorded yet", "Append a chunk first");
    if (Number.isNaN(time))
      throw new MotionError("time", time, null, "not a moment", "Ask for a time in seconds");
    const place = Math.min(Math.max(time, 0), this.duration) * this.meta.frameRate;
    const frame = Math.min(Math.floor(place), Math.max(0, this.count - 2));
    const next = Math.min(frame + 1, this.count - 1);
    return snapshot(
      this.meta,
      this.layout,
      this.reader(frame * this.meta.stride),
      this.reader(next * this.meta.stride),
      place - frame,
      place / this.meta.frameRate,
    );
  }

  hash(): string {
    return hashNumbers(this.data.subarray(0, this.count * this.meta.stride));
  }
}

type Reader = (column: number) => number;

/** Cubic through two values with their rates (Hermite), `f` in 0–1 of the interval `dt`. */
function hermite(a: number, b: number, da: number, db: number, dt: number, f: number): number {
  const g = 1 - f;
  return a * g * g * (1 + 2 * f) + b * f * f * (3 - 2 * f) + dt * f * g * (da * g - db * f);
}

/** What to draw between two frames. Pose by cubics (place and rate are known at both), all else straight. */
function snapshot(
  meta: RecordingMeta,
  columns: Layout,
  a: Reader,
  b: Reader,
  f: number,
  time: number,
): Snapshot {
  const dt = 1 / meta.frameRate;
  const blend: Reader = (column) => a(column) + f * (b(column) - a(column));
  const cubic = (value: number, rate: number): number => hermite(a(value), b(value), a(rate), b(rate), dt, f);
  const pitch = cubic(COLUMN.pitch, COLUMN.q);
  const s = sin(pitch);
  const c = cos(pitch);
  const centre = { x: cubic(COLUMN.X, COLUMN.VX), z: cubic(COLUMN.Z, COLUMN.VZ) };
  /** World place of a body point. */
  const place = (p: Vec): Vec => {
    const arm = rotate({ x: p.x - meta.centre.x, z: p.z - meta.centre.z }, s, c);
    return { x: centre.x + arm.x, z: centre.z + arm.z };
  };
  const point = (first: number): Vec => ({ x: blend(first), z: blend(first + 1) });

  const G = point(COLUMN.Gx);
  const B = point(COLUMN.Bx);
  const q = blend(COLUMN.q);
  const arm = rotate({ x: G.x - meta.centre.x, z: G.z - meta.centre.z }, s, c);
  const eye = place(meta.tie);

  // The line is there only where it is at both frames: it does not fade away.
  const hasLine = a(COLUMN.line) !== LINE.none && (f === 0 || b(COLUMN.line) !== LINE.none);
  const nearer = f < 0.5 ? a : b;
  const line = hasLine
    ? Array.from({ length: meta.linePoints }, (_, i) => (i === 0 ? eye : point(columns.line + 2 * i)))
    : [];

  return {
    time,
    nose: place({ x: 0, z: 0 }),
    pitch,
    G: place(G),
    B: place(B),
    velocity: { x: blend(COLUMN.VX) - q * arm.z, z: blend(COLUMN.VZ) + q * arm.x },
    eye,
    hooks: meta.hooks.map((hook, i) => ({ at: place(hook.at), angle: blend(columns.hooks + i) })),
    balls: meta.balls.map((_, i) => place(point(columns.balls + 2 * i))),
    line,
    slack: hasLine && nearer(COLUMN.line) === LINE.slack,
    tension: blend(COLUMN.tension),
    forces: meta.forces.map(({ key, anchor }, i) => {
      const first = columns.forces + 3 * i;
      const force = point(first);
      const usual = key === "weight" ? G : key === "buoyancy" ? B : anchor;
      const at = attack(force, blend(first + 2), G, usual, meta.arm);
      return { key, at: place(at), force: rotate(force, s, c) };
    }),
  };
}

/**
 * Where the arrow of a force stands (body frame): the point of its line of action that is nearest to its usual place. A
 * force with moment M about G acts along the points p with (p − G) × F = M. A line that passes farther off than `arm`
 * belongs to a couple with hardly any force: its arrow stays at the usual place.
 */
function attack(force: Vec, moment: number, G: Vec, usual: Vec, arm: number): Vec {
  const square = force.x * force.x + force.z * force.z;
  const about = moment - (usual.x - G.x) * force.z + (usual.z - G.z) * force.x;
  if (about * about > arm * arm * square || square === 0) return usual;
  return { x: usual.x + (about * force.z) / square, z: usual.z - (about * force.x) / square };
}
