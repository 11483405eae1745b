import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  to: "{from} bis {to}",
  "sum.formula": "R = Summe der Kräfte auf den Köder, jede mit ihrer Richtung",
  "sum.source": "Newtons zweites Gesetz; docs/model.md §6",
  "sum.meaning":
    "Was übrig bleibt, wenn man alle Kräfte addiert: es macht den Köder schneller oder langsamer, mit dem Wasser, das sich mitbewegt. Nahe 0 ruht der Köder oder läuft gleichmäßig.",
  "force.meaning":
    "Eine Kraft auf den Köder in diesem Augenblick; ihr Pfeil im Bild trägt denselben Buchstaben.",
  "force.forward": "vorwärts in Richtung des Einholens",
  "force.up": "nach oben",
  density: "Dichte von {name}",
  "density.wood":
    "Ein veröffentlichter Mittelwert. Ein Brett weicht vom nächsten um ein Zehntel und mehr ab: wiege deinen Rohling und tippe seine eigene Dichte ein.",
  "density.other": "Ein veröffentlichter Wert; das Stück in der Hand kann abweichen.",
  "density.table": "aus der Tabelle der Materialien",
  "density.spread": "veröffentlichte Streuung",
  "moment.depth": "Tiefe in diesem Augenblick",
  "moment.depth.meaning": "Tiefe der Zugöse unter der stillen Oberfläche.",
  "moment.depth.formula": "Tiefe = −Z der Zugöse",
  "moment.pitch": "Neigung in diesem Augenblick",
  "moment.pitch.meaning": "Winkel der Bezugslinie über der Waagrechten, Nase hoch ist plus.",
  "moment.pitch.formula": "dθ/dt = q, mit q aus den Momenten aller Kräfte um G",
  "moment.speed": "Tempo in diesem Augenblick",
  "moment.speed.meaning": "Tempo des Schwerpunkts, vom stillen Wasser aus gesehen.",
  "moment.speed.formula": "Tempo = √(V_X² + V_Z²)",
  "moment.line": "Schnur in diesem Augenblick",
  "moment.line.meaning":
    "Zug der Schnur an der Zugöse; nichts, wo sie schlaff ist. Ein Ergebnis, keine Einstellung.",
  "moment.line.formula": "Zug = EA · Dehnung, wo sie gespannt ist, 0, wo sie schlaff ist; docs/model.md §7",
  "moment.time": "Augenblick der Aufnahme",
  "moment.source":
    "Simuliert: die Bewegungsgleichungen von docs/model.md §6 und §8, 960 Schritte in der Sekunde, 60 davon behalten.",
  "moment.note":
    "Die Tiefe unter Zug stimmt auf 20–30 %, bis ein gemessener Lauf sie eicht; Lagen in Ruhe sind so gut wie die Wägungen.",
};
