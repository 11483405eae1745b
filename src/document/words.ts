/** Verdicts in the words of the trade, from the figures in the units of the answer. */

/**
 * Within this many grams of neutral the word is "suspends": the working tolerance of weighing and trimming a bait is
 * hundredths of a gram, and 0.05 g moves a bait of about 16 mL by some 3 cm/s (common practice, no source).
 */
export const SUSPENDS_WITHIN_G = 0.05;

export function floats(net_g: number): "floats" | "suspends" | "sinks" {
  if (Math.abs(net_g) <= SUSPENDS_WITHIN_G) return "suspends";
  return net_g > 0 ? "floats" : "sinks";
}

export function floatWords(net_g: number): string {
  const verdict = floats(net_g);
  const grams = `${Math.abs(net_g).toFixed(2)} g`;
  if (verdict === "floats") return `floats by ${grams}`;
  if (verdict === "sinks") return `sinks by ${grams}`;
  const way = net_g >= 0 ? "light" : "heavy";
  return `suspends (${grams} ${way}, within ±${SUSPENDS_WITHIN_G} g)`;
}

/**
 * Within this many degrees the word is "level": moving a weight by a quarter of a millimetre tips the bait further (common
 * practice, no source).
 */
export const LEVEL_WITHIN_DEG = 2;

/** The attitude of a trim in degrees, nose-up positive; null: any attitude. */
export function attitudeWords(trim_deg: number | null): string {
  if (trim_deg === null) return "rests in any attitude";
  const steep = Math.abs(trim_deg);
  const angle = `${steep.toFixed(1)}°`;
  if (steep > 90) return `rests belly-up, nose ${trim_deg > 0 ? "up" : "down"}`;
  if (steep <= LEVEL_WITHIN_DEG) return "rests level";
  if (steep >= 45) return trim_deg > 0 ? `hangs tail-down at ${angle}` : `hangs nose-down at ${angle}`;
  return `rests ${trim_deg > 0 ? "nose-up" : "nose-down"} by ${angle}`;
}

/** A bait slower than this stands, mm/s: one bait length takes a minute or more (common practice, no source). */
const STANDS = 1;

export function riseWords(rise: {
  readonly speed_mm_s: number;
  readonly secondsPer300mm: number | null;
}): string {
  const { speed_mm_s, secondsPer300mm } = rise;
  if (Math.abs(speed_mm_s) < STANDS || secondsPer300mm === null) return "stands";
  return `${speed_mm_s > 0 ? "rises" : "sinks"} 300 mm in ${secondsPer300mm.toFixed(1)} s`;
}
