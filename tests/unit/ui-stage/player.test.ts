import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  LONGEST_LAG,
  loaded,
  paused,
  played,
  rateBeside,
  rateText,
  sought,
  stepped,
  ticked,
  timeText,
  waiting,
  type Playback,
} from "../../../src/ui/stage/playback";
import { Player, type Beats } from "../../../src/ui/stage/player.svelte";

const at = (over: Partial<Playback> = {}): Playback => ({
  time: 0,
  playing: true,
  rate: 1,
  duration: 10,
  available: 10,
  ...over,
});

describe("the recording's clock", () => {
  test("goes with the wall clock times its rate, a long lag counted as a short one", () => {
    expect(ticked(at(), 0.016).time).toBeCloseTo(0.016, 12);
    expect(ticked(at({ rate: 0.25 }), 0.016).time).toBeCloseTo(0.004, 12);
    expect(ticked(at(), 30).time).toBe(LONGEST_LAG);
    expect(ticked(at(), -1).time).toBe(0);
    expect(ticked(at({ playing: false }), 0.016).time).toBe(0);
  });

  test("waits at what is computed, and goes on by itself", () => {
    const caughtUp = ticked(at({ time: 1.99, available: 2 }), 0.05);
    expect(caughtUp.time).toBe(2);
    expect(caughtUp.playing).toBe(true);
    expect(waiting(caughtUp)).toBe(true);
    const more = loaded(caughtUp, 10, 3, true);
    expect(waiting(more)).toBe(false);
    expect(ticked(more, 0.05).time).toBeCloseTo(2.05, 12);
  });

  test("keeps its time while a new run has not reached it yet", () => {
    const edited = loaded(at({ time: 6 }), 10, 0, true);
    expect(edited.time).toBe(6);
    expect(ticked(edited, 0.05).time).toBe(6);
    expect(waiting(edited)).toBe(true);
    expect(loaded(at({ time: 6 }), 4, 0, true).time).toBe(4);
    expect(loaded(at({ time: 6 }), 4, 0, false).time).toBe(0);
  });

  test("stops at the end, and plays from the start again", () => {
    const end = ticked(at({ time: 9.99 }), 0.05);
    expect(end.time).toBe(10);
    expect(end.playing).toBe(false);
    expect(played(end)).toMatchObject({ playing: true, time: 0 });
    expect(played(paused(at({ time: 4 })))).toMatchObject({ playing: true, time: 4 });
  });

  test("seeks only where there is something to see", () => {
    expect(sought(at({ available: 3 }), 7).time).toBe(3);
    expect(sought(at(), -1).time).toBe(0);
    expect(() => sought(at(), Number.NaN)).toThrow(/NaN/);
  });

  test("steps by whole frames from anywhere", () => {
    expect(stepped(at({ time: 1 }), 1, 60)).toMatchObject({ time: 61 / 60, playing: false });
    expect(stepped(at({ time: 1 }), -1, 60).time).toBeCloseTo(59 / 60, 12);
    expect(stepped(at({ time: 1.004 }), 1, 60).time).toBeCloseTo(61 / 60, 12);
    expect(stepped(at({ time: 1.004 }), -1, 60).time).toBeCloseTo(1, 12);
    expect(stepped(at({ time: 0 }), -1, 60).time).toBe(0);
    expect(() => stepped(at(), 1, 0)).toThrow(/frame rate 0/);
  });

  test("never leaves the recording", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: -1, max: 5, noNaN: true }),
        (duration, available, time, dt) => {
          const start = sought(loaded(at(), duration, available, true), time);
          const next = ticked(start, dt);
          expect(next.time).toBeGreaterThanOrEqual(start.time);
          expect(next.time).toBeLessThanOrEqual(Math.min(duration, Math.max(available, start.time)));
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  test("rates, and times in words", () => {
    expect(rateBeside(1, -1)).toBe(0.5);
    expect(rateBeside(0.1, -1)).toBe(0.1);
    expect(rateBeside(0.25, 1)).toBe(0.5);
    expect(rateBeside(1, 1)).toBe(4);
    expect(rateBeside(4, 1)).toBe(4);
    expect(rateText(0.25)).toBe("¼×");
    expect(rateText(4)).toBe("4×");
    expect(timeText(5.256)).toBe("5.25");
    expect(timeText(65.25)).toBe("1:05.25");
    expect(timeText(0.29)).toBe("0.29");
    expect(timeText(59.999)).toBe("59.99");
  });
});

/** Beats by hand. */
class Hand implements Beats {
  waitingFor: ((now: number) => void) | null = null;
  #count = 0;
  request(callback: (now: number) => void): number {
    this.waitingFor = callback;
    return ++this.#count;
  }
  cancel(): void {
    this.waitingFor = null;
  }
  beat(now: number): void {
    const callback = this.waitingFor;
    this.waitingFor = null;
    callback?.(now);
  }
}

describe("Player", () => {
  test("asks for beats only while it plays", () => {
    const hand = new Hand();
    const player = new Player(hand);
    player.load(1, 1);
    expect(hand.waitingFor).toBeNull();
    player.play();
    expect(hand.waitingFor).not.toBeNull();
    hand.beat(1000);
    expect(player.time).toBe(0); // the first beat sets the clock
    hand.beat(1050);
    expect(player.time).toBeCloseTo(0.05, 9);
    player.pause();
    expect(hand.waitingFor).toBeNull();
    player.play();
    hand.beat(9000); // the pause does not count
    expect(player.time).toBeCloseTo(0.05, 9);
    for (let now = 9050; hand.waitingFor; now += 50) hand.beat(now);
    expect(player.time).toBe(1);
    expect(player.playing).toBe(false);
  });

  test("stands while a window lies over the picture, and goes on after it where it was running", () => {
    const hand = new Hand();
    const player = new Player(hand);
    player.load(5, 5);
    player.play();
    hand.beat(0);
    hand.beat(50);
    player.hold(true);
    expect(hand.waitingFor).toBeNull();
    expect(player.playing).toBe(true);
    player.hold(false);
    hand.beat(9000); // the time of the window does not count
    hand.beat(9050);
    expect(player.time).toBeCloseTo(0.1, 9);
    // What is started behind a window waits for its end, what is stopped there stays so.
    player.hold(true);
    player.pause();
    player.play();
    expect(hand.waitingFor).toBeNull();
    player.pause();
    player.hold(false);
    expect(hand.waitingFor).toBeNull();
  });

  test("waits for a growing recording and refuses unknown rates", () => {
    const hand = new Hand();
    const player = new Player(hand);
    player.load(5, 0.02);
    player.play();
    hand.beat(0);
    hand.beat(50);
    expect(player.waiting).toBe(true);
    player.extend(5);
    hand.beat(100);
    expect(player.time).toBeCloseTo(0.07, 9);
    player.slower();
    expect(player.rate).toBe(0.5);
    player.faster();
    expect(player.rate).toBe(1);
    expect(() => player.setRate(3)).toThrow(/rate 3/);
    player.step(1);
    expect(player.playing).toBe(false);
    player.toggle();
    expect(player.playing).toBe(true);
    player.destroy();
    expect(hand.waitingFor).toBeNull();
  });
});
