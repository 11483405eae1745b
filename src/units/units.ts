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
  | "mass"
  | "density"
  | "speed"
  | "rate"
  | "force"
  | "angle"
  | "temperature"
  | "salinity"
  | "time"
  | "share"
  | "number";

export type System = "metric" | "imperial";

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
  in2: unit("in²", "area", INCH ** 2, ["in2", "sq in"]),
  mL: unit("mL", "volume", 1e-6, ["ml", "cm3", "cm³", "cc"]),
  in3: unit("in³", "volume", INCH ** 3, ["in3", "cu in"]),
  g: unit("g", "mass", 1e-3, ["gram", "grams"]),
  kg: unit("kg", "mass", 1),
  oz: unit("oz", "mass", OUNCE, ["ounce", "ounces"]),
  lb: unit("lb", "mass", 16 * OUNCE, ["lbs", "pound", "pounds"]),
  g_mL: unit("g/mL", "density", 1e3, ["g/ml", "g/cm3", "g/cm³", "g/cc"]),
  kg_m3: unit("kg/m³", "density", 1, ["kg/m3"]),
  m_s: unit("m/s", "speed", 1),
  ft_s: unit("ft/s", "speed", 12 * INCH, ["fps"]),
  mm_s: unit("mm/s", "rate", 1e-3),
  in_s: unit("in/s", "rate", INCH),
  N: unit("N", "force", 1),
  ozf: unit("ozf", "force", OUNCE * 9.80665),
  deg: unit("°", "angle", Math.PI / 180, ["deg", "degree", "degrees"]),
  rad: unit("rad", "angle", 1),
  C: unit("°C", "temperature", 1, ["c", "degc"]),
  F: unit("°F", "temperature", 5 / 9, ["f", "degf"], -160 / 9),
  g_kg: unit("g/kg", "salinity", 1, ["psu", "‰"]),
  s: unit("s", "time", 1, ["sec", "second", "seconds"]),
  min: unit("min", "time", 60, ["minute", "minutes"]),
  percent: unit("%", "share", 1e-2, ["percent"]),
  one: unit("", "number", 1),
} as const satisfies Record<string, Unit>;

export type UnitName = keyof typeof UNITS;

/** What each quantity is shown in, and with how many decimals unless the caller says otherwise. */
const SHOWN: Record<Quantity, Record<System, { readonly unit: UnitName; readonly decimals: number }>> = {
  length: { metric: { unit: "mm", decimals: 1 }, imperial: { unit: "in", decimals: 3 } },
  distance: { metric: { unit: "m", decimals: 2 }, imperial: { unit: "ft", decimals: 1 } },
  area: { metric: { unit: "mm2", decimals: 0 }, imperial: { unit: "in2", decimals: 2 } },
  volume: { metric: { unit: "mL", decimals: 2 }, imperial: { unit: "in3", decimals: 3 } },
  mass: { metric: { unit: "g", decimals: 2 }, imperial: { unit: "oz", decimals: 4 } },
  density: { metric: { unit: "g_mL", decimals: 3 }, imperial: { unit: "g_mL", decimals: 3 } },
  speed: { metric: { unit: "m_s", decimals: 2 }, imperial: { unit: "ft_s", decimals: 2 } },
  rate: { metric: { unit: "mm_s", decimals: 0 }, imperial: { unit: "in_s", decimals: 2 } },
  force: { metric: { unit: "N", decimals: 2 }, imperial: { unit: "ozf", decimals: 2 } },
  angle: { metric: { unit: "deg", decimals: 1 }, imperial: { unit: "deg", decimals: 1 } },
  temperature: { metric: { unit: "C", decimals: 1 }, imperial: { unit: "F", decimals: 1 } },
  salinity: { metric: { unit: "g_kg", decimals: 1 }, imperial: { unit: "g_kg", decimals: 1 } },
  time: { metric: { unit: "s", decimals: 1 }, imperial: { unit: "s", decimals: 1 } },
  share: { metric: { unit: "percent", decimals: 0 }, imperial: { unit: "percent", decimals: 0 } },
  number: { metric: { unit: "one", decimals: 2 }, imperial: { unit: "one", decimals: 2 } },
};

/** The unit in which a quantity is shown in a system. */
export const unitOf = (quantity: Quantity, system: System): UnitName => SHOWN[quantity][system].unit;

/** Decimals that a quantity is shown with by default. */
export const decimalsOf = (quantity: Quantity, system: System): number => SHOWN[quantity][system].decimals;

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
