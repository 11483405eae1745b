/**
 * Units of the screen and the file: si = value·factor + offset, with SI in m, kg, s, N, rad, m³, kg/m³. Temperature counts as SI
 * in °C (ITS-90), which is what the water's equations read; salinity in g/kg.
 *
 * Factors are exact by definition: inch 25.4 mm, pound 0.45359237 kg, ounce 1/16 of it (NIST SP 811, 2008, app. B),
 * standard gravity 9.80665 m/s² (ISO 80000-3).
 */
export interface Unit {
  /** As shown after a number. */
  readonly symbol: string;
  readonly quantity: Quantity;
  readonly factor: number;
  readonly offset: number;
  /** Other spellings that a field accepts, lower case. */
  readonly spellings: readonly string[];
}

export type Quantity =
  | "length"
  | "distance"
  | "area"
  | "volume"
  | "second moment"
  | "mass"
  | "density"
  | "viscosity"
  | "speed"
  | "rate"
  | "force"
  | "angle"
  | "temperature"
  | "salinity"
  | "time"
  | "share"
  | "number";

const INCH = 0.0254;
const OUNCE = 0.45359237 / 16;

const unit = (
  symbol: string,
  quantity: Quantity,
  factor: number,
  spellings: readonly string[] = [],
  offset = 0,
): Unit => ({ symbol, quantity, factor, offset, spellings });

export const UNITS = {
  mm: unit("mm", "length", 1e-3),
  cm: unit("cm", "length", 1e-2),
  in: unit("in", "length", INCH, ["inch", "inches", '"', "″"]),
  m: unit("m", "distance", 1),
  ft: unit("ft", "distance", 12 * INCH, ["foot", "feet", "'", "′"]),
  mm2: unit("mm²", "area", 1e-6, ["mm2"]),
  cm2: unit("cm²", "area", 1e-4, ["cm2"]),
  in2: unit("in²", "area", INCH * INCH, ["in2", "sq in"]),
  mm4: unit("mm⁴", "second moment", 1e-12),
  in4: unit("in⁴", "second moment", INCH * INCH * INCH * INCH),
  mL: unit("mL", "volume", 1e-6, ["ml", "cm3", "cm³", "cc"]),
  in3: unit("in³", "volume", INCH * INCH * INCH, ["in3", "cu in"]),
  g: unit("g", "mass", 1e-3, ["gram", "grams"]),
  kg: unit("kg", "mass", 1),
  oz: unit("oz", "mass", OUNCE, ["ounce", "ounces"]),
  lb: unit("lb", "mass", 16 * OUNCE, ["lbs", "pound", "pounds"]),
  g_mL: unit("g/mL", "density", 1e3, ["g/ml", "g/cm3", "g/cm³", "g/cc"]),
  mPa_s: unit("mPa·s", "viscosity", 1e-3, ["mpa s", "cp"]),
  kg_m3: unit("kg/m³", "density", 1, ["kg/m3"]),
  m_s: unit("m/s", "speed", 1),
  ft_s: unit("ft/s", "speed", 12 * INCH, ["fps"]),
  mm_s: unit("mm/s", "rate", 1e-3),
  cm_s: unit("cm/s", "rate", 1e-2),
  in_s: unit("in/s", "rate", INCH),
  N: unit("N", "force", 1),
  mN: unit("mN", "force", 1e-3),
  ozf: unit("ozf", "force", OUNCE * 9.80665),
  deg: unit("°", "angle", Math.PI / 180, ["deg", "degree", "degrees"]),
  rad: unit("rad", "angle", 1),
  C: unit("°C", "temperature", 1, ["c", "degc"]),
  F: unit("°F", "temperature", 5 / 9, ["f", "degf"], -160 / 9),
  g_kg: unit("g/kg", "salinity", 1, ["psu", "‰"]),
  ms: unit("ms", "time", 1e-3),
  s: unit("s", "time", 1, ["sec", "second", "seconds"]),
  min: unit("min", "time", 60, ["minute", "minutes"]),
  percent: unit("%", "share", 1e-2, ["percent"]),
  one: unit("", "number", 1),
} as const satisfies Record<string, Unit>;

export type UnitName = keyof typeof UNITS;

export const toSI = (value: number, from: UnitName): number =>
  value * UNITS[from].factor + UNITS[from].offset;
export const fromSI = (value: number, to: UnitName): number => (value - UNITS[to].offset) / UNITS[to].factor;

/** A value in one unit as a value in another. Throws where they measure different things (length and distance agree). */
export function convert(value: number, from: UnitName, to: UnitName): number {
  if (from === to) return value;
  const [a, b] = [dimension(UNITS[from].quantity), dimension(UNITS[to].quantity)];
  if (a !== b) throw new RangeError(`${from} measures ${a}, ${to} measures ${b}: no conversion`);
  return fromSI(toSI(value, from), to);
}

/** Quantities that differ only in their usual size share a dimension. */
export function dimension(quantity: Quantity): Quantity {
  if (quantity === "distance") return "length";
  if (quantity === "rate") return "speed";
  return quantity;
}
