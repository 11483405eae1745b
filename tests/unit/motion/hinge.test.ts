import { describe, expect, it } from "vitest";
import { random } from "../../../src/model/base";
import { Hinge } from "../../../src/model/motion/engine/hinge";
import { type Body, Circle, Edge, RevoluteJoint, World } from "../../../src/model/motion/engine/planck";

type Make = (a: Body, b: Body, pinA: Pin, pinB: Pin) => RevoluteJoint;
interface Pin {
  readonly x: number;
  readonly y: number;
}

const ofTheEngine: Make = (bodyA, bodyB, localAnchorA, localAnchorB) =>
  new RevoluteJoint({ bodyA, bodyB, localAnchorA, localAnchorB, referenceAngle: 0 });
const ours: Make = (a, b, pinA, pinB) => new Hinge({ a, b, pinA, pinB });

/** A bar with two hangers over a floor, shoved about by chance: all numbers of all steps, and in how many something touched. */
function shove(
  make: Make,
  seed: number,
  passes: number,
  places: number,
): { readonly told: readonly number[]; readonly touched: number } {
  const chance = random(seed);
  const some = (size: number): number => size * (2 * chance.uniform() - 1);
  const world = new World({ gravity: { x: 0, y: -9.8 }, allowSleep: false });
  world
    .createBody()
    .createFixture({ shape: new Edge({ x: -9, y: -0.05 }, { x: 9, y: -0.05 }), friction: 0.4 });
  const body = (x: number, y: number, mass: number, I: number): Body => {
    const made = world.createBody({ type: "dynamic", position: { x, y } });
    made.createFixture({ shape: new Circle({ x: 0, y: -0.01 }, 0.002), density: 0, filterGroupIndex: -1 });
    made.setMassData({ mass, center: { x: 0, y: 0 }, I });
    return made;
  };
  const bar = body(0, 0, 0.012, 9e-6);
  const joints = [0.01, -0.04].map((x, i) => {
    const pin = { x, y: -0.008 };
    const hanger = body(x, -0.018, 0.001 + 0.0007 * i, 6e-8);
    const joint = make(bar, hanger, pin, { x: 0, y: 0.01 });
    world.createJoint(joint);
    return joint;
  });
  bar.setAngularVelocity(some(40));
  const told: number[] = [];
  let touched = 0;
  for (let step = 0; step < 1500; step++) {
    bar.applyForceToCenter({ x: some(0.3), y: 0.13 + some(0.3) }, false);
    bar.applyTorque(some(0.01), false);
    world.step(1 / 960, passes, places);
    for (let contact = world.getContactList(); contact !== null; contact = contact.getNext())
      if (contact.isTouching()) {
        touched++;
        break;
      }
    for (const joint of joints) {
      const force = joint.getReactionForce(960);
      told.push(force.x, force.y, joint.getReactionTorque(960), joint.getJointAngle());
    }
    for (let b = world.getBodyList(); b !== null; b = b.getNext()) {
      const { x, y } = b.getPosition();
      const v = b.getLinearVelocity();
      told.push(x, y, b.getAngle(), v.x, v.y, b.getAngularVelocity());
    }
  }
  return { told, touched };
}

describe("a hook's hinge", () => {
  it.each([
    [1, 4, 1],
    [2, 12, 1],
    // the engine stops its passes over places where all joints say that they are close enough
    [3, 4, 5],
  ])("is the engine's revolute joint bit for bit (seed %i, passes %i, %i)", (seed, passes, places) => {
    const engine = shove(ofTheEngine, seed, passes, places);
    const { told, touched } = shove(ours, seed, passes, places);
    expect(told.length).toBe(1500 * (2 * 4 + 4 * 6));
    expect(told.every(Number.isFinite)).toBe(true);
    expect(told.findIndex((value, i) => !Object.is(value + 0, (engine.told[i] as number) + 0))).toBe(-1);
    // they strike the floor, and do not only lie on it
    expect(touched).toBeGreaterThan(50);
    expect(touched).toBeLessThan(1450);
  });
});
