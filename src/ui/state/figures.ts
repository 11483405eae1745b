import type { Statics } from "../../model/statics";
import type { TerminalRise } from "../../model/tow";
import type { Band } from "../../model/statics";
import { floats, LEVEL_WITHIN_DEG, SUSPENDS_WITHIN_G } from "../../runner";
import { fromSI } from "../../units";
import type { Worked } from "./workspace.svelte";
import type { ShownUnit, Units } from "./units";
import type { Why } from "./why.svelte";

/** One number of the verdict with its words, its difference to a pinned variant's, and its 'why'. */
export interface Figure {
  readonly key: string;
  readonly label: string;
  /** In `unit`; null where there is no such number, and `words` then says why. */
  readonly value: number | null;
  readonly unit: ShownUnit;
  readonly digits: number;
  /** Shown with its sign. */
  readonly signed: boolean;
  readonly words: string;
  why(units: Units): Why;
}

const grams = (kg: number): number => fromSI(kg, "g");
const millilitres = (m3: number): number => fromSI(m3, "mL");
const millimetres = (m: number): number => fromSI(m, "mm");
export const degrees = (rad: number): number => fromSI(rad, "deg");

/** A pitch in words, degrees; a bait that has turned over and over counts as where it is now. */
export function attitudeWords(pitchDegrees: number): string {
  const turned = pitchDegrees - 360 * Math.round(pitchDegrees / 360);
  if (Math.abs(turned) > 90) return "belly up";
  if (Math.abs(turned) <= LEVEL_WITHIN_DEG) return "level";
  return turned > 0 ? "nose-up" : "nose-down";
}

/** The verdict as one spoken sentence: the live region and the page's title. */
export function verdictSentence(statics: Statics, units: Units): string {
  const net = grams(statics.netBuoyancy);
  const by = units.show(Math.abs(net), "g", 2);
  switch (floats(net)) {
    case "floats":
      return `Floats by ${by}`;
    case "sinks":
      return `Sinks by ${by}`;
    case "suspends":
      return `Suspends: ${by} ${net >= 0 ? "light" : "heavy"}`;
  }
}

const HYDROSTATICS =
  "E. V. Lewis (ed.), Principles of Naval Architecture, vol. I, SNAME 1988; docs/model.md §5.";
const WATER =
  "Water: UNESCO equation of state EOS-80, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44.";

export function netFigure({ statics }: Worked): Figure {
  const net = grams(statics.netBuoyancy);
  const verdict = floats(net);
  return {
    key: "net",
    label: "Net buoyancy",
    value: net,
    unit: "g",
    digits: 2,
    signed: true,
    words: verdict,
    why: (units) => ({
      title: "Net buoyancy",
      value: `${units.show(net, "g", 2, true)} · ${verdict}`,
      meaning:
        "What the water carries less what the bait weighs, all of it under water. Above zero it floats. " +
        `'Suspends' is said within ±${units.show(SUSPENDS_WITHIN_G, "g", 2)}: finer than that no scale and no paint brush works.`,
      formula: "net = ρ · ΣV − Σm",
      inputs: [
        { name: "ρ, density of the water", value: units.show(statics.density, "kg/m³", 2) },
        { name: "ΣV, water displaced", value: units.show(millilitres(statics.displaced), "mL", 3) },
        { name: "Σm, mass of everything fitted", value: units.show(grams(statics.mass), "g", 3) },
      ],
      table: {
        head: [
          "item",
          `mass, ${units.unit("g")}`,
          `displaces, ${units.unit("mL")}`,
          `net, ${units.unit("g")}`,
        ],
        rows: statics.account.map((row) => [
          row.item,
          units.bare(grams(row.mass), "g", 3),
          units.bare(millilitres(row.displaced), "mL", 3),
          units.bare(grams(row.net), "g", 3, true),
        ]),
        foot: [
          "together",
          units.bare(grams(statics.mass), "g", 3),
          units.bare(millilitres(statics.displaced), "mL", 3),
          units.bare(net, "g", 3, true),
        ],
      },
      source: `Archimedes' principle. ${WATER} The account: docs/model.md §3. Words: common practice, no source.`,
      note:
        "What is inside the body counts in full; what is outside counts by what it exceeds the water it displaces. " +
        "Hooks and rings count whole.",
    }),
  };
}

/** `band` is null while it is being worked out. */
export function restFigure({ statics }: Worked, band: Band | null): Figure {
  const { rest } = statics;
  const pitch = rest.pitch === null ? null : degrees(rest.pitch);
  const spread = band?.restTrim ?? null;
  return {
    key: "rest",
    label: "At rest under water",
    value: pitch,
    unit: "°",
    digits: 1,
    signed: true,
    words: pitch === null ? "any attitude: G and B coincide" : attitudeWords(pitch),
    why: (units) => {
      const across = millimetres(rest.B.x - rest.G.x);
      const above = millimetres(rest.B.z - rest.G.z);
      return {
        title: "Attitude at rest under water",
        value: pitch === null ? "any" : `${units.show(pitch, "°", 1, true)} · ${attitudeWords(pitch)}`,
        meaning:
          "Held still under water and let go, the bait turns until its centre of buoyancy B stands above its centre of gravity G. " +
          `Nose-up is positive; 'level' is said within ±${LEVEL_WITHIN_DEG}°.`,
        formula: "θ = atan2(x_B − x_G, z_B − z_G), x forward, z up",
        inputs: [
          { name: "x_B − x_G", value: units.show(across, "mm", 2, true) },
          { name: "z_B − z_G", value: units.show(above, "mm", 2, true) },
          ...(spread === null
            ? []
            : [
                {
                  name: "95 % of baits made so",
                  value: `${units.bare(degrees(spread[0]), "°", 1, true)} to ${units.show(degrees(spread[1]), "°", 1, true)}`,
                },
              ]),
          { name: "station of G", value: units.show(millimetres(-rest.G.x), "mm", 2) },
          { name: "station of B", value: units.show(millimetres(-rest.B.x), "mm", 2) },
          ...(rest.others.length === 0
            ? []
            : [
                {
                  name: "with the balls elsewhere also at",
                  value: rest.others.map((one) => units.show(degrees(one), "°", 1, true)).join(", "),
                },
              ]),
        ],
        source: `${HYDROSTATICS} Hooks hang freely and act at their eyes; loose balls lie at the lowest point.`,
        ...(statics.floating === null
          ? {}
          : {
              note: "For a bait that floats strongly this is only the first moment of its rise; it can be steep while the bait floats nearly level.",
            }),
      };
    },
  };
}

export function leverFigure({ statics }: Worked): Figure {
  const BG = millimetres(statics.BG);
  return {
    key: "BG",
    label: "B above G",
    value: BG,
    unit: "mm",
    digits: 2,
    signed: false,
    words: "",
    why: (units) => ({
      title: "Distance from G to B",
      value: units.show(BG, "mm", 2),
      meaning:
        "The lever that turns the bait upright and to its trim. A small one tips far with little: " +
        `here ${units.show(0.25, "mm", 2)} of G lengthwise is ${BG < 0.1 ? "any angle" : units.show(degrees(Math.atan2(0.25, BG)), "°", 1)}.`,
      formula: "BG = √((x_B − x_G)² + (z_B − z_G)²)",
      inputs: [
        { name: "G: station, height", value: placeText(statics.G, units) },
        { name: "B: station, height", value: placeText(statics.B, units) },
      ],
      source: `${HYDROSTATICS} Below ${units.show(0.1, "mm", 1)} the attitude at rest has no number.`,
    }),
  };
}

function placeText(at: { readonly x: number; readonly z: number }, units: Units): string {
  return `${units.show(millimetres(0 - at.x), "mm", 2)}, ${units.show(millimetres(at.z), "mm", 2, true)}`;
}

const FORCES =
  "Added mass: Lamb 1932. Cross-flow: Cheng 2013; Jorgensen 1977, NASA TR R-474. Along the body: Hoerner 1965. " +
  "Bib: Polhamus 1966, NASA TN D-3767; Lamar & Gloss 1975; ECN-C--03-025, 2003. Tail: Roddy 1990. docs/model.md §6.";

function movingWords(rise: TerminalRise): string {
  const pitch = degrees(rise.pitch);
  const words = attitudeWords(pitch);
  const drift = rise.drift * 1e3;
  const way = Math.abs(drift) < 1 ? "" : drift > 0 ? ", gliding ahead" : ", backing up";
  return `${words === "level" ? "level" : `${Math.abs(pitch).toFixed(0)}° ${words}`}${way}`;
}

/** `rise` is null while it is being worked out. */
export function riseFigures({ statics }: Worked, rise: TerminalRise | null): readonly Figure[] {
  const speed = rise === null ? null : rise.speed * 1e3;
  const word = speed === null ? "" : speed >= 0 ? "rises" : "sinks";
  const seconds = speed === null || Math.abs(speed) < 0.5 ? null : 300 / Math.abs(speed);
  const why = (units: Units): Why => ({
    title: "Steady rise or sink",
    value: speed === null ? "being worked out" : `${units.show(Math.abs(speed), "mm/s", 0)}, ${word}`,
    meaning:
      "Let go under water without line, the bait soon moves at the speed at which drag and net buoyancy balance, " +
      "in the attitude in which the moments balance. Time it over a marked height in the tub.",
    formula: "ΣX(u, w, θ) = 0, ΣZ(u, w, θ) = 0, ΣM(u, w, θ) = 0, all forces of the model but the line",
    inputs: [
      { name: "net buoyancy", value: units.show(grams(statics.netBuoyancy), "g", 3, true) },
      ...(rise === null
        ? []
        : [
            { name: "attitude while it moves", value: units.show(degrees(rise.pitch), "°", 1, true) },
            { name: "drift, forward positive", value: units.show(rise.drift * 1e3, "mm/s", 0, true) },
          ]),
      ...(seconds === null
        ? []
        : [{ name: `seconds over ${units.show(300, "mm", 0)}`, value: units.show(seconds, "s", 1) }]),
    ],
    source: FORCES,
    note:
      rise !== null && !rise.steady
        ? `It did not settle: ${rise.why ?? "speed and attitude still change after 300 s"}. The figures are those at the end.`
        : "Near neutral, a hundredth of a gram decides: speed goes with the root of the net force.",
  });
  return [
    {
      key: "rise",
      label: speed !== null && speed < 0 ? "Sinks at" : "Rises at",
      value: speed === null ? null : Math.abs(speed),
      unit: "mm/s",
      digits: 0,
      signed: false,
      words: rise === null ? "working …" : rise.steady ? movingWords(rise) : "does not settle",
      why,
    },
    {
      key: "seconds",
      label: "Over 30 cm",
      value: seconds,
      unit: "s",
      digits: 1,
      signed: false,
      words: rise === null ? "working …" : seconds === null ? "hardly moves" : "",
      why,
    },
  ];
}

export function floatFigures({ statics }: Worked): readonly Figure[] {
  const { floating } = statics;
  if (floating === null) return [];
  const trim = degrees(floating.pitch);
  const GM = millimetres(floating.GM);
  const over = floating.GM <= 0;
  const roll = over
    ? "lies on its side"
    : attitudeWords(trim) === "belly up"
      ? "stays belly up"
      : "stays upright";
  return [
    {
      key: "trim",
      label: "Afloat",
      value: trim,
      unit: "°",
      digits: 1,
      signed: true,
      words: attitudeWords(trim),
      why: (units) => ({
        title: "Trim afloat",
        value: `${units.show(trim, "°", 1, true)} · ${attitudeWords(trim)}`,
        meaning:
          "The attitude in which the bait lies on still water: as much under as carries it, B straight above G.",
        formula: "ρ · V_immersed = Σm and X_B(θ) = X_G(θ)",
        inputs: [
          { name: "immersed", value: units.show(millilitres(floating.volume), "mL", 3) },
          { name: "mass", value: units.show(grams(statics.mass), "g", 3) },
          { name: "draft", value: units.show(millimetres(floating.draft), "mm", 1) },
          ...floating.others.map((other, i) => ({
            name: `also stable (${i + 1})`,
            value: units.show(degrees(other.pitch), "°", 1, true),
          })),
        ],
        source: `${HYDROSTATICS} Hooks hang under water at their eyes.`,
        ...(over ? { note: "Held from rolling: by itself this bait lies on its side." } : {}),
      }),
    },
    {
      key: "draft",
      label: "Draft",
      value: millimetres(floating.draft),
      unit: "mm",
      digits: 1,
      signed: false,
      words: `${(100 * floating.immersedFraction).toFixed(0)} % under`,
      why: (units) => ({
        title: "Draft",
        value: units.show(millimetres(floating.draft), "mm", 1),
        meaning: "How deep the lowest point of the bare body lies while the bait floats.",
        formula: "depth of the lowest point of the outline at the floating trim and level",
        inputs: [
          { name: "trim", value: units.show(trim, "°", 1, true) },
          {
            name: "immersed share of all it displaces",
            value: `${(100 * floating.immersedFraction).toFixed(1)} %`,
          },
        ],
        source: HYDROSTATICS,
      }),
    },
    {
      key: "GM",
      label: "GM afloat",
      value: GM,
      unit: "mm",
      digits: 2,
      signed: true,
      words: roll,
      why: (units) => ({
        title: "Metacentric height",
        value: `${units.show(GM, "mm", 2, true)} · ${roll}`,
        meaning: "Above zero the floating bait rights itself when it heels; below zero it lies over.",
        formula: "GM = (Z_B − Z_G) + I_T / V",
        inputs: [
          {
            name: "I_T, waterline's second moment across",
            value: `${(floating.waterplaneIT * 1e12).toFixed(0)} mm⁴`,
          },
          { name: "V, immersed", value: units.show(millilitres(floating.volume), "mL", 3) },
          {
            name: "I_T / V",
            value: units.show(millimetres(floating.waterplaneIT / floating.volume), "mm", 2),
          },
          {
            name: "Z_B − Z_G",
            value: units.show(GM - millimetres(floating.waterplaneIT / floating.volume), "mm", 2, true),
          },
        ],
        source: HYDROSTATICS,
        note: "Under water the waterline is gone and only B above G keeps it upright.",
      }),
    },
  ];
}

/** Upright or not under water, as words for a bait that has no waterline. */
export function uprightUnderWater({ statics }: Worked): string {
  switch (statics.upright.bellyDownUnderWater) {
    case null:
      return "G and B coincide: nothing keeps it upright";
    case true:
      return "belly down under water";
    case false:
      return "belly up under water";
  }
}

const MONTE_CARLO =
  "JCGM 101:2008, propagation of distributions by Monte Carlo; default uncertainties docs/model.md §3.";

/** `band` is null while it is being worked out. */
export function chanceFigure({ statics }: Worked, band: Band | null): Figure {
  const chance = band === null ? null : 100 * band.chanceOfSinking;
  return {
    key: "chance",
    label: "Chance of sinking",
    value: chance,
    unit: "%",
    digits: 0,
    signed: false,
    words: chance === null ? "working …" : chance > 0 && chance < 0.5 ? "but not none" : "",
    why: (units) => ({
      title: "Chance that it sinks",
      value: chance === null ? "being worked out" : units.show(chance, "%", 1),
      meaning:
        "No density, mass or length is known exactly. Drawn at random within what is not known, this share of the baits made to these numbers would sink.",
      formula: "share of samples with net < 0; the band holds 95 % of them",
      inputs: [
        { name: "net buoyancy as reckoned", value: units.show(grams(statics.netBuoyancy), "g", 3, true) },
        ...(band === null
          ? []
          : [
              {
                name: "95 % of the baits",
                value: `${units.bare(grams(band.netBuoyancy[0]), "g", 2, true)} to ${units.show(grams(band.netBuoyancy[1]), "g", 2, true)}`,
              },
              { name: "samples", value: String(band.samples) },
              ...band.contributions.slice(0, 4).map((one) => ({
                name: `from ${one.input}`,
                value: `± ${units.show(grams(one.netBuoyancy), "g", 3)}`,
              })),
            ]),
      ],
      source: MONTE_CARLO,
      note: "Weigh the blank and the hooks: a bench reading narrows this more than any drawing does.",
    }),
  };
}

export function massFigures({ statics, compiled }: Worked): readonly Figure[] {
  const mass = grams(statics.mass);
  const displaced = millilitres(statics.displaced);
  return [
    {
      key: "mass",
      label: "Mass",
      value: mass,
      unit: "g",
      digits: 2,
      signed: false,
      words: "",
      why: (units) => ({
        title: "Mass of the finished bait",
        value: units.show(mass, "g", 2),
        meaning:
          "Everything fitted, in air: body less what is cut out of it, ballast, wire, bib, hooks, rings, coats.",
        formula: "Σm = ρ_body · (V_body − ΣV_removed) + Σm_items",
        inputs: [
          { name: "body density", value: units.show(compiled.bait.bodyDensity / 1e3, "g/mL", 4) },
          { name: "volume of the bare body", value: units.show(millilitres(statics.bodyVolume), "mL", 3) },
          {
            name: "removed from it",
            value: units.show(
              millilitres(compiled.bait.items.reduce((sum, one) => sum + one.removed, 0)),
              "mL",
              3,
            ),
          },
        ],
        source: "The account: docs/model.md §3. Densities: the table of materials, or the file's own.",
      }),
    },
    {
      key: "displaced",
      label: "Displaces",
      value: displaced,
      unit: "mL",
      digits: 2,
      signed: false,
      words: "",
      why: (units) => ({
        title: "Water displaced",
        value: units.show(displaced, "mL", 2),
        meaning:
          "The volume of all that touches the water: the body by its outline, and what stands outside it.",
        formula: "ΣV = V_body + ΣV_outside",
        inputs: [
          { name: "bare body", value: units.show(millilitres(statics.bodyVolume), "mL", 3) },
          {
            name: "outside it",
            value: units.show(millilitres(statics.displaced - statics.bodyVolume), "mL", 3),
          },
        ],
        source: "Volume by quadrature of the sections, docs/model.md §2 and §3.",
      }),
    },
    {
      key: "water",
      label: "Water",
      value: statics.density,
      unit: "kg/m³",
      digits: 1,
      signed: false,
      words: "",
      why: (units) => ({
        title: "Density of the water",
        value: units.show(statics.density, "kg/m³", 3),
        meaning:
          "Cold water is denser than warm, salt water denser than fresh: from fresh to sea water a bait gains about 2.7 % of its volume in grams.",
        formula: "ρ(S, T) at one atmosphere",
        inputs: [
          { name: "temperature", value: units.show(compiled.water.temperature, "°C", 1) },
          { name: "salinity", value: units.show(compiled.water.salinity, "g/kg", 1) },
          { name: "viscosity", value: `${(compiled.water.viscosity * 1e3).toFixed(4)} mPa·s` },
        ],
        source: `${WATER} Viscosity: Sharqawy, Lienhard & Zubair 2010.`,
      }),
    },
  ];
}
