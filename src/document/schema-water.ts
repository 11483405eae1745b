import { z } from "zod";
import { above, maybe, name, number } from "./fields";

/** Keys of the scenario for the water and for what the bait hangs on. */

export const water = z
  .strictObject({
    temperature_C: number("Water temperature", "°C", [-2, 40], [0, 30, 0.5]),
    salinity_g_kg: number("Salinity", "g/kg", [0, 42], [0, 40, 0.5], "0 fresh, about 35 in the open sea."),
    depth_m: above("Water depth", "m", [0, 1000], [0.3, 12, 0.1]),
    current_m_s: maybe(
      number("Current", "m/s", [-5, 5], [-1, 1, 0.05], "Uniform, positive towards the angler."),
    ),
    weed_m: maybe(
      number("Weed tops", "m", [0, 1000], [0.2, 10, 0.1], "Depth to which the weed grows up. Absent: none."),
    ),
    strikeZone: maybe(
      z
        .strictObject({
          from_m: number("Strike zone from", "m", [0, 1000], [0, 10, 0.1], "Depth of its upper edge."),
          to_m: number("Strike zone to", "m", [0, 1000], [0, 10, 0.1], "Depth of its lower edge."),
        })
        .meta({ title: "Strike zone", description: "Depths in which the bait is wanted." }),
    ),
  })
  .meta({ title: "Water" });

export const tackle = z
  .strictObject({
    line: z
      .strictObject({
        material: name("Line material", "nylon, fluorocarbon or braid."),
        diameter_mm: above("Line diameter", "mm", [0, 5], [0.06, 0.6, 0.005]),
        density_kg_m3: maybe(
          number("Line density", "kg/m³", [300, 8000], [900, 1900, 10], "Wins over the material's."),
        ),
        stiffness_N: maybe(
          above(
            "Line stiffness",
            "N",
            [0, 1e6],
            [20, 2000, 10],
            "Tension per unit of strain (EA). Wins over the material's.",
          ),
        ),
      })
      .meta({ title: "Line" }),
    lineOut_m: above("Line out", "m", [0, 500], [3, 60, 0.5], "From the rod tip to the tie eye."),
    rodTip_m: number("Rod tip", "m", [0, 50], [0, 3, 0.1], "Height above the still surface."),
    reel: maybe(
      z
        .strictObject({
          ratio: above(
            "Gear ratio",
            "",
            [0, 20],
            [3, 9, 0.1],
            "Turns of spool or rotor for a turn of the handle.",
          ),
          spool_mm: above(
            "Spool circumference",
            "mm",
            [0, 500],
            [50, 200, 1],
            "Round the line as it is wound: line for a turn of spool or rotor.",
          ),
        })
        .meta({
          title: "Reel",
          description: "Tells speeds in turns of the handle; the cadence itself is in m/s.",
        }),
    ),
  })
  .meta({ title: "Tackle" });
