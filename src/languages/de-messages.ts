import type { Echoes } from "./echo";

/** What is wrong with a file, a link, or a box: its reading, its schema, its rules. Keys and words of the file stay as they are. */
export const messages: Echoes = {
  "The file (line {line}, column {column}): found {found}; allowed: {allowed}.":
    "Die Datei (Zeile {line}, Spalte {column}): gefunden {found}; erlaubt: {allowed}.",
  "The file (line {line}, column {column}): found {found}; allowed: {allowed}. {remedy}":
    "Die Datei (Zeile {line}, Spalte {column}): gefunden {found}; erlaubt: {allowed}. {remedy}",
  "The file: found {found}; allowed: {allowed}.": "Die Datei: gefunden {found}; erlaubt: {allowed}.",
  "The file: found {found}; allowed: {allowed}. {remedy}":
    "Die Datei: gefunden {found}; erlaubt: {allowed}. {remedy}",
  "{key} (line {line}, column {column}): found {found}; allowed: {allowed}.":
    "{key} (Zeile {line}, Spalte {column}): gefunden {found}; erlaubt: {allowed}.",
  "{key} (line {line}, column {column}): found {found}; allowed: {allowed}. {remedy}":
    "{key} (Zeile {line}, Spalte {column}): gefunden {found}; erlaubt: {allowed}. {remedy}",
  "{key}: found {found}; allowed: {allowed}.": "{key}: gefunden {found}; erlaubt: {allowed}.",
  "{key}: found {found}; allowed: {allowed}. {remedy}":
    "{key}: gefunden {found}; erlaubt: {allowed}. {remedy}",
  "The file": "Die Datei",

  // What was found
  nothing: "nichts",
  "a list of {count}": "eine Liste von {count}",
  "the text {key}": "der Text {key}",
  "a group of keys": "eine Gruppe von Schlüsseln",
  "the unknown key {key}": "der unbekannte Schlüssel {key}",
  "an empty file": "eine leere Datei",
  "the end of the file": "das Ende der Datei",
  "a comment": "ein Kommentar",
  "brackets nested too deep": "zu tief geschachtelte Klammern",
  "the key {key}": "der Schlüssel {key}",
  "the same key twice": "zweimal derselbe Schlüssel",
  "{key} after a comma": "{key} nach einem Komma",
  "text that does not end well": "Text, der nicht richtig endet",
  "half of a character ({code} without its other half)":
    "ein halbes Zeichen ({code} ohne seine andere Hälfte)",
  "{count} characters": "{count} Zeichen",
  "{count} bytes": "{count} Bytes",
  "text in {code}": "Text in {code}",
  "the byte {byte}, which begins no character of UTF-8 here":
    "das Byte {byte}, mit dem hier kein Zeichen von UTF-8 beginnt",
  "neither a material nor a density": "weder Material noch Dichte",
  "neither {key} nor {key2}": "weder {key} noch {key2}",
  "both {key} and {key2}": "{key} und {key2} zugleich",
  "no mass": "keine Masse",
  "the same point twice in a row": "zweimal hintereinander derselbe Punkt",
  "no move that takes line in": "kein Zug, der Schnur einholt",
  "more than {most} moves": "mehr als {most} Züge",
  "{seconds} s in all": "{seconds} s im Ganzen",
  "what cannot be built": "was sich nicht bauen lässt",
  "another format": "ein anderes Format",
  "another version": "eine andere Version",
  "{count} baits": "{count} Köder",
  "no list": "keine Liste",
  "it cannot be read": "er lässt sich nicht lesen",
  "a bait without a name": "ein Köder ohne Namen",
  "the entry": "der Eintrag",
  "not as the format says": "nicht, wie das Format es sagt",
  "its version ‘{name}’: {why}": "seine Version ‚{name}‘: {why}",
  "{at}: not as the format says": "{at}: nicht, wie das Format es sagt",

  // What is allowed
  "a JSON object": "ein JSON-Objekt",
  "up to {count} characters": "bis zu {count} Zeichen",
  "text in UTF-8": "Text in UTF-8",
  "JSON without comments": "JSON ohne Kommentare",
  "a finite number": "eine endliche Zahl",
  "a value (text in double quotes, number, list or group)":
    "ein Wert (Text in geraden Anführungszeichen, Zahl, Liste oder Gruppe)",
  "at most {count} levels": "höchstens {count} Stufen",
  "a key in double quotes": "ein Schlüssel in geraden Anführungszeichen",
  "keys of the scenario format": "Schlüssel des Formats",
  "each key once": "jeder Schlüssel einmal",
  "a colon after the key": "ein Doppelpunkt nach dem Schlüssel",
  "a comma or {key}": "ein Komma oder {key}",
  "another entry": "ein weiterer Eintrag",
  "text in double quotes on one line": "Text in geraden Anführungszeichen in einer Zeile",
  "whole characters": "ganze Zeichen",
  "a number such as 12.5": "eine Zahl wie 12.5",
  "a number": "eine Zahl",
  "a whole number": "eine ganze Zahl",
  "a whole number from {min} to {max}": "eine ganze Zahl von {min} bis {max}",
  "a whole number above {min} up to {max}": "eine ganze Zahl über {min} bis {max}",
  "a number from {min} to {max}": "eine Zahl von {min} bis {max}",
  "a number above {min} up to {max}": "eine Zahl über {min} bis {max}",
  '"{key}" or {others}': '"{key}" oder {others}',
  "true or false": "true oder false",
  "two numbers [station, value] in mm": "zwei Zahlen [Stelle, Wert] in mm",
  "a group of keys in { }": "eine Gruppe von Schlüsseln in { }",
  "a list in [ ]": "eine Liste in [ ]",
  "text in double quotes": "Text in geraden Anführungszeichen",
  "at most {count} characters": "höchstens {count} Zeichen",
  "at least {count} characters": "mindestens {count} Zeichen",
  "at most {count} entries": "höchstens {count} Einträge",
  "at least {count} entries": "mindestens {count} Einträge",
  "at most {count}": "höchstens {count}",
  "at least {count}": "mindestens {count}",
  "a number, text, true, false or null": "eine Zahl, Text, true, false oder null",
  "a value": "ein Wert",
  "a day such as 2026-11-29": "ein Tag wie 2026-11-29",
  string: "Text",
  number: "eine Zahl",
  boolean: "true oder false",
  array: "eine Liste",
  object: "eine Gruppe",
  "one of the two": "eines von beiden",
  "exactly one of the two": "genau eines von beiden",
  "a name of its own": "ein eigener Name",
  "a name from the table of materials": "ein Name aus der Tabelle der Materialien",
  "weighed, mass_g, or measures that give it": "weighed, mass_g, oder Maße, aus denen sie folgt",
  "above from_mm, {mm}": "über from_mm, {mm}",
  "above from_m, {m}": "über from_m, {m}",
  "points that differ": "Punkte, die sich unterscheiden",
  "a station above {mm}": "eine Stelle über {mm}",
  "0 to {length}": "0 bis {length}",
  "at least {height} (the bottom edge there)": "mindestens {height} (dort die Unterkante)",
  "at least {depth} for this bait's cadence": "mindestens {depth} für die Führung dieses Köders",
  "at least {length} with the rod tip at {height}": "mindestens {length} bei der Rutenspitze auf {height}",
  "at most the water's depth, {depth}": "höchstens die Tiefe des Wassers, {depth}",
  "moves that take line in": "Züge, die Schnur einholen",
  "up to {most} moves, repeated ones counted each time": "bis zu {most} Züge, wiederholte jedes Mal gezählt",
  "up to {seconds} s": "bis zu {seconds} s",
  "no pull on the line after a release": "kein Zug an der Schnur nach dem Loslassen",
  "baits, box": "baits, box",
  "a list of at most {most} baits": "eine Liste von höchstens {most} Ködern",
  "a scenario file of at most {size} MB": "eine Köderdatei von höchstens {size} MB",

  // Remedies of reading
  "This is no scenario file; open another.": "Das ist keine Köderdatei; öffne eine andere.",
  "This is no scenario file.": "Das ist keine Köderdatei.",
  "Open it in a text editor, save it as UTF-8, and open it again.":
    "Öffne sie in einem Textprogramm, speichere sie als UTF-8 und öffne sie noch einmal.",
  "Open a scenario file, or save one first.": "Öffne eine Köderdatei, oder speichere erst eine.",
  "Remove what stands after the last closing bracket.":
    "Nimm weg, was nach der letzten schließenden Klammer steht.",
  'Put remarks under "notes".': 'Schreib Bemerkungen unter "notes".',
  "Give the number itself, or leave an optional key out.":
    "Gib die Zahl selbst an, oder lass einen Schlüssel weg, der fehlen darf.",
  "The file ends too early: was it cut off while saving?":
    "Die Datei endet zu früh: wurde sie beim Speichern abgeschnitten?",
  "Use double quotes.": "Nimm gerade doppelte Anführungszeichen.",
  "Remove the comma before it, or add the missing value.":
    "Nimm das Komma davor weg, oder ergänze den fehlenden Wert.",
  "Begin a number with a digit or a minus sign.":
    "Beginne eine Zahl mit einer Ziffer oder einem Minuszeichen.",
  "Check quotes, commas and brackets just before this place.":
    "Prüfe Anführungszeichen, Kommas und Klammern kurz vor dieser Stelle.",
  "Remove this key.": "Nimm diesen Schlüssel weg.",
  "Remove one of the two.": "Nimm einen von beiden weg.",
  "Add the colon and the value.": "Ergänze den Doppelpunkt und den Wert.",
  "Add the missing comma or closing bracket just before this place.":
    "Ergänze das fehlende Komma oder die schließende Klammer kurz vor dieser Stelle.",
  "Remove the comma before it.": "Nimm das Komma davor weg.",
  "Close the quotes; write a line break as \\n and a backslash as \\\\.":
    "Schließ die Anführungszeichen; schreib einen Zeilenumbruch als \\n und einen Rückstrich als \\\\.",
  "Write the character itself, or both of its halves.": "Schreib das Zeichen selbst, oder beide Hälften.",
  "Write digits with a point for the decimals, and no unit.":
    "Schreib Ziffern mit einem Punkt für die Dezimalen, und keine Einheit.",
  "Give a number of a sensible size.": "Gib eine Zahl von brauchbarer Größe an.",

  // Remedies of the schema
  'Did you mean "{key}" or {others}?': 'Meintest du "{key}" oder {others}?',
  "Did you mean {keys}?": "Meintest du {keys}?",
  'Did you mean "{key}" or {others}? {rest}': 'Meintest du "{key}" oder {others}? {rest}',
  "Did you mean {keys}? {rest}": "Meintest du {keys}? {rest}",
  "Otherwise remove it.": "Sonst nimm ihn weg.",
  "Write {keys}.": "Schreib {keys}.",
  "Write one of these words.": "Schreib eines dieser Wörter.",
  "Remove it.": "Nimm ihn weg.",
  'Add this key: "{title}" is needed.': "Ergänze diesen Schlüssel: „{title}“ wird gebraucht.",
  "Add this key: a value is needed.": "Ergänze diesen Schlüssel: ein Wert wird gebraucht.",
  "Write the number without quotes, and with a point for the decimals.":
    "Schreib die Zahl ohne Anführungszeichen, und mit einem Punkt für die Dezimalen.",
  "Write the number without quotes and without a unit.":
    "Schreib die Zahl ohne Anführungszeichen und ohne Einheit.",
  "Give a value, or leave the key out where it is optional.":
    "Gib einen Wert an, oder lass den Schlüssel weg, wo er fehlen darf.",
  "Shorten it.": "Kürze es.",
  "Add what is missing.": "Ergänze, was fehlt.",
  'Give "{title}" within this range.': "Gib „{title}“ in diesem Bereich an.",
  "Give a value within this range.": "Gib einen Wert in diesem Bereich an.",
  'Give "{title}" as allowed.': "Gib „{title}“ so an, wie es erlaubt ist.",
  "Give a value as allowed.": "Gib einen erlaubten Wert an.",

  // Remedies of the rules
  "A scenario is a group of keys that begins with {key}.":
    "Eine Köderdatei ist eine Gruppe von Schlüsseln, die mit {key} beginnt.",
  'This is not a Trimwright scenario, or its "format" key was lost: add it if the rest is right.':
    'Das ist keine Trimwright-Köderdatei, oder der Schlüssel "format" ging verloren: ergänze ihn, wenn der Rest stimmt.',
  "The file was saved by a newer release: update the program, or save it there for this version.":
    "Die Datei hat eine neuere Ausgabe gespeichert: erneuere das Programm, oder speichere sie dort für diese Version.",
  "The file was saved by a newer release: load the page anew, or save it there for this version.":
    "Die Datei hat eine neuere Ausgabe gespeichert: lade die Seite neu, oder speichere sie dort für diese Version.",
  "Set {key} if the file follows that version.": "Setze {key}, wenn die Datei dieser Version folgt.",
  "A box is a group of keys that begins with {key}.":
    "Eine Kiste ist eine Gruppe von Schlüsseln, die mit {key} beginnt.",
  "This is the file of one bait: open it with “Open a file”.":
    "Das ist die Datei eines Köders: öffne sie mit „Datei öffnen“.",
  "This file holds many baits: open it with “Open a file”, or take it over under “My baits”.":
    "Diese Datei enthält viele Köder: öffne sie mit „Datei öffnen“, oder übernimm sie unter „Meine Köder“.",
  "This is a box: open it on the view Weigh, under “Own box”.":
    "Das ist eine Kiste: öffne sie in der Ansicht „Wiegen“ unter „Eigene Kiste“.",
  "This is a lesson: open it on the view Teach, under “Write a lesson”.":
    "Das ist eine Lektion: öffne sie in der Ansicht „Lernen“ unter „Lektion schreiben“.",
  "This is not a Trimwright box; open another file.":
    "Das ist keine Trimwright-Kiste; öffne eine andere Datei.",
  "{key} has it already: change one.": "{key} hat ihn schon: ändere einen.",
  "A material of your own needs its density beside it.": "Ein eigenes Material braucht seine Dichte daneben.",
  'Add "material" (a name from the table) or "density_g_ml": its volume matters.':
    'Ergänze "material" (ein Name aus der Tabelle) oder "density_g_ml": sein Volumen zählt.',
  'Weigh some together ("weighed"), or add "mass_g".':
    'Wiege einige zusammen ("weighed"), oder ergänze "mass_g".',
  "Say how long to reel (for_s) or how much line to take in (length_m).":
    "Sag, wie lange gekurbelt wird (for_s) oder wie viel Schnur eingeholt wird (length_m).",
  'Say how often the moves are done (times), or "until": "line in".':
    'Sag, wie oft die Züge gemacht werden (times), oder "until": "line in".',
  "Add a reel to the repeated moves, or say how often they are done (times).":
    "Ergänze die wiederholten Züge um ein Kurbeln, oder sag, wie oft sie gemacht werden (times).",
  "Take moves out.": "Nimm Züge heraus.",
  "Repeat them less often.": "Wiederhole sie weniger oft.",
  "Shorten the moves, or reel faster.": "Kürze die Züge, oder kurble schneller.",
  "A release lets the line go for good: put it last.":
    "Loslassen gibt die Schnur endgültig frei: setz es ans Ende.",
  "A chamber runs from its front end to its rear end: put the larger station in to_mm.":
    "Eine Kammer geht vom vorderen zum hinteren Ende: die größere Stelle gehört in to_mm.",
  "Add the thickness, or the weighed mass.": "Ergänze die Dicke oder die gewogene Masse.",
  "Keep the one that was measured.": "Behalte, was gemessen wurde.",
  "Remove one of the two equal points.": "Nimm einen der beiden gleichen Punkte weg.",
  "Order the points from nose to tail, each station once.":
    "Ordne die Punkte von der Nase zum Schwanz, jede Stelle einmal.",
  "The first point stands at the nose tip, station 0.": "Der erste Punkt steht an der Nasenspitze, Stelle 0.",
  "The last point stands at the tail: its station is the bait's length_mm.":
    "Der letzte Punkt steht am Schwanz: seine Stelle ist length_mm des Köders.",
  "Keep the point within the bait's length.": "Halte den Punkt innerhalb der Länge des Köders.",
  "The top edge lies above the bottom edge: raise it, or lower the bottom's point at this station.":
    "Die Oberkante liegt über der Unterkante: hebe sie, oder senke den Punkt der Unterkante an dieser Stelle.",
  "A line of your own needs density_kg_m3 and stiffness_N.":
    "Eine eigene Schnur braucht density_kg_m3 und stiffness_N.",
  "Give deeper water, or leave the cadence out.": "Gib tieferes Wasser an, oder lass die Führung weg.",
  "Give more line, or lower the rod tip.": "Gib mehr Schnur, oder senke die Rutenspitze.",
  "Weed tops lie above the bottom: give a smaller depth, or leave the weed out.":
    "Kraut endet über dem Grund: gib eine kleinere Tiefe an, oder lass das Kraut weg.",
  "The zone runs from its upper edge down to its lower one: the larger depth in to_m.":
    "Die Zone geht von ihrer Oberkante hinab zur Unterkante: die größere Tiefe gehört in to_m.",
  "Change the drawing there.": "Ändere dort die Zeichnung.",

  // What the browser keeps, links, many baits in one file
  "Two tabs changed ‘{name}’ at the same time: both stand in the box, one as ‘{other}’. Take out the wrong one.":
    "Zwei Tabs haben ‚{name}‘ zugleich geändert: beide stehen in der Kiste, eines als ‚{other}‘. Nimm das falsche heraus.",
  "Two tabs changed the box's {what}: {stands} stands, the other had {other}.":
    "Zwei Tabs haben {what} der Kiste geändert: {stands} steht, der andere hatte {other}.",
  "The two boxes do not go together.": "Die zwei Kisten passen nicht zusammen.",
  "No free name is left for ‘{name}’.": "Für ‚{name}‘ ist kein freier Name übrig.",
  "There is no place {key} in this document.": "In diesem Dokument gibt es die Stelle {key} nicht.",
  "The document holds something else at {key} than the step knows.":
    "Das Dokument hat bei {key} etwas anderes, als der Schritt kennt.",
  "Open a file that holds baits.": "Öffne eine Datei, die Köder enthält.",
  "Make several files of it.": "Mach mehrere Dateien daraus.",
  "This link is damaged: a part of it is missing or was changed on the way. Ask for it again, or for the bait's file.":
    "Dieser Link ist beschädigt: ein Teil fehlt oder wurde unterwegs geändert. Bitte noch einmal darum, oder um die Datei des Köders.",
  "This link is too long for a bait. Ask for the bait's file.":
    "Dieser Link ist zu lang für einen Köder. Bitte um die Datei des Köders.",
  "This link was made by a newer release. Load the page anew, or ask for the bait's file.":
    "Diesen Link hat eine neuere Ausgabe gemacht. Lade die Seite neu, oder bitte um die Datei des Köders.",
  "The bait of this link is refused. {why}": "Der Köder dieses Links wird abgelehnt. {why}",
  "What this browser kept of the bait is damaged.":
    "Was dieser Browser von dem Köder behalten hat, ist beschädigt.",
  "The bait is not readable.": "Der Köder ist nicht lesbar.",
  "Its steps of undo could not be read, so undo starts here.":
    "Seine Schritte zum Rückgängigmachen waren nicht lesbar: Rückgängig beginnt hier.",
  "edits of another tab": "Bearbeitungen eines anderen Tabs",
};
