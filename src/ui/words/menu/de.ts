import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  openFile: "Datei öffnen",
  saveFile: "In eine Datei speichern",
  "unit.length": "Längen",
  "unit.mass": "Gewichte",
  "unit.temperature": "Temperatur",
  paper: "Papier",
  "paper.auto": "Wie das System",
  "paper.light": "Hell",
  "paper.dark": "Dunkel",
  language: "Sprache",
  languageNote: "Noch auf Englisch: {views}.",
  recipe: "Rezept und Versionen",
  pictures: "Bilder und Tabellen",
  lead: "Führ mich zu einem Köder",
  cautions: "Warnungen wieder zeigen",
};
