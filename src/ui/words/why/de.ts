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
  "righting.source":
    "E. V. Lewis (Hg.), Principles of Naval Architecture, Bd. I, SNAME 1988; docs/model.md §5. Unter Wasser: die Wasserlinie fällt weg.",
  "heel.title": "Aufrichtender Hebel gegen seitliches Kippen",
  "heel.meaning":
    "Kippt der Köder zur Seite, drückt das Wasser bei B nach oben und zieht das Gewicht bei G nach unten. Der Abstand der beiden Linien dreht ihn zurück.",
  "heel.formula": "unter Wasser GZ(φ) = BG · sin φ; an der Oberfläche, nahe aufrecht, GZ ≈ GM · φ",
  "heel.note":
    "An der Oberfläche gibt das Modell nur die erste Steigung: die Zeichnung ist eine Seitenansicht, und eine gekippte Wasserlinie wird nicht gerechnet.",
  "trim.title": "Aufrichtendes Moment gegen Längsneigung",
  "trim.meaning":
    "Bei einer Neigung festgehalten, in der Höhe frei, wird der Köder von diesem Moment gedreht: über null hebt es die Nase. Er kommt zur Ruhe, wo die Kurve durch null fällt.",
  "trim.formula":
    "an der Oberfläche M(θ) = Σm · (X_B − X_G) bei ρ · V_unter = Σm; unter Wasser M(θ) = ρ ΣV · (X_B − X_G)",
  "trim.note":
    "Ein {mass}·{length} ist ein Gramm, das einen Millimeter weiter außen hängt. 49 Neigungen werden gerechnet; dazwischen sind die Linien gerade. Lose Kugeln rollen ans tiefere Ende, dort springt die Kurve.",
  "season.title": "Restauftrieb über die Jahreszeit",
  "season.meaning":
    "Kaltes Wasser trägt mehr als warmes, salziges mehr als süßes. Der Köder behält Volumen und Gewicht; seine Ruhelage unter Wasser ändert sich mit dem Wasser nicht.",
  "season.formula": "Rest(S, T) = ρ(S, T) · ΣV − Σm",
  "season.displaced": "ΣV, verdrängtes Wasser",
  "season.mass": "Σm, Masse von allem, was daran ist",
  "season.season": "Jahreszeit",
  "season.suspends": "„schwebt“ innerhalb von",
  "season.water": "Wasser",
  "season.salinity": "Salzgehalt",
  "season.cold": "kalt, {unit}",
  "season.warm": "warm, {unit}",
  "season.source":
    "Wasser: Zustandsgleichung EOS-80 der UNESCO, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44. Vorgaben: Venedig-System 1958; docs/model.md §3.",
  "season.note":
    "Auch das Holz dehnt sich mit der Wärme; das hebt weniger als die Hälfte der Dehnung des Wassers auf und ist weggelassen.",
  "due.title": "Was er jetzt in der Wanne tun soll",
  "due.meaning":
    "Was noch dazukommt, zieht den Köder nach unten; so muss er jetzt um so viel mehr schwimmen. Im Wasser der Wanne, gleich für welches Wasser das Ziel gilt.",
  "due.formula": "Soll = gewünschter Rest − Rest dessen, was noch kommt + (ρ_Wanne − ρ) · V",
  "due.wanted": "gewünschter Rest des fertigen Köders",
  "due.coats": "Rest der Schichten, die noch kommen",
  "due.others": "Rest von allem anderen, das noch kommt",
  "due.displaced": "V, Wasser, das er jetzt verdrängt",
  "due.account": "nach der Rechnung hat er jetzt",
  "due.source": "Prinzip des Archimedes; docs/model.md §3.",
  "reading.title": "Was die Wanne sagt",
  "reading.meaning":
    "Die Wanne wiegt den Köder durch das, was er tut. Wo Messung und Rechnung weiter auseinanderliegen als das eigene Band der Messung, stimmt die Rechnung irgendwo nicht: die Korrektur bringt sie in Einklang, ohne zu sagen, wo.",
  "reading.formula.timed": "Rest so, dass das gleichmäßige Steigen Höhe / Zeit ist, um den Anlauf berichtigt",
  "reading.formula.attitude":
    "x_B − x_G = (z_B − z_G) · tan θ; in Bewegung: der Abstand, dessen gleichmäßiges Steigen diese Neigung hat",
  "reading.formula.waterline": "Σm = ρ · V unter der Linie; G unter dem Schwerpunkt von V",
  "reading.mean": "Mittel der Zeiten",
  "reading.steady": "gleichmäßiges Tempo",
  "reading.plain": "Höhe durch Zeit",
  "reading.net": "Rest nach der Rechnung",
  "reading.offset": "G von B nach der Rechnung",
  "reading.from": "± durch {source}",
  "reading.source":
    "docs/model.md §5: gleichmäßiges Steigen, Ruhelage, Archimedes. Unsicherheiten verbunden wie in JCGM 100:2008; Zeit ±0,15 s, Marken ±2 mm, Lage ±2°, Wasserlinie ±0,5 mm, Widerstand ±20 % (95 %): übliche Praxis, ohne Quelle.",
  "swap.title": "Was dieser Tausch bringt",
  "swap.meaning": "Restauftrieb und Ruhelage im gefragten Wasser, mit diesem Tausch.",
  "swap.formula":
    "Rest = ρ ΣV − Σm über alles, was daran ist; Abstand = √((Δv / δv)² + (Δθ / δθ)²) des gleichmäßigen Steigens, mit δv = v · δRest / 2 Rest",
  "swap.change": "{mass} an Masse, Rest {net}",
  "swap.wanted": "gewünscht",
  "swap.without": "ohne Tausch",
  "swap.rise": "gleichmäßiges Steigen",
  "swap.goalRise": "gewünschtes gleichmäßiges Steigen",
  "swap.netWithin": "δRest, wie genau im Rest",
  "swap.trimWithin": "δθ, wie genau in der Lage",
  "swap.misfit": "Abstand vom Ziel",
  "swap.source":
    "Prinzip des Archimedes und Ruhelage, docs/model.md §3 und §5; gleichmäßiges Steigen §6. Jede Wahl von einer oder zwei Änderungen wird genau gerechnet.",
  "swap.note":
    "Massen, die nicht gewogen sind, machen den Tausch so unsicher, wie sie es sind: wiege, was du anbringst.",
};
