import type { Translated } from "../base";
import type { texts as english } from "./en";

/** Ein Film der Bühne auf Deutsch. */
export const texts: Translated<typeof english> = {
  title: "Ein Film von diesem Lauf",
  from: "Von",
  to: "Bis",
  rate: "Tempo des Films",
  "rate.1": "wie es läuft",
  "rate.0.5": "halb so schnell",
  "rate.0.25": "ein Viertel so schnell",
  "rate.0.1": "ein Zehntel so schnell",
  "rate.4": "viermal so schnell",
  how: "So, wie die Bühne jetzt steht, {width} × {height} Bildpunkte, {count} Bilder. Der Film dauert {length}.",
  order: "‚Bis‘ muss später sein als ‚Von‘.",
  long: "Das ist ein langer Film: Es kann einige Minuten dauern, ihn zu machen.",
  make: "Film machen",
  making: "Gefilmt: {percent} %",
  stop: "Aufhören",
  close: "Schließen",
  done: "Gefilmt als {name}, unter deinen Downloads: Er dauert {length}.",
  changed: "Der Lauf hat sich geändert, während er gefilmt wurde: Filme ihn noch einmal.",
  later: "Die Bühne ist noch nicht gezeichnet: Versuche es gleich noch einmal.",
  notThere: "Erst {time} sind aufgezeichnet: Dort endet der Film, oder warte auf den Rest.",
  cannot:
    "Dieser Browser kann keine Filme schreiben: Speichere stattdessen einzelne Bilder, oder filme den Bildschirm.",
  noCanvas: "Dieser Browser gab keine Fläche zum Filmen: Schließe andere Tabs und versuche es noch einmal.",
  empty: "Der Film blieb leer: Versuche es noch einmal.",
};
