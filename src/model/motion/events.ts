import type { Channel, Leg, RecordingMeta } from "./types";

/** The part of a recording from which events are found: its channels. */
export interface Recorded {
  readonly meta: Pick<RecordingMeta, "legs" | "floor" | "frameRate">;
  channel(name: Channel): Float64Array;
}

export type EventKind = "under" | "surface" | "runs" | "unsteady" | "weed" | "bottom" | "slack";

/** Something that happened in a run. Times s, places m. */
export interface RunEvent {
  readonly kind: EventKind;
  readonly time: number;
  /** When it was over; the end of what is recorded where it still lasts. */
  readonly end: number;
  /** Of the tie eye when it began: distance along the retrieve, and depth. */
  readonly x: number;
  readonly depth: number;
}

/** Thresholds; common practice, no source. */
const TOUCH = 1e-3; // m: nearer than this to the floor it touches
const ABOVE = 1e-3; // m out of the water: it breaks the surface
const MARGIN = 2e-3; // m back before the next one counts: no flicker at the edge
const GAP = 0.5; // s: what comes again within this is one event
const SLACK_LEAST = 0.1; // s
/**
 * The bait runs when for this time its pitch stays within the band, the line pulls, and it moves at this share of the
 * reel's speed.
 */
const RUNS = { seconds: 0.6, band: (4 * Math.PI) / 180, share: 0.5, ramp: 0.1 };
/** A reel shorter than this is too short to run, and is not reported. s */
const LONG_REEL = 2;

interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Stretches of frames that begin where `enter` holds and last while `stay` holds: two thresholds, so that an edge does not
 * flicker.
 */
function spans(
  frames: number,
  enter: (frame: number) => boolean,
  stay: (frame: number) => boolean,
  gap: number,
): Span[] {
  const found: Span[] = [];
  let from = -1;
  for (let i = 0; i <= frames; i++) {
    const now = i < frames && (from < 0 ? enter(i) : stay(i));
    if (now && from < 0) from = i;
    else if (!now && from >= 0) {
      const last = found.at(-1);
      if (last !== undefined && from - last.to < gap) found[found.length - 1] = { from: last.from, to: i };
      else found.push({ from, to: i });
      from = -1;
    }
  }
  return found;
}

const value = (values: Float64Array, i: number): number => values[i] ?? NaN;

/** Stretches of a reel in which the bait runs: the frames of every window in which all conditions hold. */
function runningSpans(run: Recorded, leg: Leg, frames: number): Span[] {
  const { frameRate } = run.meta;
  if (leg.move.do !== "reel") return [];
  const least = RUNS.share * leg.move.speed;
  const pitch = run.channel("pitch");
  const speed = run.channel("speed");
  const slack = run.channel("slack");
  const first = Math.ceil((leg.start + RUNS.ramp) * frameRate);
  const last = Math.min(frames, Math.floor(leg.end * frameRate) + 1);
  const window = Math.round(RUNS.seconds * frameRate);
  const found: Span[] = [];
  let start = first;
  while (start + window <= last) {
    // The longest stretch from here in which the pitch stays within the band.
    let low = Infinity;
    let high = -Infinity;
    let i = start;
    for (; i < last; i++) {
      low = Math.min(low, value(pitch, i));
      high = Math.max(high, value(pitch, i));
      if (high - low > RUNS.band || value(slack, i) !== 0 || value(speed, i) < least) break;
    }
    if (i - start < window) {
      start++;
      continue;
    }
    const before = found.at(-1);
    if (before !== undefined && before.to >= start - 1)
      found[found.length - 1] = { from: before.from, to: i };
    else found.push({ from: start, to: i });
    start = i;
  }
  return found;
}

/**
 * What happened in a run, as far as it is recorded, in the order of time. The bait goes under, breaks the surface, runs
 * (steady on the line), does not run in a long reel, is in the weed, touches the bottom, or hangs on a slack line. Slack
 * counts only while the reel does not give line.
 *
 * @param weed depth of the weed's tops, m; null: none
 */
export function eventsOf(run: Recorded, weed: number | null): readonly RunEvent[] {
  const { legs, floor, frameRate } = run.meta;
  const x = run.channel("x");
  const depth = run.channel("depth");
  const top = run.channel("top");
  const low = run.channel("low");
  const slack = run.channel("slack");
  const frames = depth.length;
  const events: RunEvent[] = [];
  const tell = (kind: EventKind, { from, to }: Span): void => {
    events.push({
      kind,
      time: from / frameRate,
      end: Math.max(from, to - 1) / frameRate,
      x: value(x, from),
      depth: value(depth, from),
    });
  };
  const gap = GAP * frameRate;

  const out = spans(
    frames,
    (i) => value(top, i) < -ABOVE,
    (i) => value(top, i) < MARGIN,
    gap,
  );
  for (const span of out) {
    // What holds already at the start is no event.
    if (span.from > 0) tell("surface", span);
    if (span.to < frames) tell("under", { from: span.to, to: span.to });
  }
  const touches = (depth: number, kind: "weed" | "bottom"): void => {
    const found = spans(
      frames,
      (i) => value(low, i) > depth - TOUCH,
      (i) => value(low, i) > depth - TOUCH - MARGIN,
      gap,
    );
    for (const span of found) tell(kind, span);
  };
  if (weed !== null && weed < floor) touches(weed, "weed");
  if (Number.isFinite(floor)) touches(floor, "bottom");

  for (const leg of legs) {
    if (leg.move.do !== "reel") continue;
    const running = runningSpans(run, leg, frames);
    for (const span of running) tell("runs", span);
    const there = frames / frameRate >= leg.end;
    if (running.length === 0 && there && leg.end - leg.start >= LONG_REEL) {
      const from = Math.ceil(leg.start * frameRate);
      tell("unsteady", { from, to: Math.floor(leg.end * frameRate) });
    }
  }

  const giving = legs.filter(
    ({ move: { do: what } }) => what === "settle" || what === "slack" || what === "release",
  );
  const given = new Uint8Array(frames);
  for (const { start, end } of giving)
    given.fill(1, Math.floor(start * frameRate), Math.max(0, Math.ceil(end * frameRate)));
  const hangs = (i: number): boolean => value(slack, i) !== 0 && given[i] !== 1;
  for (const span of spans(frames, hangs, hangs, SLACK_LEAST * frameRate))
    if (span.to - span.from >= SLACK_LEAST * frameRate) tell("slack", span);

  return events.sort((a, b) => a.time - b.time);
}
