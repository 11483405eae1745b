import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  title: "Ein neuer Köder",
  lead: "Alles davon lässt sich später ändern. Er beginnt als Rohling mit Schaufel, Haken und Schichten; sein Ballast wird aus den Gewichten in deiner Kiste geplant oder aus üblichen.",
  name: "Name",
  notes:
    "Ein schlichter Rohling mit Schaufel in den angegebenen Maßen. Seine Haken, Augen, Schichten und ersten Gewichte sind geschätzt: wiege deine.",
  nameless: "Neuer Köder",
  form: "Form",
  size: "Maße, ohne Schaufel und Haken",
  length: "Länge",
  height: "Höhe",
  breadth: "Breite",
  woodWater: "Holz und Wasser",
  wood: "Holz",
  water: "Wasser",
  "water.fresh": "süß",
  "water.brackish": "brackig",
  "water.salt": "salzig",
  temperature: "Seine Temperatur",
  wish: "Was er tun soll (darf offen bleiben)",
  planning: "Sein Ballast wird geplant …",
  make: "Diesen Köder machen",
};
