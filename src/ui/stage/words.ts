import type { PictureWords } from "../../drawing";
import { marked } from "../words/base";
import type { Language } from "../words/base";
import { FILE } from "../words/file";
import { STAGE } from "../words/stage";

/** What stands on a picture of the water, in the language that is read. */
export function pictureWords(language: Language): PictureWords {
  const words = STAGE.in(language);
  const file = FILE.in(language);
  return {
    number: (text) => marked(text, language),
    name: (english) => file.of(english),
    depth: words.tell("depth"),
    away: (who, distance) =>
      who === "bait" || who === "pinned"
        ? words.tell(`away.${who}`, { distance })
        : words.tell("away.variant", { letter: who, distance }),
    variant: (letter) => words.tell("variant", { letter }),
    small: (first) => words.tell("small", { first }),
    chain: (ruler) => words.tell("chain", { ruler }),
  };
}
