import type { Echoes } from "./echo";
import { texts as file } from "./de";

/** The build sheet and the templates: what they say beside what the file says. */
export const sheet: Echoes = {
  // Every page
  "Build sheet": "Baublatt",
  Templates: "Schablonen",
  sheets: "Blätter",
  "page {page} of {all}": "Seite {page} von {all}",
  "Page {page} of {all}: {name}": "Seite {page} von {all}: {name}",
  continued: "weiter",
  "sheet {number} of {all}": "Blatt {number} von {all}",
  "mm: check this ruler": "mm: miss dieses Lineal",
  "mm: and this one": "mm: und dieses",
  "Print at 100 % (“actual size”, not “fit to page”). Each ruler must measure {mm} mm on the paper; if not, the templates are wrong.":
    "Drucke mit 100 % („tatsächliche Größe“, nicht „anpassen“). Jedes Lineal muss auf dem Papier {mm} mm messen, sonst sind die Schablonen falsch.",
  "Not corrected for the printer.": "Für den Drucker nicht berichtigt.",
  "Corrected for one printer, whose rulers measured {across} mm across and {down} mm down: drawn × {x} across, × {y} down.":
    "Für einen Drucker berichtigt, dessen Lineale {across} mm quer und {down} mm längs maßen: quer × {x} gezeichnet, längs × {y}.",
  "Scale 1 : 1, lengths in millimetres.": "Maßstab 1 : 1, Längen in Millimetern.",
  "Fingerprint of the bait's file: {key}": "Fingerabdruck der Datei des Köders: {key}",
  "The drawing is longer than the page. Lay the sheets over each other so that the crosses with the same letter meet, and hold them against the light. Check with a long ruler before you cut.":
    "Die Zeichnung ist länger als die Seite. Leg die Blätter so übereinander, dass die Kreuze mit demselben Buchstaben sich decken, und halte sie gegen das Licht. Prüfe mit einem langen Lineal, bevor du schneidest.",
  "{name}: {part}. Scale 1 : 1, unit mm, fingerprint {key}, made by Trimwright":
    "{name}: {part}. Maßstab 1 : 1, Einheit mm, Fingerabdruck {key}, gemacht mit Trimwright",

  // The build sheet
  "Build sheet: {name}": "Baublatt: {name}",
  "Fingerprint {key}": "Fingerabdruck {key}",
  "It is the beginning of the SHA-256 of the bait's file as Trimwright saves it. The sheet and a saved file belong together where these digits agree: {key}":
    "Er ist der Anfang des SHA-256 der Datei des Köders, wie Trimwright sie speichert. Blatt und gespeicherte Datei gehören zusammen, wenn diese Stellen gleich sind: {key}",
  "Meant: {name}": "Gemeint: {name}",
  "It floats": "Er schwimmt",
  "It suspends": "Er schwebt",
  "It sinks": "Er sinkt",
  "net buoyancy {grams}": "Restauftrieb {grams}",
  "rises {speed}": "steigt mit {speed}",
  "sinks {speed}": "sinkt mit {speed}",
  "within ± {grams}": "auf ± {grams} genau",
  "hangs at {angle}, nose-up counted positive": "hängt bei {angle}, Nase hoch ist plus",
  "hangs at {angle} ± {tolerance}, nose-up counted positive":
    "hängt bei {angle} ± {tolerance}, Nase hoch ist plus",
  "runs {depth} deep": "läuft {depth} tief",
  "Parts list": "Stückliste",
  What: "Was",
  "In the box": "In der Kiste",
  "{stuff}, a blank of at least {length} × {height} × {breadth}":
    "{stuff}, ein Rohling von mindestens {length} × {height} × {breadth}",
  "{count} balls of {diameter}, {stuff}": "{count} Kugeln von {diameter}, {stuff}",
  "{stuff}, inside": "{stuff}, innen",
  "{stuff}, inside, with {grams} of filler": "{stuff}, innen, mit {grams} Füllung",
  "The {grams} of filler in the holes are counted here, and come in when the bait is closed: until then the scale says so much less.":
    "Die {grams} Füllung in den Löchern sind hier mitgezählt und kommen erst beim Schließen hinein: bis dahin zeigt die Waage so viel weniger.",
  "{stuff}, outside": "{stuff}, außen",
  "{stuff}, {thickness} thick": "{stuff}, {thickness} dick",
  "{stuff}, {thickness} thick, {length} long and eyes":
    "{stuff}, {thickness} dick, {length} lang, dazu die Ösen",
  "{stuff}, {thickness} thick, {length} × {width}": "{stuff}, {thickness} dick, {length} × {width}",
  "hook, size {key}": "Haken, Größe {key}",
  "Order of work": "Reihenfolge der Arbeit",
  "Figures are for water of {temperature} °C with {salt} g of salt in a kilogram. After ± stands what 95 of 100 baits made so keep within: it comes from the uncertainty of what was weighed and drawn, and shrinks with every weighing that you enter.":
    "Die Zahlen gelten für Wasser von {temperature} °C mit {salt} g Salz im Kilogramm. Hinter ± steht, worin 95 von 100 so gebauten Ködern bleiben: es kommt von der Unsicherheit dessen, was gewogen und gezeichnet wurde, und wird mit jeder Wägung kleiner, die du eingibst.",
  "Comes on: {name}.": "Dazu kommt: {name}.",
  "Caution, {name}: {name2}": "Vorsicht, {name}: {name2}",
  "Saw the blank to the side and top outlines, carve and sand it to the section gauges. Let it dry.":
    "Säge den Rohling nach den Umrissen von der Seite und von oben, schnitze und schleife ihn nach den Querschnittslehren. Lass ihn trocknen.",
  "Seal the bare wood thinly, also in holes and slot, so that it takes up no water in the tub.":
    "Versiegle das rohe Holz dünn, auch in Löchern und Schlitz, damit es in der Wanne kein Wasser aufnimmt.",
  "Cut slot, grooves, pockets and holes by the drill map. Lay everything in, still loose.":
    "Schneide Schlitz, Nuten, Taschen und Löcher nach dem Bohrplan. Leg alles ein, noch lose.",
  "Check that all is in. Glue, fill the holes, let it cure, and clean the joint.":
    "Prüfe, ob alles drin ist. Verleime, fülle die Löcher, lass es aushärten, und säubere die Fuge.",
  "Sand lightly, prime and paint.": "Schleife leicht an, grundiere und lackiere.",
  "Clear-coat and let it cure.": "Trag den Klarlack auf und lass ihn aushärten.",
  "Fit rings and hooks last.": "Ringe und Haken kommen zuletzt.",
  "Another mass is no fault: woods differ. Enter it on the view Weigh before anything else is chosen; all figures below follow from it, so print this sheet anew.":
    "Eine andere Masse ist kein Fehler: Hölzer sind verschieden. Gib sie unter „Wiegen“ ein, bevor du sonst etwas wählst; alle Zahlen darunter folgen daraus, also druck dieses Blatt neu.",
  "Much heavier: the wood drank sealer or is not dry yet. Weigh again tomorrow.":
    "Viel schwerer: das Holz hat Porenfüller aufgesogen oder ist noch nicht trocken. Wiege morgen noch einmal.",
  "Off by more: weigh each piece by itself and enter what the scale said. Change the ballast now, while it is loose.":
    "Weiter daneben: wiege jedes Stück für sich, und gib ein, was die Waage sagt. Ändere den Ballast jetzt, solange er lose ist.",
  "Off by more: enter the tub's reading on the view Float. Ballast can still be drilled out or added from below.":
    "Weiter daneben: gib die Messung der Wanne unter „Auftrieb“ ein. Ballast lässt sich noch von unten ausbohren oder ergänzen.",
  "Off by more: enter the mass of the coat on the view Weigh, and leave less for the clear coat.":
    "Weiter daneben: gib die Masse der Schicht unter „Wiegen“ ein, und lass für den Klarlack weniger übrig.",
  "Off by more: enter the tub's reading on the view Float, and choose other rings or hooks.":
    "Weiter daneben: gib die Messung der Wanne unter „Auftrieb“ ein, und wähle andere Ringe oder Haken.",
  "Off by more: enter the tub's reading on the view Float. Its swaps say which ring or hook brings the bait nearest.":
    "Weiter daneben: gib die Messung der Wanne unter „Auftrieb“ ein. Dort steht, welcher Ring oder Haken den Köder am nächsten ans Ziel bringt.",
  "In the tub": "In der Wanne",
  "Under water": "Unter Wasser",
  "What mine did": "Was meiner tat",
  "{figure} ± {within}": "{figure} ± {within}",
  "First tub test": "Erster Wannentest",
  "Hang its hooks and rings on, bare as it is, and try it in the tub. Then take them off again for the coats.":
    "Häng Haken und Ringe an, roh wie er ist, und probier ihn in der Wanne. Nimm sie dann für die Schichten wieder ab.",
  "Tub tests": "Wannentests",
  "Date, stage": "Tag, Bauschritt",
  "Water, °C and salt": "Wasser, °C und Salz",
  "Floats, hangs, sinks; 300 mm in s": "Schwimmt, hängt, sinkt; 300 mm in s",
  "What I changed": "Was ich geändert habe",
  "Swim tests": "Schwimmtests",
  "Date, line": "Tag, Schnur",
  "Speed, line out": "Tempo, Schnur draußen",
  "Depth, action, blows out at": "Tiefe, Lauf, bricht aus bei",

  // Outlines
  "Side outline": "Umriss von der Seite",
  "{mm} long.": "{mm} lang.",
  "The dash-dot line is the datum line; heights are measured from it.":
    "Die Strich-Punkt-Linie ist die Bezugslinie; von ihr aus werden Höhen gemessen.",
  "The bib is dashed.": "Die Tauchschaufel ist gestrichelt.",
  "Bend it by {angle} at the dashed line, the part outside downward, as the second drawing shows it edge on.":
    "Bieg sie an der gestrichelten Linie um {angle}, den Teil außerhalb nach unten, wie ihn die zweite Zeichnung hochkant zeigt.",
  "Bend it by {angle} at the dashed line, the part outside upward, as the second drawing shows it edge on.":
    "Bieg sie an der gestrichelten Linie um {angle}, den Teil außerhalb nach oben, wie ihn die zweite Zeichnung hochkant zeigt.",
  "The lengths hold for a sharp bend; round a bar as thick as the stock the sheet comes out {mm} too long, so cut the tongue shorter by that.":
    "Die Längen gelten für eine scharfe Biegung; um einen Stab von der Dicke der Platte gebogen gerät das Blech {mm} zu lang: schneide die Zunge um so viel kürzer.",
  tongue: "Zunge",
  "The thin full line is the cut line. The bait is inside it: saw on its outer side, and sand to the middle of the line.":
    "Die dünne volle Linie ist die Schnittlinie. Der Köder liegt innen: säge an ihrer Außenseite, und schleife bis zur Mitte der Linie.",
  "All outlines are those of the bare body; the coats come on top.":
    "Alle Umrisse sind die des rohen Körpers; die Schichten kommen dazu.",
  "A weighing under water found another volume than the drawing's. The templates show the drawing.":
    "Eine Wägung unter Wasser ergab ein anderes Volumen als die Zeichnung. Die Schablonen zeigen die Zeichnung.",
  "mm from the nose": "mm ab der Nase",
  "left half, inner face, above; fold here": "linke Hälfte, Innenseite, oben; hier falten",
  "right half, inner face, below": "rechte Hälfte, Innenseite, unten",
  "Two halves, inner faces": "Zwei Hälften, Innenseiten",
  "two halves": "zwei Hälften",
  "Each half mirrors the other: folded along the dashed line, all marks meet. Grooves for the wire, pockets and slot are cut into both, each to half its breadth. Their depths stand in the drill map.":
    "Eine Hälfte spiegelt die andere: an der gestrichelten Linie gefaltet, treffen sich alle Marken. Nuten für den Draht, Taschen und Schlitz kommen in beide, jeweils halb so tief, wie sie breit sind. Die Tiefen stehen im Bohrplan.",
  "Top outline": "Umriss von oben",
  "Greatest breadth {mm}.": "Größte Breite {mm}.",
  "The dash-dot line is the middle: scribe it on the blank first.":
    "Die Strich-Punkt-Linie ist die Mitte: reiß sie zuerst am Rohling an.",

  // Section gauges
  "Section gauges": "Querschnittslehren",
  "{mm} from the nose": "{mm} ab der Nase",
  "{breadth} broad, {height} high": "{breadth} breit, {height} hoch",
  "Cut the card along all full lines: the gauge comes apart into two, and its opening is the bare body at that station. Here the middle piece is the waste: cut inside its line and trim to the middle of the line. The ticks at the sides are the datum line.":
    "Schneide den Karton an allen vollen Linien: die Lehre zerfällt in zwei, und ihre Öffnung ist der rohe Körper an dieser Stelle. Hier ist das mittlere Stück der Abfall: schneide innen an seiner Linie, und passe bis zur Mitte der Linie an. Die Striche an den Seiten sind die Bezugslinie.",

  // Bib and wedge
  root: "Wurzel",
  "root: bend here": "Wurzel: hier biegen",
  "Outside the body {length} long and {width} wide; the tongue goes {slot} into the slot and is {tongue} wide there.":
    "Außerhalb des Körpers {length} lang und {width} breit; die Zunge geht {slot} in den Schlitz und ist dort {tongue} breit.",
  "Stock {thickness} thick.": "Platte {thickness} dick.",
  "The dashed line is the root: it stands at the body's skin.":
    "Die gestrichelte Linie ist die Wurzel: sie steht an der Haut des Körpers.",
  "{length} long and {width} wide from its root, the dashed line; stock {thickness} thick.":
    "Ab ihrer Wurzel, der gestrichelten Linie, {length} lang und {width} breit; Platte {thickness} dick.",
  "The file gives no tongue: add what your way of fixing needs (a bend, a tab for a screw) beyond the root.":
    "Die Datei nennt keine Zunge: füge jenseits der Wurzel an, was deine Befestigung braucht (eine Biegung, eine Lasche für eine Schraube).",
  "A bent tab begins at the dashed line: one that lies along the datum line is bent by {angle} there.":
    "Eine gebogene Lasche beginnt an der gestrichelten Linie: eine, die längs der Bezugslinie liegt, wird dort um {angle} gebogen.",
  "The thin full line is the cut line: cut on its outer side and dress to its middle.":
    "Die dünne volle Linie ist die Schnittlinie: schneide an ihrer Außenseite, und feile bis zu ihrer Mitte.",
  "along the datum line": "an der Bezugslinie",
  "{angle}: along the datum line, no wedge needed": "{angle}: längs der Bezugslinie, kein Keil nötig",
  "Wedge for the slot's angle": "Keil für den Winkel des Schlitzes",
  "The slot opens {angle} from the datum line's forward direction, downward.":
    "Der Schlitz öffnet sich um {angle} von der Bezugslinie nach vorn, nach unten hin.",
  "Its root is {station} from the nose and {mm} above the datum line.":
    "Seine Wurzel ist {station} ab der Nase und {mm} über der Bezugslinie.",
  "Its root is {station} from the nose and {mm} below the datum line.":
    "Seine Wurzel ist {station} ab der Nase und {mm} unter der Bezugslinie.",
  "Its root is {station} from the nose and on it the datum line.":
    "Seine Wurzel ist {station} ab der Nase, auf der Bezugslinie.",
  "Lay one edge of the wedge along the datum line with the corner at the root; the other edge is the slot's direction.":
    "Leg eine Kante des Keils an die Bezugslinie, mit der Ecke an der Wurzel; die andere Kante ist die Richtung des Schlitzes.",
  wedge: "Keil",

  // Drill map
  "Drill map": "Bohrplan",
  "Distances are measured along the datum line from the nose tip, which lies on it, and from the datum line up or down, in millimetres.":
    "Gemessen wird auf der Bezugslinie ab der Nasenspitze, die auf ihr liegt, und von der Bezugslinie nach oben oder unten, in Millimetern.",
  "The file gives each hole's volume and its weight's place; the drill is one of those at hand, and the depth gives the volume.":
    "Die Datei nennt das Volumen jedes Lochs und den Ort seines Gewichts; der Bohrer ist einer der vorhandenen, und die Tiefe ergibt das Volumen.",
  "Another drill needs another depth.": "Ein anderer Bohrer braucht eine andere Tiefe.",
  "This bait has no weight inside.": "Dieser Köder hat innen kein Gewicht.",
  "Do not drill as drawn: the hole for {list} comes out of the wood.":
    "Nicht bohren, wie gezeichnet: das Loch für {list} kommt aus dem Holz heraus.",
  "Move the weight inward, or make its hole smaller, on the views Draw or Weigh, and print again.":
    "Rück das Gewicht nach innen, oder mach sein Loch kleiner, unter „Zeichnen“ oder „Wiegen“, und druck noch einmal.",
  "No hole with a drill at hand brings every weight to its place in the file.":
    "Kein Loch mit einem vorhandenen Bohrer bringt jedes Gewicht an seinen Ort in der Datei.",
  "In these holes lies: {list}.": "In diesen Löchern liegt: {list}.",
  "{item} {mm} mm higher": "{item} {mm} mm höher",
  "{item} {mm} mm lower": "{item} {mm} mm tiefer",
  "{item} {mm} mm higher, {rest}": "{item} {mm} mm höher, {rest}",
  "{item} {mm} mm lower, {rest}": "{item} {mm} mm tiefer, {rest}",
  "{item} ({mL} mL)": "{item} ({mL} mL)",
  "{item} ({mL} mL), {rest}": "{item} ({mL} mL), {rest}",
  "Pack the hole, or move the weight in the file to where it will lie, and look at the trim again.":
    "Füll das Loch auf, oder verschieb das Gewicht in der Datei dahin, wo es liegen wird, und sieh dir die Lage noch einmal an.",
  "Thin wood: less than {mm} is left beside {list}.": "Dünnes Holz: neben {list} bleiben weniger als {mm}.",
  "Look at the section before you drill.": "Sieh dir den Querschnitt an, bevor du bohrst.",
  "Clamp the blank, never hold it in the hand while you drill. Cut away from the hand. Wood dust harms the lungs: extraction, mask, eye protection.":
    "Spann den Rohling ein; halte ihn beim Bohren nie in der Hand. Schneide von der Hand weg. Holzstaub schadet der Lunge: Absaugung, Maske, Augenschutz.",
  "No.": "Nr.",
  Depth: "Tiefe",
  "From nose": "Ab Nase",
  "Datum line": "Bezugslinie",
  Face: "Seite",
  back: "Rücken",
  "{mm} above": "{mm} über",
  "{mm} below": "{mm} unter",
  "on it": "darauf",
  "{depth} in each half": "{depth} in jeder Hälfte",
  "belly, straight up": "Bauch, gerade hinauf",
  "inner faces": "Innenseiten",
  pilot: "vorbohren",
  "as its packet says": "wie auf der Packung",
  "held by {item}": "Draht: {item}",
  "nose or bib": "Nase oder Schaufel",
  "{item}: pocket {length} × {height}": "{item}: Tasche {length} × {height}",
  "{from} to {to}": "{from} bis {to}",
  "slot, {width} wide, at {angle}": "Schlitz, {width} breit, bei {angle}",
  "through both halves": "durch beide Hälften",
  "eye {item}": "Öse: {item}",
  "groove for {item}": "Nut: {item}",

  // Solid halves
  "the outline": "der Umriss",
  "its triangles": "die Dreiecke",
  "chamber ‘{part}’": "Kammer: {part}",
  "hole of ‘{part}’": "Loch: {part}",
  "channel of ‘{part}’": "Nut: {part}",
  "After {cut} the solid is not closed ({key}).":
    "Nach dem Schritt „{cut}“ ist der Körper nicht geschlossen ({key}).",

  // Wire
  Diameter: "Durchmesser",
  "Length, mm": "Länge, mm",
  "Turns by": "Biegt um",
  straight: "gerade",
  "cut {length}": "{length} lang",
  "bend {number} at {mm}": "Biegung {number} bei {mm}",
  "{angle}, to the left": "{angle}, nach links",
  "{angle}, to the right": "{angle}, nach rechts",
  "Add to each length what the eyes and twists take: the file does not say it.":
    "Gib zu jeder Länge dazu, was Ösen und Windungen brauchen: die Datei sagt es nicht.",
  "The line is the middle of the wire: bend over the drawing. Lengths run from the end that stands first in the file, straight from bend to bend; a bend's left and right are those of somebody who walks along the wire on this drawing. Round bends need a little less. Add what the eyes and twists take that the drawing does not show.":
    "Die Linie ist die Mitte des Drahts: biege über der Zeichnung. Längen zählen vom Ende, das in der Datei zuerst steht, gerade von Biegung zu Biegung; links und rechts gelten für jemanden, der auf dieser Zeichnung am Draht entlanggeht. Runde Biegungen brauchen etwas weniger. Gib dazu, was Ösen und Windungen brauchen, die die Zeichnung nicht zeigt.",
  "Wear eye protection when you cut wire: ends fly.":
    "Trag einen Augenschutz, wenn du Draht schneidest: Enden fliegen.",
};

export const texts: Echoes = { ...file, ...sheet };
