/**
 * Sizes with which a new part begins, whether it comes onto the board or is added by hand to the account: then changed to
 * what is there. None was weighed. Common practice, no source.
 */
export const USUAL = {
  weight: { material: "tin", diameter_mm: 5 },
  hook: { mass_g: 0.5 },
  ring: { mass_g: 0.1 },
  sealer: { thickness_mm: 0.03, density_g_ml: 1.05 },
  paint: { thickness_mm: 0.06, density_g_ml: 1.3 },
  clearCoat: { thickness_mm: 0.12, material: "epoxy" },
} as const;
