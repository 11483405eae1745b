import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  pending: "wird gerade berechnet",
  range: "{low} bis {high}",
  most: "95 % der so gebauten Köder",
  hydrostatics: "E. V. Lewis (Hg.), Principles of Naval Architecture, Bd. I, SNAME 1988; docs/model.md §5.",
  waterSource:
    "Wasser: Zustandsgleichung EOS-80 der UNESCO, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44.",
  netBuoyancy: "Restauftrieb",
  bareBody: "Rohkörper",

  "net.title": "Restauftrieb",
  "net.meaning":
    "Was das Wasser trägt, weniger das, was der Köder wiegt, ganz unter Wasser. Über null schwimmt er. „Schwebt“ heißt er innerhalb von ±{within}: feiner arbeiten weder Waage noch Pinsel.",
  "net.formula": "Rest = ρ · ΣV − Σm",
  "net.density": "ρ, Dichte des Wassers",
  "net.displaced": "ΣV, verdrängtes Wasser",
  "net.mass": "Σm, Masse von allem, was daran ist",
  "net.item": "Teil",
  "net.headMass": "Masse, {unit}",
  "net.headDisplaced": "verdrängt, {unit}",
  "net.headNet": "Rest, {unit}",
  "net.together": "zusammen",
  "net.source":
    "Prinzip des Archimedes. {water} Die Aufstellung: docs/model.md §3. Wörter: übliche Praxis, ohne Quelle.",
  "net.note":
    "Was im Körper steckt, zählt voll; was außen sitzt, zählt mit dem, was es mehr wiegt als das Wasser, das es verdrängt. Haken und Ringe zählen ganz.",

  "chance.title": "Wahrscheinlichkeit, dass er sinkt",
  "chance.meaning":
    "Keine Dichte, Masse oder Länge ist genau bekannt. Würfelt man innerhalb dessen, was nicht bekannt ist, sinkt dieser Anteil der Köder, die nach diesen Zahlen gebaut sind.",
  "chance.formula": "Anteil der Stichproben mit Rest < 0; im Band liegen 95 % von ihnen",
  "chance.calculated": "Restauftrieb nach der Rechnung",
  "chance.most": "95 % der Köder",
  "chance.samples": "Stichproben",
  "chance.from": "durch {input}",
  "chance.source":
    "JCGM 101:2008, Fortpflanzung von Verteilungen nach Monte Carlo; übliche Unsicherheiten docs/model.md §3.",
  "chance.note": "Wiege Rohling und Haken: eine Wägung engt das mehr ein als jede Zeichnung.",

  "rise.title": "Gleichmäßiges Steigen oder Sinken",
  "rise.rises": "{speed}, steigt",
  "rise.sinks": "{speed}, sinkt",
  "rise.meaning":
    "Unter Wasser ohne Schnur losgelassen, bewegt sich der Köder bald so schnell, dass Widerstand und Restauftrieb sich die Waage halten, und liegt so, dass sich die Drehmomente die Waage halten. Stoppe in der Wanne die Zeit über eine markierte Höhe.",
  "rise.formula":
    "ΣX(u, w, θ) = 0, ΣZ(u, w, θ) = 0, ΣM(u, w, θ) = 0, alle Kräfte des Modells außer der Schnur",
  "rise.attitude": "Lage während der Bewegung",
  "rise.drift": "Drift, vorwärts ist plus",
  "rise.seconds": "Sekunden für {way}",
  "rise.source":
    "Mitbewegte Masse: Lamb 1932. Queranströmung: Cheng 2013; Jorgensen 1977, NASA TR R-474. Entlang des Körpers: Hoerner 1965. Tauchschaufel: Polhamus 1966, NASA TN D-3767; Lamar & Gloss 1975; ECN-C--03-025, 2003. Schwanz: Roddy 1990. docs/model.md §6.",
  "rise.unsteady": "Er kam nicht zur Ruhe: {why}. Die Zahlen sind die am Ende.",
  "rise.changing": "Geschwindigkeit und Lage ändern sich nach 300 s noch",
  "rise.note":
    "Nahe am Schweben entscheidet ein hundertstel Gramm: die Geschwindigkeit geht mit der Wurzel der restlichen Kraft.",

  "rest.title": "Lage in Ruhe unter Wasser",
  "rest.any": "beliebig",
  "rest.meaning":
    "Unter Wasser still gehalten und losgelassen, dreht sich der Köder, bis sein Auftriebspunkt B über seinem Schwerpunkt G steht. Nase hoch ist plus; „waagrecht“ heißt innerhalb von ±{within}°.",
  "rest.formula": "θ = atan2(x_B − x_G, z_B − z_G), x nach vorn, z nach oben",
  "rest.G": "Ort von G hinter der Nase",
  "rest.B": "Ort von B hinter der Nase",
  "rest.others": "wenn die Kugeln anderswo liegen, auch bei",
  "rest.source": "{book} Haken hängen frei und ziehen an ihren Ösen; lose Kugeln liegen am tiefsten Punkt.",
  "rest.note":
    "Bei einem Köder, der stark schwimmt, ist das nur der erste Augenblick des Aufstiegs; die Lage kann steil sein, obwohl der Köder an der Oberfläche fast waagrecht liegt.",

  "lever.title": "Abstand von G zu B",
  "lever.meaning":
    "Der Hebel, der den Köder aufrichtet und in seine Lage dreht. Ist er klein, kippt wenig schon weit: hier machen {step} Verschiebung von G nach vorn oder hinten {angle} aus.",
  "lever.any": "jeden Winkel",
  "lever.G": "G: hinter der Nase, Höhe",
  "lever.B": "B: hinter der Nase, Höhe",
  "lever.source": "{book} Unter {least} hat die Lage in Ruhe keine Zahl.",

  "trim.title": "Lage an der Oberfläche",
  "trim.meaning":
    "Die Lage, in der der Köder auf stillem Wasser liegt: so viel unter Wasser, wie ihn trägt, B genau über G.",
  "trim.formula": "ρ · V_unter = Σm und X_B(θ) = X_G(θ)",
  "trim.immersed": "unter Wasser",
  "trim.mass": "Masse",
  "trim.draft": "Tiefgang",
  "trim.other": "auch stabil ({number})",
  "trim.source": "{book} Haken hängen unter Wasser an ihren Ösen.",
  "trim.over":
    "Gegen das Rollen gehalten gezeichnet: losgelassen rollt dieser Köder um. Das Modell bewegt sich in einer Ebene und zeigt das nicht.",

  "draft.title": "Tiefgang",
  "draft.meaning": "Wie tief der tiefste Punkt des Rohkörpers liegt, während der Köder schwimmt.",
  "draft.formula": "Tiefe des tiefsten Punkts des Umrisses bei dieser Lage und Höhe an der Oberfläche",
  "draft.trim": "Lage",
  "draft.share": "Anteil unter Wasser an allem, was er verdrängt",

  "GM.title": "Metazentrische Höhe",
  "GM.meaning":
    "Über null richtet sich der schwimmende Köder wieder auf, wenn er sich zur Seite neigt; unter null legt er sich um.",
  "GM.waterline": "I_T, Flächenmoment der Wasserlinie quer",
  "GM.immersed": "V, unter Wasser",
  "GM.note": "Unter Wasser gibt es keine Wasserlinie: nur B über G hält ihn dann aufrecht.",

  "mass.title": "Masse des fertigen Köders",
  "mass.meaning":
    "Alles, was daran ist, in Luft: Körper ohne das, was herausgeschnitten ist, Ballast, Draht, Tauchschaufel, Haken, Ringe, Lack.",
  "mass.formula": "Σm = ρ_Körper · (V_Körper − ΣV_entfernt) + Σm_Teile",
  "mass.density": "Dichte des Körpers",
  "mass.volume": "Volumen des Rohkörpers",
  "mass.removed": "daraus entfernt",
  "mass.source":
    "Die Aufstellung: docs/model.md §3. Dichten: die Tabelle der Werkstoffe oder die eigenen der Datei.",

  "displaced.title": "Verdrängtes Wasser",
  "displaced.meaning":
    "Das Volumen von allem, was das Wasser berührt: der Körper nach seinem Umriss und was außen daran sitzt.",
  "displaced.formula": "ΣV = V_Körper + ΣV_außen",
  "displaced.outside": "außen daran",
  "displaced.source": "Volumen durch Integration der Querschnitte, docs/model.md §2 und §3.",

  "water.title": "Dichte des Wassers",
  "water.meaning":
    "Kaltes Wasser ist dichter als warmes, Salzwasser dichter als Süßwasser: von Süßwasser zu Meerwasser gewinnt ein Köder etwa 2,7 % seines Volumens in Gramm.",
  "water.formula": "ρ(S, T) bei einer Atmosphäre",
  "water.temperature": "Temperatur",
  "water.salinity": "Salzgehalt",
  "water.viscosity": "Zähigkeit",
  "water.source": "{water} Zähigkeit: Sharqawy, Lienhard & Zubair 2010.",
};
