/** Answers to 'why' in English, of the shared components and of the view Float. They load with the first question. */
export const texts = {
  to: "{from} to {to}",
  "sum.formula": "R = sum of the forces on the bait, each with its direction",
  "sum.source": "Newton's second law; docs/model.md §6",
  "sum.meaning":
    "What is left when all forces are added: it speeds the bait up or slows it down, with the water that moves along. Near 0 the bait is at rest or runs steadily.",
  "force.meaning": "One force on the bait at this moment; its arrow on the stage has the same letter.",
  "force.forward": "forward along the retrieve",
  "force.up": "upward",
  density: "Density of {name}",
  "density.wood":
    "A published mean. One board differs from the next by a tenth and more: weigh your blank and type its own density.",
  "density.other": "A published value; the piece in hand may differ.",
  "density.table": "from the table of materials",
  "density.spread": "published spread",
  "moment.depth": "Depth at this moment",
  "moment.depth.meaning": "Depth of the tie eye under the still surface.",
  "moment.depth.formula": "depth = −Z of the tie eye",
  "moment.pitch": "Pitch at this moment",
  "moment.pitch.meaning": "Angle of the datum line above the horizontal, nose-up positive.",
  "moment.pitch.formula": "dθ/dt = q, with q from the moments of all forces about G",
  "moment.speed": "Speed at this moment",
  "moment.speed.meaning": "Speed of the centre of gravity through the still water's frame.",
  "moment.speed.formula": "speed = √(V_X² + V_Z²)",
  "moment.line": "Line at this moment",
  "moment.line.meaning":
    "Pull of the line at the tie eye; nothing where it is slack. A result, not a setting.",
  "moment.line.formula": "tension = EA · strain where stretched, 0 where slack; docs/model.md §7",
  "moment.time": "moment of the recording",
  "moment.source":
    "Simulated: the equations of motion of docs/model.md §6 and §8, 960 steps a second, 60 kept.",
  "moment.note":
    "Depth under tow is good to 20–30 % until a measured run calibrates it; attitudes at rest are as good as the weighings.",
  "righting.source":
    "E. V. Lewis (ed.), Principles of Naval Architecture, vol. I, SNAME 1988; docs/model.md §5. Under water: the waterline is gone.",
  "heel.title": "Righting lever against heel",
  "heel.meaning":
    "Heeled over, the water pushes up at B and the weight pulls down at G. The distance between the two lines turns the bait back.",
  "heel.formula": "under water GZ(φ) = BG · sin φ; afloat, near upright, GZ ≈ GM · φ",
  "heel.note":
    "Afloat the model gives the first slope only: the drawing is a side view, and no heeled waterline is calculated.",
  "trim.title": "Righting moment against trim",
  "trim.meaning":
    "Held at a trim and free in height, the bait is turned by this moment: above zero the nose is lifted. It comes to rest where the curve falls through zero.",
  "trim.formula":
    "afloat M(θ) = Σm · (X_B − X_G) at ρ · V_immersed = Σm; under water M(θ) = ρ ΣV · (X_B − X_G)",
  "trim.note":
    "One {mass}·{length} is one gram hung a millimetre further out. 49 trims are calculated; lines between them are straight. Loose balls roll to the lower end, where the curve jumps.",
  "season.title": "Net buoyancy over the season",
  "season.meaning":
    "Cold water carries more than warm, salt water more than fresh. The bait keeps its volume and its weight; its rest trim under water does not change with the water.",
  "season.formula": "net(S, T) = ρ(S, T) · ΣV − Σm",
  "season.displaced": "ΣV, water displaced",
  "season.mass": "Σm, mass of everything fitted",
  "season.season": "season",
  "season.suspends": "‘suspends’ within",
  "season.water": "water",
  "season.salinity": "salinity",
  "season.cold": "cold, {unit}",
  "season.warm": "warm, {unit}",
  "season.source":
    "Water: UNESCO equation of state EOS-80, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44. Presets: Venice system 1958; docs/model.md §3.",
  "season.note":
    "The wood expands with warmth too; this cancels less than half of the water's expansion and is left out.",
  "due.title": "What it should do in the tub now",
  "due.meaning":
    "What is still to come pulls the bait down, so now it has to float by so much more. In the tub's own water, whatever water the target is for.",
  "due.formula": "due = net wanted − net of what is to come + (ρ_tub − ρ) · V",
  "due.wanted": "net wanted of the finished bait",
  "due.coats": "net of the coats to come",
  "due.others": "net of everything else to come",
  "due.displaced": "V, water that it displaces now",
  "due.account": "by the account it now has",
  "due.source": "Archimedes' principle; docs/model.md §3.",
  "reading.title": "What the tub says",
  "reading.meaning":
    "The tub weighs the bait by what it does. Where the reading and the account differ by more than the reading's own band, the account is wrong somewhere: the correction makes it agree without saying where.",
  "reading.formula.timed": "net such that the steady rise equals height / time, corrected for the run-up",
  "reading.formula.attitude":
    "x_B − x_G = (z_B − z_G) · tan θ; moving: the offset whose steady rise has that pitch",
  "reading.formula.waterline": "Σm = ρ · V under the line; G under the centroid of V",
  "reading.mean": "mean of the times",
  "reading.steady": "steady speed",
  "reading.plain": "height over time",
  "reading.net": "the account's net",
  "reading.offset": "the account's G from B",
  "reading.from": "± from {source}",
  "reading.source":
    "docs/model.md §5: terminal rise, rest trim, Archimedes. Uncertainties combined as in JCGM 100:2008; timing ±0.15 s, marks ±2 mm, attitude ±2°, waterline ±0.5 mm, drag ±20 % (95 %): common practice, no source.",
  "swap.title": "What this swap brings",
  "swap.meaning": "Net buoyancy and rest trim in the water asked for, with the swap made.",
  "swap.formula":
    "net = ρ ΣV − Σm over all that is fitted; misfit = √((Δv / δv)² + (Δθ / δθ)²) of the steady rise, where δv = v · δnet / 2 net",
  "swap.change": "{mass} of mass, net {net}",
  "swap.wanted": "wanted",
  "swap.without": "without any swap",
  "swap.rise": "steady rise",
  "swap.goalRise": "steady rise wanted",
  "swap.netWithin": "δnet, how near in net",
  "swap.trimWithin": "δθ, how near in attitude",
  "swap.misfit": "misfit",
  "swap.source":
    "Archimedes' principle and rest trim, docs/model.md §3 and §5; steady rise §6. Every choice of one or two changes is calculated exactly.",
  "swap.note": "Masses that were not weighed make the swap as uncertain as they are: weigh what you fit.",
} as const;
