import type { SpokenLanguage } from "../../words";

/** A word of the trade: the one used here first, then what others say. Trade words only, no names of products. */
export interface Term {
  readonly word: string;
  readonly also: readonly string[];
  readonly means: string;
}

const t = (word: string, also: string, means: string): Term => ({
  word,
  also: also === "" ? [] : also.split(", "),
  means,
});

/** The same things in the same order in each language. */
export const GLOSSARY: Readonly<Record<SpokenLanguage, readonly Term[]>> = {
  en: [
    t("bait", "lure, plug, artificial", "A shaped body with hooks that is pulled through the water."),
    t("blank", "body, raw body", "The shaped wood before anything is fitted to it."),
    t("bib", "lip, bill, diving vane", "The plate at the head that makes the bait dive."),
    t(
      "bib angle",
      "lip angle, bill angle",
      "The angle between the bib and the long axis of the bait. Some measure it from the vertical: always draw it.",
    ),
    t("tie eye", "line tie, nose eye, tow point", "The eye that the line is tied to."),
    t("hanger", "hook hanger, hook eye, belly eye", "The eye that a hook hangs from."),
    t(
      "harness",
      "through-wire, wire-through",
      "A wire that runs through the whole body and holds all the eyes.",
    ),
    t("screw eye", "eye screw", "A screw with an eye at its end."),
    t("treble", "treble hook", "A hook with three points."),
    t("single", "single hook", "A hook with one point."),
    t("split ring", "", "A ring of two turns that joins a hook to its eye."),
    t("ballast", "weight, belly weight", "Metal that sets how the bait floats and hangs."),
    t("shot", "pellet", "Small balls of metal."),
    t("rattle chamber", "rattle, sound chamber", "A hollow with loose balls."),
    t("sealer", "sanding sealer", "The first coat; it closes the pores of the wood."),
    t("primer", "base coat", "The coat under the colour."),
    t("clear coat", "top coat, varnish", "The last, clear coat."),
    t("template", "pattern", "A shape on paper that the maker cuts or traces along."),
    t("suspend", "hang, hover", "To stay at one depth, neither rising nor sinking."),
    t("attitude", "posture, hang, trim", "The angle at which the bait lies in the water."),
    t("nose-down", "head-down", "With the nose lower than the tail."),
    t("tail-down", "nose-up", "With the tail lower than the nose."),
    t("retrieve", "wind-in, crank", "Bringing the bait back by the reel."),
    t("cadence", "rhythm", "The order of reeling, twitching and pausing."),
    t("twitch", "jerk, tap", "A short pull with the rod."),
    t(
      "blow out",
      "skip out, roll out",
      "To lose its track and come to the surface when it is pulled too fast.",
    ),
    t("track", "run true", "To swim in a straight line."),
    t("tune", "adjust", "To bend the tie eye a little until the bait tracks."),
    t("tub test", "tank test, bath test", "Trying the bait in still water."),
    t("net buoyancy", "spare lift", "What the water lifts more than the bait weighs, in grams."),
  ],
  de: [
    t("Köder", "Kunstköder, Hartköder", "Ein geformter Körper mit Haken, der durchs Wasser gezogen wird."),
    t("Rohling", "Rohkörper", "Das geformte Holz, bevor etwas daran kommt."),
    t("Tauchschaufel", "Schaufel, Lippe", "Die Platte am Kopf, die den Köder tauchen lässt."),
    t(
      "Schaufelwinkel",
      "Winkel der Tauchschaufel",
      "Der Winkel zwischen Schaufel und Längsachse. Manche messen ihn von der Senkrechten: immer zeichnen.",
    ),
    t("Zugöse", "Einhängeöse, Schnuröse, Kopföse", "Die Öse, an die die Schnur kommt."),
    t("Hakenöse", "Bauchöse", "Die Öse, an der ein Haken hängt."),
    t("Durchgangsdraht", "Drahtachse, Achse", "Ein Draht durch den ganzen Körper, der alle Ösen hält."),
    t("Schrauböse", "Ösenschraube", "Eine Schraube mit einer Öse am Ende."),
    t("Drilling", "Drillingshaken", "Ein Haken mit drei Spitzen."),
    t("Einzelhaken", "", "Ein Haken mit einer Spitze."),
    t("Sprengring", "", "Ein Ring aus zwei Windungen, der Haken und Öse verbindet."),
    t("Ballast", "Beschwerung, Gewicht", "Metall, das bestimmt, wie der Köder schwimmt und hängt."),
    t("Schrot", "Kügelchen", "Kleine Kugeln aus Metall."),
    t("Rasselkammer", "Klapperkammer", "Ein Hohlraum mit losen Kugeln."),
    t(
      "Porenfüller",
      "Grundierung fürs Holz, Versiegelung",
      "Die erste Schicht; sie schließt die Poren des Holzes.",
    ),
    t("Grundierung", "Haftgrund", "Die Schicht unter der Farbe."),
    t("Klarlack", "Decklack, Überzug", "Die letzte, klare Schicht."),
    t("Schablone", "Vorlage", "Eine Form auf Papier, an der man schneidet oder anreißt."),
    t("schweben", "stehen", "In einer Tiefe bleiben, nicht steigen und nicht sinken."),
    t("Lage", "Haltung, Trimm", "Der Winkel, in dem der Köder im Wasser liegt."),
    t("Nase tief", "kopflastig", "Mit der Nase tiefer als dem Schwanz."),
    t("Schwanz tief", "hecklastig", "Mit dem Schwanz tiefer als der Nase."),
    t("Einholen", "Einkurbeln", "Den Köder mit der Rolle zurückbringen."),
    t("Führung", "Rhythmus", "Die Folge von Kurbeln, Zupfen und Pausen."),
    t("Zupfer", "Schlag, Ruck", "Ein kurzer Zug mit der Rute."),
    t("ausbrechen", "aushebeln", "Bei zu schnellem Zug die Spur verlieren und an die Oberfläche kommen."),
    t("Spur halten", "geradeaus laufen", "Auf gerader Linie schwimmen."),
    t("einstellen", "justieren", "Die Zugöse ein wenig biegen, bis der Köder die Spur hält."),
    t("Wannentest", "Badewannentest", "Den Köder in stillem Wasser prüfen."),
    t("Restauftrieb", "Nettoauftrieb", "Was das Wasser mehr hebt, als der Köder wiegt, in Gramm."),
  ],
};
