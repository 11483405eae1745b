import { describe, expect, it } from "vitest";
import { curvesCsv } from "../../../src/ui/plots/table";
import { csvOf } from "../../../src/ui/shell/picture/table";

describe("a table of the page as CSV", () => {
  it("has a unit that all numbers of a column share in the heading, and the numbers alone below it", () => {
    const rows = [
      ["body", "4.14 g", "any"],
      ["hook, size 6", "-0.62 g", "12.0°"],
    ];
    expect(csvOf(["Part", "Mass", "Attitude"], rows)).toBe(
      'Part,Mass (g),Attitude (°)\r\nbody,4.14,any\r\n"hook, size 6",-0.62,12.0\r\n',
    );
  });

  it("leaves numbers with their units where a column has several", () => {
    expect(
      csvOf(
        ["What", "Value"],
        [
          ["a", "1,234.5 g"],
          ["b", "3 mm"],
          ["c", "7"],
        ],
      ),
    ).toBe('What,Value\r\na,"1,234.5 g"\r\nb,3 mm\r\nc,7\r\n');
  });

  it("has decimal points where the page writes commas", () => {
    const rows = [
      ["body", "4,140 g", "0,25"],
      ["hook", "-1250,5 g", "1.200"],
    ];
    expect(csvOf(["Part", "Mass", "Share"], rows, ",")).toBe(
      "Part,Mass (g),Share\r\nbody,4.140,0.25\r\nhook,-1250.5,1.200\r\n",
    );
  });
});

it("curves have one row a point and their units in the headings; what has no value is left out", () => {
  const curves = [
    {
      label: "now",
      points: [
        [0, 0.5],
        [1, NaN],
        [2, -0.25],
      ] as const,
    },
  ];
  expect(curvesCsv(curves, { label: "heel", unit: "°" }, { label: "lever", unit: "mm" })).toBe(
    "curve,heel (°),lever (mm)\r\nnow,0,0.5\r\nnow,2,-0.25\r\n",
  );
});
