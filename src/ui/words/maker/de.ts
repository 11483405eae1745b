import type { Translated } from "../base";
import type { texts as en } from "./en";

export const texts: Translated<typeof en> = {
  needsNone: "Dieses Holz braucht keinen Ballast, um so schwer zu sein: sieh auf seinen Restauftrieb.",
  late: "In der Zeit wurde kein Plan gefunden. Das erste Gewicht ist geschätzt: plane es unter „Wiegen“.",
  "none.usual":
    "Kein Plan aus Gewichten üblicher Größen trifft das genau. {stands} „Wiegen“ sagt warum und plant neu.",
  "none.own":
    "Kein Plan aus den Gewichten deiner Kiste trifft das genau. {stands} „Wiegen“ sagt warum und plant neu.",
  "stands.nearest": "Der nächste sitzt am Köder.",
  "stands.outside":
    "Der Körper hat keinen Platz für ein Gewicht mit der üblichen Wand aus Holz ringsum: ein geschätztes von genau der richtigen Masse sitzt außen, am Bauch.",
  "stands.guess": {
    one: "Ein geschätztes Gewicht von genau der richtigen Masse sitzt an seiner Stelle.",
    other: "{count} geschätzte Gewichte von genau der richtigen Masse sitzen an seiner Stelle.",
  },
};
