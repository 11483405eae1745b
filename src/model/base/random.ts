import { log } from "./exponential";

/** A seeded source of random numbers: the same seed gives the same sequence on every machine. */
export interface Random {
  /** In [0, 1), 53 bits. */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
  /** Integer in [0, n). */
  below(n: number): number;
}

/**
 * xoshiro128** (Blackman & Vigna 2021, ACM Trans. Math. Softw. 47:36, public domain algorithm), its state filled from an
 * integer seed by a 32-bit splitmix. Normals by Marsaglia's polar method (Marsaglia & Bray 1964, SIAM Rev. 6:260–264).
 */
export function random(seed: number): Random {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed ${seed}: use a whole number`);
  let mix = (seed ^ Math.floor(seed / 4294967296)) >>> 0;
  const split = (): number => {
    mix = (mix + 0x9e3779b9) >>> 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  let s0 = split();
  let s1 = split();
  let s2 = split();
  let s3 = split();
  const left = (v: number, k: number): number => (v << k) | (v >>> (32 - k));
  const next = (): number => {
    const result = Math.imul(left(Math.imul(s1, 5), 7), 9) >>> 0;
    const t = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= t;
    s3 = left(s3, 11);
    return result;
  };
  const uniform = (): number => ((next() >>> 5) * 67108864 + (next() >>> 6)) / 9007199254740992;
  let spare: number | null = null;
  return {
    uniform,
    below(n) {
      return Math.floor(uniform() * n);
    },
    normal() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      for (;;) {
        const a = 2 * uniform() - 1;
        const b = 2 * uniform() - 1;
        const r = a * a + b * b;
        if (r > 0 && r < 1) {
          const k = Math.sqrt((-2 * log(r)) / r);
          spare = b * k;
          return a * k;
        }
      }
    },
  };
}
