/** The stretch of time that strip and curves show. Pure. */

/** s */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** The shortest stretch, s: one twitch fills it. Common practice, no source. */
export const LEAST_SPAN = 0.4;
/** The share of the stretch at whose ends the playhead takes it along. */
const EDGE = 0.05;

const within = (from: number, length: number, duration: number): Span => {
  const start = Math.max(0, Math.min(duration - length, from));
  return { from: start, to: start + length };
};

/** `factor` times closer about a moment, which keeps its place in the picture. */
export function zoomed({ from, to }: Span, duration: number, factor: number, about: number): Span {
  const now = to - from;
  const length = Math.min(duration, Math.max(Math.min(LEAST_SPAN, duration), now / factor));
  const at = Math.max(from, Math.min(to, about));
  const share = now > 0 ? (at - from) / now : 0;
  return within(about < from || about > to ? about - length / 2 : at - share * length, length, duration);
}

/** The stretch moved so that a moment is in it; the same object where it is. */
export function following(span: Span, duration: number, time: number): Span {
  const length = span.to - span.from;
  if (length >= duration || (time >= span.from && time <= span.to)) return span;
  return within(time < span.from ? time - (1 - EDGE) * length : time - EDGE * length, length, duration);
}

/** The stretch that begins at `from`, as long as before. */
export const movedTo = ({ from, to }: Span, duration: number, at: number): Span =>
  within(at, to - from, duration);
