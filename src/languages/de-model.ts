import type { Echoes } from "./echo";

/** What the model refuses, warns of and notes: the drawing, parts, readings, floating, a run. Sentence by sentence. */
export const model: Echoes = {
  "bait: {wrong}. {remedy}": "bait: {wrong}. {remedy}",
  "bait.{keys}: {wrong}. {remedy}": "bait.{keys}: {wrong}. {remedy}",
  "bench[{keys}: {wrong}. {remedy}": "bench[{keys}: {wrong}. {remedy}",
  "corrections[{keys}: {wrong}. {remedy}": "corrections[{keys}: {wrong}. {remedy}",
  "{quantity} = {value} at {time} s: {wrong}. {remedy}":
    "{quantity} = {value} nach {time} s: {wrong}. {remedy}",
  "{quantity} = {value}: {wrong}. {remedy}": "{quantity} = {value}: {wrong}. {remedy}",

  // The drawing
  "{keyAt}: found {found}; {remedy}": "{keyAt}: gefunden {found}; {remedy}",
  "{keyAt}: station {found}; {remedy}": "{keyAt}: Stelle {found}; {remedy}",
  "{keyAt}: {key} is {mm} below {key2} at station {station}; {remedy}":
    "{keyAt}: {key} liegt an der Stelle {station} um {mm} unter {key2}; {remedy}",
  "found {what}": "gefunden {what}",
  "{count} points": "{count} Punkte",
  "{a} after {b}": "{a} nach {b}",
  "station {station}": "Stelle {station}",
  "station {station} after {before}": "Stelle {station} nach {before}",
  "give a length above 0": "gib eine Länge über 0 an",
  "half-breadths are 0 or more": "halbe Breiten sind 0 oder mehr",
  "give a point or more": "gib einen Punkt oder mehr an",
  "give two points or more": "gib zwei Punkte oder mehr an",
  "station and value are finite numbers": "Stelle und Wert sind endliche Zahlen",
  "stations rise strictly from nose to tail": "die Stellen steigen streng von der Nase zum Schwanz",
  "stations lie between 0 and the length, {length}": "die Stellen liegen zwischen 0 und der Länge, {length}",
  "the first point stands at station 0": "der erste Punkt steht an Stelle 0",
  "the last point stands at the length, {length}": "der letzte Punkt steht an der Länge, {length}",
  "exponents lie between 1 and 10": "Exponenten liegen zwischen 1 und 10",
  "{key} is {mm} below {key2} at station {station}":
    "{key} liegt an der Stelle {station} um {mm} unter {key2}",
  "keep {key} at or above {key2} along the whole length":
    "halte {key} auf der ganzen Länge auf oder über {key2}",
  "the body encloses {volume} m³": "der Körper umschließt {volume} m³",
  "give breadth and height at the same stations": "gib Breite und Höhe an denselben Stellen an",
  "breaks rise from 0 to π": "Knicke steigen von 0 bis π",
  "edges are finite everywhere": "die Umrisslinien sind überall endlich",
  "{value} at φ = {phi}": "{value} bei φ = {phi}",

  // Parts
  "{value} is not a possible value": "{value} ist kein möglicher Wert",
  "Give a number above {bound}": "Gib eine Zahl über {bound} an",
  "Give a number of at least {bound}": "Gib eine Zahl ab {bound} an",
  "{point} is not a point": "{point} ist kein Punkt",
  "Give a station and a height": "Gib eine Stelle und eine Höhe an",
  'density {density} of "{name}" is not possible': 'Dichte {density} von "{name}" ist nicht möglich',
  "Give a density above 0": "Gib eine Dichte über 0 an",
  "this {what} counts as inside, but it lies outside the body, {length} from its outline":
    "dieses Teil ({what}) zählt als innen, liegt aber außerhalb des Körpers, {length} von seinem Umriss",
  'Move it into the body, or choose "outside" for it': 'Verschieb es in den Körper, oder wähl "außen" dafür',
  "This {what} counts as inside, but its middle is not within the outline.":
    "Dieses Teil ({what}) zählt als innen, aber seine Mitte liegt nicht im Umriss.",
  "A hole is given, but this ballast is outside: the hole is not counted.":
    "Es ist ein Loch angegeben, aber dieser Ballast ist außen: das Loch zählt nicht.",
  "Its hole is {depth} deep from the bottom edge: so high up, the weight needs {needs} at the least. Drill it deeper, or lower the weight by {more}.":
    "Sein Loch ist von der Unterkante {depth} tief: so weit oben braucht das Gewicht mindestens {needs}. Bohr es tiefer, oder setz das Gewicht um {more} tiefer.",
  "The hole of {hole} is smaller than the ballast of {own}: {proud} stand proud and displace water.":
    "Das Loch von {hole} ist kleiner als der Ballast von {own}: {proud} stehen vor und verdrängen Wasser.",
  "the middle of the slot lies at station {station}, off the body":
    "die Mitte des Schlitzes liegt an der Stelle {station}, neben dem Körper",
  "the bib would be folded back onto its own tongue":
    "die Schaufel wäre auf ihre eigene Zunge zurückgefaltet",
  "Give an angle that differs from the bib angle by 150° at most, or leave it out for a straight bib":
    "Gib einen Winkel an, der höchstens 150° vom Schaufelwinkel abweicht, oder lass ihn weg, für eine gerade Schaufel",
  "Move the root, or give slot_mm 0 for a bib without a tongue":
    "Verschieb die Wurzel, oder gib slot_mm 0 für eine Schaufel ohne Zunge an",
  "The middle of the bib's slot is not within the outline, yet the tongue counts as inside.":
    "Die Mitte des Schlitzes liegt nicht im Umriss, doch die Zunge der Schaufel zählt als innen.",
  "{count} is not a number of balls": "{count} ist keine Anzahl von Kugeln",
  "Give a whole number": "Gib eine ganze Zahl an",
  "{count} balls of {diameter} do not fit: the chamber takes {capacity} ({across} across, {along} along, {high} high)":
    "{count} Kugeln von {diameter} passen nicht: die Kammer fasst {capacity} ({across} quer, {along} längs, {high} hoch)",
  "Use fewer or smaller balls, or a larger chamber":
    "Nimm weniger oder kleinere Kugeln, oder eine größere Kammer",
  "the chamber ends at {to}, not aft of its start at {from}":
    "die Kammer endet bei {to}, nicht hinter ihrem Anfang bei {from}",
  "Make it greater than from_mm": "Mach es größer als from_mm",
  "the chamber stands outside the body: {what}": "die Kammer ragt aus dem Körper: {what}",
  "Move it, or make it smaller, or the body larger there":
    "Verschieb sie, oder mach sie kleiner, oder den Körper dort größer",
  "it runs from {from} to {to}, the body from 0 to {length}":
    "sie geht von {from} bis {to}, der Körper von 0 bis {length}",
  "its roof is at {roof}, the top edge at {top} at station {station}":
    "ihre Decke ist auf {roof}, die Oberkante auf {top}, an der Stelle {station}",
  "its floor is at {floor}, the bottom edge at {bottom} at station {station}":
    "ihr Boden ist auf {floor}, die Unterkante auf {bottom}, an der Stelle {station}",
  "it is {wide} wide, the body {broad} broad at station {station}":
    "sie ist {wide} breit, der Körper {broad}, an der Stelle {station}",
  "The corners of the chamber break through the rounded side of the body (first at station {station}); its whole box is counted as a void.":
    "Die Ecken der Kammer brechen durch die runde Seite des Körpers (zuerst an der Stelle {station}); die ganze Kammer zählt als Hohlraum.",
  "a coat has either a thickness or a mass": "eine Schicht hat entweder eine Dicke oder eine Masse",
  "Give exactly one of thickness_mm and mass_g": "Gib genau eines von thickness_mm und mass_g an",
  "the wire has no length": "der Draht hat keine Länge",
  "Give two different points or more": "Gib zwei oder mehr verschiedene Punkte an",
  '"{a}" and "{b}" overlap by {length} inside the body; what they share is taken off twice. Move one of them.':
    "„{a}“ und „{b}“ überdecken sich im Körper um {length}; was sie gemeinsam haben, wird zweimal abgezogen. Verschiebe eines von beiden.",
  '"{a}" and "{b}" overlap by {length} inside the body; what they share is taken off twice (the hole is judged as a ball of its volume, {across} across). Move one of them.':
    "„{a}“ und „{b}“ überdecken sich im Körper um {length}; was sie gemeinsam haben, wird zweimal abgezogen (das Loch gilt als Kugel seines Volumens, {across} dick). Verschiebe eines von beiden.",

  // Readings and corrections
  "{way} {mm} mm in {s} s ({n} timed)": "{way} {mm} mm in {s} s ({n}-mal gestoppt)",
  "seen at {angle}° at rest": "bei {angle}° gesehen, in Ruhe",
  "seen at {angle}° moving": "bei {angle}° gesehen, in Bewegung",
  "waterline through {nose} and {tail} mm": "Wasserlinie durch {nose} und {tail} mm",
  "tub correction {n}": "Korrektur der Wanne {n}",
  "own correction": "eigene Korrektur",
  "own correction {n}": "eigene Korrektur {n}",
  "The displacement readings say {percent} of the drawn volume: drawing and reading do not belong together, look for the error before trusting either.":
    "Die Verdrängung ergibt {percent} des gezeichneten Volumens: Zeichnung und Messung gehören nicht zusammen. Such den Fehler, bevor du einer von beiden glaubst.",
  "chambers, holes, wires and the slot take {removed} of a body of {volume}":
    "Kammern, Löcher, Drähte und der Schlitz nehmen {removed} von einem Körper von {volume}",
  "Make them smaller or the body larger": "Mach sie kleiner oder den Körper größer",
  "a mass of {grams}": "eine Masse von {grams}",
  "{grams} takes away more than the whole bait of {mass}":
    "{grams} nimmt mehr weg als der ganze Köder von {mass}",
  "Check the tub reading, or remove the correction": "Prüfe die Wannenmessung, oder nimm die Korrektur weg",
  '"{key}" names nothing on this bait': '"{key}" benennt nichts an diesem Köder',
  "Use a group ({keys}) or one of {labels}": "Nimm eine Gruppe ({keys}) oder eines von {labels}",
  '"{key}" names {count} different items': '"{key}" benennt {count} verschiedene Teile',
  "Say which: {names}": "Sag, welches: {names}",
  '"body" is always there': '"body" ist immer da',
  "Name items that are fitted to it": "Nenne Teile, die daran angebracht sind",
  "{mass} kg is not a reading": "{mass} kg ist keine Anzeige",
  "Give a number of 0 or more": "Gib eine Zahl ab 0 an",
  "{mass} kg is not a resolution": "{mass} kg ist keine letzte Stelle einer Waage",
  "Give the scale's last digit, above 0": "Gib die letzte Stelle der Waage an, über 0",
  "{volume} m³ is not a volume of pins": "{volume} m³ ist kein Volumen von Nadeln",
  "Give diameters and depths of 0 or more": "Gib Durchmesser und Tiefen ab 0 an",
  "a displacement reading needs the water's temperature":
    "eine Messung der Verdrängung braucht die Temperatur des Wassers",
  "Give tap_C": "Gib tap_C an",
  "nothing was on the scale": "auf der Waage war nichts",
  "Name at least one group or item that the bait has":
    "Nenne mindestens eine Gruppe oder ein Teil, die der Köder hat",
  '"{name}" was on the scale, so its place in the body had been cut':
    '"{name}" war auf der Waage, also war sein Platz im Körper ausgeschnitten',
  "Name it in one of the two lists": "Nenne es nur in einer der beiden Listen",
  "the weighing of {shown} leaves the body {left}": "die Wägung von {shown} lässt dem Körper {left}",
  "the displacement of {shown} leaves the body {left}": "die Verdrängung von {shown} lässt dem Körper {left}",
  "the {kind} of {shown} leaves the body {left}":
    "nach der Messung ({kind}) von {shown} bleibt dem Körper {left}",
  "Check the reading, its unit, and what was on the scale":
    "Prüfe die Messung, ihre Einheit, und was auf der Waage war",
  "with errors so large hardly any draw leaves a body":
    "bei so großen Fehlern bleibt kaum einmal ein Körper übrig",
  "Give smaller uncertainties, or weigh and measure the bait":
    "Gib kleinere Unsicherheiten an, oder wiege und miss den Köder",

  // Rest and floating
  "B and G are less than 0.1 mm apart: under water the bait rests in any attitude.":
    "B und G sind weniger als 0,1 mm auseinander: unter Wasser ruht der Köder in jeder Lage.",
  "The loose balls can rest at either end: so the bait also rests at {angles}.":
    "Die losen Kugeln können an beiden Enden ruhen: so ruht der Köder auch bei {angles}.",
  "The figure is the one nearest to the trim with the balls at mid-length.":
    "Die Zahl ist die nächste zur Lage mit den Kugeln in der Mitte.",
  "The rest trim is only the first moment of the rise: afloat the bait lies differently.":
    "Die Ruhelage ist nur der erste Augenblick des Steigens: an der Oberfläche liegt der Köder anders.",
  "Afloat the bait lies on its side (GM below 0).":
    "An der Oberfläche liegt der Köder auf der Seite (GM unter 0).",
  "Trim and draft are those of the bait held upright.":
    "Lage und Tiefgang sind die des aufrecht gehaltenen Köders.",
  "The bait floats stably at {count} trims: also at {angles}.":
    "Der Köder schwimmt in {count} Lagen stabil: auch bei {angles}.",
  "Near neutral: surface tension along the waterline can hold up to {grams}, and decides whether the bait breaks the surface.":
    "Nahe am Schweben: die Oberflächenspannung an der Wasserlinie kann bis zu {grams} halten. Sie entscheidet, ob der Köder durch die Oberfläche kommt.",

  // A steady tow
  "turns over": "er kippt um",
  "tail sinks": "der Schwanz sinkt",
  "nose lifts": "die Nase hebt sich",
  "bib stalls": "die Strömung an der Schaufel reißt ab",
  "too little downforce at this speed": "bei diesem Tempo drückt zu wenig nach unten",
  "cannot get under": "er kommt nicht unter Wasser",
  "limited by the bottom": "vom Grund begrenzt",
  "there is no bib to calibrate": "es gibt keine Tauchschaufel, die abzugleichen wäre",
  "no factor from {low} to {high} gives that depth; the nearest is {depth} at {factor}: check the speed, the line out and the drawing first":
    "kein Faktor von {low} bis {high} ergibt diese Tiefe; am nächsten kommt {depth} bei {factor}: prüfe zuerst Tempo, ausgebrachte Schnur und Zeichnung",
  "the bait does not run in this model at that speed":
    "bei diesem Tempo läuft der Köder in diesem Modell nicht",
  "it did not come to a steady rise within 300 s": "er kam in 300 s zu keinem gleichmäßigen Steigen",
  "the steady state could not be refined; the figures are the run's":
    "der gleichmäßige Zustand ließ sich nicht verfeinern; die Zahlen sind die des Laufs",
  "There is no bib whose {variable} could be {value}.":
    "Es gibt keine Tauchschaufel, deren {variable} {value} sein könnte.",
  "it cannot be built": "er lässt sich nicht bauen",

  // A run
  "a {move} needs {what}": "ein Zug ‚{move}‘ braucht {what}",
  "Correct this move": "Berichtige diesen Zug",
  "a speed above 0 m/s": "ein Tempo über 0 m/s",
  "a reel goes on for a time or for a length of line": "gekurbelt wird eine Zeit oder eine Länge Schnur lang",
  "Give one of the two": "Gib eines von beiden an",
  "a time of 0 s or more": "eine Zeit ab 0 s",
  "a length of 0 m or more": "eine Länge ab 0 m",
  "a travel in m": "einen Weg in m",
  "a time above 0 s": "eine Zeit über 0 s",
  "a height in m": "eine Höhe in m",
  "there is no tackle": "es gibt kein Gerät",
  "Give a tackle, or leave this move out": "Gib ein Gerät an, oder lass diesen Zug weg",
  "the line was let go in an earlier move": "die Schnur wurde in einem früheren Zug losgelassen",
  "Put the release after it": "Setz das Loslassen dahinter",
  "line is in": "Schnur ist eingeholt",
  'it has left the chamber "{name}"': "sie hat die Kammer „{name}“ verlassen",
  "Use larger balls, or move the bait more gently": "Nimm größere Kugeln, oder beweg den Köder sanfter",
  "what happens is beyond the model: faster than its steps can follow":
    "was geschieht, kann das Modell nicht: es ist schneller als seine Schritte",
  "what happens in {key} ({move}) is beyond the model: faster than its steps can follow":
    "was in {key} ({move}) geschieht, kann das Modell nicht: es ist schneller als seine Schritte",
  "Give this move more time or a lower speed, or use a line that stretches more, a weaker bib factor, or larger loose balls":
    "Gib diesem Zug mehr Zeit oder ein kleineres Tempo, oder nimm eine dehnbarere Schnur, einen kleineren Faktor der Schaufel oder größere lose Kugeln",
  "the rod tip would reach {speed}, and an arm moves it at {most} at most":
    "die Rutenspitze käme auf {speed}, und ein Arm bewegt sie höchstens mit {most}",
  "Give this movement at least {seconds}, or a shorter way":
    "Gib dieser Bewegung mindestens {seconds}, oder einen kürzeren Weg",
  "a run follows {most} loose balls at most: more would take hours":
    "ein Lauf folgt höchstens {most} losen Kugeln: mehr würden Stunden dauern",
  "Use fewer, larger balls of the same mass, or ballast that does not move":
    "Nimm weniger, größere Kugeln derselben Masse, oder Ballast, der sich nicht bewegt",
  "start depth of its lowest point (m)": "Anfangstiefe seines tiefsten Punkts (m)",
  "the water is {depth} deep": "das Wasser ist {depth} tief",
  "Start it higher or give deeper water": "Beginne höher, oder gib tieferes Wasser an",
  "this water has no surface": "dieses Wasser hat keine Oberfläche",
  "Start it at a depth": "Beginne in einer Tiefe",
  "not a depth": "keine Tiefe",
  "Give a number of metres": "Gib eine Zahl in Metern an",
  "not an angle": "kein Winkel",
  "Give a number of radians": "Gib eine Zahl im Bogenmaß an",
  "the rod tip is {rise} above the tie eye": "die Rutenspitze ist {rise} über der Zugöse",
  "Give more line, or start the bait nearer to the rod tip's height":
    "Gib mehr Schnur, oder beginne mit dem Köder näher an der Höhe der Rutenspitze",
  "angle of hook {number}": "Winkel von Haken {number}",
  "place of ball {number}": "Ort von Kugel {number}",
  "place of ball {number} (m)": "Ort von Kugel {number} (m)",
  pitch: "Neigung",
  "pitch (rad)": "Neigung (rad)",
  "forward speed (m/s)": "Tempo nach vorn (m/s)",
  "upward speed (m/s)": "Tempo nach oben (m/s)",
  "pitch rate (rad/s)": "Drehgeschwindigkeit (rad/s)",
  "tension (N)": "Zug (N)",
  "The line is wound in to its end: {left} are left.":
    "Die Schnur ist bis zum Ende eingeholt: {left} sind übrig.",
};
