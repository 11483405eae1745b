import type { Echoes } from "./echo";

/** What the page's state says in German, each under its English text: live inputs, steps of undo, faults of the browser. */
export const state: Echoes = {
  // Live inputs, whose labels also name steps of undo
  "Body density": "Dichte des Körpers",
  "Weigh your blank: wood of one kind differs by a tenth and more.":
    "Wiege deinen Rohling: Holz einer Art unterscheidet sich um ein Zehntel und mehr.",
  "Stretches the drawing: everything along the bait moves in proportion; heights stay.":
    "Streckt die Zeichnung: alles rückt der Länge nach im Verhältnis mit; Höhen bleiben.",
  Width: "Breite",
  "Greatest breadth seen from above. All breadths change in proportion; the side view stays.":
    "Größte Breite von oben gesehen. Alle Breiten ändern sich im Verhältnis; die Seitenansicht bleibt.",
  "Tie eye station": "Zugöse hinter der Nase",
  "Tie eye height": "Höhe der Zugöse",
  "{input}, move {number}": "{input}, Schritt {number}",
  "{input}, moves {numbers}": "{input}, Schritte {numbers}",
  // Steps of undo
  "part from another tab's": "von der des anderen Tabs getrennt",
  // What the browser refuses, and faults of the program
  "this browser has no database": "dieser Browser hat keine Datenbank",
  "the browser's database does not answer": "die Datenbank des Browsers antwortet nicht",
  "the box that is kept cannot be read: {why}": "die behaltene Kiste kann nicht gelesen werden: {why}",
  "it is damaged": "sie ist beschädigt",
  "a fault of this program: {why}": "ein Fehler in diesem Programm: {why}",
  "Move it back.": "Schieb es zurück.",
};
