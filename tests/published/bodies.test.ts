import { describe, expect, it } from "vitest";
import { makeShape, sectionIntegrals, type Edges } from "../../src/model/shape";
import { immersion } from "../../src/model/hydrostatics";
import { ellipsoid, round, station, surface } from "../lib/bodies";
import { suboff, suboffRadius } from "./hulls";
import { number, readCsv } from "./read-csv";

// Closed-form solids and the DARPA SUBOFF hull: volume, centroid, skin and inertia of the shape room against data/bodies.csv.
// Tolerances: the table prints 6 to 10 digits, so 2e-9 relative is its own rounding; where skin or curves with a singular
// slope are integrated, 1e-6 (100 times finer than the 1e-4 that the project promises for rounded ends).

const rows = readCsv("bodies.csv");
const value = (body: string, quantity: string, parameters?: string): number => {
  const row = rows.find(
    (r) =>
      r["body"] === body && r["quantity"] === quantity && (parameters ?? r["parameters"]) === r["parameters"],
  );
  if (!row) throw new Error(`no row ${body}, ${quantity}`);
  return number(row, "value");
};
const near = (got: number, want: number, relative: number): void => {
  expect(Math.abs(got - want)).toBeLessThanOrEqual(relative * Math.abs(want));
};

const mm = 1e-3;

describe("sphere and spheroid", () => {
  it("sphere", () => {
    const sphere = makeShape(ellipsoid(10 * mm, 10 * mm, 10 * mm));
    near(sphere.volume * 1e9, value("sphere", "volume"), 1e-9);
    near(sphere.skinArea * 1e6, value("sphere", "area"), 1e-8);
  });

  it("prolate spheroid", () => {
    const body = makeShape(ellipsoid(50 * mm, 10 * mm, 10 * mm));
    near(body.volume * 1e9, value("prolate spheroid", "volume"), 1e-9);
    near(body.skinArea * 1e6, value("prolate spheroid", "area"), 1e-7);
    near(body.skinCentroid.x, -50 * mm, 1e-9);
  });

  it("half prolate spheroid, blunt behind", () => {
    const a = 50 * mm;
    // r = b·√(1 − (1 − s/a)²): with s = a(1 − cos φ)/2
    const half = makeShape(round(a, (phi) => 10 * mm * Math.sqrt(1 - (1 - station(phi, a) / a) ** 2)));
    near((a + half.centroid.x) / mm, value("half prolate spheroid", "centroid from base"), 1e-8);
  });

  it("triaxial ellipsoid: volume, centroid, second moments", () => {
    const [a, b, c] = [50 * mm, 10 * mm, 12 * mm];
    const body = makeShape(ellipsoid(a, b, c));
    const V = (4 / 3) * Math.PI * a * b * c;
    near(body.volume, V, 1e-12);
    near(body.centroid.x, -a, 1e-12);
    expect(Math.abs(body.centroid.z)).toBeLessThan(1e-15);
    // ∫x² dV = V a²/5 (standard tables; the row gives (b² + c²)/5 for the axial inertia)
    near(body.secondMomentX, (V * a * a) / 5, 1e-10);
    near(body.secondMomentZ, (V * c * c) / 5, 1e-10);
    near(body.maxHeight, 2 * c, 1e-12);
    near(body.maxHalfBreadth, b, 1e-12);
  });
});

describe("caps, capsule, cone, paraboloid", () => {
  it("spherical cap, blunt behind", () => {
    const [R, h] = [10 * mm, 5 * mm];
    const cap = makeShape(
      round(h, (phi) => {
        const s = station(phi, h);
        return Math.sqrt(s * (2 * R - s));
      }),
    );
    near(cap.volume * 1e9, value("spherical cap", "volume"), 1e-9);
    near((R + cap.centroid.x) / mm, value("spherical cap", "centroid from sphere centre"), 1e-9);
    // curved part 2πRh, face π(2Rh − h²)
    near(cap.skinArea, 2 * Math.PI * R * h + Math.PI * (2 * R * h - h * h), 1e-7);
  });

  it("capsule", () => {
    const [R, cylinder] = [10 * mm, 60 * mm];
    const L = cylinder + 2 * R;
    const joint = Math.acos(1 - (2 * R) / L);
    const body = makeShape(
      round(
        L,
        (phi) => {
          const s = Math.min(station(phi, L), L - station(phi, L));
          return s < R ? Math.sqrt(Math.max(0, s * (2 * R - s))) : R;
        },
        [joint, Math.PI - joint],
      ),
    );
    near(body.volume * 1e9, value("capsule", "volume"), 1e-7);
    near(body.skinArea * 1e6, value("capsule", "area"), 1e-6);
    near(body.centroid.x, -L / 2, 1e-12);
    // transverse about the centre: ∫x² + ∫z²; axial: ∫y² + ∫z² = 2∫z² on a body of revolution
    near(
      ((body.secondMomentX + body.secondMomentZ) / body.volume) * 1e6,
      value("capsule", "I_transverse/m about centre"),
      1e-7,
    );
    near(((2 * body.secondMomentZ) / body.volume) * 1e6, value("capsule", "I_axial/m"), 1e-7);
  });

  it("cone", () => {
    const [R, H] = [10 * mm, 40 * mm];
    const body = makeShape(round(H, (phi) => (R * station(phi, H)) / H));
    near(body.volume * 1e9, value("cone", "volume"), 1e-9);
    near((body.skinArea - Math.PI * R * R) * 1e6, value("cone", "lateral area"), 1e-8);
    near((H + body.centroid.x) / mm, value("cone", "centroid from base"), 1e-9);
    near(
      ((body.secondMomentX + body.secondMomentZ) / body.volume) * 1e6,
      value("cone", "I_transverse/m about centroid"),
      1e-9,
    );
    near(((2 * body.secondMomentZ) / body.volume) * 1e6, value("cone", "I_axial/m"), 1e-9);
  });

  it("paraboloid", () => {
    const [R, H] = [10 * mm, 40 * mm];
    // r = R·√(s/H) = R·sin(φ/2)
    const body = makeShape(round(H, (phi) => R * Math.sin(phi / 2)));
    near(body.volume * 1e9, value("paraboloid", "volume"), 1e-9);
    near((body.skinArea - Math.PI * R * R) * 1e6, value("paraboloid", "lateral area"), 1e-7);
    near(-body.centroid.x / mm, value("paraboloid", "centroid from vertex"), 2e-8); // printed digits
    near(
      ((body.secondMomentX + body.secondMomentZ) / body.volume) * 1e6,
      value("paraboloid", "I_transverse/m about centroid"),
      1e-8,
    );
    near(((2 * body.secondMomentZ) / body.volume) * 1e6, value("paraboloid", "I_axial/m"), 1e-8);
  });
});

describe("superellipses", () => {
  const known = rows.filter((r) => r["body"] === "superellipse" && r["parameters"] !== "n=0.666667");

  it.each(known)("$parameters: $quantity", (row) => {
    const n = Number((row["parameters"] ?? "").replace("n=", ""));
    const [a, b] = [2, 3];
    const section = {
      s: 0,
      top: b,
      bottom: -b,
      widest: 0,
      halfBreadth: a,
      exponentAbove: n,
      exponentBelow: n,
    };
    const { area, momentZ, secondZ } = sectionIntegrals(section);
    expect(momentZ).toBe(0);
    if (row["quantity"] === "area/(a b)") near(area / (a * b), number(row, "value"), 2e-9);
    else near(secondZ / (a * b ** 3), number(row, "value"), 5e-9);
  });

  const solids = rows.filter((r) => r["body"]?.startsWith("generalised ellipsoid"));

  it.each(solids)("|x/a|^r + |y/b|^r + |z/c|^r = 1, $parameters", (row) => {
    const r = Number((row["parameters"] ?? "").replace("r=", ""));
    const [a, b, c] = [50 * mm, 10 * mm, 12 * mm];
    const share = (phi: number): number => {
      const x = Math.abs(Math.cos(phi));
      return (1 - x ** r) ** (1 / r);
    };
    const edges: Edges = {
      ...round(2 * a, (phi) => c * share(phi), [Math.PI / 2]), // |x| has a kink in its middle
      halfBreadth: (phi) => b * share(phi),
      exponentAbove: () => r,
      exponentBelow: () => r,
    };
    // r > 2 has ends like φ^(2/r), where Gauss panels converge algebraically
    near(makeShape(edges).volume / (a * b * c), number(row, "value"), r > 2 ? 1e-6 : 1e-9);
  });
});

describe("half-immersed ellipsoid and Wigley waterplane", () => {
  it("BM_T = 3b²/(8c), B 3c/8 below the waterline", () => {
    // stability.csv, id ell: a = 50, b = 10, c = 12 mm: BM_T 3.125 mm, B 4.5 mm below the waterline
    const body = makeShape(ellipsoid(50 * mm, 10 * mm, 12 * mm));
    const half = immersion(body, surface(0, 0));
    near(half.waterplaneIT / half.volume, 3.125 * mm, 1e-8);
    near(half.centroid.z, -4.5 * mm, 1e-8);
    near(half.waterplaneArea, Math.PI * 50 * 10 * mm * mm, 1e-9);
  });

  it("BM_L = 3a²/(8c) by the shift of B with trim", () => {
    // dM/dθ of the immersed volume about its centre: B moves forward by BM_L·dθ; 3·50²/(8·12) = 78.125 mm
    const body = makeShape(ellipsoid(50 * mm, 10 * mm, 12 * mm));
    const d = 1e-5;
    // level through the centre of the ellipsoid, (−a, 0)
    const at = (pitch: number) => immersion(body, surface(pitch, -50 * mm * Math.sin(pitch))).centroid;
    // nose-up: the tail goes deeper, B moves aft by BM_L per radian
    near((at(-d).x - at(d).x) / (2 * d), 78.125 * mm, 1e-6);
  });

  it("Wigley hull: waterplane coefficient and I_T", () => {
    // Sections of the hull are parabolas in z, which no superellipse is; its waterplane is (B/2)(1 − ξ²) and is what counts here.
    const [L, B] = [0.1, 0.01];
    const body = makeShape({
      ...round(L, () => 0.003),
      halfBreadth: (phi) => (B / 2) * Math.sin(phi) ** 2, // 1 − ξ² with ξ = −cos φ
    });
    const { waterplaneArea, waterplaneIT } = immersion(body, surface(0, 0));
    near(waterplaneArea / (L * B), value("Wigley hull", "waterplane coefficient"), 1e-9);
    near(waterplaneIT / (L * B ** 3), value("Wigley hull", "I_T/(L B^3)"), 2e-8);
  });
});

describe("DARPA SUBOFF bare hull", () => {
  const body = makeShape(suboff());

  it("has the tabulated radii", () => {
    for (const row of rows.filter((r) => r["quantity"]?.startsWith("radius at"))) {
      const x = Number(/x=([\d.]+) ft/.exec(row["quantity"] ?? "")?.[1]);
      expect(Math.abs(suboffRadius(x) - number(row, "value"))).toBeLessThan(1e-6); // printed digits
    }
  });

  it("volume, centre of buoyancy and wetted area", () => {
    // promised: 5e-4; reached: 1e-6
    near(body.volume, value("SUBOFF bare hull", "volume"), 1e-6);
    near(-body.centroid.x, value("SUBOFF bare hull", "centre of buoyancy from nose"), 1e-6);
    near(body.skinArea, value("SUBOFF bare hull", "wetted area"), 1e-5);
    near(2 * body.maxHalfBreadth, value("SUBOFF bare hull", "max diameter"), 1e-9);
  });
});
