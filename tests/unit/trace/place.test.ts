import { describe, expect, it } from "vitest";
import { TRACE } from "../../../src/ui/words/trace";
import { random } from "../../../src/model/base";
import {
  between,
  firstPlace,
  flipped,
  inPicture,
  onBait,
  perPx,
  placeTrouble,
  shifted,
  turned,
  turnOf,
} from "../../../src/ui/views/draw/trace/place";
import type { Placement } from "../../../src/ui/views/draw/trace/place";
import { frameOf, TRUTH } from "./photo";

const size = { width: 1200, height: 700 };

function anyPlace(r: ReturnType<typeof random>): Placement {
  const px = () => ({ u: size.width * r.uniform(), v: size.height * r.uniform() });
  return {
    nose: px(),
    tail: px(),
    from: px(),
    to: px(),
    whole: r.uniform() < 0.5,
    apart: 20 + 150 * r.uniform(),
    mirrored: r.uniform() < 0.5,
  };
}

describe("a picture's place under the drawing", () => {
  it("carries nose and tail to the datum line, keeps the known length, and finds its way back, in 200 random places", () => {
    const r = random(11);
    for (let i = 0; i < 200; i++) {
      const place = anyPlace(r);
      const tail = onBait(place, place.tail);
      expect(Math.hypot(...onBait(place, place.nose))).toBe(0);
      expect(tail[0]).toBeGreaterThan(0);
      expect(Math.abs(tail[1])).toBeLessThan(1e-9);
      const [a, b] = place.whole ? [place.nose, place.tail] : [place.from, place.to];
      const [p, q] = [onBait(place, a), onBait(place, b)];
      expect(Math.hypot(q[0] - p[0], q[1] - p[1])).toBeCloseTo(place.apart, 9);
      const back = inPicture(place, onBait(place, { u: 333, v: 222 }));
      expect(back.u).toBeCloseTo(333, 7);
      expect(back.v).toBeCloseTo(222, 7);
      // Turned by as much as it is, nothing moves; any other turn is what it then is, and the scale stays.
      expect(turned(place, turnOf(place)).tail.u).toBeCloseTo(place.tail.u, 7);
      const other = turned(place, 17.5);
      expect(turnOf(other)).toBeCloseTo(17.5, 9);
      if (place.whole) expect(perPx(other)).toBeCloseTo(perPx(place), 9);
      // Two flips are none; one leaves every mark where it is on the screen.
      const flip = flipped(place, size);
      const whither = (one: Placement, u: number, v: number) => onBait(one, { u, v });
      whither(flip, size.width - 100, 50).forEach((v, k) =>
        expect(v).toBeCloseTo(whither(place, 100, 50)[k] ?? NaN, 7),
      );
      // Moved aft and up under the drawing.
      const [s, z] = onBait(place, { u: 40, v: 60 });
      const moved = onBait(shifted(place, [3, -2]), { u: 40, v: 60 });
      expect(moved[0] - s).toBeCloseTo(3, 7);
      expect(moved[1] - z).toBeCloseTo(-2, 7);
      // Another length is known, to a hundredth of a millimetre: the picture keeps its size.
      const known = between(place, !place.whole);
      expect(Math.abs(perPx(known) / perPx(place) - 1)).toBeLessThan(0.006 / known.apart);
    }
  });

  it("by nose, tail and length is that of the photo", () => {
    for (const left of [false, true]) {
      const photo = frameOf({ ...TRUTH, length: 20 }, { pxPerMm: 4, turn: 7, left });
      const place: Placement = {
        ...firstPlace(photo, 20),
        nose: photo.at(0, 0),
        tail: photo.at(20, 0),
        mirrored: left,
      };
      expect(perPx(place)).toBeCloseTo(1 / 4, 9);
      // The picture has to be turned back by as much as the bait was turned in it.
      expect(turnOf(place)).toBeCloseTo(-7, 9);
      const [s, z] = onBait(place, photo.at(12, 5));
      expect(s).toBeCloseTo(12, 9);
      expect(z).toBeCloseTo(5, 9);
    }
  });

  it("is none where its marks lie on each other, and says which", () => {
    const place = firstPlace(size, 90);
    expect(placeTrouble(place)).toBeNull();
    expect(placeTrouble({ ...place, tail: place.nose })?.(TRACE.in("en"))).toMatch(/Nose and tail/);
    expect(placeTrouble({ ...place, to: place.from })).toBeNull();
    expect(placeTrouble({ ...place, whole: false, to: place.from })?.(TRACE.in("en"))).toMatch(
      /known length/,
    );
  });
});
