import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  "promise.given": "Der Browser hat versprochen, sie nicht von selbst zu löschen.",
  "promise.none": "Der Browser darf sie löschen, wenn der Datenträger voll ist oder nach Wochen ohne Besuch.",
  "promise.unknown": "Dieser Browser sagt nicht, ob er sie löschen darf, wenn der Datenträger voll ist.",
  "promise.room":
    "{promise} Diese Seite belegt etwa {usage} MB von den {quota} MB, die der Browser ihr gibt, ihre eigenen Dateien mitgezählt.",
  "earlier.taken": "Was eine frühere Ausgabe in diesem Browser behalten hat, ist übernommen: {what}.",
  "earlier.baits": { one: "ein Köder, unter „Meine Köder“", other: "{count} Köder, unter „Meine Köder“" },
  "earlier.box": "deine Kiste",
  "earlier.unread": "was diese Ausgabe nicht lesen kann, wie es ist unter „Meine Köder“",
  "library.one": "{name} mit allem",
  "library.all": "meine Köder",
  "library.notMade": "Die Datei konnte nicht gemacht werden: {why}",
  "library.large":
    "„{file}“ hat {size} MB: mehr als {most} MB werden nicht gelesen. Mach mehrere Dateien daraus.",
  "library.notOpened": "„{file}“ wurde nicht geöffnet. {why}",
  "library.notRead": "„{file}“ konnte nicht gelesen werden: {why}",
  "library.nothing": "Aus „{file}“ wurde nichts übernommen: {why}",
  "library.noPhoto": "sein Foto ist keines: der Köder ist ohne es hier",
  "library.alone": "Die Köder sind hier, aber ohne ihre Versionen und Fotos: {why}",
  "library.boxHas": "Die Kiste hat sie jetzt; „Rückgängig“ in der Kiste nimmt sie wieder heraus.",
};
