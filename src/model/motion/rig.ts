import type { Vec } from "../base";
import type { EyeMotion, LinePull, MovingLine, RodEnd } from "../line";
import type { RodState, Timeline } from "./cadence";

/** Rod, reel and line of a run. */
export interface RigParts {
  readonly line: MovingLine;
  readonly rod: Timeline;
  /** Line out at the start, m. */
  readonly lineOut: number;
  /** Tie eye relative to G, body axes, m. */
  readonly tie: Vec;
}

/** Rod and reel follow the cadence; the line between them and the tie eye pulls. Without tackle nothing does. */
export class Rig {
  /** Rod and reel at the present moment. */
  readonly rod: RodState = { x: 0, z: 0, vx: 0, vz: 0, wound: 0, winding: 0, free: false, gone: true };
  /** What the line does to the eye. */
  readonly pull: LinePull = { x: 0, z: 0, tension: 0, slack: true };
  private readonly end: RodEnd = { x: 0, z: 0, vx: 0, vz: 0, length: 0, lengthRate: 0, free: false };
  /** Line drawn off the reel so far, m. */
  private drawnOff = 0;

  constructor(
    private readonly parts: RigParts | null,
    private readonly h: number,
  ) {}

  /** Takes rod and reel to a time (s). Gives the tie eye from G (body axes, m) where a line holds it, else null. */
  moveTo(time: number): Vec | null {
    const { parts, rod, pull } = this;
    pull.x = 0;
    pull.z = 0;
    pull.tension = 0;
    pull.slack = true;
    if (parts === null) return null;
    parts.rod.at(time, rod);
    return rod.gone ? null : parts.tie;
  }

  /** After `moveTo`: lets the line pull at the eye. */
  haul(eye: EyeMotion): void {
    const { parts, rod, end, pull } = this;
    if (parts === null) return;
    end.x = rod.x;
    end.z = rod.z;
    end.vx = rod.vx;
    end.vz = rod.vz;
    end.free = rod.free;
    end.length = parts.lineOut + this.drawnOff - rod.wound;
    end.lengthRate = -rod.winding;
    if (rod.free) {
      const dx = rod.x - eye.x;
      const dz = rod.z - eye.z;
      const drawn = Math.max(0, Math.sqrt(dx * dx + dz * dz) - end.length);
      this.drawnOff += drawn;
      end.length += drawn;
    }
    parts.line.pull(this.h, eye, end, pull);
  }
}
