import type { Echoes } from "./echo";

/** What the target, the tub, the scale, the swaps and the plans say. Sentence by sentence. */
export const bench: Echoes = {
  // The target
  "The target says that the bait {does}, but {what} means that it {other}: change one of the two.":
    "Das Ziel sagt, dass der Köder {does}, aber {what} heißt, dass er {other}: ändere eines von beiden.",
  "rising at {pace}": "Steigen mit {pace}",
  "sinking at {pace}": "Sinken mit {pace}",
  "{speed} mm/s (300 mm in {seconds} s)": "{speed} mm/s (300 mm in {seconds} s)",
  "Rising at {pace} needs {grams}: that is the drag of this bait at this speed, hanging at {angle}.":
    "Steigen mit {pace} braucht {grams}: das ist der Widerstand dieses Köders bei diesem Tempo, wenn er bei {angle} hängt.",
  "Sinking at {pace} needs {grams}: that is the drag of this bait at this speed, hanging at {angle}.":
    "Sinken mit {pace} braucht {grams}: das ist der Widerstand dieses Köders bei diesem Tempo, wenn er bei {angle} hängt.",
  "±{grams} keeps the speed within 20 % (common practice, no source).":
    "±{grams} hält das Tempo auf 20 % genau (üblich, keine Quelle).",
  "No net buoyancy was found with which this bait rises at {pace}.":
    "Es fand sich kein Restauftrieb, mit dem dieser Köder mit {pace} steigt.",
  "No net buoyancy was found with which this bait sinks at {pace}.":
    "Es fand sich kein Restauftrieb, mit dem dieser Köder mit {pace} sinkt.",
  "Ask for another time or speed, or give grams.":
    "Verlang eine andere Zeit oder ein anderes Tempo, oder gib Gramm an.",
  "The target says that the bait suspends, but asks for {grams}, more than ±{tolerance} from neutral: change one of the two.":
    "Das Ziel sagt, dass der Köder schwebt, verlangt aber {grams}, mehr als ±{tolerance} vom Schweben weg: ändere eines von beiden.",
  "A bait suspends where its net buoyancy is nought.": "Ein Köder schwebt, wo sein Restauftrieb null ist.",
  "±{grams} is what makers trim to (common practice, no source).":
    "Auf ±{grams} genau stellt man in der Werkstatt ein (üblich, keine Quelle).",
  "±{grams} is what the target allows.": "±{grams} ist, was das Ziel erlaubt.",
  "The target says that the bait {does}, but not how fast or by how many grams: give a time for 300 mm, a speed, or grams.":
    "Das Ziel sagt, dass der Köder {does}, aber nicht, wie schnell oder mit wie viel Gramm: gib eine Zeit für 300 mm, ein Tempo oder Gramm an.",
  "The target's net buoyancy follows a rise, but no speed is given: give a time for 300 mm, a speed, or grams.":
    "Der Restauftrieb des Ziels folgt aus einem Steigtempo, aber es ist keines angegeben: gib eine Zeit für 300 mm, ein Tempo oder Gramm an.",
  "There is no target to plan for: set one first.":
    "Es gibt kein Ziel, für das zu planen wäre: setz zuerst eines.",
  "The target says {figure}.": "Das Ziel sagt {figure}.",
  "The target says {figure}; ±{within} is common practice, no source.":
    "Das Ziel sagt {figure}; ±{within} ist üblich, keine Quelle.",
  "The target says {figure}; ±20 % is as good as the model's own depth (docs/model.md §10).":
    "Das Ziel sagt {figure}; ±20 % ist so gut wie die Tiefe des Modells selbst (docs/model.md §10).",
  "{depth} m at {speed} m/s": "{depth} m bei {speed} m/s",
  "The target says {angle}, nose-up positive.": "Das Ziel sagt {angle}, Nase hoch ist plus.",
  "The target says {angle}, nose-up positive; ±3° is common practice, no source.":
    "Das Ziel sagt {angle}, Nase hoch ist plus; ±3° ist üblich, keine Quelle.",
  "The warmest water ({warmest} °C) is colder than the coldest ({coldest} °C): change one of the two.":
    "Das wärmste Wasser ({warmest} °C) ist kälter als das kälteste ({coldest} °C): ändere eines von beiden.",
  "At {temperature} °C and {salinity} g/kg the same bait has {grams}, more than the tolerance of ±{tolerance} from {wanted}: it cannot be on target in all these waters without a swap.":
    "Bei {temperature} °C und {salinity} g/kg hat derselbe Köder {grams}, weiter als die Toleranz von ±{tolerance} von {wanted} weg: ohne Tausch trifft er das Ziel nicht in all diesen Wassern.",

  // The tub
  "It needs {runUp} to come up to speed: set the first mark that far from the release.":
    "Er braucht {runUp}, bis er sein Tempo hat: setz die erste Marke so weit vom Loslassen entfernt.",
  "The speed is corrected for the start.": "Das Tempo ist um den Anfang berichtigt.",
  "The times lie from {least} to {most}: one of them is mistyped, or the bait was held up.":
    "Die Zeiten liegen zwischen {least} und {most}: eine ist vertippt, oder der Köder wurde aufgehalten.",
  "Drop it, or time it again.": "Streich sie, oder miss noch einmal.",
  "Time it three times or more: one start of the watch says little.":
    "Stopp es dreimal oder öfter: ein einziges Mal sagt wenig.",
  "The time is short for a hand on a watch: take a greater height.":
    "Die Zeit ist kurz für eine Hand an der Uhr: nimm eine größere Höhe.",
  "Surface tension can hold up to {grams} along this waterline, more than the bait floats by: wet it all over, or time a rise instead.":
    "Die Oberflächenspannung kann an dieser Wasserlinie bis zu {grams} halten, mehr als der Auftrieb des Köders: mach ihn überall nass, oder stopp lieber ein Steigen.",
  "The loose balls are taken at the lower end of the line seen.":
    "Die losen Kugeln gelten als am tieferen Ende der gesehenen Linie.",
  "no time: give at least one": "keine Zeit: gib mindestens eine an",
  "time {seconds}: give a number above 0": "Zeit {seconds}: gib eine Zahl über 0 an",
  "height {height} between the marks: give a number above 0":
    "Höhe {height} zwischen den Marken: gib eine Zahl über 0 an",
  "run-up {runUp}: give 0 or more": "Anlauf {runUp}: gib eine Zahl ab 0 an",
  "an attitude of {angle} hangs on the height of G, not on its station: read one within {most}":
    "eine Lage von {angle} hängt an der Höhe von G, nicht an seiner Stelle: lies eine innerhalb von {most} ab",
  "G stands {below} under B: too little for an attitude to say where it is along the bait":
    "G steht {below} unter B: zu wenig, als dass eine Lage sagen könnte, wo es am Köder liegt",
  "no place of G gives a moving attitude of {angle}: read it at rest":
    "kein Ort von G ergibt in Bewegung eine Lage von {angle}: lies sie in Ruhe ab",
  "the nose's mark must stand ahead of the tail's": "die Marke der Nase muss vor der des Schwanzes stehen",
  "a bait that stands on end shows its height of G, not its station: mark one that lies":
    "ein Köder, der senkrecht steht, zeigt die Höhe von G, nicht seine Stelle: markiere einen, der liegt",
  "the marks leave the bait wholly above or wholly under water: check them":
    "nach den Marken wäre der Köder ganz über oder ganz unter Wasser: prüfe sie",
  "speed {speed}: give the speed of a rise or sink":
    "Tempo {speed}: gib das Tempo eines Steigens oder Sinkens an",
  '"{name}" does not move faster with {grams} of net force ({speed}) than with less: its rise cannot be read from a curve':
    "„{name}“ bewegt sich mit {grams} Kraft ({speed}) nicht schneller als mit weniger: sein Steigen lässt sich nicht von einer Kurve ablesen",
  'no net buoyancy moves "{name}" at {speed}: check the time and the height of the marks':
    "kein Restauftrieb bewegt „{name}“ mit {speed}: prüfe die Zeit und die Höhe der Marken",
  "The release of {name} ran away after {seconds}.":
    "Der freie Lauf von {name} ist nach {seconds} entgleist.",

  // The scale
  "The surface can pull on what passes through it by up to {grams} either way: use a thinner pin, and wet it.":
    "Die Oberfläche kann an dem, was durch sie geht, mit bis zu {grams} in beide Richtungen ziehen: nimm eine dünnere Nadel, und mach sie nass.",
  "One reading shows no scatter: take the piece out, dry it, and repeat.":
    "Eine einzelne Anzeige zeigt keine Streuung: nimm das Stück heraus, trockne es, und miss noch einmal.",
  "The readings lie {grams} apart: look for bubbles, for a touch of the container, for water soaked in.":
    "Die Anzeigen liegen {grams} auseinander: such nach Blasen, nach einer Berührung des Gefäßes, nach eingezogenem Wasser.",
  "The air carries {grams} of it: let the reading be corrected for air buoyancy.":
    "Die Luft trägt {grams} davon: lass den Auftrieb in der Luft berichtigen.",
  "a rise of {rise} less the pins' {pins} leaves no piece: check the reading and the pins":
    "ein Anstieg von {rise} abzüglich {pins} der Nadeln lässt kein Stück übrig: prüfe die Anzeige und die Nadeln",
  "a sample of {grams}: give a weight above 0": "eine Probe von {grams}: gib ein Gewicht über 0 an",
  "weighed {air} in air and {under} under: the second must be less":
    "gewogen {air} in Luft und {under} unter Wasser: das zweite muss weniger sein",
  "no reading: give at least one": "keine Anzeige: gib mindestens eine an",
  "reading {value}: give a number": "Anzeige {value}: gib eine Zahl an",
  "resolution {value}: give the scale's last digit, above 0":
    "letzte Stelle {value}: gib die letzte Stelle der Waage an, über 0",
  "The reading says {percent} more than the drawing: look for a bubble, a touch, or a wrong length before trusting either.":
    "Die Messung sagt {percent} mehr als die Zeichnung: such nach einer Blase, einer Berührung oder einer falschen Länge, bevor du einer von beiden glaubst.",
  "The reading says {percent} less than the drawing: look for a bubble, a touch, or a wrong length before trusting either.":
    "Die Messung sagt {percent} weniger als die Zeichnung: such nach einer Blase, einer Berührung oder einer falschen Länge, bevor du einer von beiden glaubst.",
  "The reading says {percent} more than the drawing; {what} is the narrower and is believed.":
    "Die Messung sagt {percent} mehr als die Zeichnung; {what} ist genauer, und ihr wird geglaubt.",
  "The reading says {percent} less than the drawing; {what} is the narrower and is believed.":
    "Die Messung sagt {percent} weniger als die Zeichnung; {what} ist genauer, und ihr wird geglaubt.",
  "the reading": "die Messung",
  "the drawing": "die Zeichnung",

  // Swaps and seasons
  "ring {number}": "Ring {number}",
  "second ring {number}": "zweiter Ring {number}",
  "strip {station}": "Streifen {station}",
  "tolerances of the goal: give numbers above 0": "Toleranzen des Ziels: gib Zahlen über 0 an",
  "station {station} for strips: it lies off the body":
    "Stelle {station} für Streifen: sie liegt neben dem Körper",
  "season from {coldest} to {warmest} °C: the second must not be less":
    "Jahr von {coldest} bis {warmest} °C: das zweite darf nicht kleiner sein",
  "{count} temperatures: use 2 or more": "{count} Temperaturen: nimm 2 oder mehr",
  "'suspends' within {mass} kg: give 0 or more": "‚schwebt‘ innerhalb von {mass} kg: gib 0 oder mehr an",
  "a stuff of {density} does not sink in this water: take a denser one":
    "ein Stoff von {density} sinkt in diesem Wasser nicht: nimm einen dichteren",
  "{count} draws are too few for a band: use 100 or more":
    "{count} Ziehungen sind zu wenig für einen Bereich: nimm 100 oder mehr",

  // Plans
  "There is no room for ballast: without any weight the bait is already {grams} heavier than the target.":
    "Für Ballast ist kein Spielraum: ohne jedes Gewicht ist der Köder schon {grams} schwerer als das Ziel.",
  "Use lighter wood or fittings, a larger body, or a lower target.":
    "Nimm leichteres Holz oder leichtere Beschläge, einen größeren Körper oder ein niedrigeres Ziel.",
  "Net buoyancy can be met, but then B is at most {BG} above G; the target asks for {asked}.":
    "Der Restauftrieb lässt sich treffen, aber dann ist B höchstens {BG} über G; das Ziel verlangt {asked}.",
  "Net buoyancy and trim can be met, but then B is at most {BG} above G; the target asks for {asked}.":
    "Restauftrieb und Lage lassen sich treffen, aber dann ist B höchstens {BG} über G; das Ziel verlangt {asked}.",
  "Denser weights or a thinner wall bring G lower.":
    "Dichtere Gewichte oder eine dünnere Wand bringen G tiefer.",
  "Afloat the bait lies on its side: the best of these plans has a metacentric height of {GM}, and it must be above 0.":
    "An der Oberfläche liegt der Köder auf der Seite: der beste dieser Pläne hat eine metazentrische Höhe von {GM}, und sie muss über 0 sein.",
  "Denser weights set lower, or a broader back, hold the bait upright.":
    "Dichtere, tiefer gesetzte Gewichte oder ein breiterer Rücken halten den Köder aufrecht.",
  "Net buoyancy can be met, but not together with the trim: the nearest trim is {nearest}, {off} from the wanted {wanted}.":
    "Der Restauftrieb lässt sich treffen, aber nicht zusammen mit der Lage: die nächste Lage ist {nearest}, {off} von der gewünschten {wanted} entfernt.",
  "The weights' common middle would have to stand at station {station}.":
    "Die gemeinsame Mitte der Gewichte müsste an der Stelle {station} stehen.",
  "The weights' common middle would have to stand at station {station}, off the body.":
    "Die gemeinsame Mitte der Gewichte müsste an der Stelle {station} stehen, neben dem Körper.",
  "Its trim is also {off} off.": "Auch seine Lage ist um {off} daneben.",
  "The weights in the box lower the net buoyancy by {most} at most in {count} place; the target needs {needed}: {missing} are missing.":
    "Die Gewichte der Kiste senken den Restauftrieb an {count} Ort um höchstens {most}; das Ziel braucht {needed}: {missing} fehlen.",
  "The weights in the box lower the net buoyancy by {most} at most in {count} places; the target needs {needed}: {missing} are missing.":
    "Die Gewichte der Kiste senken den Restauftrieb an {count} Orten um höchstens {most}; das Ziel braucht {needed}: {missing} fehlen.",
  "More weights, denser ones, or one more place would help.":
    "Mehr Gewichte, dichtere, oder ein weiterer Ort würden helfen.",
  "More weights or denser ones would help.": "Mehr oder dichtere Gewichte würden helfen.",
  "No choice of the weights in the box meets the net buoyancy: the nearest is {grams} too {way}, and the target allows ±{tolerance}.":
    "Keine Auswahl der Gewichte in der Kiste trifft den Restauftrieb: die nächste ist um {grams} {way}, und das Ziel erlaubt ±{tolerance}.",
  "No choice of the weights in the box meets the net buoyancy together with the trim: the nearest is {grams} too {way}, and the target allows ±{tolerance}.":
    "Keine Auswahl der Gewichte in der Kiste trifft Restauftrieb und Lage zusammen: die nächste ist um {grams} {way}, und das Ziel erlaubt ±{tolerance}.",
  "Smaller pieces among the weights, or a wider tolerance, would help.":
    "Kleinere Stücke unter den Gewichten oder eine weitere Toleranz würden helfen.",
  "No hole or spot has room for these weights between stations {from} and {to} with a wall of {wall} and {clear} clear of everything in the bait.":
    "Zwischen den Stellen {from} und {to} hat kein Loch und kein Platz Raum für diese Gewichte, bei einer Wand von {wall} und {clear} Abstand von allem im Köder.",
  "Smaller pieces, a thinner wall, or a longer zone would help.":
    "Kleinere Stücke, eine dünnere Wand oder ein längerer Bereich würden helfen.",
  "No drill in the box takes {kinds}: the smallest of them needs {least}.":
    "Kein Bohrer der Kiste passt zu {kinds}: das kleinste davon braucht {least}.",
  "“{thing}”": "„{thing}“",
  "“{thing}”, {others}": "„{thing}“, {others}",
  "Left out, because their holes find no room with a wall of {wall} between stations {from} and {to}: {kinds}.":
    "Weggelassen, weil ihre Löcher bei einer Wand von {wall} zwischen den Stellen {from} und {to} keinen Raum finden: {kinds}.",
  "The target does not say how the bait rests: these plans are for level, ±{angle}°.":
    "Das Ziel sagt nicht, wie der Köder ruht: diese Pläne sind für waagrecht, ±{angle}°.",
  "The target asks for no least BG.": "Das Ziel verlangt kein kleinstes BG.",
  "In these plans the trim is certain to ±15°: for that, B has to be about {need} above G in this bait.":
    "In diesen Plänen ist die Lage auf ±15° sicher: dafür muss B in diesem Köder etwa {need} über G sein.",
  "The trim is not certain at all: B is {BG} above G, and ±15° would need about {need}.":
    "Die Lage ist ganz unsicher: B ist {BG} über G, und ±15° bräuchten etwa {need}.",
  "The trim is certain only to ±{angle}: B is {BG} above G, and ±15° would need about {need}.":
    "Die Lage ist nur auf ±{angle} sicher: B ist {BG} über G, und ±15° bräuchten etwa {need}.",
  "The least certain input is “{input}”: it alone turns the bait by ±{angle}.":
    "Die unsicherste Eingabe ist „{input}“: sie allein dreht den Köder um ±{angle}.",
  "The least certain input is “{input}”: it causes nearly all of this.":
    "Die unsicherste Eingabe ist „{input}“: fast alles kommt von ihr.",
  "Weigh or measure it, and plan again.": "Wiege oder miss sie, und plane noch einmal.",
  "The chance is small mostly because of “{input}”: it moves the net buoyancy by ±{grams} (95 %), and the target allows ±{tolerance}.":
    "Die Aussicht ist vor allem wegen „{input}“ klein: das verschiebt den Restauftrieb um ±{grams} (95 %), und das Ziel erlaubt ±{tolerance}.",
  "{name}: on the skin below station {station}": "{name}: auf der Haut unter der Stelle {station}",
  "{name}: at station {station} drill {diameter}, {depth} deep from the bottom edge; {plug} of plug below the weight":
    "{name}: an der Stelle {station} mit {diameter} bohren, {depth} tief von der Unterkante aus; {plug} Füllung unter dem Gewicht",

  // Shaping and tracing
  "{count} readings: give {need} or more, some above and some below the widest line":
    "{count} Messungen: gib {need} oder mehr an, einige über und einige unter der breitesten Linie",
  "top edge {top} at or below the bottom edge {bottom}: no section there":
    "Oberkante {top} auf oder unter der Unterkante {bottom}: dort ist kein Querschnitt",
  "height {height} is not between the edges, {bottom} and {top}: leave this reading out":
    "Höhe {height} liegt nicht zwischen {bottom} und {top}: lass diese Messung weg",
  "thickness {thickness}: give a number above 0": "Dicke {thickness}: gib eine Zahl über 0 an",
  "length {length} and tolerance {tolerance}: give numbers above 0":
    "Länge {length} und Toleranz {tolerance}: gib Zahlen über 0 an",
  "{count} points at most: give 3 or more": "höchstens {count} Punkte: gib 3 oder mehr an",
  "{count} points along the outline: give 8 or more": "{count} Punkte am Umriss: gib 8 oder mehr an",
  "the points run from {first} to {last} of {length}: trace the outline to both ends":
    "die Punkte gehen von {first} bis {last} von {length}: zieh den Umriss bis zu beiden Enden nach",
  "{count} points of a silhouette: give {least} or more":
    "{count} Punkte eines Schattenrisses: gib {least} oder mehr an",
  "a silhouette {length} long: give one with a length":
    "ein Schattenriss von {length} Länge: gib einen mit einer Länge an",
  "a silhouette that is not closed": "ein Schattenriss, der nicht geschlossen ist",
  "{key}: give a length above 0": "{key}: gib eine Länge über 0 an",
  "{key}: give a number from {low} to {high}": "{key}: gib eine Zahl von {low} bis {high} an",

  // Waiting, and the worker that calculates
  "about {seconds} s": "etwa {seconds} s",
  "about {minutes} minutes": "etwa {minutes} Minuten",
  "about {hours} hours": "etwa {hours} Stunden",
  "a number is needed": "eine Zahl wird gebraucht",
  "a fraction's lower number is not 0": "der Nenner eines Bruchs ist nicht 0",
  '"{text}" is not a number': "„{text}“ ist keine Zahl",
  '"{text}" is too large': "„{text}“ ist zu groß",
  "{unit} does not fit here: use {units}": "{unit} passt hier nicht: nimm {units}",
  "The worker that calculates was closed.": "Der Rechner im Hintergrund wurde geschlossen.",
  "The worker that calculates could not be started: {why}":
    "Der Rechner im Hintergrund ließ sich nicht starten: {why}",
  "The worker that calculates stopped: {why}": "Der Rechner im Hintergrund hielt an: {why}",
  "The worker that calculates stopped without a reason.": "Der Rechner im Hintergrund hielt ohne Grund an.",
  "The worker that calculates could not be started.": "Der Rechner im Hintergrund ließ sich nicht starten.",
  "Reload the page; save the document before.": "Lade die Seite neu; speichere das Dokument vorher.",
  "An answer of the worker that calculates could not be read.":
    "Eine Antwort des Rechners im Hintergrund war nicht lesbar.",
  "The worker that calculates ended without a reason.": "Der Rechner im Hintergrund endete ohne Grund.",
  "The worker that calculates has not answered for {seconds} s, and was ended.":
    "Der Rechner im Hintergrund hat {seconds} s nicht geantwortet und wurde beendet.",
  "A ruler of {mm} mm that measures {found} was fitted to the page.":
    "Ein Lineal von {mm} mm, das {found} misst, wurde an die Seite angepasst.",
  "Print at 100 % (“actual size”) and measure again: {least} to {most} mm can be corrected.":
    "Drucke mit 100 % („tatsächliche Größe“) und miss noch einmal: {least} bis {most} mm lassen sich berichtigen.",
  "Name one station or more.": "Nenne eine oder mehr Stellen.",
  "{count} stations; at most {most}.": "{count} Stellen; höchstens {most}.",
  "The station {station} lies off the body: use numbers between 0 and {length}.":
    "Die Stelle {station} liegt neben dem Körper: nimm Zahlen zwischen 0 und {length}.",
};
