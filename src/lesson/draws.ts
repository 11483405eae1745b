import { random } from "../model/base";
import type { Values } from "./formula";
import type { Lesson } from "./schema";

/** Whose numbers they are; null: nobody's, the usual ones. */
export interface Student {
  readonly group: string;
  readonly name: string;
}

/** FNV-1a over the text's code units, 32 bits (Fowler, Noll & Vo). */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** The same name however it is typed: without capitals and outer blanks, accents in one form. */
const plain = (text: string): string => text.normalize("NFC").trim().replaceAll(/\s+/g, " ").toLowerCase();

/** The numbers of a lesson for one student: the same for the same class code and name, on every machine. */
export function drawn(lesson: Lesson, student: Student | null): Values {
  return Object.fromEntries(
    lesson.draws.map(({ name, from, to, step, usual }) => {
      if (student === null) return [name, usual];
      const seed = hashOf([lesson.id, name, plain(student.group), plain(student.name)].join("\u0000"));
      const count = Math.floor((to - from) / step + 1e-9) + 1;
      return [name, Number((from + step * random(seed).below(count)).toPrecision(12))];
    }),
  );
}
