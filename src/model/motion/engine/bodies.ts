import type { Vec } from "../../base";
import { rotate } from "../../base";
import type { ChamberSpec } from "../../bait";
import type { LooseBall } from "../chamber";
import type { HangingHook } from "../types";
import { lookNowAndThen } from "./boxes";
import { Hinge } from "./hinge";
import { addLooseBalls, ballsApart } from "./loose";
import { type Body, Circle, Edge, Polygon, SKIN, World } from "./planck";

/** Friction and restitution where something meets the floor or a wall. Common practice, no source. */
const GROUND_CONTACT = { friction: 0.4, restitution: 0.1 };

/** Radius of a hook's lower end where it lies on the floor, as a share of its length. Common practice, no source. */
const BEND = 0.08;

/** How high the walls stand above the surface, and how deep they reach where there is no floor, m. */
const WALL_ABOVE = 20;
const WALL_BELOW = 1000;

/** Bits of the collision filter. What chambers and balls meet is set pair by pair (loose.ts). */
const GROUND = 1;
const HULL = 2;
const HOOK = 4;

/** What the engine carries. Places relative to the rigid body's G (body frame) unless said otherwise; m, kg. */
export interface EnginePlan {
  readonly gravity: number;
  /** World place of G, and pitch. */
  readonly place: Vec;
  readonly pitch: number;
  /** Mass and pitch inertia with which the engine sees the bait in joints and contacts. */
  readonly mass: number;
  readonly inertia: number;
  readonly hull: readonly Vec[];
  /** G in the body frame: hooks, chambers and balls are given there. */
  readonly G: Vec;
  readonly hooks: readonly HangingHook[];
  readonly chambers: readonly ChamberSpec[];
  readonly balls: readonly LooseBall[];
  /** Height of the floor (−Infinity: none), and the walls' places, world frame. */
  readonly floor: number;
  readonly walls: readonly [number, number];
}

/** The engine's bodies. */
export interface EngineBodies {
  readonly world: World;
  readonly bait: Body;
  readonly hooks: readonly Body[];
  readonly joints: readonly Hinge[];
  readonly balls: readonly Body[];
}

export function buildBodies(plan: EnginePlan): EngineBodies {
  const world = new World({ gravity: { x: 0, y: -plan.gravity }, allowSleep: false });
  addGround(world, plan);
  const bait = world.createBody({
    type: "dynamic",
    position: { x: plan.place.x, y: plan.place.z },
    angle: plan.pitch,
    // Its weight is one of our forces, and acts through the full mass matrix.
    gravityScale: 0,
  });
  bait.createFixture({
    shape: new Polygon(plan.hull.map((p) => ({ x: p.x, y: p.z }))),
    density: 0,
    ...GROUND_CONTACT,
    filterCategoryBits: HULL,
    filterMaskBits: GROUND,
  });

  const sin = bait.getTransform().q.s;
  const cos = bait.getTransform().q.c;
  const toWorld = (p: Vec): { x: number; y: number } => {
    const arm = rotate({ x: p.x - plan.G.x, z: p.z - plan.G.z }, sin, cos);
    return { x: plan.place.x + arm.x, y: plan.place.z + arm.z };
  };
  const hooks: Body[] = [];
  const joints: Hinge[] = [];
  for (const hook of plan.hooks) {
    const { body, joint } = addHook(world, bait, hook, toWorld(hook.at), plan.G);
    hooks.push(body);
    joints.push(joint);
  }
  const balls = addLooseBalls(world, bait, plan, toWorld);
  bait.setMassData({ mass: plan.mass, center: { x: 0, y: 0 }, I: plan.inertia });
  lookNowAndThen([bait, ...hooks, ...balls], ballsApart(plan));
  return { world, bait, hooks, joints, balls };
}

function addGround(world: World, { floor, walls }: EnginePlan): void {
  const ground = world.createBody();
  const bottom = floor === -Infinity ? -WALL_BELOW : floor;
  const add = (x1: number, y1: number, x2: number, y2: number): void => {
    ground.createFixture({
      shape: new Edge({ x: x1, y: y1 }, { x: x2, y: y2 }),
      ...GROUND_CONTACT,
      filterCategoryBits: GROUND,
      filterMaskBits: HULL | HOOK,
    });
  };
  const [left, right] = walls;
  // The engine keeps a skin round both shapes. The shape is set back by it, so that the drawn surfaces meet.
  if (floor !== -Infinity) add(left, bottom - 2 * SKIN, right, bottom - 2 * SKIN);
  add(left - 2 * SKIN, bottom, left - 2 * SKIN, WALL_ABOVE);
  add(right + 2 * SKIN, bottom, right + 2 * SKIN, WALL_ABOVE);
}

function addHook(
  world: World,
  bait: Body,
  hook: HangingHook,
  eye: { x: number; y: number },
  G: Vec,
): { body: Body; joint: Hinge } {
  const body = world.createBody({ type: "dynamic", position: { x: eye.x, y: eye.y - hook.centre } });
  const bend = BEND * hook.length;
  body.createFixture({
    shape: new Circle({ x: 0, y: hook.centre - hook.length + bend }, bend),
    density: 0,
    ...GROUND_CONTACT,
    filterCategoryBits: HOOK,
    filterMaskBits: GROUND,
  });
  body.setMassData({ mass: hook.mass, center: { x: 0, y: 0 }, I: hook.inertia });
  const joint = new Hinge({
    a: bait,
    b: body,
    pinA: { x: hook.at.x - G.x, y: hook.at.z - G.z },
    pinB: { x: 0, y: hook.centre },
  });
  world.createJoint(joint);
  return { body, joint };
}
