import type { Echoes } from "./echo";

/** The ready baits as the page lists them. */
export const baits: Echoes = {
  "Ellipsoid with known answers": "Ellipsoid mit bekannten Antworten",
  "An ellipsoid of semi-axes 40, 10 and 8 mm with a keel weight inside and one hook: no bait, but everything about its weight and balance is known in closed form. It is not meant to be made: its weight is thicker than the usual drills. Invented for this collection; no maker's bait.":
    "Ein Ellipsoid mit den Halbachsen 40, 10 und 8 mm, einem Kielgewicht innen und einem Haken: kein Köder, aber alles an Gewicht und Gleichgewicht ist als Formel bekannt. Er ist nicht zum Bauen gedacht: sein Gewicht ist dicker als die üblichen Bohrer. Für diese Sammlung erfunden; von keinem Hersteller.",
  "Long-bib diver 90": "Tieftaucher 90 mit langer Schaufel",
  "A deep diver: a long bib lying flat, the tie eye on the bib, and more than a gram of lift to bring it back. Invented for this collection; no maker's bait.":
    "Ein Tieftaucher: eine lange, flach liegende Schaufel, die Zugöse auf der Schaufel, und mehr als ein Gramm Auftrieb, das ihn zurückbringt. Für diese Sammlung erfunden; von keinem Hersteller.",
  "Rattle-chamber 60": "Rasselkammer 60",
  "A small floating bait with four steel balls of 3 mm loose in a chamber. The balls roll to the low end, so that it has two attitudes of rest: nose-down with the balls ahead, level with the balls behind. Its trebles have short shanks of 15 mm, so that the two cannot reach each other. Invented for this collection; no maker's bait.":
    "Ein kleiner schwimmender Köder mit vier losen Stahlkugeln von 3 mm in einer Kammer. Die Kugeln rollen ans tiefe Ende. So hat er zwei Ruhelagen: Nase tief mit den Kugeln vorn, waagrecht mit den Kugeln hinten. Seine Drillinge haben kurze Schenkel von 15 mm, damit die beiden einander nicht erreichen. Für diese Sammlung erfunden; von keinem Hersteller.",
  "Salt-water suspender 115": "Salzwasser-Schweber 115",
  "A suspender for sea water of 35 g/kg at 14 °C. In a fresh-water tub it sinks: salt carries about 0.46 g of it. Blank weighed and pulled under on the bench, hooks and rings weighed, so its band is narrow. Invented for this collection; no maker's bait.":
    "Ein Schweber für Meerwasser mit 35 g/kg bei 14 °C. In einer Wanne mit Süßwasser sinkt er: das Salz trägt etwa 0,46 g von ihm. Der Rohling ist gewogen und unter Wasser gezogen, Haken und Ringe sind gewogen: so ist sein Bereich schmal. Für diese Sammlung erfunden; von keinem Hersteller.",
  "Slow floater 72": "Langsamer Schwimmer 72",
  "A slow floater with a short bib: half a gram of lift lets it back out of weed in a pause, and still it comes up slowly enough to be followed. Its weight is tungsten: brass of the same pull would leave no wall between itself and the skin. Invented for this collection; no maker's bait.":
    "Ein langsamer Schwimmer mit kurzer Schaufel: mit einem halben Gramm Auftrieb kommt er in einer Pause rückwärts aus dem Kraut frei, und steigt doch so langsam, dass man ihm folgen kann. Sein Gewicht ist aus Wolfram: Messing mit demselben Zug ließe keine Wand bis zur Haut. Für diese Sammlung erfunden; von keinem Hersteller.",
  "Coldwater suspender 90": "Kaltwasser-Schweber 90",
  "A suspending lipped minnow for cold fresh water: balanced at 8 °C to rise slower than an eye notices, a little nose-down, so that a pause holds it in front of the fish. Water at 20 °C takes about 0.015 g of its lift. Lead-free: its two weights are tungsten. Tin of the same pull would be too thick for the wood: it would come through the skin. Invented for this collection; no maker's bait.":
    "Ein schwebender Fischköder mit Schaufel für kaltes Süßwasser: bei 8 °C so ausgewogen, dass er langsamer steigt, als man sieht, die Nase ein wenig tief. So hält ihn eine Pause vor dem Fisch. Wasser von 20 °C nimmt ihm etwa 0,015 g Auftrieb. Ohne Blei: seine zwei Gewichte sind aus Wolfram. Zinn mit demselben Zug wäre zu dick für das Holz: es käme durch die Haut. Für diese Sammlung erfunden; von keinem Hersteller.",
  "Tail-heavy mistake 90": "Fehler: schwanzlastig 90",
  "A mistake to learn from: the suspender's body with the ballast behind the middle and a large tail hook. It floats and runs fast, but slowly reeled it skates tail-down, and in every pause it hangs by its tail. Cure: ballast forward. Its ballast is lead: wash hands, keep it from mouths and children, and check the rules of your water. Invented for this collection; no maker's bait.":
    "Ein Fehler zum Lernen: der Körper des Schwebers mit dem Ballast hinter der Mitte und einem großen Schwanzhaken. Er schwimmt, und schnell läuft er. Aber langsam eingeholt rutscht er mit dem Schwanz tief, und in jeder Pause hängt er am Schwanz. Abhilfe: Ballast nach vorn. Sein Ballast ist Blei: wasch dir die Hände, halte es von Mund und Kindern fern, und sieh in den Regeln deines Gewässers nach. Für diese Sammlung erfunden; von keinem Hersteller.",
  "Timed sinker 70": "Sinker 70 nach der Uhr",
  "A sinker for fishing by time: it sinks nearly level on slack line, about 25 cm each second, until the reel starts. Lead-free: three tungsten weights inside. Bismuth of the same mass would not leave the wood a wall. Invented for this collection; no maker's bait.":
    "Ein Sinker zum Fischen nach der Uhr: an loser Schnur sinkt er fast waagrecht, etwa 25 cm in jeder Sekunde, bis das Kurbeln beginnt. Ohne Blei: innen drei Gewichte aus Wolfram. Bismut mit derselben Masse ließe dem Holz keine Wand. Für diese Sammlung erfunden; von keinem Hersteller.",
};
