import { expect, test } from "vitest";
import { snapTo } from "../../../src/ui/views/draw/snap";

const ground = { step: 0.5, reach: 1.2, others: [7.3, 20] };

test.each([
  ["the grid where nothing is near", 5.13, true, 5, "grid"],
  ["another point within reach, before the grid", 6.4, true, 7.3, "point"],
  ["the datum line within reach", -0.9, true, 0, "datum"],
  ["the nearer of two", 7.9, true, 7.3, "point"],
  ["the grid beyond reach of a point", 8.6, true, 8.5, "grid"],
  ["no datum line along the bait", 0.9, false, 1, "grid"],
] as const)("a drag keeps to %s", (_, mm, datum, at, to) => {
  expect(snapTo(mm, ground, datum)).toEqual({ at, to });
});
