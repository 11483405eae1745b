import { describe, expect, it } from "vitest";
import { compile } from "../../../src/document";
import { floating } from "../../../src/model/statics";
import { noseAfloat, noseAtDepth, stillSnapshot } from "../../../src/ui/views/float/still";
import { scenario } from "../ui-app/scenario";

const { bait, around } = compile(scenario());

describe("a bait drawn at rest", () => {
  it("has its surface at height 0 and B straight above G", () => {
    const lies = floating(bait, around.density);
    if (lies === null) throw new Error("the sample floats");
    const { pitch, surface, side, B } = lies;
    const now = stillSnapshot(bait, { nose: noseAfloat(bait, pitch, surface.level), pitch, side, B });
    // Floating equilibrium: no lever between the two. Tolerance: that of the search for the trim, in metres.
    expect(now.B.x - now.G.x).toBeCloseTo(0, 9);
    // The nose tip stands over the water by minus the surface's level in the body's own frame.
    expect(now.nose.z).toBeCloseTo(-surface.level, 15);
    // Its lowest point lies at the draft that statics give.
    const lowest = Math.min(
      ...Array.from({ length: 2001 }, (_, i) => {
        const s = (i / 2000) * bait.shape.length;
        const phi = Math.acos(1 - (2 * s) / bait.shape.length);
        return now.nose.z - s * Math.sin(pitch) + bait.drawn.edges.bottom(phi) * Math.cos(pitch);
      }),
    );
    expect(-lowest).toBeCloseTo(lies.draft, 6);
  });

  it("in the hand has its tie eye at the depth of the hand, in any attitude", () => {
    for (const pitch of [0, 0.4, -1.2, 3]) {
      const side = { end: "mid", face: "floor" } as const;
      const now = stillSnapshot(bait, { nose: noseAtDepth(bait, pitch, 0.37), pitch, side, B: null });
      expect(now.eye.z).toBeCloseTo(-0.37, 12);
    }
  });

  it("hangs as many hooks as carry something", () => {
    const now = stillSnapshot(bait, {
      nose: { x: 0, z: 0 },
      pitch: 0,
      side: { end: "mid", face: "floor" },
      B: null,
    });
    expect(now.hooks).toHaveLength(
      bait.spec.hangers.filter((one) => one.hook !== null || one.ring !== null).length,
    );
  });
});
