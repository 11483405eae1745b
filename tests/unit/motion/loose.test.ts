import { describe, expect, it } from "vitest";
import type { BaitSpec } from "../../../src/model/bait";
import type { Body } from "../../../src/model/motion/engine/planck";
import { minnow, rattler, water } from "../../lib/swum";
import { free, lookAlways } from "./free";

const START = { x: 0, z: -1, pitch: 0.3, vx: 0.4, vz: -0.2, q: 4 };

/** The rattler with a chamber of this height, m. */
function withHeight(tall: number): BaitSpec["chambers"] {
  return rattler(3e-3).spec.chambers.map((chamber) => ({ ...chamber, tall }));
}

const placeOf = (body: Body): readonly number[] => [
  body.getPosition().x,
  body.getPosition().y,
  body.getAngle(),
];

function touches(body: Body): boolean {
  for (let edge = body.getContactList(); edge !== null; edge = edge.next ?? null)
    if (edge.contact.isTouching()) return true;
  return false;
}

describe("loose balls", () => {
  const around = water(Infinity, false);

  it("in file meet their neighbours, floor and roof; only the outermost meet the ends", () => {
    const made = free(rattler(3e-3, 4, { hangers: [] }), around, START);
    made.stepper.advance();
    // 4 on floor and roof, 2 ends, 3 pairs
    expect(made.bodies.world.getContactCount()).toBe(8 + 2 + 3);
  });

  it("that can pass each other meet all walls and each other", () => {
    const made = free(rattler(3e-3, 4, { hangers: [], chambers: withHeight(0.008) }), around, START);
    made.stepper.advance();
    expect(made.bodies.world.getContactCount()).toBe(4 * 4 + 6);
  });

  it("in file stay in file, however hard the bait tumbles", () => {
    for (const q of [-25, 25]) {
      const made = free(rattler(3e-3), around, { ...START, q, vx: 2, vz: -1.5 });
      const { bait, balls } = made.bodies;
      const order = (): number[] => {
        const along = balls.map((ball) => bait.getLocalPoint(ball.getPosition()).x);
        return along.map((_, i) => i).sort((a, b) => along[a]! - along[b]!);
      };
      const first = order();
      for (let k = 0; k < 960; k++) {
        made.stepper.advance();
        expect(order()).toEqual(first);
      }
    }
  });
});

describe("boxes that are looked at now and then", () => {
  it.each([
    ["tumbling with balls", rattler(3e-3), { ...START, q: 20 }, -Infinity],
    ["falling onto the floor", minnow(12e-3), START, -1.12],
    ["rolling onto the floor with balls", rattler(12e-3), { ...START, vx: 1.5 }, -1.12],
  ] as const)("change nothing: %s", (_, bait, start, floor) => {
    const around = water(Infinity, false);
    const made = free(bait, around, start, { floor });
    const plain = free(bait, around, start, { floor });
    lookAlways(plain.bodies);
    let touched = false;
    for (let k = 0; k < 1500; k++) {
      made.stepper.advance();
      plain.stepper.advance();
      touched ||= touches(made.bodies.bait);
      expect(placeOf(made.bodies.bait)).toEqual(placeOf(plain.bodies.bait));
    }
    expect(touched).toBe(true);
    made.bodies.balls.forEach((ball, i) => {
      expect(placeOf(ball)).toEqual(placeOf(plain.bodies.balls[i]!));
    });
  });
});
