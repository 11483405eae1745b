import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  bait: "Köder | Kunstköder, Hartköder | Ein geformter Körper mit Haken, der durchs Wasser gezogen wird.",
  blank: "Rohling | Rohkörper | Das geformte Holz, bevor etwas daran kommt.",
  bib: "Tauchschaufel | Schaufel, Lippe | Die Platte am Kopf, die den Köder tauchen lässt.",
  "bib-angle":
    "Schaufelwinkel | Winkel der Tauchschaufel | Der Winkel zwischen Schaufel und Längsachse. Manche messen ihn von der Senkrechten: immer zeichnen.",
  "tie-eye": "Zugöse | Einhängeöse, Schnuröse, Kopföse | Die Öse, an die die Schnur kommt.",
  hanger: "Hakenöse | Bauchöse | Die Öse, an der ein Haken hängt.",
  harness: "Durchgangsdraht | Drahtachse, Achse | Ein Draht durch den ganzen Körper, der alle Ösen hält.",
  "screw-eye": "Schrauböse | Ösenschraube | Eine Schraube mit einer Öse am Ende.",
  treble: "Drilling | Drillingshaken | Ein Haken mit drei Spitzen.",
  single: "Einzelhaken |  | Ein Haken mit einer Spitze.",
  "split-ring": "Sprengring |  | Ein Ring aus zwei Windungen, der Haken und Öse verbindet.",
  ballast: "Ballast | Beschwerung, Gewicht | Metall, das bestimmt, wie der Köder schwimmt und hängt.",
  shot: "Schrot | Kügelchen | Kleine Kugeln aus Metall.",
  "rattle-chamber": "Rasselkammer | Klapperkammer | Ein Hohlraum mit losen Kugeln.",
  sealer:
    "Porenfüller | Grundierung fürs Holz, Versiegelung | Die erste Schicht; sie schließt die Poren des Holzes.",
  primer: "Grundierung | Haftgrund | Die Schicht unter der Farbe.",
  "clear-coat": "Klarlack | Decklack, Überzug | Die letzte, klare Schicht.",
  template: "Schablone | Vorlage | Eine Form auf Papier, an der man schneidet oder anreißt.",
  suspend: "schweben | stehen | In einer Tiefe bleiben, nicht steigen und nicht sinken.",
  attitude: "Lage | Haltung, Trimm | Der Winkel, in dem der Köder im Wasser liegt.",
  "nose-down": "Nase tief | kopflastig | Mit der Nase tiefer als dem Schwanz.",
  "tail-down": "Schwanz tief | hecklastig | Mit dem Schwanz tiefer als der Nase.",
  retrieve: "Einholen | Einkurbeln | Den Köder mit der Rolle zurückbringen.",
  cadence: "Führung | Rhythmus | Die Folge von Kurbeln, Zupfen und Pausen.",
  twitch: "Zupfer | Schlag, Ruck | Ein kurzer Zug mit der Rute.",
  "blow-out":
    "ausbrechen | aushebeln | Bei zu schnellem Zug die Spur verlieren und an die Oberfläche kommen.",
  track: "Spur halten | geradeaus laufen | Auf gerader Linie schwimmen.",
  tune: "einstellen | justieren | Die Zugöse ein wenig biegen, bis der Köder die Spur hält.",
  "tub-test": "Wannentest | Badewannentest | Den Köder in stillem Wasser prüfen.",
  "net-buoyancy": "Restauftrieb | Nettoauftrieb | Was das Wasser mehr hebt, als der Köder wiegt, in Gramm.",
};
