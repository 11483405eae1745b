import type { Echoes } from "./echo";

/** What a lesson's file and a file of results say where something is wrong with them. Titles of the form stand in `words/form`. */
export const lesson: Echoes = {
  "This is no lesson file; open another.": "Das ist keine Lektionsdatei; öffne eine andere.",
  "This is no file of results; open another.": "Das ist keine Ergebnisdatei; öffne eine andere.",
  // Names, ranges and texts
  '"{name}" a second time': "„{name}“ ein zweites Mal",
  "each name once": "jeden Namen nur einmal",
  "Give it another name.": "Gib ihm einen anderen Namen.",
  "a name that means nothing else": "einen Namen, der nichts anderes bedeutet",
  "one of the names {key}": "einen der Namen {key}",
  "(there are none)": "(es gibt keine)",
  "Add a figure of this name, or use another.":
    "Füge eine Größe mit diesem Namen hinzu, oder nimm einen anderen.",
  "Use one of these names.": "Nimm einen dieser Namen.",
  "variant {key}": "Variante {key}",
  "a variant that exists (there are {count})": "eine Variante, die es gibt (es sind {count})",
  "Add the variant, or choose another.": "Füge die Variante hinzu, oder wähle eine andere.",
  "more than {least}": "mehr als {least}",
  "Make the range longer than 0.": "Mach den Bereich länger als 0.",
  "at most {most} steps in the range": "höchstens {most} Schritte im Bereich",
  "Make the step longer.": "Mach den Schritt länger.",
  "a number from {from} to {to}": "eine Zahl von {from} bis {to}",
  "Move it into the range.": "Leg ihn in den Bereich.",
  "no text": "keinen Text",
  "a text in one language at least": "einen Text in mindestens einer Sprache",
  "Write it.": "Schreib ihn.",
  "Mend the name in the braces.": "Berichtige den Namen in den geschweiften Klammern.",
  // Formulas
  "a formula: {why}": "eine Formel: {why}",
  "Write numbers, names, + - * / and brackets.": "Schreib Zahlen, Namen, + - * / und Klammern.",
  '"{key}" has no meaning in a formula': "„{key}“ hat in einer Formel keine Bedeutung",
  '"{key}" stands where the formula should end': "„{key}“ steht da, wo die Formel enden sollte",
  "too many brackets inside each other": "zu viele Klammern ineinander",
  "it ends where a number or a name should stand": "sie endet, wo eine Zahl oder ein Name stehen sollte",
  '"{key}" stands where a number or a name should stand':
    "„{key}“ steht da, wo eine Zahl oder ein Name stehen sollte",
  '"{key}" needs brackets: {form}': "„{key}“ braucht Klammern: {form}",
  "a bracket is not closed": "eine Klammer ist nicht geschlossen",
  'The formula asks for "{key}", which has no value.':
    "Die Formel fragt nach „{key}“, und das hat keinen Wert.",
  "The formula gives no number: does it divide by 0?": "Die Formel ergibt keine Zahl: Teilt sie durch 0?",
  'The formula "{key}" cannot be read: {why}.': "Die Formel „{key}“ ist nicht lesbar: {why}.",
  "it is longer than {most} characters": "sie ist länger als {most} Zeichen",
  // TeX
  "simple TeX: {why}": "einfaches TeX: {why}",
  "Use fractions, roots, indices and Greek letters only.":
    "Nimm nur Brüche, Wurzeln, Indizes und griechische Buchstaben.",
  'the command "{key}" is not allowed': "der Befehl „{key}“ ist nicht erlaubt",
  'the sign "{key}" is not allowed': "das Zeichen „{key}“ ist nicht erlaubt",
  "its braces { } do not match": "seine geschweiften Klammern { } passen nicht zusammen",
  // Its baits
  "what cannot be used": "was nicht zu gebrauchen ist",
  "one of {key}": "eines von {key}",
  "Name one of these files.": "Nenne eine dieser Dateien.",
  "Give a size within it.": "Gib eine Größe an, die darin liegt.",
  "Look at the changes of this variant.": "Sieh dir die Änderungen dieser Variante an.",
  "Look at its size and its changes.": "Sieh dir ihre Größe und ihre Änderungen an.",
  // Figures of the model
  "It comes to no steady rise: {why}.": "Er kommt zu keinem gleichmäßigen Steigen: {why}.",
  "no reason known": "kein Grund bekannt",
  'Figures of "tow" need a run of the kind "cast".': "Größen von „tow“ brauchen einen Lauf der Art „cast“.",
  "It does not run: {why}.": "Er läuft nicht: {why}.",
  "This bait has no bib.": "Dieser Köder hat keine Tauchschaufel.",
  "This figure does not exist for this bait.": "Diese Größe gibt es für diesen Köder nicht.",
  "This bait does not float.": "Dieser Köder schwimmt nicht.",
  "no figure has this name; there are {key}, account.NAME.net_g (mass_g, displaced_ml) and file.PATH":
    "keine Größe heißt so; es gibt {key}, account.NAME.net_g (mass_g, displaced_ml), file.PATH",
  'The account has no row "{name}".': "Die Rechnung hat keine Zeile „{name}“.",
  'The scenario has no number at "{key}".': "Das Szenario hat keine Zahl an der Stelle „{key}“.",
  'Figure "{key}": there is no variant {name}.': "Größe „{key}“: Es gibt keine Variante {name}.",
  'Figure "{key}" ({name}): {why}': "Größe „{key}“ ({name}): {why}",
};
