import { PI } from "./formula";
import type { Term } from "./formula";

/**
 * The part of TeX that a lesson may use. A lesson's file is not trusted: what is not on this list (commands that define,
 * include, link or colour) is refused before any of it is drawn.
 */
const COMMANDS: ReadonlySet<string> = new Set(
  (
    "frac sqrt cdot times approx left right mathrm text quad pm le ge ne sin cos tan arctan Delta Sigma sum alpha beta gamma " +
    "theta varphi phi rho nu mu pi sigma tau omega , ; %"
  ).split(" "),
);
export const LONGEST_TEX = 400;

/** What is wrong with a TeX text, in words; null: nothing. */
export function texTrouble(tex: string): string | null {
  for (const [, command = ""] of tex.matchAll(/\\([A-Za-z]+|.|$)/gs))
    if (!COMMANDS.has(command)) return `the command "\\${command}" is not allowed`;
  const odd = /[^\w\s\\{}()[\]^_+\-−*/=<>|.,:;%!°·×≈Δπρθβμ']/u.exec(tex);
  if (odd !== null) return `the sign "${odd[0]}" is not allowed`;
  let depth = 0;
  for (const sign of tex.replaceAll(/\\./g, "")) {
    if (sign === "{") depth += 1;
    if (sign === "}") depth -= 1;
    if (depth < 0) break;
  }
  return depth === 0 ? null : "its braces { } do not match";
}

const rank = (term: Term): number =>
  term.is !== "pair" ? (term.is === "minus" ? 1.5 : 3) : term.sign === "/" ? 3 : term.sign === "*" ? 2 : 1;

/**
 * A formula as TeX; `name` says how a figure stands in it: by its symbol or by its number. A fraction within a fraction stands on
 * one line with a slash: three storeys could not be read.
 */
export function texOf(term: Term, name: (name: string) => string, number: (text: string) => string): string {
  let within = 0;
  const part = (one: Term): string => {
    within += 1;
    const made = tex(one);
    within -= 1;
    return made;
  };
  const tex = (one: Term): string => {
    switch (one.is) {
      case "number":
        return number(one.text);
      case "name":
        return one.name === PI ? "\\pi" : name(one.name);
      case "minus":
        return `-${inside(one.of, 2)}`;
      case "call":
        return one.to === "sqrt"
          ? `\\sqrt{${tex(one.of)}}`
          : `\\${one.to === "atan" ? "arctan" : one.to}\\left(${tex(one.of)}\\right)`;
      case "pair":
        if (one.sign === "/" && within > 0)
          return `${inside(one.left, 2)} / ${inside(one.right, one.right.is === "pair" ? 4 : 2)}`;
        if (one.sign === "/") return `\\frac{${part(one.left)}}{${part(one.right)}}`;
        if (one.sign === "*") return `${inside(one.left, 2)} \\cdot ${inside(one.right, 2)}`;
        return `${tex(one.left)} ${one.sign} ${inside(one.right, one.sign === "-" ? 1.6 : 1.5)}`;
    }
  };
  const inside = (one: Term, least: number): string =>
    rank(one) < least ? `\\left(${tex(one)}\\right)` : tex(one);
  return tex(term);
}

/** How a formula is read aloud. */
export interface Speech {
  readonly plus: string;
  readonly minus: string;
  readonly times: string;
  readonly over: string;
  readonly root: (of: string) => string;
  readonly of: (name: string, of: string) => string;
  readonly bracket: (of: string) => string;
}

/** A formula in words. */
export function saidOf(
  term: Term,
  { plus, minus, times, over, root, of, bracket }: Speech,
  name: (name: string) => string,
  number: (text: string) => string,
): string {
  const said = (one: Term): string => {
    switch (one.is) {
      case "number":
        return number(one.text);
      case "name":
        return one.name === PI ? "π" : name(one.name);
      case "minus":
        return `${minus} ${inside(one.of)}`;
      case "call":
        return one.to === "sqrt" ? root(said(one.of)) : of(one.to, said(one.of));
      case "pair": {
        const word = { "+": plus, "-": minus, "*": times, "/": over }[one.sign];
        const tight = one.sign === "*" || one.sign === "/";
        return tight
          ? `${inside(one.left)} ${word} ${one.sign === "/" ? below(one.right) : inside(one.right)}`
          : `${said(one.left)} ${word} ${one.sign === "-" ? inside(one.right) : said(one.right)}`;
      }
    }
  };
  const inside = (one: Term): string =>
    one.is === "pair" && (one.sign === "+" || one.sign === "-") ? bracket(said(one)) : said(one);
  // A product below the line is one thing: read aloud, too.
  const below = (one: Term): string => (one.is === "pair" ? bracket(said(one)) : said(one));
  return said(term);
}
