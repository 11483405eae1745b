/** What the figures of a run answer to 'why', in English. */
export const texts = {
  "steady.title": "Depth in a steady tow",
  "steady.means":
    "How deep the tie eye runs after a long, even retrieve at the speed of the first reel. A cast is shorter: the bait starts at the surface, and the line gets shorter while it comes down.",
  "steady.formula":
    "steady line and attitude: docs/model.md §7. On the way there dd/ds = (D − d)/ℓ, ℓ from this run's own slope",
  "steady.this": "this retrieve",
  "steady.source":
    "Towed line: docs/model.md §7. At depth: {share} % of the steady depth of the line that is out; common practice, no source.",
  depthNote:
    "Depth under tow is good to 20–30 % until a measured run calibrates it, the running attitude to about 6°.",
  run: "Simulated: the equations of motion of docs/model.md §6 to §8, 960 steps a second, 60 kept.",
  "deepest.title": "Greatest depth",
  "deepest.means": "The greatest depth of the tie eye in this run.",
  "deepest.formula": "max(−Z of the tie eye) over all frames",
  after: "after",
  fromSplash: "from the splash",
  "toDepth.means": "From the splash to the first moment at {share} % of the greatest depth of this run.",
  "toDepth.formula": "first t with depth(t) ≥ {share} · greatest depth",
  "toDepth.deepest": "greatest depth",
  "toDepth.note": "The share is common practice, no source.",
  "running.means":
    "Mean pitch while it runs: in a reel, pitch within 4° over 0.6 s or more, the line pulling, and at least half the reel's speed.",
  "running.formula": "mean of θ over the frames in which it runs",
  "running.seconds": "time it runs",
  "running.depth": "mean depth",
  "running.speed": "mean speed of the bait",
  "running.tension": "mean tension",
  "running.note": "{depth} What counts as running is common practice, no source.",
  "pause.means":
    "What the bait does while the reel stands: the second half of every pause of half a second or more, averaged over time.",
  "pause.seconds": "time averaged over",
  "pause.note":
    "The line's pull still counts here. The trim at rest without line stands under ‘At rest under water’.",
  "pause.trimFormula": "mean of θ over the second half of the pauses",
  "pause.title": "Rise or sink in the pause",
  "pause.formula": "mean of the upward velocity of G over the second half of the pauses",
  "pull.title": "Greatest pull of the line",
  "pull.means": "The greatest tension at the tie eye in the frames of this run. A result, not a setting.",
  "pull.formula": "max(tension) over all frames",
  "zone.title": "Time in the strike zone",
  "zone.working": "being worked out",
  "zone.means": "How long the tie eye is within the depths in which the bait is wanted.",
  "zone.formula": "frames with from ≤ depth ≤ to, over frames a second",
  "zone.from": "from",
  "zone.to": "to",
  "beat.title": "Beats a second, an estimate",
  "beat.value": "{band} a second",
  "beat.means":
    "How often the bait swings from side to side while it runs. The model moves in one plane and does not simulate this: it is the rate at which the bib sheds vortices, good for an order of size and for comparing bibs.",
  "beat.formula": "f = St · U / b, b the bib's width; ± {band} %",
  "beat.speed": "U, mean speed while it runs",
  "beat.width": "b, width of the bib",
  "beat.attitude": "θ, running attitude",
  "beat.middle": "middle of the band",
  "beat.source":
    "Shedding behind a bluff plate, St ≈ 0.15 on its projected width: from memory. docs/model.md §10.",
  "beat.note": "Half to one and a half times the middle. Count a filmed run to know it.",
  speed: "speed",
  lineOut: "line out",
} as const;
