import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { baitSpec, parseScenario } from "../../src/document";
import { assemble, MID } from "../../src/model/bait";
import { Floater } from "../../src/model/statics";

it("a second trim afloat in a hollow of 4e-4 of the length is found, as by a walk round the circle", () => {
  // An example, bent: found by comparing random bends with a walk.
  const parsed = parseScenario(readFileSync("scenarios/long-bib-diver-90.json", "utf8"));
  if (!parsed.ok) throw new Error("the example does not open");
  const spec = baitSpec(parsed.scenario);
  const times = (knots: readonly { readonly s: number; readonly v: number }[], factor: number) =>
    knots.map(({ s, v }) => ({ s, v: v * factor }));
  const { halfBreadth, top, bottom, exponentAbove } = spec.shape;
  const [broad, high, full] = [1.049965719171902, 1.2197080967245617, 1.029733669937216];
  const shape = {
    ...spec.shape,
    halfBreadth: times(halfBreadth, broad),
    top: times(top, high),
    bottom: times(bottom, high),
    exponentAbove: times(exponentAbove, full),
  };
  const bait = assemble({ ...spec, shape });
  const { mass, displaced } = bait.rigid(MID);
  const floater = new Floater(bait, mass / displaced / (1 - 0.019305205526090958));
  const walked: number[] = [];
  const steps = 720;
  const lever = (pitch: number): number => floater.at(pitch)?.lever ?? NaN;
  for (let i = 0; i < steps; i++) {
    const [a, b] = [i, i + 1].map((k) => -Math.PI + (2 * Math.PI * (k + 0.5)) / steps) as [number, number];
    if (lever(a) > 0 && lever(b) <= 0) walked.push((a + b) / 2);
  }
  const found = floater.equilibrium();
  const pitches = found ? [found, ...found.others].map(({ pitch }) => pitch).sort((p, q) => p - q) : [];
  expect(walked).toHaveLength(2);
  expect(pitches).toHaveLength(2);
  walked.forEach((pitch, i) => expect(Math.abs((pitches[i] ?? NaN) - pitch)).toBeLessThan(Math.PI / steps));
});
