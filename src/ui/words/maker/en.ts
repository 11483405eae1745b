export const texts = {
  needsNone: "This wood needs no ballast to be as heavy as that: see its net buoyancy.",
  late: "No plan was found in time. The first weight is a guess: plan it in ‘Weigh’.",
  "none.usual":
    "No plan of weights of usual sizes meets this exactly. {stands} ‘Weigh’ says why, and plans again.",
  "none.own":
    "No plan of the weights in your box meets this exactly. {stands} ‘Weigh’ says why, and plans again.",
  "stands.nearest": "The nearest one is on the bait.",
  "stands.outside":
    "The body has no room for a weight with the usual wall of wood all round it: one of just the right mass, a guess, stands outside, on the belly.",
  "stands.guess": {
    one: "One weight of just the right mass, a guess, stands in its place.",
    other: "{count} weights of just the right mass, a guess, stand in its place.",
  },
} as const;
