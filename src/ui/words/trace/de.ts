import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  title: "Bild unter der Zeichnung",
  taken: "Das Bild ist aufgenommen",
  "sight.side": "Von der Seite",
  "sight.above": "Von oben",
  lead: "Leg den Köder auf blankes Papier, daneben ein Lineal. Fotografiere ihn von weit oben, genau von der Seite, oder scanne ihn. Das Bild bleibt in diesem Browser auf diesem Gerät; in der Datei des Köders steht nichts davon.",
  choose: "Bild oder Zeichnung wählen",
  another: "Anderes Bild",
  flip: "Links und rechts tauschen",
  remove: "Bild wegnehmen",
  paste:
    "Du kannst es auch einfügen oder auf die Seite ziehen. Auch eine SVG-Zeichnung mit geschlossenem Umriss geht.",
  reading: "Das Bild wird gelesen …",
  ring: "Umriss",
  "ring.first": "der größte",
  "ring.next": "Nummer {number} nach Größe",
  drag: "Zieh N auf die Nase und T auf den Schwanz: die Linie dazwischen ist die Bezugslinie. Das Quadrat verschiebt das ganze Bild. Pfeiltasten verschieben, was gewählt ist, mit Umschalt zehnmal so weit.",
  known: "Die Länge, die du kennst, geht",
  "known.whole": "von N bis T",
  "known.part": "von 1 bis 2, etwa auf einem Lineal",
  apart: "Bekannte Länge",
  turn: "Gedreht um",
  turnHelp: "Gegen den Uhrzeigersinn, um N.",
  left: "N vom linken Rand",
  leftHelp: "Wo im Bild die Stelle 0 liegt.",
  upper: "N vom oberen Rand",
  upperHelp: "Wo im Bild die Bezugslinie liegt.",
  strength: "Stärke des Bildes",

  "path.title": "Umriss aus dem Text eines Pfads",
  "path.text": "Text eines SVG-Pfads oder einer SVG-Datei",
  "path.use": "Diesen Umriss nehmen",

  "mark.nose": "Nase: {left} vom linken Rand des Bildes, {up} von seinem oberen Rand",
  "mark.tail": "Schwanz: {left} vom linken Rand des Bildes, {up} von seinem oberen Rand",
  "mark.from": "Ein Ende der bekannten Länge: {left} vom linken Rand des Bildes, {up} von seinem oberen Rand",
  "mark.to":
    "Anderes Ende der bekannten Länge: {left} vom linken Rand des Bildes, {up} von seinem oberen Rand",
  "mark.picture": "Das Bild: unter der Zeichnung verschieben",

  "propose.title": "Ein erster Umriss",
  "propose.photo":
    "Wo sich der Köder klar vom Untergrund abhebt, lässt sich sein Umriss von selbst finden. Danach besserst du ihn von Hand nach.",
  "propose.drawing":
    "Der Umriss der Zeichnung als Oberkante und Unterkante. Danach besserst du ihn von Hand nach.",
  propose: "Umriss vorschlagen",
  threshold: "Schwelle",
  thresholdHelp:
    "Wie weit sich der Köder vom Untergrund abheben muss. Sie wird von selbst gewählt, bis du sie verschiebst.",
  tolerance: "Höchstens daneben um",
  toleranceHelp: "Genauer braucht mehr Punkte.",
  looking: "Wird gesucht …",
  both: "{top} Punkte oben und {bottom} unten",
  points: "{points} Punkte",
  "fit.photo": "{points}, höchstens {worst} neben dem Umriss des Bildes. Länge {length}.",
  "fit.drawing": "{points}, höchstens {worst} neben dem Umriss der Zeichnung. Länge {length}.",
  soft: "Der Rand im Bild ist auf etwa {softness} scharf.",
  folded:
    "Der Umriss faltet sich um {folded} zurück: eine Kante hat an jeder Stelle nur eine Höhe. Sieh dort nach.",
  uneven:
    "Die beiden Seiten sind ungleich: ihre Mitte weicht um {uneven} von der Geraden ab. Die Zeichnung nimmt die Hälfte der Breite.",
  onItsEnds:
    "N und T stehen jetzt auf seinen Enden. Liegt die Bezugslinie anderswo, zieh sie dorthin; die bekannte Länge ist die zwischen ihnen.",
  onEnds: "N und T auf seine Enden setzen",
  onTips: "Drehen: N und T auf seine Spitzen",
  "take.side": "Diesen Umriss nehmen",
  "take.above": "Diese halbe Breite nehmen",
  leave: "Lassen",
  remedy: "Verschiebe sie unter ‚Teile‘ oder mach sie kleiner:",

  "note.second": "Noch etwas hebt sich ab: das Größte wird genommen.",
  "note.soft": "Der Rand ist unscharf: ein Schatten oder ein unscharfes Bild verschiebt den Umriss.",
  "no.contrast":
    "Der Köder hebt sich nicht vom Untergrund ab. Fotografiere ihn bei gleichmäßigem Licht auf Papier, das viel heller oder dunkler ist als er.",
  "no.large":
    "Nichts hebt sich ab, das groß genug ist. Verschiebe die Schwelle, oder lass den Köder mehr vom Bild füllen.",
  "no.edge":
    "Was sich abhebt, läuft aus dem Bild. Lass rund um den Köder Untergrund frei, ohne einen Schatten bis zum Rand.",
  "no.fit": "Es ließ sich kein Umriss anpassen: {why}.",

  "place.ends": "Nase und Schwanz liegen aufeinander: verschiebe eines von beiden.",
  "place.known": "Die beiden Punkte der bekannten Länge liegen aufeinander: verschiebe einen davon.",

  "picture.large": "Die Datei hat mehr als {most} MB: nimm ein kleineres Bild.",
  "picture.kind":
    "Das ist kein Bild als JPEG, PNG, WebP oder GIF: fotografiere oder scanne den Köder als eines davon.",
  "picture.points": "Das Bild hat {width} × {height} Punkte, mehr als {most} Millionen: nimm ein kleineres.",
  "picture.damaged": "Das Bild ist beschädigt: öffne es anderswo und speichere es neu.",
  "picture.surface": "Dieser Browser gibt keine Fläche her, auf die sich das Bild zeichnen lässt.",
  "picture.small": "Das Bild ließ sich nicht klein genug zeichnen, um es zu behalten.",
  "picture.notKept": "Dieser Browser hat das Bild nicht behalten: es geht mit der Seite ({why}).",
  "picture.gone": "Das Bild ist nicht mehr in diesem Browser: wähle es noch einmal.",

  "svg.long": "Die Zeichnung ist länger als eine Million Zeichen: nimm eine einfachere.",
  "svg.empty": "Da ist kein Text: gib eine SVG-Datei oder den Text eines Pfads.",
  "svg.none": "Die Zeichnung hat keinen Pfad, kein Vieleck, keine Ellipse und kein Rechteck.",
  "svg.shapes": "Die Zeichnung hat {shapes} Formen: nimm eine mit dem Umriss allein.",
  "svg.size": "Die Formen der Zeichnung haben keine Größe.",
  "svg.path": "Das ist kein Pfad: sein Text beginnt mit M und hat Zahlen, etwa ‚M 0 0 C …‘.",
  "svg.corners": "Die Zeichnung hat zu viele Ecken: nimm eine einfachere.",
  "svg.open":
    "Kein Pfad der Zeichnung ist geschlossen: verbinde die beiden Enden des Umrisses und speichere ihn neu.",
  "svg.entities": "Die Datei legt Entitäten fest, die nicht gelesen werden: speichere sie als einfaches SVG.",
  "svg.damaged": "Das ist keine SVG-Datei, oder sie ist beschädigt.",
};
