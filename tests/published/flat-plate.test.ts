import { describe, expect, test } from "vitest";
import { flatPlate, plateAt } from "../../src/model/forces";
import { number, readCsv } from "./read-csv";

const rows = readCsv("plate_cn.csv");
const isNumber = (text: string | undefined): boolean =>
  text !== undefined && text !== "" && Number.isFinite(Number(text));

function plate(aspect: number, degrees: number): { cn: number; xcp: number } {
  const out = { cn: NaN, xcp: NaN };
  const a = (degrees * Math.PI) / 180;
  plateAt(flatPlate(aspect), Math.sin(a), degrees === 90 ? 0 : Math.cos(a), out);
  return out;
}

describe("flat plate at incidence", () => {
  test("the fit columns of the table, to their printed digits", () => {
    const fitted = rows.filter((r) => isNumber(r.AR) && isNumber(r.CN_fit) && isNumber(r.alpha_deg));
    expect(fitted.length).toBeGreaterThan(300);
    for (const row of fitted) {
      const { cn, xcp } = plate(number(row, "AR"), number(row, "alpha_deg"));
      const what = `AR ${row.AR}, ${row.alpha_deg}°`;
      // Four decimals; measured angles are printed rounded, which moves x_cp by up to 3e-5 more.
      expect(Math.abs(cn - number(row, "CN_fit")), what).toBeLessThan(6e-5);
      expect(Math.abs(xcp - number(row, "xcp_fit")), what).toBeLessThan(1e-4);
    }
  });

  test("measured plates: rms 0.056 over all sources, each within its own spread", () => {
    // Worst deviation allowed by source: Lamar's force readings ±0.01 and the attached-flow branch; Eiffel's angles
    // were read from print; Pelletier & Mueller read coarsely from figures (±0.1), near the stall of AR 1 where the
    // curve is steep; his and Eiffel's values at 90° differ from the handbook's by 0.11.
    const spread: Readonly<Record<string, number>> = {
      Eiffel1911: 0.08,
      Eiffel1911max: 0.06,
      Eiffel1911_90: 0.12,
      Lamar1974: 0.04,
      PelletierMueller2000: 0.25,
      handbook90: 0.02,
    };
    let squares = 0;
    let count = 0;
    for (const row of rows) {
      const limit = spread[row.dataset ?? ""];
      if (limit === undefined || !isNumber(row.CN_data)) continue;
      const deviation = plate(number(row, "AR"), number(row, "alpha_deg")).cn - number(row, "CN_data");
      expect(Math.abs(deviation), JSON.stringify(row)).toBeLessThan(limit);
      squares += deviation ** 2;
      count += 1;
    }
    expect(count).toBe(67);
    expect(Math.sqrt(squares / count)).toBeLessThan(0.0565);
  });

  test("lift slope at small angles against a vortex lattice, within 3 % (5 % above AR 2.5)", () => {
    // dC_N/dα per rad at 0°. The fit's Kp is a closed form (Helmbold's kind) made for the aspect ratios of bibs, 0.5 to 2.5.
    for (const row of rows.filter((r) => r.dataset === "VLM_small_alpha")) {
      const slope = Number(/=([\d.]+)/.exec(row.CN_data ?? "")?.[1]);
      const aspect = number(row, "AR");
      const { cn } = plate(aspect, 1e-3);
      expect(Math.abs(cn / ((1e-3 * Math.PI) / 180) / slope - 1), `AR ${aspect}`).toBeLessThan(
        aspect <= 2.5 ? 0.03 : 0.05,
      );
    }
  });

  test("centre of pressure against Joessel's 0.195 + 0.305 sin α within 0.04 chord", () => {
    // Joessel's rule is for all plates; at small angles the centre of a narrow one truly lies farther forward
    // (vortex lattice: 0.109 at AR 0.5, 0.166 at AR 1), so there the test begins at 5° for AR below 1.
    for (const aspect of [0.5, 0.75, 1, 1.25, 1.5, 2, 3])
      for (const row of rows.filter((r) => r.dataset === "Joessel_xcp")) {
        const degrees = number(row, "alpha_deg");
        if (aspect < 1 && degrees < 5) continue;
        const { xcp } = plate(aspect, degrees);
        expect(Math.abs(xcp - number(row, "xcp_over_c_data")), `AR ${aspect}, ${degrees}°`).toBeLessThan(
          0.04,
        );
      }
  });
});
