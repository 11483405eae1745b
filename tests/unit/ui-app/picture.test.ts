import { expect, it } from "vitest";
import { inLines } from "../../../src/ui/shell/picture/standalone";

it("the words over a saved picture are put into lines that have room", () => {
  const said = "The line from the rod tip to the bait, 24.8 m behind it and 1.52 m deep.";
  const lines = inLines(said, 30);
  expect(lines.join(" ")).toBe(said);
  expect(lines.length).toBe(3);
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(30);
  expect(inLines("Aufrichtemomentenkurvenbild über alles", 10)).toEqual([
    "Aufrichtemomentenkurvenbild",
    "über alles",
  ]);
  expect(inLines("Depth", 0)).toEqual(["Depth"]);
});
