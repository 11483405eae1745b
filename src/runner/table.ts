import { fromSI, UNITS } from "../units";
import type { Answer, ReachAnswer, RiseAnswer, RunAnswer, StaticsAnswer } from "./answer";
import type { PlanAnswer } from "./plan-answer";
import { attitudeWords, floatWords, riseWords } from "../document";

/** The answer as plain text for people, rounded for reading; --json has the numbers unrounded. */
export function table(answer: Answer): string {
  const parts = [answer.scenario];
  if (answer.water !== undefined) {
    const { density_kg_m3, viscosity_Pa_s } = answer.water;
    parts.push(
      section("Water", [
        ["density", fixed(density_kg_m3, 2), "kg/m³"],
        ["viscosity", fixed(fromSI(viscosity_Pa_s, "mPa_s"), 3), UNITS.mPa_s.symbol],
      ]),
    );
  }
  if (answer.statics !== undefined) parts.push(statics(answer.statics));
  if (answer.rise !== undefined) parts.push(rise(answer.rise));
  if (answer.reach !== undefined) parts.push(reach(answer.reach));
  if (answer.plan !== undefined)
    parts.push(
      plans(answer.plan, answer.planNearest ?? null, answer.planLimits ?? [], answer.planNotes ?? []),
    );
  if (answer.run !== undefined) parts.push(answer.run === null ? "Run\n  no cadence" : run(answer.run));
  return `${parts.join("\n\n")}\n`;
}

/** Ballast plans, or the nearest one and why none fits. */
function plans(
  found: readonly PlanAnswer[],
  nearest: PlanAnswer | null,
  limits: readonly string[],
  notes: readonly string[],
): string {
  const one = (plan: PlanAnswer, title: string): string =>
    [
      section(title, [
        ["net buoyancy", signed(plan.net_g, 2), "g", `chance to meet the target ${percent(plan.chance)}`],
        ["rest trim", plan.trim_deg === null ? "any" : signed(plan.trim_deg, 1), "°"],
        ["B to G", fixed(plan.BG_mm, 2), "mm"],
      ]),
      ...plan.holes.map((words) => `  ${words}`),
    ].join("\n");
  const shown =
    found.length > 0
      ? found.map((plan, i) => one(plan, `Plan ${i + 1}`))
      : [["No plan meets the target", ...limits.map((l) => `  ${l}`)].join("\n")].concat(
          nearest === null ? [] : [one(nearest, "The nearest to it")],
        );
  return [...shown, ...notes].join("\n\n");
}

function statics(s: StaticsAnswer): string {
  const { floating, band } = s;
  const lines = [
    section(`Statics: ${floatWords(s.netBuoyancy_g)}; ${attitudeWords(s.restTrim_deg)} under water`, [
      ["mass", fixed(s.mass_g, 2), "g"],
      ["water displaced", fixed(s.displaced_ml, 2), "mL"],
      ["net buoyancy", signed(s.netBuoyancy_g, 2), "g", "positive floats"],
      [
        "  95 % band",
        `${signed(band.netBuoyancy_g[0], 2)} to ${signed(band.netBuoyancy_g[1], 2)}`,
        "g",
        `chance of sinking ${percent(band.chanceOfSinking)}`,
      ],
      ["body volume", fixed(s.bodyVolume_ml, 3), "mL"],
      ["bare skin", fixed(s.skin_mm2, 0), "mm²"],
      ["G at", point(s.G_mm), "mm", "station, height"],
      ["B at", point(s.B_mm), "mm"],
      ["B to G", fixed(s.BG_mm, 2), "mm"],
      [
        "rest trim",
        s.restTrim_deg === null ? "any" : signed(s.restTrim_deg, 1),
        s.restTrim_deg === null ? "" : "°",
        "under water, nose-up positive",
      ],
      ...s.otherRestTrims_deg.map((trim): Row => [
        "  also rests at",
        signed(trim, 1),
        "°",
        "loose balls at the other end",
      ]),
      ...(floating === null
        ? []
        : ([
            ["afloat: trim", signed(floating.trim_deg, 1), "°"],
            ["  draft", fixed(floating.draft_mm, 1), "mm"],
            ["  immersed", percent(floating.immersedFraction), ""],
            [
              "  GM",
              signed(floating.GM_mm, 2),
              "mm",
              floating.GM_mm < 0 ? "lies on its side" : "floats upright",
            ],
            ...floating.otherTrims_deg.map((trim): Row => ["  also floats at", signed(trim, 1), "°"]),
          ] satisfies Row[])),
    ]),
    "",
    account(s),
  ];
  if (s.bench.residuals.length > 0) {
    lines.push(
      "",
      section(
        `Bench: body ${fixed(s.bench.bodyDensity_g_ml, 3)} g/mL, volume × ${fixed(s.bench.volumeFactor, 4)}`,
        [
          ...s.bench.residuals.map((one): Row => [
            one.kind,
            fixed(one.reading_g, 2),
            "g",
            `computed ${fixed(one.model_g, 2)}, residual ${signed(one.residual_g, 3)}`,
          ]),
        ],
      ),
    );
  }
  for (const { path, text } of s.warnings) lines.push("", `  Warning, ${path}: ${text}`);
  for (const note of s.notes) lines.push("", `  Note: ${note}`);
  return lines.join("\n");
}

function account(s: StaticsAnswer): string {
  return grid(
    "  Account",
    ["item", "mass g", "displaced mL", "net g"],
    [
      ...s.account.map((row) => [
        row.item,
        fixed(row.mass_g, 3),
        fixed(row.displaced_ml, 3),
        signed(row.net_g, 3),
      ]),
      ["all", fixed(s.mass_g, 3), fixed(s.displaced_ml, 3), signed(s.netBuoyancy_g, 3)],
    ],
  );
}

function rise(r: RiseAnswer): string {
  return section(`Released under water: ${riseWords(r)}`, [
    ["speed", signed(r.speed_mm_s, 1), "mm/s", "positive rises"],
    [
      "per 300 mm",
      r.secondsPer300mm === null ? "stands still" : fixed(r.secondsPer300mm, 1),
      r.secondsPer300mm === null ? "" : "s",
    ],
    ["trim", signed(r.trim_deg, 1), "°"],
    ["drift", signed(r.drift_mm_s, 1), "mm/s", "forward positive"],
    ...(r.why === null ? [] : ([["  not steady", r.why, ""]] satisfies Row[])),
  ]);
}

function reach(rows: readonly ReachAnswer[]): string {
  const cell = (value: number | null, digits: number) => (value === null ? "–" : fixed(value, digits));
  return grid(
    "Reach in a steady tow (depth good to 20–30 % until calibrated, trim to ±6°)",
    ["speed m/s", "bib °", "line m", "depth m", "trim °", "tension N", "line °", ""],
    rows.map((row) => [
      fixed(row.speed_m_s, 2),
      cell(row.bibAngle_deg, 1),
      fixed(row.lineOut_m, 1),
      cell(row.depth_m, 2),
      row.trim_deg === null ? "–" : signed(row.trim_deg, 1),
      cell(row.tension_N, 3),
      cell(row.lineAngle_deg, 1),
      row.runs ? (row.why ?? "runs") : `does not run: ${row.why ?? "no reason given"}`,
    ]),
  );
}

function run(r: RunAnswer): string {
  const at = (time: number) =>
    Math.min(r.time_s.length - 1, Math.round((time / r.duration_s) * (r.time_s.length - 1)));
  const rows = [...r.marks, { time_s: r.duration_s, label: "end" }].map(({ time_s, label }) => {
    const i = at(time_s);
    return [
      fixed(time_s, 1),
      fixed(r.depth_m[i] ?? NaN, 2),
      signed(r.pitch_deg[i] ?? NaN, 1),
      fixed(r.speed_m_s[i] ?? NaN, 2),
      fixed(r.tension_N[i] ?? NaN, 3),
      label,
    ];
  });
  return grid(
    `Run: ${fixed(r.duration_s, 1)} s, deepest ${fixed(r.deepest_m, 2)} m, ends at ${signed(r.endTrim_deg, 1)}°`,
    ["time s", "depth m", "pitch °", "speed m/s", "tension N", "begins"],
    rows,
  );
}

type Row = readonly [label: string, value: string, unit: string, note?: string];

function section(title: string, rows: readonly Row[]): string {
  const wide = Math.max(...rows.map(([label]) => label.length));
  const values = Math.max(...rows.map(([, value]) => value.length));
  const lines = rows.map(([label, value, unit, note]) =>
    `  ${label.padEnd(wide)}  ${value.padStart(values)} ${unit.padEnd(6)}${note === undefined ? "" : `  ${note}`}`.trimEnd(),
  );
  return [title, ...lines].join("\n");
}

/** A table whose first cells are flush right where they are numbers. */
function grid(title: string, head: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, i) => Math.max(...all.map((row) => (row[i] ?? "").length)));
  const numeric = head.map((_, i) => rows.every((row) => /^[−+–\d]/.test(row[i] ?? "")));
  const lines = all.map((row) =>
    `  ${row.map((cell, i) => (numeric[i] ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0))).join("  ")}`.trimEnd(),
  );
  return [title, ...lines].join("\n");
}

/** Fixed digits with a real minus sign, and no "−0.00". */
function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−");
}

function signed(value: number, digits: number): string {
  const text = fixed(value, digits);
  return Number(value.toFixed(digits)) > 0 ? `+${text}` : text;
}

const point = ([station, height]: readonly [number, number]) => `${fixed(station, 2)}, ${fixed(height, 2)}`;
const percent = (share: number) => `${fixed(fromSI(share, "percent"), 1)} %`;
