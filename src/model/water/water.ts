/** The range of the equation of state: salinity in g/kg, temperature in °C (ITS-90). */
export const WATER_RANGE = { salinity: [0, 42], temperature: [-2, 40] } as const;

export interface Water {
  /** kg/m³ */
  readonly density: number;
  /** Dynamic viscosity, Pa·s. */
  readonly viscosity: number;
}

/** Density (kg/m³) and viscosity (Pa·s) of water of salinity S (g/kg) at T (°C, ITS-90), one atmosphere. */
export const water = (S: number, T: number): Water => ({
  density: density(S, T),
  viscosity: viscosity(S, T),
});

/**
 * Density of water, kg/m³, of salinity S (g/kg, 0–42; used unchanged as practical salinity) at T (°C ITS-90, −2 to 40), at
 * one atmosphere. Throws RangeError outside. The equation is written for IPTS-68: t₆₈ = 1.00024 t₉₀ (Saunders 1990, WOCE
 * Newsletter 10:10).
 */
export function density(S: number, T: number): number {
  checkRange(S, T);
  return densityIpts68(S, 1.00024 * T);
}

/**
 * UNESCO EOS-80, one atmosphere: ρ = ρ_w(t) + A(t) S + B(t) S^(3/2) + C S², t in °C on IPTS-68, kg/m³.
 * Source: Millero & Poisson 1981, Deep-Sea Res. 28A:625–629; Fofonoff & Millard 1983, UNESCO Tech. Papers in Marine
 * Science 44, eqs 13–14. No range check: `density` is the door.
 */
export function densityIpts68(S: number, t: number): number {
  const pure =
    999.842594 +
    t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
  const A = 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
  const B = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
  const C = 4.8314e-4;
  return pure + S * (A + B * Math.sqrt(S) + C * S);
}

/**
 * Dynamic viscosity of water, Pa·s, of salinity S (g/kg) at T (°C ITS-90): μ = μ_w (1 + A s + B s²), s = S/1000.
 * Source: Sharqawy, Lienhard & Zubair 2010, Desalination and Water Treatment 16:354–380, eqs 22–23: 0–180 °C, 0–150 g/kg,
 * accuracy 1.5 %; from −2 to 0 °C it is extrapolated. Throws RangeError outside the range of `density`.
 */
export function viscosity(S: number, T: number): number {
  checkRange(S, T);
  const pure = 4.2844e-5 + 1 / (0.157 * (T + 64.993) * (T + 64.993) - 91.296);
  const A = 1.541 + T * (1.998e-2 - T * 9.52e-5);
  const B = 7.974 + T * (-7.561e-2 + T * 4.724e-4);
  const s = S / 1000;
  return pure * (1 + s * (A + s * B));
}

function checkRange(S: number, T: number): void {
  const [s0, s1] = WATER_RANGE.salinity;
  const [t0, t1] = WATER_RANGE.temperature;
  if (!(S >= s0 && S <= s1)) throw new RangeError(`salinity ${S} g/kg: give a value from ${s0} to ${s1}`);
  if (!(T >= t0 && T <= t1))
    throw new RangeError(`water temperature ${T} °C: give a value from ${t0} to ${t1}`);
}
