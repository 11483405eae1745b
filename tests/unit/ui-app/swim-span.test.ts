import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { following, LEAST_SPAN, movedTo, zoomed, type Span } from "../../../src/ui/views/swim/span";

describe("the stretch of time of strip and curves", () => {
  test("zooms about the playhead, which keeps its place; out again it is the whole", () => {
    const span = zoomed({ from: 0, to: 20 }, 20, 4, 5);
    expect(span).toEqual({ from: 3.75, to: 8.75 });
    expect((5 - span.from) / (span.to - span.from)).toBeCloseTo(5 / 20, 12);
    expect(zoomed(span, 20, 0.25, 5)).toEqual({ from: 0, to: 20 });
    // Outside of it the moment comes to its middle.
    expect(zoomed(span, 20, 2, 15)).toEqual({ from: 13.75, to: 16.25 });
    expect(movedTo(span, 20, 18)).toEqual({ from: 15, to: 20 });
  });

  test("goes along with the playhead when that leaves it", () => {
    const span = { from: 3, to: 5 };
    expect(following(span, 20, 4)).toBe(span);
    expect(following(span, 20, 6)).toEqual({ from: 5.9, to: 7.9 });
    const back = following(span, 20, 1);
    expect(back.from).toBeCloseTo(0, 12);
    expect(following({ from: 0, to: 20 }, 20, 25)).toEqual({ from: 0, to: 20 });
  });

  test("whatever is done it lies in the run, is never shorter than a twitch, and holds what it zooms about", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 900, noNaN: true }),
        fc.array(
          fc.tuple(
            fc.double({ min: 0.05, max: 20, noNaN: true }),
            fc.double({ min: 0, max: 1, noNaN: true }),
          ),
        ),
        (duration, steps) => {
          let span: Span = { from: 0, to: duration };
          for (const [factor, share] of steps) {
            const about = share * duration;
            span = zoomed(span, duration, factor, about);
            expect(span.from).toBeGreaterThanOrEqual(0);
            expect(span.to).toBeLessThanOrEqual(duration + 1e-9);
            expect(span.to - span.from).toBeGreaterThanOrEqual(Math.min(LEAST_SPAN, duration) - 1e-9);
            expect(about).toBeGreaterThanOrEqual(span.from - 1e-9);
            expect(about).toBeLessThanOrEqual(span.to + 1e-9);
          }
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });
});
