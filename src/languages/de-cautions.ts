import type { Echoes } from "./echo";

/** Facts about harm, where the step happens. */
export const cautions: Echoes = {
  Lead: "Blei",
  "Wash hands; keep it from mouths, food and children.":
    "Hände waschen; von Mund, Essen und Kindern fernhalten.",
  "No safe blood level is known. Melting makes fumes, and water in hot metal explodes. Rules on lead tackle differ by water, size and kind: ask the authority. Tungsten, bismuth, tin, steel and brass do the same work.":
    "Ein sicherer Wert im Blut ist nicht bekannt. Schmelzen macht Dämpfe, und Wasser in heißem Metall explodiert. Regeln für Blei am Gerät hängen von Gewässer, Größe und Art ab: frag die Behörde. Wolfram, Bismut, Zinn, Stahl und Messing tun dasselbe.",
  Dust: "Staub",
  "Extraction, mask, eye protection.": "Absaugung, Maske, Augenschutz.",
  "Wood dust can cause asthma, hardwood dust is a carcinogen, red cedar sensitises; glass-laminate fibres irritate. Extraction, mask and eye protection.":
    "Holzstaub kann Asthma auslösen, Staub von Hartholz ist krebserregend, Rotzeder macht empfindlich; Fasern aus Glaslaminat reizen. Absaugung, Maske und Augenschutz.",
  "Knives, saws, drills": "Messer, Sägen, Bohrer",
  "Cut away from the hand; clamp the work.": "Von der Hand weg schneiden; das Werkstück einspannen.",
  "A blank that is held in the hand turns under the tool: clamp it, and keep the other hand behind the edge. Sharp tools need less force. Eye protection; no gloves or loose sleeves at turning tools. Deep cuts are for medical care.":
    "Ein Rohling in der Hand dreht sich unter dem Werkzeug: spann ihn ein, und halte die andere Hand hinter der Schneide. Scharfes Werkzeug braucht weniger Kraft. Augenschutz; keine Handschuhe und keine weiten Ärmel an drehenden Maschinen. Tiefe Schnitte gehören zum Arzt.",
  "Glue, resin, lacquer": "Kleber, Harz, Lack",
  "Gloves, air, no flames; keep it off the skin.":
    "Handschuhe, frische Luft, keine Flammen; nicht auf die Haut.",
  "Epoxy and UV resin can sensitise for life: wear the gloves that the data sheet names, keep it off the skin, shield the lamp. Cyanoacrylate bonds skin and eyes, and on cotton or wool can heat and burn. Sprayed isocyanates need air-fed breathing apparatus: leave them to licensed shops. Ventilate solvents, no flames; no food oven; oily rags heat by themselves.":
    "Epoxid- und UV-Harz können lebenslang überempfindlich machen: trag die Handschuhe, die das Datenblatt nennt, halte es von der Haut fern, schirm die Lampe ab. Sekundenkleber klebt Haut und Augen zusammen; auf Baumwolle oder Wolle kann er heiß werden und brennen. Gesprühte Isocyanate verlangen Atemschutz mit Luftzufuhr: überlass sie zugelassenen Werkstätten. Lösemittel lüften, keine Flammen; kein Ofen für Essen; ölige Lappen erhitzen sich von selbst.",
  Hooks: "Haken",
  "Fit them last, guard the points, protect the eyes.":
    "Zuletzt anbringen, die Spitzen abdecken, die Augen schützen.",
  "Deep or facial wounds are for medical care.": "Tiefe Wunden und Wunden im Gesicht gehören zum Arzt.",
};
