import type { Translated } from "../base";
import type { texts as english } from "./en";

/** Was die Zahlen eines Laufs auf ‚warum‘ antworten, auf Deutsch. */
export const texts: Translated<typeof english> = {
  "steady.title": "Tiefe bei gleichmäßigem Schleppen",
  "steady.means":
    "Wie tief die Zugöse nach langem, gleichmäßigem Einholen mit dem Tempo des ersten Kurbelns läuft. Ein Wurf ist kürzer: der Köder beginnt an der Oberfläche, und die Schnur wird kürzer, während er taucht.",
  "steady.formula":
    "Schnur und Lage im Gleichgewicht: docs/model.md §7. Auf dem Weg dorthin dd/ds = (D − d)/ℓ, ℓ aus der Neigung dieses Laufs",
  "steady.this": "dieses Einholen",
  "steady.source":
    "Geschleppte Schnur: docs/model.md §7. Auf Tiefe: {share} % der Tiefe beim Schleppen mit der Schnur, die draußen ist; übliche Praxis, keine Quelle.",
  depthNote:
    "Die Tiefe beim Schleppen stimmt auf 20–30 %, bis ein gemessener Lauf sie abgleicht, die Lage beim Laufen auf etwa 6°.",
  run: "Simuliert: die Bewegungsgleichungen aus docs/model.md §6 bis §8, 960 Schritte in der Sekunde, 60 behalten.",
  "deepest.title": "Größte Tiefe",
  "deepest.means": "Die größte Tiefe der Zugöse in diesem Lauf.",
  "deepest.formula": "max(−Z der Zugöse) über alle Bilder",
  after: "nach",
  fromSplash: "vom Aufschlag",
  "toDepth.means": "Vom Aufschlag bis zum ersten Augenblick auf {share} % der größten Tiefe dieses Laufs.",
  "toDepth.formula": "erstes t mit Tiefe(t) ≥ {share} · größte Tiefe",
  "toDepth.deepest": "größte Tiefe",
  "toDepth.note": "Der Anteil ist übliche Praxis, keine Quelle.",
  "running.means":
    "Mittlere Neigung, während er läuft: beim Kurbeln, Neigung über 0,6 s oder länger innerhalb von 4°, die Schnur zieht, und mindestens das halbe Tempo der Rolle.",
  "running.formula": "Mittel von θ über die Bilder, in denen er läuft",
  "running.seconds": "Zeit, die er läuft",
  "running.depth": "mittlere Tiefe",
  "running.speed": "mittleres Tempo des Köders",
  "running.tension": "mittlerer Zug",
  "running.note": "{depth} Was als Laufen zählt, ist übliche Praxis, keine Quelle.",
  "pause.means":
    "Was der Köder tut, während die Rolle steht: die zweite Hälfte jeder Pause von einer halben Sekunde oder länger, über die Zeit gemittelt.",
  "pause.seconds": "gemittelt über",
  "pause.note":
    "Der Zug der Schnur zählt hier noch mit. Die Lage in Ruhe ohne Schnur steht bei den Zahlen in Ruhe unter Wasser.",
  "pause.trimFormula": "Mittel von θ über die zweite Hälfte der Pausen",
  "pause.title": "Steigen oder Sinken in der Pause",
  "pause.formula": "Mittel des Tempos von G nach oben über die zweite Hälfte der Pausen",
  "pull.title": "Größter Zug der Schnur",
  "pull.means": "Der größte Zug an der Zugöse in den Bildern dieses Laufs. Ein Ergebnis, keine Einstellung.",
  "pull.formula": "max(Zug) über alle Bilder",
  "zone.title": "Zeit in der Fangzone",
  "zone.working": "wird gerechnet",
  "zone.means": "Wie lange die Zugöse in den Tiefen ist, in denen der Köder laufen soll.",
  "zone.formula": "Bilder mit von ≤ Tiefe ≤ bis, geteilt durch Bilder in der Sekunde",
  "zone.from": "von",
  "zone.to": "bis",
  "beat.title": "Schläge in der Sekunde, eine Schätzung",
  "beat.value": "{band} in der Sekunde",
  "beat.means":
    "Wie oft der Köder beim Laufen von Seite zu Seite schlägt. Das Modell bewegt sich in einer Ebene und rechnet das nicht: es ist die Zahl, mit der die Schaufel Wirbel ablöst, gut für eine Größenordnung und um Schaufeln zu vergleichen.",
  "beat.formula": "f = St · U / b, b die Breite der Schaufel; ± {band} %",
  "beat.speed": "U, mittleres Tempo beim Laufen",
  "beat.width": "b, Breite der Schaufel",
  "beat.attitude": "θ, Lage beim Laufen",
  "beat.middle": "Mitte des Bandes",
  "beat.source":
    "Wirbelablösung hinter einer stumpfen Platte, St ≈ 0,15 auf ihre gesehene Breite: aus dem Gedächtnis. docs/model.md §10.",
  "beat.note": "Halb bis anderthalbmal die Mitte. Zähle in einem Film, um es zu wissen.",
  speed: "Tempo",
  lineOut: "ausgebrachte Schnur",
};
