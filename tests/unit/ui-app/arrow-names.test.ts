import { expect, it } from "vitest";
import { besideArrows } from "../../../src/ui/views/teach/arrow-names";

const arrow = (letter: string, x: number, y: number, ux: number, uy: number) => ({
  letter,
  says: `${letter} 12.34 mN`,
  to: { x, y },
  along: { x: ux, y: uy },
});

it("the words of arrows that end at one place lie apart, each beyond its tip", () => {
  const size = 20;
  const arrows = [
    arrow("W", 0, 100, 0, 1),
    arrow("H", 4, 96, 0, 1),
    arrow("A", 2, 98, 0, 1),
    arrow("B", 0, -100, 0, -1),
    arrow("C", 3, -100, 0, -1),
    arrow("L", 200, 0, 1, 0),
    arrow("D", -200, 0, -1, 0),
  ];
  const names = besideArrows(arrows, size);
  names.forEach((a, i) =>
    names.slice(i + 1).forEach((b) => {
      const across = Math.abs(a.x - b.x) < 0.55 * size * a.says.length;
      expect(across && Math.abs(a.y - b.y) < size, `${a.letter} on ${b.letter}`).toBe(false);
    }),
  );
  const at = new Map(names.map((one) => [one.letter, one]));
  expect(at.get("W")?.y).toBeGreaterThan(100);
  expect(at.get("B")?.y).toBeLessThan(-100);
  // To the right the words begin at the tip, to the left they end there.
  expect(at.get("L")?.x).toBeCloseTo(200, 9);
  expect((at.get("D")?.x ?? 0) + 0.55 * size * "D 12.34 mN".length).toBeCloseTo(-200, 9);
});
