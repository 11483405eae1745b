import type { Echoes } from "./echo";

/** Titles, help and choices of the schema of a bait. */
export const schema: Echoes = {
  // The bait's body
  Bait: "Köder",
  Body: "Körper",
  Name: "Name",
  Notes: "Notizen",
  "Whatever you want to keep with the bait.": "Was du beim Köder behalten willst.",
  Limits: "Grenzen",
  "What this scenario cannot show.": "Was dieses Beispiel nicht zeigen kann.",
  Length: "Länge",
  "Along the datum line, from the nose tip to the end of the tail.":
    "Entlang der Bezugslinie, von der Nasenspitze bis zum Ende des Schwanzes.",
  Station: "Stelle",
  "Aft of the nose tip along the datum line.": "Hinter der Nasenspitze, entlang der Bezugslinie.",
  "Aft of the nose tip along the datum line; negative lies ahead of the nose.":
    "Hinter der Nasenspitze, entlang der Bezugslinie; minus liegt vor der Nase.",
  Height: "Höhe",
  "Up from the datum line.": "Von der Bezugslinie nach oben.",
  "Top edge": "Oberkante",
  "Height of the top edge; from station 0 to the length, stations rising.":
    "Höhe der Oberkante; von Stelle 0 bis zur Länge, in steigender Folge.",
  "Bottom edge": "Unterkante",
  "Height of the bottom edge; from station 0 to the length, stations rising.":
    "Höhe der Unterkante; von Stelle 0 bis zur Länge, in steigender Folge.",
  "Half-breadth": "Halbe Breite",
  "Half the breadth seen from above; from station 0 to the length, stations rising.":
    "Die halbe Breite, von oben gesehen; von Stelle 0 bis zur Länge, in steigender Folge.",
  "Height of greatest breadth": "Höhe der größten Breite",
  "Absent: midway between the edges.": "Fehlt es: in der Mitte zwischen Ober- und Unterkante.",
  "Section exponent": "Exponent des Querschnitts",
  "2 is an ellipse; larger is blockier, 1 a diamond.": "2 ist eine Ellipse; mehr ist kantiger, 1 eine Raute.",
  Above: "Oben",
  Below: "Unten",
  "Section shape": "Form des Querschnitts",
  "Exponents of the half sections; absent: ellipses (2).":
    "Exponenten der halben Querschnitte; fehlt es: Ellipsen (2).",
  Material: "Material",
  "A name from the table of published densities.": "Ein Name aus der Tabelle veröffentlichter Dichten.",
  Density: "Dichte",
  "Wins over the material's published density.": "Geht der veröffentlichten Dichte des Materials vor.",

  // Parts
  Place: "Ort",
  "Station and height of its middle.": "Stelle und Höhe der Mitte.",
  Mass: "Masse",
  Where: "Wo",
  inside: "innen",
  outside: "außen",
  "Inside counts in full; outside counts by what it exceeds the water it displaces.":
    "Innen zählt es ganz; außen zählt nur, was es schwerer ist als das Wasser, das es verdrängt.",
  Stage: "Bauschritt",
  "When it comes onto the bait; absent: the usual one for its kind of item.":
    "Wann es an den Köder kommt; fehlt es: wie für solche Teile üblich.",
  Weighed: "Gewogen",
  "Read off a scale; otherwise a catalogue value with a wide uncertainty.":
    "Von einer Waage abgelesen; sonst ein Katalogwert mit großer Unsicherheit.",
  "Absent: yes. No: its mass comes from its measures or a catalogue, and errs as its material does.":
    "Fehlt es: ja. Nein: die Masse folgt aus den Maßen oder einem Katalog und ist so unsicher wie das Material.",
  Chamber: "Kammer",
  Chambers: "Kammern",
  "From station": "Von Stelle",
  "To station": "Bis Stelle",
  "Height of its middle": "Höhe der Mitte",
  "Height of the box's middle above the datum line.": "Höhe der Mitte der Kammer über der Bezugslinie.",
  Tall: "Hoch",
  Wide: "Breit",
  Balls: "Kugeln",
  "Ball diameter": "Durchmesser der Kugeln",
  "Loose balls": "Lose Kugeln",
  Ballast: "Ballast",
  Hole: "Loch",
  "Volume of the drilled hole; absent: the slug's own volume.":
    "Volumen des Bohrlochs; fehlt es: das Volumen des Gewichts selbst.",
  Drill: "Bohrer",
  "The hole goes straight up from the bottom edge, as deep as its volume makes it; absent: its shape is not known.":
    "Das Loch geht vom Bauch gerade nach oben, so tief, wie sein Volumen es macht; fehlt es: die Form ist nicht bekannt.",
  "Filler density": "Dichte der Füllmasse",
  "What fills the rest of the hole; absent: air.": "Was den Rest des Lochs füllt; fehlt es: Luft.",
  Wire: "Draht",
  Wires: "Drähte",
  Path: "Verlauf",
  Bend: "Biegung",
  "Wire diameter": "Durchmesser des Drahts",
  Bib: "Tauchschaufel",
  Root: "Wurzel",
  "Middle of the plate where it leaves the body.": "Mitte der Platte, wo sie aus dem Körper tritt.",
  "Bib angle": "Schaufelwinkel",
  "From the datum line's forward direction, opening downward: 0° straight ahead, 90° square to the body.":
    "Von der Bezugslinie nach vorn, nach unten geöffnet: 0° geradeaus, 90° quer zum Körper.",
  "Bib length": "Länge der Schaufel",
  "The part outside the body.": "Der Teil außerhalb des Körpers.",
  "Bib width": "Breite der Schaufel",
  "Depth in the slot": "Tiefe im Schlitz",
  "The part inside the body.": "Der Teil im Körper.",
  "Angle of the slot": "Winkel des Schlitzes",
  "Of a bib that is bent at its root: the angle of the part inside the body, counted as the bib angle is. Absent: straight on from the part outside.":
    "Bei einer Schaufel, die an der Wurzel gebogen ist: der Winkel des Teils im Körper, gezählt wie der Schaufelwinkel. Ohne Angabe: gerade weiter vom Teil außerhalb.",
  "Bib thickness": "Dicke der Schaufel",
  Outline: "Umriss",
  square: "eckig",
  round: "rund",
  "Square: a rectangle. Round: full width, closed by a half ellipse.":
    "Eckig: ein Rechteck. Rund: volle Breite, am Ende eine halbe Ellipse.",
  "Tie eye": "Zugöse",
  "Where the line pulls.": "Wo die Schnur zieht.",
  Hanger: "Hakenöse",
  Hangers: "Hakenösen",
  Eye: "Öse",
  "Split ring": "Sprengring",
  "Ring mass": "Masse des Rings",
  Hook: "Haken",
  "Hook mass": "Masse des Hakens",
  "Weigh it: hooks of one size number differ by a factor of two.":
    "Wiege ihn: Haken derselben Größe unterscheiden sich bis zum Doppelten.",
  "Hook size": "Hakengröße",
  "Hook length": "Länge des Hakens",
  "From its eye to the bottom of its bend; absent: usual for its size, else for its mass.":
    "Vom Öhr bis zum Grund des Bogens; fehlt es: wie für die Größe üblich, sonst für die Masse.",
  Gape: "Bogenweite",
  "Between shank and point.": "Zwischen Schenkel und Spitze.",
  Fitting: "Beschlag",
  Fittings: "Beschläge",
  Coat: "Schicht",
  Coats: "Schichten",
  "Coat thickness": "Dicke der Schicht",
  "Dry film over the whole skin.": "Trockener Film über die ganze Haut.",
  "Coat mass": "Masse der Schicht",
  "Weighed: the whole bait after the coat, less before.":
    "Gewogen: der ganze Köder nach der Schicht, weniger davor.",

  // The board
  Stock: "Brett",
  "The board that the body is cut from. It changes no number of the bait.":
    "Das Brett, aus dem der Körper geschnitten wird. Es ändert keine Zahl des Köders.",
  "Made from": "Gemacht aus",
  one: "einem Stück",
  halves: "zwei Hälften",
  "One board, or two that are glued along the middle plane.":
    "Ein Brett, oder zwei, die in der Mittelebene verleimt sind.",
  "Length of the board": "Länge des Bretts",
  "Along the bait.": "Längs des Köders.",
  "Width of the board": "Breite des Bretts",
  "Upright in the bait.": "Im Köder aufrecht.",
  "Thickness of the board": "Dicke des Bretts",
  "Across the bait; of each half where there are two.": "Quer durch den Köder; bei zweien die jeder Hälfte.",
};
