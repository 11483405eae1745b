import type { Vec } from "../../base";
import type { ChamberSpec } from "../../bait";
import type { LooseBall } from "../chamber";
import { type Body, Circle, type Fixture, Polygon, SKIN, type World } from "./planck";

/** Friction and restitution of balls on their chamber and on each other. Common practice, no source. */
const BALL_CONTACT = { friction: 0.2, restitution: 0.4 };

/**
 * Thickness of a chamber's walls in ball diameters: a ball that is squeezed past the middle of a thin wall would go
 * through.
 */
const WALL_THICKNESS = 3;

/**
 * In a chamber lower than this many diameters the balls stay in file. No ball can pass another, and none can touch the next
 * but one: that takes 1 + √¾ = 1.87 diameters of height (three balls that touch each other).
 */
const FILE_HEIGHT = 1.8;

interface LoosePlan {
  /** The rigid body's G in the body frame, m. */
  readonly G: Vec;
  readonly chambers: readonly ChamberSpec[];
  readonly balls: readonly LooseBall[];
}

/**
 * Gives the bait the walls of its chambers and puts the loose balls into them; the balls come in the order of the plan.
 * What meets what is set pair by pair: each ball meets its chamber's walls and the balls of its lane. In file it meets only
 * its neighbours, and the end walls meet only the outermost ball. (A pair that cannot meet costs the engine nearly as much
 * as one that can.)
 *
 * @param toWorld world place of a place in the body frame, m
 */
export function addLooseBalls(
  world: World,
  bait: Body,
  { G, chambers, balls }: LoosePlan,
  toWorld: (at: Vec) => { x: number; y: number },
): Body[] {
  const added = balls.map((ball) => ({ ball, ...addBall(world, ball, toWorld(ball.start)) }));
  chambers.forEach((chamber, index) => {
    const own = added.filter(({ ball }) => ball.chamber === index);
    if (own.length === 0) return;
    const diameter = Math.max(...own.map(({ ball }) => ball.diameter));
    const walls = addWalls(bait, chamber, G, WALL_THICKNESS * diameter);
    const inFile = chamber.tall < FILE_HEIGHT * diameter;
    for (const lane of new Set(own.map(({ ball }) => ball.lane))) {
      // from the tail to the nose
      const file = own
        .filter(({ ball }) => ball.lane === lane)
        .sort((a, b) => a.ball.start.x - b.ball.start.x)
        .map(({ choosy }) => choosy);
      file.forEach((ball, k) => {
        meet(ball, walls.floor);
        meet(ball, walls.roof);
        if (!inFile || k === 0) meet(ball, walls.tail);
        if (!inFile || k === file.length - 1) meet(ball, walls.nose);
        for (const other of file.slice(k + 1, inFile ? k + 2 : undefined)) meet(ball, other);
      });
    }
  });
  return added.map(({ body }) => body);
}

/** Greatest distance, along or up, between a ball and what it can meet in its chamber, m. */
export function ballsApart({ chambers, balls }: Pick<LoosePlan, "chambers" | "balls">): number {
  return chambers.reduce(
    (most, { from, to, tall }, index) =>
      balls.some((ball) => ball.chamber === index) ? Math.max(most, to - from, tall) : most,
    0,
  );
}

/** A fixture that meets none but its partners. */
interface Choosy {
  readonly fixture: Fixture;
  readonly partners: Set<Fixture>;
}

function choosy(fixture: Fixture): Choosy {
  const partners = new Set<Fixture>();
  fixture.shouldCollide = (that) => partners.has(that);
  return { fixture, partners };
}

function meet(a: Choosy, b: Choosy): void {
  a.partners.add(b.fixture);
  b.partners.add(a.fixture);
}

function addWalls(
  bait: Body,
  chamber: ChamberSpec,
  G: Vec,
  thick: number,
): Record<"nose" | "tail" | "floor" | "roof", Choosy> {
  // A ball meets the wall at the engine's skin: so the box is made larger by it, and the ball meets the drawn face.
  const left = -chamber.to - SKIN - G.x;
  const right = -chamber.from + SKIN - G.x;
  const low = chamber.height - chamber.tall / 2 - SKIN - G.z;
  const high = chamber.height + chamber.tall / 2 + SKIN - G.z;
  const box = (x1: number, z1: number, x2: number, z2: number): Choosy =>
    choosy(
      bait.createFixture({
        shape: new Polygon([
          { x: x1, y: z1 },
          { x: x2, y: z1 },
          { x: x2, y: z2 },
          { x: x1, y: z2 },
        ]),
        density: 0,
        ...BALL_CONTACT,
      }),
    );
  return {
    tail: box(left - thick, low - thick, left, high + thick),
    nose: box(right, low - thick, right + thick, high + thick),
    floor: box(left, low - thick, right, low),
    roof: box(left, high, right, high + thick),
  };
}

function addBall(
  world: World,
  ball: LooseBall,
  place: { x: number; y: number },
): { readonly body: Body; readonly choosy: Choosy } {
  const body = world.createBody({ type: "dynamic", position: place });
  const radius = ball.diameter / 2;
  const fixture = body.createFixture({ shape: new Circle(radius), density: 0, ...BALL_CONTACT });
  // A solid sphere, 2/5 m r².
  body.setMassData({ mass: ball.mass, center: { x: 0, y: 0 }, I: 0.4 * ball.mass * radius * radius });
  return { body, choosy: choosy(fixture) };
}
