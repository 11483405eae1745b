import { placeOf } from "./cadence";
import type { LooseBall } from "./chamber";
import { MotionError } from "./error";
import type { Move } from "./types";

/*
 * What is beyond the model is refused before the run. The message names the move or part that asks for it, and says what to
 * do. So no run ends half way in numbers that mean nothing, and none lasts for ever.
 */

/**
 * The fastest that an arm moves a rod tip, m/s. Rate gyros on the rods of expert fly casters show up to 300° a second for a
 * cast with 12 m of line; nine tenths of the tip's speed come from this turning (figures as reported by the makers of those
 * measurements on the web, no paper seen). A rod of 2.7 m: 5.2 rad/s × 2.7 m / 0.9 = 16 m/s. A twitch is a smaller movement.
 */
export const FASTEST_TIP = 16;

/** The rod tip's speed is a raised cosine over the time of a move: its peak is twice its mean. */
const PEAK = 2;

/** With more loose balls than this a run takes hours: each meets all others of its chamber. Common practice, no source. */
export const MOST_BALLS = 400;

/** Throws MotionError at a move whose rod tip is faster than an arm. */
export function checkTipSpeed(cadence: readonly Move[]): void {
  const check = (key: string, way: number, time: number): void => {
    const speed = (PEAK * Math.abs(way)) / time;
    if (!(speed > FASTEST_TIP)) return;
    throw new MotionError(
      key,
      time,
      null,
      `the rod tip would reach ${speed.toFixed(1)} m/s, and an arm moves it at ${FASTEST_TIP} m/s at most`,
      `Give this movement at least ${(Math.ceil((PEAK * Math.abs(way) * 100) / FASTEST_TIP) / 100).toFixed(2)} s, or a shorter way`,
    );
  };
  cadence.forEach((move, i) => {
    if (move.do === "twitch") {
      check(`${placeOf(move, i)}.in`, move.travel, move.in);
      check(`${placeOf(move, i)}.back`, move.travel, move.back);
    } else if (move.do === "lift") check(`${placeOf(move, i)}.in`, move.height, move.in);
  });
}

/** Throws MotionError where there are more loose balls than a run can follow. */
export function checkBalls(balls: readonly LooseBall[]): void {
  if (balls.length <= MOST_BALLS) return;
  throw new MotionError(
    "loose balls",
    balls.length,
    null,
    `a run follows ${MOST_BALLS} loose balls at most: more would take hours`,
    "Use fewer, larger balls of the same mass, or ballast that does not move",
  );
}
