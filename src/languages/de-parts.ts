import type { Echoes } from "./echo";

/** Names of parts, rows of the account, stages of making, and what the board and the verdict say. */
export const parts: Echoes = {
  // Kinds, pieces and groups
  body: "Körper",
  wood: "Holz",
  chamber: "Kammer",
  chambers: "Kammern",
  balls: "Kugeln",
  "loose balls": "lose Kugeln",
  ballast: "Ballast",
  weight: "Gewicht",
  wire: "Draht",
  wires: "Drähte",
  bib: "Tauchschaufel",
  "bib's tongue": "Zunge der Tauchschaufel",
  "bib's slot": "Schlitz der Tauchschaufel",
  hanger: "Hakenöse",
  hangers: "Hakenösen",
  hook: "Haken",
  hooks: "Haken",
  ring: "Ring",
  "split ring": "Sprengring",
  fitting: "Beschlag",
  fittings: "Beschläge",
  eyes: "Augen",
  coat: "Schicht",
  coats: "Schichten",
  sealer: "Porenfüller",
  primer: "Grundierung",
  paint: "Farbe",
  "clear coat": "Klarlack",
  "sealer and paint coat": "Porenfüller und Farbe",
  clip: "Einhänger",
  shot: "Schrot",
  slug: "Bolzen",
  sheet: "Blech",
  strip: "Streifen",
  leader: "Vorfach",
  correction: "Korrektur",
  corrections: "Korrekturen",
  "tub correction": "Korrektur der Wanne",
  "tie eye": "Zugöse",
  mass: "Masse",
  item: "Teil",
  metal: "Metall",
  plastic: "Kunststoff",
  other: "anderes",
  weed: "Kraut",
  "strike zone": "Fangzone",
  "rod tip": "Rutenspitze",
  "tungsten ball {d} mm": "Wolframkugel {d} mm",
  "steel ball {d} mm": "Stahlkugel {d} mm",
  "brass rod {d} mm, {l} mm long": "Messingstab {d} mm, {l} mm lang",
  "My box": "Meine Kiste",
  "new hanger": "neue Hakenöse",

  // Rows of the account are named by their entry and their kind
  "{name} ballast": "Ballast {name}",
  "{name} chamber": "Kammer {name}",
  "{name} balls": "Kugeln {name}",
  "balls of {name}": "Kugeln von {name}",
  "{name} ring": "Ring {name}",
  "{name} hook": "Haken {name}",
  "{name} hanger": "Öse {name}",
  "{name} coat": "Schicht {name}",
  "{name} again": "{name}, noch einmal",
  "{count} × {name}": "{count} × {name}",
  "{kind} ‘{name}’": "{kind} ‚{name}‘",
  "correction ‘{name}’": "Korrektur ‚{name}‘",
  "{name}, {known}": "{name}, {known}",

  // Differences between two baits
  outline: "Umriss",
  "hooks and rings": "Haken und Ringe",
  water: "Wasser",
  "rod and line": "Rute und Schnur",
  retrieve: "Einholen",
  target: "Ziel",
  weighings: "Wägungen",
  "tub readings": "Wannenmessungen",
  notes: "Notizen",
  "what was set down": "was festgehalten wurde",
  "other things": "anderes",

  // Stages and moments of making
  blank: "Rohling",
  sealed: "versiegelt",
  "laid out": "eingelegt",
  closed: "geschlossen",
  "bare with hooks": "roh mit Haken",
  painted: "lackiert",
  "clear-coated": "klar lackiert",
  dressed: "montiert",

  // Sections of the inputs, and how rows count
  "Hooks and rings": "Haken und Ringe",
  "Eyes and other fittings": "Augen und andere Beschläge",
  "Inside it counts in full; outside by what it exceeds the water it displaces.":
    "Innen zählt es ganz; außen nur, was es schwerer ist als das Wasser, das es verdrängt.",
  "The part in the slot counts in full; the part outside by what it exceeds the water it displaces.":
    "Der Teil im Schlitz zählt ganz; der Teil außen nur, was er schwerer ist als das Wasser, das er verdrängt.",
  "A void weighs nothing; the wood it takes the place of no longer weighs.":
    "Ein Hohlraum wiegt nichts; das Holz, an dessen Stelle er ist, wiegt nicht mehr.",
  "Balls lie inside: they count in full.": "Kugeln liegen innen: sie zählen ganz.",
  "A coat displaces its own volume: a gram of a 1.1 g/mL film costs about a tenth of a gram of lift.":
    "Eine Schicht verdrängt ihr eigenes Volumen: ein Gramm Film mit 1,1 g/mL kostet etwa ein Zehntelgramm Auftrieb.",
  "Hooks and rings hang in the water: they count by what they exceed the water they displace.":
    "Haken und Ringe hängen im Wasser: es zählt nur, was sie schwerer sind als das Wasser, das sie verdrängen.",
  "The part inside counts in full; the part outside by what it exceeds the water it displaces.":
    "Der Teil innen zählt ganz; der Teil außen nur, was er schwerer ist als das Wasser, das er verdrängt.",

  // The board
  Weight: "Gewicht",
  "Chamber, empty or with balls": "Kammer, leer oder mit Kugeln",
  "Hook with ring": "Haken mit Ring",

  // Starting forms
  "Slender: long and low, its depth even along the middle":
    "Schlank: lang und niedrig, in der Mitte gleichmäßig hoch",
  "Stout: short, deep and broad, fullest well forward":
    "Gedrungen: kurz, hoch und breit, weit vorn am vollsten",
  "Flat-sided: deep and narrow, its sides nearly flat": "Flachseitig: hoch und schmal, die Seiten fast eben",
  "Deep-bellied: a nearly straight back over a full belly":
    "Tiefbauchig: ein fast gerader Rücken über vollem Bauch",
  "Drop: full and round in front, drawn out to a thin tail":
    "Tropfen: vorn voll und rund, zum dünnen Schwanz ausgezogen",
  "Spindle: round and alike at both ends, as turned on a lathe":
    "Spindel: rund und an beiden Enden gleich, wie gedrechselt",

  // Small changes
  "0.1 g more": "0,1 g mehr",
  "1 mm aft": "1 mm nach hinten",
  "1 mm up": "1 mm nach oben",
  "one coat more": "eine Schicht mehr",
  "one hook size up": "eine Hakengröße mehr",
  "one hook size down": "eine Hakengröße weniger",

  // The verdict
  "floats by {grams}": "schwimmt mit {grams}",
  "sinks by {grams}": "sinkt mit {grams}",
  "suspends ({grams} light, within ±{within})": "schwebt ({grams} zu leicht, innerhalb von ±{within})",
  "suspends ({grams} heavy, within ±{within})": "schwebt ({grams} zu schwer, innerhalb von ±{within})",
  light: "zu leicht",
  heavy: "zu schwer",
  level: "waagrecht",
  "nose-up": "Nase hoch",
  "nose-down": "Nase tief",
  "tail-down": "Schwanz tief",
  "belly-up": "Bauch oben",
  "rests in any attitude": "ruht in jeder Lage",
  "rests belly-up, nose up": "ruht mit dem Bauch oben, Nase hoch",
  "rests belly-up, nose down": "ruht mit dem Bauch oben, Nase tief",
  "rests level": "liegt waagrecht",
  "hangs tail-down at {angle}": "hängt mit dem Schwanz {angle} tief",
  "hangs nose-down at {angle}": "hängt mit der Nase {angle} tief",
  "rests nose-up by {angle}": "ruht mit der Nase {angle} hoch",
  "rests nose-down by {angle}": "ruht mit der Nase {angle} tief",
  stands: "steht",
  "rises 300 mm in {seconds}": "steigt 300 mm in {seconds}",
  "sinks 300 mm in {seconds}": "sinkt 300 mm in {seconds}",

  // Marks of the time axis
  "reel {speed}": "kurbeln {speed}",
  "twitch {way}": "zupfen {way}",
  "lift {way}": "heben {way}",
  "lower {way}": "senken {way}",
};

/** Inputs whose error makes the bands wide, and what a reading is uncertain by. */
export const inputs: Echoes = {
  "{item}: mass": "{item}: Masse",
  "{item}: density": "{item}: Dichte",
  "{item}: hole": "{item}: Loch",
  "{item}: filler": "{item}: Füllmasse",
  "{item}: length": "{item}: Länge",
  "{item}: width": "{item}: Breite",
  "{item}: tall": "{item}: Höhe",
  "{item}: wide": "{item}: Breite",
  "{item}: thickness": "{item}: Dicke",
  "{item}: station": "{item}: Stelle",
  "{item}: height": "{item}: Höhe",
  "{item}: net": "{item}: Auftrieb",
  "{item}: G along": "{item}: G der Länge nach",
  "{item}: height of G": "{item}: Höhe von G",
  "body: overall length": "Körper: ganze Länge",
  "body: breadth": "Körper: Breite",
  "weighing reading {number}": "Wägung {number}",
  "displacement reading {number}": "Verdrängung, Messung {number}",
  timing: "Stoppen der Zeit",
  "height between the marks": "Höhe zwischen den Marken",
  "drag, ± 20 %": "Widerstand, ± 20 %",
  angle: "Winkel",
  "height between G and B": "Höhe zwischen G und B",
  "mark at the nose": "Marke an der Nase",
  "mark at the tail": "Marke am Schwanz",
  "scale and repeats": "Waage und Wiederholungen",
  "tap temperature": "Temperatur des Leitungswassers",
  "depth of the pins": "Tiefe der Nadeln",
  "diameter of the pins": "Durchmesser der Nadeln",
  "surface tension on the pins": "Oberflächenspannung an den Nadeln",
  "weighing in air": "Wägung in Luft",
  "weighing under water": "Wägung unter Wasser",
  "surface tension on the thread": "Oberflächenspannung am Faden",
  "ballast to come": "Ballast, der noch kommt",
};

/** Forces, and what a drawing says. */
export const drawing: Echoes = {
  Weight: "Gewicht",
  "Lift of the water": "Auftrieb des Wassers",
  "Drag across the body": "Widerstand quer zum Körper",
  "Drag along the body": "Widerstand längs des Körpers",
  "Side force at the tail": "Seitenkraft am Schwanz",
  "Drag of the hooks": "Widerstand der Haken",
  "Floor, walls and balls": "Grund, Wände und Kugeln",
  "Sum of all forces": "Summe aller Kräfte",
  "tension at the tie eye, along the line": "Zug an der Zugöse, längs der Schnur",
  "push of floor, walls and chamber walls, beyond the weight of balls at rest":
    "Druck von Grund, Wänden und Kammerwänden, über das Gewicht ruhender Kugeln hinaus",
  "m g, downwards at G; hanging hooks act at their eyes":
    "m g, nach unten in G; hängende Haken wirken an ihren Ösen",
  "ρ g V, upwards at the centre of the volume under water":
    "ρ g V, nach oben in der Mitte des Volumens unter Wasser",
  "−½ρ C_dc η 2hw |v_n| v_n ds, summed from nose to tail; C_dc = C_cyl(Re)·f(breadth/height)":
    "−½ρ C_dc η 2hw |v_n| v_n ds, von Nase bis Schwanz summiert; C_dc = C_cyl(Re)·f(Breite/Höhe)",
  "−(1 − k_M)(a33 − a11)|u| w_e/ℓ_e at the trailing end": "−(1 − k_M)(a33 − a11)|u| w_e/ℓ_e am hinteren Ende",
  "½ρ S C_N |v|² across the plate at its centre of pressure, and skin friction along it":
    "½ρ S C_N |v|² quer zur Platte in ihrem Druckpunkt, und Reibung längs der Platte",
  "−½ρ (C_d A)|v| v at each hanger; C_d A = 0.5 cm² (m/0.37 g)^⅔":
    "−½ρ (C_d A)|v| v an jeder Hakenöse; C_d A = 0,5 cm² (m/0,37 g)^⅔",
  "C_cyl: Cheng 2013, J. Hydraul. Eng. 139(3); f: Hoerner 1965, ch. 3 (section values from memory); η: Jorgensen 1977, NASA TR R-474":
    "C_cyl: Cheng 2013, J. Hydraul. Eng. 139(3); f: Hoerner 1965, Kap. 3 (Werte der Querschnitte aus dem Gedächtnis); η: Jorgensen 1977, NASA TR R-474",
  "Hoerner 1965, Fluid-Dynamic Drag, ch. 6 (formula from memory); C_f: Blasius 1908, ITTC 1957":
    "Hoerner 1965, Fluid-Dynamic Drag, Kap. 6 (Formel aus dem Gedächtnis); C_f: Blasius 1908, ITTC 1957",
  "k_M = 0.8 (0.7–0.9): hull measurements of Roddy 1990, DTRC/SHD-1298-08":
    "k_M = 0,8 (0,7–0,9): Messungen an Rümpfen, Roddy 1990, DTRC/SHD-1298-08",
  "C_N: Polhamus 1966, NASA TN D-3767; Lindenburg 2003, ECN-C--03-025; measured plates: Eiffel 1911, Lamar 1974, Pelletier & Mueller 2000; joined to a body: Nippon Suisan Gakkaishi 68(6), 2002":
    "C_N: Polhamus 1966, NASA TN D-3767; Lindenburg 2003, ECN-C--03-025; gemessene Platten: Eiffel 1911, Lamar 1974, Pelletier & Mueller 2000; an einem Körper: Nippon Suisan Gakkaishi 68(6), 2002",
  "wires as cylinders across the flow, ±50 % (common practice, no source)":
    "Drähte als Zylinder quer zur Strömung, ±50 % (üblich, keine Quelle)",
  "length ∝ force": "Länge ∝ Kraft",
  "length ∝ √force": "Länge ∝ √Kraft",
  "length ∝ log force": "Länge ∝ log Kraft",
  "{scale}, head to tail from G": "{scale}, aneinandergehängt von G aus",
  "{key}: {known}, {size}": "{key}: {known}, {size}",
  "too small to draw: {list}": "zu klein zum Zeichnen: {list}",
  depth: "Tiefe",
  "variant {letter}": "Variante {letter}",
  "{name} {length} away": "{name} in {length} Entfernung",
};
