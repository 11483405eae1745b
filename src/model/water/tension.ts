import { pow } from "../base";

/**
 * Surface tension of pure water against its vapour, N/m, at T (°C): σ = 235.8 τ^1.256 (1 − 0.625 τ) mN/m,
 * τ = 1 − T/647.096 K. Source: IAPWS R1-76 (2014); valid from the triple point, extrapolated to −2 °C. Throws RangeError
 * outside −2 to 100.
 */
export function surfaceTension(T: number): number {
  if (!(T >= -2 && T <= 100)) throw new RangeError(`water temperature ${T} °C: give a value from -2 to 100`);
  const tau = 1 - (T + 273.15) / 647.096;
  return 0.2358 * pow(tau, 1.256) * (1 - 0.625 * tau);
}
