/**
 * Weighing in air and under water: pure formulas, SI.
 */

/** Conventional density of air for weighing, kg/m³. OIML D 28 (2004): 1.2 kg/m³. */
export const AIR_DENSITY = 1.2;
/** Density of the weights that scales are adjusted with, kg/m³. OIML D 28 (2004): 8000 kg/m³. */
const SCALE_WEIGHT_DENSITY = 8000;

/** True mass (kg) of a thing of known volume (m³) from a scale's reading in air: m = W + ρ_air (V − W/8.0). */
export function trueMass(reading: number, volume: number, air = AIR_DENSITY): number {
  return reading + air * (volume - reading / SCALE_WEIGHT_DENSITY);
}

/** What a scale in air shows (kg) for a mass (kg) of known volume (m³): the inverse of `trueMass`. */
export function scaleReading(mass: number, volume: number, air = AIR_DENSITY): number {
  return (mass - air * volume) / (1 - air / SCALE_WEIGHT_DENSITY);
}

/** True mass (kg) of a thing of known density (kg/m³): m = W (1 − ρ_air/8000)/(1 − ρ_air/ρ). */
export function trueMassOfDensity(reading: number, density: number, air = AIR_DENSITY): number {
  return (reading * (1 - air / SCALE_WEIGHT_DENSITY)) / (1 - air / density);
}

/**
 * Volume (m³) of a piece held under water, free of the container, from the rise of the scale (kg): reading/ρ.
 * With the air correction the displaced mass of water is ρV = W + ρ_air (V − W/8.0), solved for V.
 */
export function volumeHeldUnder(reading: number, waterDensity: number, correctAir = false): number {
  return correctAir
    ? (reading * (1 - AIR_DENSITY / SCALE_WEIGHT_DENSITY)) / (waterDensity - AIR_DENSITY)
    : reading / waterDensity;
}

/** Rise of the scale (kg) for a volume (m³) held under: the inverse of `volumeHeldUnder`. */
export function readingHeldUnder(volume: number, waterDensity: number, correctAir = false): number {
  return correctAir
    ? (volume * (waterDensity - AIR_DENSITY)) / (1 - AIR_DENSITY / SCALE_WEIGHT_DENSITY)
    : volume * waterDensity;
}

/**
 * Density (kg/m³) of a piece weighed in air (kg) and hung under a liquid (kg, below 0 where it pulls up and a sinker
 * is not counted): ρ = (W_air ρ_liquid − W_under ρ_air)/(W_air − W_under).
 * `air` 0 gives the plain form m ρ_L/(m − m_L) of ISO 1183-1 method A.
 */
export function densityHungUnder(
  inAir: number,
  under: number,
  liquidDensity: number,
  air: number = AIR_DENSITY,
): number {
  if (!(inAir > under))
    throw new RangeError(
      `weighed ${(inAir * 1e3).toFixed(3)} g in air and ${(under * 1e3).toFixed(3)} g under: the second must be less`,
    );
  return (inAir * liquidDensity - under * air) / (inAir - under);
}
