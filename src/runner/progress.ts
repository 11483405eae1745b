/** Before this much time no run is told of, s: most are over by then, and an estimate would jump. */
const WAIT = 4;

/**
 * How much longer a run will take, s, from the time it has taken and the share (0 to 1) of it that is done. Null in its first
 * seconds and at its end. A run takes longer where more happens in it: so this is asked again and again.
 */
export function secondsLeft(elapsed: number, share: number): number | null {
  return elapsed >= WAIT && share > 0 && share < 1 ? (elapsed * (1 - share)) / share : null;
}

/** A time to wait, in words: to 5 s below a minute and a half, to a minute below 90 minutes. */
export function waitWords(seconds: number): string {
  if (seconds < 90) return `about ${Math.max(5, 5 * Math.round(seconds / 5))} s`;
  const minutes = Math.round(seconds / 60);
  return minutes < 90 ? `about ${minutes} minutes` : `about ${Math.round(minutes / 60)} hours`;
}
