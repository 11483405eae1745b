/**
 * Words of the trade: the one used here, what others say, and what it means, with bars between them. Trade words only, no
 * names of products.
 */
export const texts = {
  bait: "bait | lure, plug, artificial | A shaped body with hooks that is pulled through the water.",
  blank: "blank | body, raw body | The shaped wood before anything is fitted to it.",
  bib: "bib | lip, bill, diving vane | The plate at the head that makes the bait dive.",
  "bib-angle":
    "bib angle | lip angle, bill angle | The angle between the bib and the long axis of the bait. Some measure it from the vertical: always draw it.",
  "tie-eye": "tie eye | line tie, nose eye, tow point | The eye that the line is tied to.",
  hanger: "hanger | hook hanger, hook eye, belly eye | The eye that a hook hangs from.",
  harness:
    "harness | through-wire, wire-through | A wire that runs through the whole body and holds all the eyes.",
  "screw-eye": "screw eye | eye screw | A screw with an eye at its end.",
  treble: "treble | treble hook | A hook with three points.",
  single: "single | single hook | A hook with one point.",
  "split-ring": "split ring |  | A ring of two turns that joins a hook to its eye.",
  ballast: "ballast | weight, belly weight | Metal that sets how the bait floats and hangs.",
  shot: "shot | pellet | Small balls of metal.",
  "rattle-chamber": "rattle chamber | rattle, sound chamber | A hollow with loose balls.",
  sealer: "sealer | sanding sealer | The first coat; it closes the pores of the wood.",
  primer: "primer | base coat | The coat under the colour.",
  "clear-coat": "clear coat | top coat, varnish | The last, clear coat.",
  template: "template | pattern | A shape on paper that the maker cuts or traces along.",
  suspend: "suspend | hang, hover | To stay at one depth, neither rising nor sinking.",
  attitude: "attitude | posture, hang, trim | The angle at which the bait lies in the water.",
  "nose-down": "nose-down | head-down | With the nose lower than the tail.",
  "tail-down": "tail-down | nose-up | With the tail lower than the nose.",
  retrieve: "retrieve | wind-in, crank | Bringing the bait back by the reel.",
  cadence: "cadence | rhythm | The order of reeling, twitching and pausing.",
  twitch: "twitch | jerk, tap | A short pull with the rod.",
  "blow-out":
    "blow out | skip out, roll out | To lose its track and come to the surface when it is pulled too fast.",
  track: "track | run true | To swim in a straight line.",
  tune: "tune | adjust | To bend the tie eye a little until the bait tracks.",
  "tub-test": "tub test | tank test, bath test | Trying the bait in still water.",
  "net-buoyancy": "net buoyancy | spare lift | What the water lifts more than the bait weighs, in grams.",
} as const;
