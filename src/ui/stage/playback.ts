/** The recording's clock: pure rules, so that they can be tested without a browser. */

export interface Playback {
  /** s */
  readonly time: number;
  readonly playing: boolean;
  /** Plays at this many recorded seconds a second. */
  readonly rate: number;
  /** Length that the whole recording will have, s. */
  readonly duration: number;
  /** What of it has been computed so far, s; playing waits there. */
  readonly available: number;
}

/** Slow motion for a twitch, as it goes, and fast for a long rise or a whole cast. */
export const RATES = [0.1, 0.25, 0.5, 1, 4] as const;

/** A hidden tab or a busy moment counts as no more than this, s: the picture resumes, it does not leap. */
export const LONGEST_LAG = 0.1;

const clamp = (t: number, top: number): number => {
  if (Number.isNaN(t)) throw new RangeError("playback: time is NaN");
  return Math.max(0, Math.min(top, t));
};

/** One frame later by `dt` seconds of the wall clock. Stops at the end; waits at what is available. */
export function ticked(p: Playback, dt: number): Playback {
  if (!p.playing) return p;
  const lag = Math.max(0, Math.min(LONGEST_LAG, dt));
  const end = Math.min(p.available, p.duration);
  const time = clamp(Math.max(p.time, Math.min(end, p.time + lag * p.rate)), p.duration);
  return { ...p, time, playing: !(time >= p.duration && p.available >= p.duration) };
}

/** True while playing has caught up with what is computed. */
export const waiting = (p: Playback): boolean =>
  p.playing && p.time >= p.available && p.available < p.duration;

/** Play; from the start where it stood at the end. */
export function played(p: Playback): Playback {
  const atEnd = p.duration > 0 && p.time >= p.duration;
  return { ...p, playing: true, time: atEnd ? 0 : p.time };
}

export const paused = (p: Playback): Playback => ({ ...p, playing: false });

/** Anywhere in what is available. */
export const sought = (p: Playback, time: number): Playback => ({
  ...p,
  time: clamp(time, Math.min(p.available, p.duration)),
});

/** `count` frames on (negative: back) from the nearest frame, paused. */
export function stepped(p: Playback, count: number, frameRate: number): Playback {
  if (!(frameRate > 0)) throw new RangeError(`stepped: frame rate ${frameRate} must be above 0`);
  const exact = p.time * frameRate;
  const nearest = Math.round(exact);
  // Between frames a step forward goes to the next one, a step back to the one before.
  const from = Math.abs(exact - nearest) < 1e-6 ? nearest : count > 0 ? Math.floor(exact) : Math.ceil(exact);
  return sought(paused(p), (from + count) / frameRate);
}

/** The next slower (−1) or faster (+1) of RATES. */
export function rateBeside(rate: number, direction: -1 | 1): number {
  const rates: readonly number[] = RATES;
  const found =
    direction > 0
      ? rates.find((r) => r > rate * (1 + 1e-9))
      : [...rates].reverse().find((r) => r < rate * (1 - 1e-9));
  return found ?? rate;
}

/** A new recording: keeps the place in time where it can, so that an edit can be watched at the same moment. */
export function loaded(p: Playback, duration: number, available: number, keepTime: boolean): Playback {
  if (!(duration >= 0) || !(available >= 0))
    throw new RangeError(`loaded: duration ${duration} and available ${available} must be 0 or more`);
  return {
    ...p,
    duration,
    available: Math.min(available, duration),
    time: keepTime ? clamp(p.time, duration) : 0,
  };
}

/** 65.25 → "1:05.25"; 5.25 → "5.25". Hundredths are cut, not rounded, so that a clock never runs ahead. */
export function timeText(time: number): string {
  const hundredths = Math.floor(time * 100 + 1e-6);
  const minutes = Math.floor(hundredths / 6000);
  const rest = ((hundredths - minutes * 6000) / 100).toFixed(2);
  return minutes > 0 ? `${minutes}:${rest.padStart(5, "0")}` : rest;
}

/** 0.25 → "¼×". */
export function rateText(rate: number): string {
  return ({ 0.5: "½×", 0.25: "¼×", 0.1: "⅒×" } as Record<number, string>)[rate] ?? `${rate}×`;
}
