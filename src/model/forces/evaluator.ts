import { addWrench, clearWrench, solveSym3, sym3, type Sym3, type Wrench, wrench } from "../base";
import * as inertia from "./inertia";
import { type Kernel, kernelsOf } from "./models";
import { Situation } from "./situation";
import type { Acceleration, Swimmer, ForceKey, State, Surroundings } from "./types";

/**
 * Everything that the equations of motion need of one swimmer in its surroundings, with its own scratch: `evaluate` a state,
 * then read. After it is made nothing is allocated: every call writes to the same objects.
 */
export interface Evaluator {
  readonly swimmer: Swimmer;
  readonly around: Surroundings;
  /** Sum of the forces chosen, body axes about G. */
  readonly force: Wrench;
  /** The same force by force, in the order of `FORCES`. */
  readonly parts: ReadonlyMap<ForceKey, Wrench>;
  /** Rigid + added mass of what is under water. */
  readonly mass: Sym3;
  /** Inertia terms on the right-hand side, −(Kirchhoff): M·ν̇ = force + inertia + the rest. */
  readonly inertia: Wrench;
  /**
   * Added mass of what has gone under between the last `evaluate` and this one (zero at the first). The water set moving
   * takes its momentum from the bait: the slam. It is an impulse, so it stands in no rate.
   */
  readonly entered: Sym3;
  /** Immersed share of the body's volume, 0–1, after `evaluate`. */
  readonly bodyShare: number;
  /** Takes a state: all of the above are then of that state. */
  evaluate(state: State): void;
  /**
   * After `evaluate`: rates of the state's u, w, q, with a further force and moment about G (the line, hooks, balls …) or
   * without (null).
   */
  accelerate(more: Wrench | null, out: Acceleration): Acceleration;
  /** After `evaluate`: kinetic energy through the water and potential energy, J. */
  energy(): number;
}

function clearSym3(m: Sym3): void {
  m.a11 = 0;
  m.a13 = 0;
  m.a15 = 0;
  m.a33 = 0;
  m.a35 = 0;
  m.a55 = 0;
}

/**
 * @param keys the forces to sum; absent: all but the line. An empty list leaves a body coasting in an ideal fluid.
 */
export function createEvaluator(
  swimmer: Swimmer,
  around: Surroundings,
  keys?: readonly ForceKey[],
): Evaluator {
  return new SwimmerEvaluator(swimmer, around, keys);
}

class SwimmerEvaluator implements Evaluator {
  readonly force = wrench();
  readonly parts: ReadonlyMap<ForceKey, Wrench>;
  readonly mass = sym3();
  readonly inertia = wrench();
  readonly entered = sym3();
  /** Shares at the evaluation before, and whether all was under then; null before the first. */
  readonly #shares: Float64Array;
  #wasAllUnder: boolean | null = null;
  readonly #situation: Situation;
  readonly #kernels: readonly Kernel[];
  readonly #wrenches: readonly Wrench[];

  constructor(
    readonly swimmer: Swimmer,
    readonly around: Surroundings,
    keys?: readonly ForceKey[],
  ) {
    const chosen = kernelsOf(keys);
    this.#situation = new Situation(swimmer, around);
    this.#shares = new Float64Array(swimmer.strips.length + 2);
    this.#kernels = chosen.map((k) => k.kernel);
    this.#wrenches = chosen.map(() => wrench());
    this.parts = new Map(chosen.map((k, i) => [k.key, this.#wrenches[i] as Wrench]));
  }

  get bodyShare(): number {
    return this.#situation.water.bodyShare;
  }

  evaluate(state: State): void {
    const situation = this.#situation;
    situation.enter(state);
    clearWrench(this.force);
    for (let i = 0; i < this.#kernels.length; i++) {
      const part = this.#wrenches[i] as Wrench;
      clearWrench(part);
      (this.#kernels[i] as Kernel)(situation, part);
      addWrench(this.force, part);
    }
    inertia.massMatrix(situation, this.mass);
    clearWrench(this.inertia);
    inertia.kirchhoff(situation, this.mass, this.inertia);
    this.#compareShares();
  }

  #compareShares(): void {
    const { allUnder } = this.#situation;
    clearSym3(this.entered);
    if (this.#wasAllUnder !== true || !allUnder) {
      if (this.#wasAllUnder !== null) inertia.enteredMass(this.#situation, this.#shares, this.entered);
      inertia.copyShares(this.#situation, this.#shares);
    }
    this.#wasAllUnder = allUnder;
  }

  accelerate(more: Wrench | null, out: Acceleration): Acceleration {
    const { force, inertia: right, mass } = this;
    let x = force.x + right.x;
    let z = force.z + right.z;
    let m = force.m + right.m;
    if (more) {
      x += more.x;
      z += more.z;
      m += more.m;
    }
    solveSym3(mass, x, z, m, out);
    // M·ν̇ gives the rates of the velocity through the water. The current's components in body axes turn with the bait: c_b
    // = Rᵀc, ċ_b = (q c_w, −q c_u).
    const { q, currentU, currentW } = this.#situation;
    out[0] += q * currentW;
    out[1] -= q * currentU;
    return out;
  }

  energy(): number {
    return inertia.energyOf(this.#situation, this.mass);
  }
}

const evaluators = new WeakMap<Swimmer, Evaluator>();

/** The evaluator of all forces for a swimmer in its surroundings; the last one of each swimmer is kept (see `situationOf`). */
function evaluatorOf(swimmer: Swimmer, around: Surroundings): Evaluator {
  const last = evaluators.get(swimmer);
  if (last?.around === around) return last;
  const made = createEvaluator(swimmer, around);
  evaluators.set(swimmer, made);
  return made;
}

/** Sum of all forces but the line, added to `out`: body axes about G, N and N·m. */
export function totalWrench(
  swimmer: Swimmer,
  state: State,
  around: Surroundings,
  out: Wrench = wrench(),
): Wrench {
  const evaluator = evaluatorOf(swimmer, around);
  evaluator.evaluate(state);
  addWrench(out, evaluator.force);
  return out;
}

/** du/dt, dw/dt, dq/dt of a free swimmer (no line): all forces, the full mass matrix and the inertia terms. */
export function accelerations(swimmer: Swimmer, state: State, around: Surroundings): Acceleration {
  const evaluator = evaluatorOf(swimmer, around);
  evaluator.evaluate(state);
  return evaluator.accelerate(null, [0, 0, 0]);
}

/** Mass matrix about G in (u, w, q): rigid + added mass of what is under water; kg, kg·m, kg·m². */
export function massMatrix(swimmer: Swimmer, state: State, around: Surroundings): Sym3 {
  const evaluator = evaluatorOf(swimmer, around);
  evaluator.evaluate(state);
  return { ...evaluator.mass };
}

/** −(Kirchhoff terms): the right-hand side's inertia part, body axes about G. */
export function inertiaTerms(swimmer: Swimmer, state: State, around: Surroundings): Wrench {
  const evaluator = evaluatorOf(swimmer, around);
  evaluator.evaluate(state);
  return { ...evaluator.inertia };
}

/**
 * Kinetic energy ½νᵀMν with the velocity through the water, added mass included, and potential energy m g Z + ρ g ∫depth dV
 * of what is under, J.
 */
export function energy(swimmer: Swimmer, state: State, around: Surroundings): number {
  const evaluator = evaluatorOf(swimmer, around);
  evaluator.evaluate(state);
  return evaluator.energy();
}

/**
 * Sum of all forces but the line on a swimmer in steady tow, less the steady couple u p_w − w p_u of the body's added mass
 * (docs/model.md §7), body axes about G. That is force + inertia terms at q = 0: the bib's part of that couple and the
 * +a_n v_n v_t in the bib's own moment cancel each other (§6.4). The state's q is taken as 0.
 */
export function towWrench(
  swimmer: Swimmer,
  state: State,
  around: Surroundings,
  out: Wrench = wrench(),
): Wrench {
  const evaluator = evaluatorOf(swimmer, around);
  evaluator.evaluate(state.q === 0 ? state : { ...state, q: 0 });
  addWrench(out, evaluator.force);
  addWrench(out, evaluator.inertia);
  return out;
}
