import { describe, expect, it, vi } from "vitest";
import { createEvaluator } from "../../../src/model/forces";
import { minnow, water } from "../../lib/swum";
import { free } from "./free";
import { rungeKutta, type All, type Body2 } from "./reference";

// Whole runs: long only where other work is on the machine.
vi.setConfig({ testTimeout: 60_000 });

const around = water(Infinity, false);

/** The minnow let go, in the engine and by the reference; greatest differences over the time. */
function compare(start: { pitch: number; vx: number; vz: number; q: number }, seconds: number, rate: number) {
  const bait = minnow(3e-3);
  const made = free(bait, around, { x: 0, z: -5, ...start }, { rate });
  const { swimmer, hooks, stepper, bodies } = made;
  const { G } = swimmer.rigid;
  const own = createEvaluator(swimmer, around);
  const body: Body2 = {
    mass: { ...made.dynamics.mass },
    force(u, w, q, pitch) {
      own.evaluate({ u, w, q, pitch, X: 0, Z: -5 });
      return [own.force.x, own.force.z, own.force.m];
    },
    hooks: hooks.map((h) => ({ ...h, at: { x: h.at.x - G.x, z: h.at.z - G.z } })),
    density: around.density,
    gravity: around.gravity,
  };
  let y: All = [0, -5, start.pitch, start.vx, start.vz, start.q, 0, 0, 0, 0];
  // fourth order: at 960 steps/s its own error is below 1e-6 of all differences here
  const fine = Math.max(1, 960 / rate);
  let place = 0;
  let pitch = 0;
  let angle = 0;
  let travel = 0;
  for (let k = 0; k < seconds * rate; k++) {
    stepper.advance();
    for (let i = 0; i < fine; i++) y = rungeKutta(body, y, 1 / rate / fine);
    place = Math.max(place, Math.hypot(stepper.bait.state.X - y[0]!, stepper.bait.state.Z - y[1]!));
    pitch = Math.max(pitch, Math.abs(stepper.bait.state.pitch - y[2]!));
    bodies.hooks.forEach((hook, i) => {
      angle = Math.max(angle, Math.abs(hook.getAngle() - y[6 + 2 * i]!));
    });
    travel = Math.max(travel, Math.hypot(y[0]!, y[1]! + 5));
  }
  const deg = 180 / Math.PI;
  return { place, pitch: pitch * deg, angle: angle * deg, travel };
}

describe("a bait with two hanging hooks against the full equations of all bodies", () => {
  it("released from rest for 3 s: place within 0.05 mm, pitch within 0.05°", () => {
    const off = compare({ pitch: 0.7, vx: 0, vz: 0, q: 0 }, 3, 960);
    expect(off.travel).toBeGreaterThan(0.2);
    expect(off.place).toBeLessThan(5e-5);
    expect(off.pitch).toBeLessThan(0.05);
    expect(off.angle).toBeLessThan(0.1);
  });

  it("thrown at 0.8 m/s, hooks at rest: within 0.1 % of the way and 0.3°", () => {
    // The hooks' first jerk falls into the first step: they lag by half a step (1° of a swing of 100°).
    const off = compare({ pitch: 0.3, vx: 0.8, vz: 0, q: 0 }, 2, 960);
    expect(off.place).toBeLessThan(1e-3 * off.travel);
    expect(off.pitch).toBeLessThan(0.3);
    expect(off.angle).toBeLessThan(1.5);
  });

  it("the difference falls with the step", () => {
    const start = { pitch: 0.3, vx: 0.5, vz: 0.1, q: 4 };
    const coarse = compare(start, 1, 480);
    const fine = compare(start, 1, 1920);
    expect(fine.place).toBeLessThan(coarse.place / 2.5);
    expect(fine.pitch).toBeLessThan(coarse.pitch / 2.5);
  });
});
