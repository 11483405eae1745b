import { describe, expect, it, vi } from "vitest";
import { Fnv1a } from "../../../src/model/base";
import { LINE_IN } from "../../../src/model/motion";
import {
  GrowingRecording,
  MotionError,
  record,
  startRun,
  type Move,
  type Recording,
  type RunSetup,
} from "../../../src/model/motion";
import { engineIsSteady } from "../../../src/model/motion/engine/planck";
import { outline } from "../../../src/model/shape";
import { floating, restTrim } from "../../../src/model/statics";
import { terminalRise } from "../../../src/model/tow";
import { ellipsoid, minnow, rattler, setup, TACKLE, water } from "../../lib/swum";

// Whole runs: long only where other work is on the machine.
vi.setConfig({ testTimeout: 60_000 });

const DEG = 180 / Math.PI;
const last = (values: Float64Array): number => values.at(-1) ?? NaN;
const SWIM: Move[] = [
  { do: "settle", for: 1 },
  { do: "reel", speed: 0.9, for: 4, length: null },
  { do: "pause", for: 1.5 },
  { do: "twitch", travel: 0.35, in: 0.15, back: 0.3 },
  { do: "pause", for: 1.5 },
];
const swim = (bait: RunSetup["bait"], more: Partial<RunSetup> = {}): RunSetup =>
  setup(bait, { tackle: TACKLE, cadence: SWIM, ...more });

describe("left alone", () => {
  it.each([
    ["two hooks, high floater", minnow(2.5e-3)],
    ["two hooks, low floater", minnow(4e-3)],
    ["two hooks, four balls", rattler(2.5e-3)],
    ["two hooks, one ball", rattler(3e-3, 1)],
    ["bare", minnow(3e-3, { hangers: [], bib: null })],
  ])("%s: settles at the floating trim of the statics within 0.3°, from there and from a push", (_, bait) => {
    const wanted = floating(bait, 999)!.pitch;
    const rest = record(setup(bait, { cadence: [{ do: "settle", for: 4 }] }));
    expect(Math.abs(last(rest.channel("pitch")) - wanted) * DEG).toBeLessThan(0.3);
    const pushed = record(
      setup(bait, { start: { depth: 0.02, pitch: wanted + 0.15 }, cadence: [{ do: "settle", for: 16 }] }),
    );
    // it rocks ever less, as drag grows with the square of speed: the mean over the last 8 s
    const tail = pushed.channel("pitch").subarray(8 * 60);
    const mean = tail.reduce((sum, p) => sum + p, 0) / tail.length;
    expect(Math.abs(mean - wanted) * DEG).toBeLessThan(0.3);
  });

  it("at rest only weight and lift are left, equal and opposite, through G and B", () => {
    for (const bait of [minnow(4e-3), rattler(2.5e-3)]) {
      const recording = record(setup(bait, { cadence: [{ do: "settle", for: 20 }] }));
      const forces = recording.wrench(recording.frames - 1);
      const weight = forces.get("weight")!;
      const size = Math.hypot(weight.x, weight.z);
      const mass = bait.rigid({ end: "mid", face: "floor" }).mass;
      expect(size / (mass * 9.80665)).toBeCloseTo(1, 12);
      // about the whole bait's G
      expect(Math.abs(weight.m)).toBeLessThan(1e-12);
      const lift = forces.get("buoyancy")!;
      expect(Math.hypot(lift.x + weight.x, lift.z + weight.z) / size).toBeLessThan(2e-3);
      for (const [key, f] of forces)
        if (key !== "weight" && key !== "buoyancy") expect(Math.hypot(f.x, f.z) / size).toBeLessThan(2e-3);
      const { G, B, pitch } = recording.at(20);
      // B stands over G: 0.2 mm is what is left of the rocking
      expect(Math.abs(G.x - B.x)).toBeLessThan(2e-4);
      expect(Math.abs(pitch)).toBeLessThan(Math.PI / 2);
    }
  });

  it("a sinker starts just under the surface at its rest trim", () => {
    const bait = minnow(6e-3);
    expect(floating(bait, 999)).toBeNull();
    const first = record(setup(bait, { cadence: [] })).at(0);
    expect(first.pitch).toBeCloseTo(restTrim(bait).pitch!, 12);
    expect(first.nose.z).toBeLessThan(-0.002);
    expect(first.nose.z).toBeGreaterThan(-0.1);
  });

  it("a given start is the tie eye's depth and the pitch", () => {
    const bait = minnow(4e-3);
    const first = record(setup(bait, { start: { depth: 1.5, pitch: -0.3 }, cadence: [] }));
    expect(first.frames).toBe(1);
    expect(first.channel("depth")[0]).toBeCloseTo(1.5, 12);
    expect(first.channel("pitch")[0]).toBeCloseTo(-0.3, 12);
    expect(first.at(0).eye.x).toBeCloseTo(0, 12);
  });

  it.each([
    ["floater with hooks", minnow(4e-3)],
    ["floater without bib", minnow(3e-3, { bib: null })],
    ["sinker", minnow(6e-3)],
  ])("%s: rises or sinks at the terminal speed of the equations within 2 %", (_, bait) => {
    const around = water(30);
    const wanted = terminalRise(bait, around);
    expect(wanted.steady).toBe(true);
    const run = record(
      setup(bait, {
        around,
        start: { depth: wanted.speed > 0 ? 25 : 3, pitch: "rest" },
        cadence: [{ do: "settle", for: 25 }],
      }),
    );
    const a = run.at(20);
    const b = run.at(25);
    expect((b.G.z - a.G.z) / 5 / wanted.speed).toBeGreaterThan(0.98);
    expect((b.G.z - a.G.z) / 5 / wanted.speed).toBeLessThan(1.02);
    expect(Math.abs(b.pitch - wanted.pitch) * DEG).toBeLessThan(0.5);
    expect(Math.abs((b.G.x - a.G.x) / 5 - wanted.drift)).toBeLessThan(0.02 * Math.abs(wanted.speed));
  });

  it("lies still on the floor, at the floor", () => {
    for (const bait of [minnow(7e-3, { hangers: [] }), rattler(8e-3, 4, { hangers: [] })]) {
      const run = record(setup(bait, { around: water(0.6), cadence: [{ do: "settle", for: 12 }] }));
      expect(last(run.channel("speed"))).toBeLessThan(1e-4);
      const { nose, pitch } = run.at(12);
      const bib = bait.spec.bib!;
      const tip = {
        x: bib.root.x + bib.length * Math.cos(bib.angle),
        z: bib.root.z - bib.length * Math.sin(bib.angle),
      };
      const lowest = Math.min(
        ...[...outline(bait.drawn), tip].map((p) => nose.z + p.x * Math.sin(pitch) + p.z * Math.cos(pitch)),
      );
      // the hull of 12 corners cuts up to half a millimetre off a round back or belly
      expect(lowest).toBeGreaterThan(-0.6 - 5e-4);
      expect(lowest).toBeLessThan(-0.6 + 1e-4);
      const contact = run.wrench(run.frames - 1).get("contact")!;
      expect(Math.hypot(contact.x, contact.z)).toBeGreaterThan(1e-3);
    }
  });
});

describe("on the line", () => {
  it("reeled, it dives, comes along at the reel's speed and pulls; let go, it is free", () => {
    const bait = minnow(4e-3);
    const run = record(
      swim(bait, {
        cadence: [
          { do: "settle", for: 1 },
          { do: "reel", speed: 0.9, for: 8, length: null },
          { do: "release", for: 1 },
        ],
      }),
    );
    const a = run.at(7);
    const b = run.at(8.9);
    expect(a.eye.z).toBeLessThan(-0.3);
    expect((b.eye.x - a.eye.x) / 1.9).toBeGreaterThan(0.8);
    expect((b.eye.x - a.eye.x) / 1.9).toBeLessThan(1);
    expect(a.tension).toBeGreaterThan(0.05);
    expect(a.line).toHaveLength(2);
    expect(a.line[0]).toEqual(a.eye);
    expect(a.slack).toBe(false);
    const free = run.at(9.5);
    expect(free.line).toEqual([]);
    expect(free.tension).toBe(0);
    expect(run.marks.map((m) => [m.time, m.label])).toEqual([
      [0, "settle"],
      [1, "reel 0.9 m/s"],
      [9, "release"],
    ]);
  });

  it("the line is never longer than it is: distance from eye to rod tip ≤ what is out + stretch", () => {
    const run = record(swim(minnow(4e-3)));
    for (let i = 0; i < run.frames; i++) {
      const t = i / 60;
      const { line, tension, slack } = run.at(t);
      const [eye, tip] = [line[0]!, line.at(-1)!];
      const wound = t < 1 ? 0 : Math.min(t - 1, 4) * 0.9;
      const out = 25 - wound + 0.05; // the reel's ramp lags by v·0.1 s/2
      expect(Math.hypot(tip.x - eye.x, tip.z - eye.z)).toBeLessThan(out * (1 + tension / 100) + 1e-3);
      expect(slack).toBe(run.channel("tension")[i] === 0);
    }
  });

  it("a sinker draws line off the reel in a settle and hangs on it in a pause", () => {
    const bait = minnow(6e-3);
    const free = record(
      swim(bait, {
        around: water(30),
        cadence: [{ do: "settle", for: 8 }],
        tackle: { ...TACKLE, lineOut: 5 },
      }),
    );
    expect(Math.max(...free.channel("tension"))).toBe(0);
    const held = record(
      swim(bait, {
        around: water(30),
        cadence: [{ do: "pause", for: 20 }],
        tackle: { ...TACKLE, lineOut: 5 },
      }),
    );
    const end = held.at(20);
    // it hangs under the rod tip, which stands 1.2 m over the water
    expect(last(free.channel("depth"))).toBeGreaterThan(1);
    expect(end.tension).toBeGreaterThan(5e-3);
    expect(5 - 1.2).toBeGreaterThan(-end.eye.z);
  });

  it("reeled in, the reel ends with a mark, and the bait stays in the water", () => {
    const run = record(
      swim(minnow(4e-3), {
        tackle: { ...TACKLE, lineOut: 6 },
        cadence: [
          { do: "reel", speed: 1, for: 60, length: null },
          { do: "pause", for: 2 },
        ],
      }),
    );
    expect(run.duration).toBeCloseTo(6 - 1.2 - LINE_IN + 2, 1);
    expect(run.marks.map((m) => m.label)).toEqual(["reel 1 m/s", "line is in", "pause"]);
    expect(Math.max(...run.channel("tension"))).toBeLessThan(5);
    expect(run.at(run.duration).eye.z).toBeLessThan(0.02);
  });
});

/** The hash of a run by a way of its own: FNV-1a over the chunks' numbers. */
function hashOf(run: ReturnType<typeof startRun>, chunk: number): string {
  const sum = new Fnv1a();
  while (!run.done) sum.numbers(run.advance(chunk).data);
  return sum.hex();
}

describe("the same again", () => {
  it("the engine runs on our own sine", () => {
    expect(engineIsSteady()).toBe(true);
  });

  it.each([
    ["hooks", minnow(4e-3)],
    ["hooks and balls", rattler(3e-3)],
  ])("bit for bit: %s, whole or in chunks, after other runs too", (_, bait) => {
    const first = record(swim(bait));
    record(swim(minnow(3e-3, { bib: null })));
    expect(record(swim(bait)).hash()).toBe(first.hash());
    expect(hashOf(startRun(swim(bait)), 7)).toBe(first.hash());
    expect(hashOf(startRun(swim(bait)), Infinity)).toBe(first.hash());
  });

  it("two runs going on by turns do not meddle with each other", () => {
    const alone = record(swim(rattler(3e-3))).hash();
    const a = startRun(swim(rattler(3e-3)));
    const b = startRun(swim(minnow(4e-3)));
    const recording = new GrowingRecording(a.meta);
    while (!a.done) {
      recording.append(a.advance(20));
      if (!b.done) b.advance(20);
    }
    expect(recording.hash()).toBe(alone);
  });

  it("the seed decides where balls lie, and nothing else", () => {
    const hash = (bait: RunSetup["bait"], seed: number): string => record(swim(bait, { seed })).hash();
    expect(hash(rattler(3e-3), 2)).not.toBe(hash(rattler(3e-3), 1));
    expect(hash(minnow(4e-3), 2)).toBe(hash(minnow(4e-3), 1));
  });
});

describe("half the step", () => {
  it.each([
    ["hooks", minnow(4e-3)],
    ["hooks and four balls", rattler(3.3e-3)],
    ["no hooks", minnow(4e-3, { hangers: [] })],
    ["a sinker", minnow(5e-3)],
  ])("%s: depth and pitch change by less than half a per cent of their range", (_, bait) => {
    const around = water(20);
    const whole = record(swim(bait, { around }));
    const half = record(swim(bait, { around, rate: 1920 }));
    for (const name of ["depth", "pitch"] as const) {
      const a = whole.channel(name);
      const b = half.channel(name);
      const range = Math.max(...b) - Math.min(...b);
      expect(Math.max(...a.map((v, i) => Math.abs(v - b[i]!))) / range).toBeLessThan(5e-3);
    }
  });
});

describe("balls", () => {
  it("stay in their chamber however hard the bait is twitched, and roll to its low end", () => {
    const hard: Move[] = [{ do: "settle", for: 0.5 }];
    for (let i = 0; i < 5; i++)
      hard.push({ do: "twitch", travel: 0.6, in: 0.1, back: 0.2 }, { do: "pause", for: 0.5 });
    const bait = rattler(3.3e-3);
    const tackle = { ...TACKLE, line: { ...TACKLE.line, EA: 1000 }, lineOut: 4 };
    const run: Recording = record(swim(bait, { tackle, cadence: hard })); // throws where one leaves
    expect(Math.max(...run.channel("tension"))).toBeGreaterThan(2);
    const calm = record(setup(bait, { cadence: [{ do: "settle", for: 6 }] }));
    const { balls, nose, pitch } = calm.at(6);
    const stations = balls
      .map((b) => -((b.x - nose.x) * Math.cos(pitch) + (b.z - nose.z) * Math.sin(pitch)))
      .sort((a, b) => b - a);
    expect(pitch).toBeGreaterThan(0);
    // packed from the tail end at 62 mm, 4 mm each; the engine lets them overlap by its slop of 0.02 mm
    stations.forEach((s, i) => {
      expect(Math.abs(s - (0.06 - 0.004 * i))).toBeLessThan(1e-4);
    });
  });

  it("side by side they roll in lanes of their own", () => {
    const bait = rattler(2.5e-3, 4);
    const wide = rattler(2.5e-3, 4, {
      chambers: [{ ...bait.spec.chambers[0]!, wide: 0.0085, to: 0.056 }],
    });
    const { balls, nose, pitch } = record(setup(wide, { cadence: [{ do: "settle", for: 5 }] })).at(5);
    const stations = balls.map((b) => -((b.x - nose.x) * Math.cos(pitch) + (b.z - nose.z) * Math.sin(pitch)));
    const low = pitch > 0 ? 0.054 : 0.044;
    const next = pitch > 0 ? 0.05 : 0.048;
    for (const [i, s] of [low, low, next, next].entries())
      expect(Math.abs(stations[i]! - s)).toBeLessThan(1e-4);
  });
});

describe("what cannot start is refused, with the value and a remedy", () => {
  const bait = minnow(4e-3);
  const cases: [string, Partial<RunSetup>][] = [
    ["a rate that frames do not divide", { rate: 1000 }],
    ["a rate of nothing", { rate: 0 }],
    ["half a seed", { seed: 0.5 }],
    ["a line shorter than the rod is high", { tackle: { ...TACKLE, lineOut: 1 } }],
    ["a depth that is none", { start: { depth: NaN, pitch: 0 } }],
    ["a pitch that is none", { start: { depth: 1, pitch: Infinity } }],
    ["a start under the floor", { start: { depth: 5, pitch: 0 } }],
    ["afloat where there is no surface", { around: water(Infinity, false) }],
    ["a reel without tackle", { cadence: SWIM }],
  ];
  it.each(cases)("%s", (_, more) => {
    expect(() => startRun(setup(bait, more))).toThrow(MotionError);
    expect(() => startRun(setup(bait, more))).toThrow(/ = .+: .+\. [A-Z].+\.$/);
  });

  it.each<[string, Move[]]>([
    ["a twitch", [{ do: "twitch", travel: 4, in: 0.04, back: 0.1 }]],
    ["a way back", [{ do: "twitch", travel: 1, in: 0.4, back: 0.1 }]],
    ["a lift", [{ do: "lift", height: -3, in: 0.2 }]],
  ])("%s faster than an arm is refused at the move, before the run, with the time it needs", (_, cadence) => {
    const absurd = swim(bait, { cadence });
    expect(() => startRun(absurd)).toThrow(MotionError);
    expect(() => startRun(absurd)).toThrow(/^cadence\[0\]\.(in|back) = .* m\/s.*at least \d+\.\d\d s/);
  });

  it("what the steps cannot follow ends in words that name the move and the remedy", () => {
    // a coarse step and a line without give
    const stiff = { ...TACKLE, line: { ...TACKLE.line, EA: 1e5 }, lineOut: 6 };
    const cadence: Move[] = [
      { do: "pause", for: 0.1 },
      { do: "twitch", travel: 1.5, in: 0.19, back: 0.5 },
    ];
    const violent = swim(bait, { tackle: stiff, cadence, rate: 60, line: "tether" });
    expect(() => record(violent)).toThrow(
      / at \d.*cadence\[1\] \(twitch\) is beyond the model: .*\. Give this move more time/,
    );
  });

  it("the time that the refusal asks for is enough", () => {
    const twitch = (time: number): (() => unknown) => {
      const cadence: Move[] = [{ do: "twitch", travel: 1, in: time, back: 0.5 }];
      return () => startRun(swim(bait, { cadence }));
    };
    expect(twitch(0.12)).toThrow(/at least 0\.13 s/);
    expect(twitch(0.13)).not.toThrow();
  });

  it("more loose balls than a run can follow are refused with what to do", () => {
    const { chambers } = rattler(3e-3).spec;
    const many = chambers.map((chamber) => ({
      ...chamber,
      balls: chamber.balls && { ...chamber.balls, count: 401, diameter: 0.2e-3 },
    }));
    expect(() => startRun(setup(rattler(3e-3, 4, { chambers: many })))).toThrow(
      /loose balls = 401: .*fewer, larger/,
    );
  });
});

describe("an ellipsoid of water's density", () => {
  it("stays where it is put", () => {
    const run = record(
      setup(ellipsoid(0.045, 0.008, 0.011, 999), {
        start: { depth: 1, pitch: 0.4 },
        cadence: [{ do: "settle", for: 5 }],
      }),
    );
    // net buoyancy: the drawing's volume against itself, round-off only
    expect(Math.abs(last(run.channel("depth")) - 1)).toBeLessThan(1e-6);
    expect(last(run.channel("pitch"))).toBeCloseTo(0.4, 6);
  });
});
