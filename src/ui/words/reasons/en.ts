export const texts = {
  pending: "being worked out",
  range: "{low} to {high}",
  most: "95 % of baits made so",
  hydrostatics: "E. V. Lewis (ed.), Principles of Naval Architecture, vol. I, SNAME 1988; docs/model.md §5.",
  waterSource:
    "Water: UNESCO equation of state EOS-80, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44.",
  netBuoyancy: "net buoyancy",
  bareBody: "bare body",

  "net.title": "Net buoyancy",
  "net.meaning":
    "What the water carries less what the bait weighs, all of it under water. Above zero it floats. 'Suspends' is said within ±{within}: finer than that no scale and no paint brush works.",
  "net.formula": "net = ρ · ΣV − Σm",
  "net.density": "ρ, density of the water",
  "net.displaced": "ΣV, water displaced",
  "net.mass": "Σm, mass of everything fitted",
  "net.item": "item",
  "net.headMass": "mass, {unit}",
  "net.headDisplaced": "displaces, {unit}",
  "net.headNet": "net, {unit}",
  "net.together": "together",
  "net.source":
    "Archimedes' principle. {water} The account: docs/model.md §3. Words: common practice, no source.",
  "net.note":
    "What is inside the body counts in full; what is outside counts by what it exceeds the water it displaces. Hooks and rings count whole.",

  "chance.title": "Chance that it sinks",
  "chance.meaning":
    "No density, mass or length is known exactly. Drawn at random within what is not known, this share of the baits made to these numbers would sink.",
  "chance.formula": "share of samples with net < 0; the band holds 95 % of them",
  "chance.calculated": "net buoyancy as calculated",
  "chance.most": "95 % of the baits",
  "chance.samples": "samples",
  "chance.from": "from {input}",
  "chance.source":
    "JCGM 101:2008, propagation of distributions by Monte Carlo; default uncertainties docs/model.md §3.",
  "chance.note": "Weigh the blank and the hooks: a bench reading narrows this more than any drawing does.",

  "rise.title": "Steady rise or sink",
  "rise.rises": "{speed}, rises",
  "rise.sinks": "{speed}, sinks",
  "rise.meaning":
    "Let go under water without line, the bait soon moves at the speed at which drag and net buoyancy balance, in the attitude in which the moments balance. Time it over a marked height in the tub.",
  "rise.formula": "ΣX(u, w, θ) = 0, ΣZ(u, w, θ) = 0, ΣM(u, w, θ) = 0, all forces of the model but the line",
  "rise.attitude": "attitude while it moves",
  "rise.drift": "drift, forward positive",
  "rise.seconds": "seconds over {way}",
  "rise.source":
    "Added mass: Lamb 1932. Cross-flow: Cheng 2013; Jorgensen 1977, NASA TR R-474. Along the body: Hoerner 1965. Bib: Polhamus 1966, NASA TN D-3767; Lamar & Gloss 1975; ECN-C--03-025, 2003. Tail: Roddy 1990. docs/model.md §6.",
  "rise.unsteady": "It did not settle: {why}. The figures are those at the end.",
  "rise.changing": "speed and attitude still change after 300 s",
  "rise.note": "Near neutral, a hundredth of a gram decides: speed goes with the root of the net force.",

  "rest.title": "Attitude at rest under water",
  "rest.any": "any",
  "rest.meaning":
    "Held still under water and let go, the bait turns until its centre of buoyancy B stands above its centre of gravity G. Nose-up is positive; 'level' is said within ±{within}°.",
  "rest.formula": "θ = atan2(x_B − x_G, z_B − z_G), x forward, z up",
  "rest.G": "station of G",
  "rest.B": "station of B",
  "rest.others": "with the balls elsewhere also at",
  "rest.source": "{book} Hooks hang freely and act at their eyes; loose balls lie at the lowest point.",
  "rest.note":
    "For a bait that floats strongly this is only the first moment of its rise; it can be steep while the bait floats nearly level.",

  "lever.title": "Distance from G to B",
  "lever.meaning":
    "The lever that turns the bait upright and to its trim. A small one tips far with little: here {step} of G lengthwise is {angle}.",
  "lever.any": "any angle",
  "lever.G": "G: station, height",
  "lever.B": "B: station, height",
  "lever.source": "{book} Below {least} the attitude at rest has no number.",

  "trim.title": "Trim afloat",
  "trim.meaning":
    "The attitude in which the bait lies on still water: as much under as carries it, B straight above G.",
  "trim.formula": "ρ · V_immersed = Σm and X_B(θ) = X_G(θ)",
  "trim.immersed": "immersed",
  "trim.mass": "mass",
  "trim.draft": "draft",
  "trim.other": "also stable ({number})",
  "trim.source": "{book} Hooks hang under water at their eyes.",
  "trim.over":
    "Drawn held from rolling: let go, this bait rolls over. The model moves in one plane and does not show it.",

  "draft.title": "Draft",
  "draft.meaning": "How deep the lowest point of the bare body lies while the bait floats.",
  "draft.formula": "depth of the lowest point of the outline at the floating trim and level",
  "draft.trim": "trim",
  "draft.share": "immersed share of all it displaces",

  "GM.title": "Metacentric height",
  "GM.meaning": "Above zero the floating bait rights itself when it heels; below zero it lies over.",
  "GM.waterline": "I_T, waterline's second moment across",
  "GM.immersed": "V, immersed",
  "GM.note": "Under water the waterline is gone and only B above G keeps it upright.",

  "mass.title": "Mass of the finished bait",
  "mass.meaning":
    "Everything fitted, in air: body less what is cut out of it, ballast, wire, bib, hooks, rings, coats.",
  "mass.formula": "Σm = ρ_body · (V_body − ΣV_removed) + Σm_items",
  "mass.density": "body density",
  "mass.volume": "volume of the bare body",
  "mass.removed": "removed from it",
  "mass.source": "The account: docs/model.md §3. Densities: the table of materials, or the file's own.",

  "displaced.title": "Water displaced",
  "displaced.meaning":
    "The volume of all that touches the water: the body by its outline, and what stands outside it.",
  "displaced.formula": "ΣV = V_body + ΣV_outside",
  "displaced.outside": "outside it",
  "displaced.source": "Volume by quadrature of the sections, docs/model.md §2 and §3.",

  "water.title": "Density of the water",
  "water.meaning":
    "Cold water is denser than warm, salt water denser than fresh: from fresh to sea water a bait gains about 2.7 % of its volume in grams.",
  "water.formula": "ρ(S, T) at one atmosphere",
  "water.temperature": "temperature",
  "water.salinity": "salinity",
  "water.viscosity": "viscosity",
  "water.source": "{water} Viscosity: Sharqawy, Lienhard & Zubair 2010.",
} as const;
