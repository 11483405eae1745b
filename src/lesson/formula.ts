import { atan2, cos, sin, tan } from "../model/base";

/**
 * The small language of a lesson's formulas: numbers, named figures, + − × / and brackets, and a few functions. It is read
 * by the parser below and by nothing else: no formula is ever run as a program.
 *
 *   sum     := product (("+" | "-" | "−") product)*
 *   product := signed (("*" | "×" | "·" | "/" | "÷") signed)*
 *   signed  := ("-" | "−") signed | atom
 *   atom    := number | name | function "(" sum ")" | "(" sum ")"
 *
 * Angles are in degrees. A number has a decimal point.
 */
export type Term =
  | { readonly is: "number"; readonly value: number; readonly text: string }
  | { readonly is: "name"; readonly name: string }
  | { readonly is: "minus"; readonly of: Term }
  | { readonly is: "call"; readonly to: FunctionName; readonly of: Term }
  | { readonly is: "pair"; readonly sign: "+" | "-" | "*" | "/"; readonly left: Term; readonly right: Term };

export type FunctionName = keyof typeof FUNCTIONS;

export type Formula =
  { readonly ok: true; readonly term: Term } | { readonly ok: false; readonly why: string };

const DEGREE = Math.PI / 180;

const FUNCTIONS = {
  sqrt: Math.sqrt,
  sin: (x: number) => sin(x * DEGREE),
  cos: (x: number) => cos(x * DEGREE),
  tan: (x: number) => tan(x * DEGREE),
  atan: (x: number) => atan2(x, 1) / DEGREE,
} as const;

const isFunction = (word: string): word is FunctionName => Object.hasOwn(FUNCTIONS, word);

/** π stands for itself in every formula. */
export const PI = "pi";
export const LONGEST_FORMULA = 300;
const DEEPEST_FORMULA = 30;

class Refused extends Error {}

class Reader {
  private at = 0;
  private depth = 0;
  private readonly tokens: readonly string[];

  constructor(text: string) {
    const plain = text.replaceAll("−", "-").replaceAll(/[×·]/g, "*").replaceAll("÷", "/");
    const tokens = plain.match(/\d+(?:\.\d+)?|[A-Za-z]\w*|\S/g) ?? [];
    const odd = tokens.find((one) => !/^(?:\d+(?:\.\d+)?|[A-Za-z]\w*|[-+*/()])$/.test(one));
    if (odd !== undefined) throw new Refused(`"${odd}" has no meaning in a formula`);
    this.tokens = tokens;
  }

  whole(): Term {
    const term = this.sum();
    const left = this.tokens[this.at];
    if (left !== undefined) throw new Refused(`"${left}" stands where the formula should end`);
    return term;
  }

  private take(...signs: readonly string[]): string | null {
    const next = this.tokens[this.at];
    if (next === undefined || !signs.includes(next)) return null;
    this.at += 1;
    return next;
  }

  private sum(): Term {
    this.depth += 1;
    if (this.depth > DEEPEST_FORMULA) throw new Refused("too many brackets inside each other");
    let left = this.product();
    for (let sign = this.take("+", "-"); sign !== null; sign = this.take("+", "-"))
      left = { is: "pair", sign: sign === "+" ? "+" : "-", left, right: this.product() };
    this.depth -= 1;
    return left;
  }

  private product(): Term {
    let left = this.signed();
    for (let sign = this.take("*", "/"); sign !== null; sign = this.take("*", "/"))
      left = { is: "pair", sign: sign === "*" ? "*" : "/", left, right: this.signed() };
    return left;
  }

  private signed(): Term {
    let minus = false;
    while (this.take("-") !== null) minus = !minus;
    const atom = this.atom();
    return minus ? { is: "minus", of: atom } : atom;
  }

  private atom(): Term {
    const token = this.tokens[this.at];
    this.at += 1;
    if (token === undefined) throw new Refused("it ends where a number or a name should stand");
    if (token === "(") return this.closed(this.sum());
    if (/^\d/.test(token)) return { is: "number", value: Number(token), text: token };
    if (!/^[A-Za-z]/.test(token))
      throw new Refused(`"${token}" stands where a number or a name should stand`);
    if (!isFunction(token)) return { is: "name", name: token };
    if (this.take("(") === null) throw new Refused(`"${token}" needs brackets: ${token}(…)`);
    return { is: "call", to: token, of: this.closed(this.sum()) };
  }

  private closed(term: Term): Term {
    if (this.take(")") === null) throw new Refused("a bracket is not closed");
    return term;
  }
}

/** Reads a formula; says in words what is wrong with it. */
export function readFormula(text: string): Formula {
  if (text.length > LONGEST_FORMULA)
    return { ok: false, why: `it is longer than ${LONGEST_FORMULA} characters` };
  try {
    return { ok: true, term: new Reader(text).whole() };
  } catch (fault) {
    if (fault instanceof Refused) return { ok: false, why: fault.message };
    throw fault;
  }
}

/** The names that a formula uses, each once. */
export function namesIn(term: Term): readonly string[] {
  const found = new Set<string>();
  const look = (one: Term): void => {
    if (one.is === "name" && one.name !== PI) found.add(one.name);
    else if (one.is === "minus" || one.is === "call") look(one.of);
    else if (one.is === "pair") {
      look(one.left);
      look(one.right);
    }
  };
  look(term);
  return [...found];
}

export type Values = Readonly<Record<string, number>>;

/** @throws RangeError where a name is not known or the result is no number */
export function evaluate(term: Term, values: Values): number {
  const of = (one: Term): number => {
    switch (one.is) {
      case "number":
        return one.value;
      case "name": {
        const value =
          one.name === PI ? Math.PI : Object.hasOwn(values, one.name) ? values[one.name] : undefined;
        if (value === undefined)
          throw new RangeError(`The formula asks for "${one.name}", which has no value.`);
        return value;
      }
      case "minus":
        return -of(one.of);
      case "call":
        return FUNCTIONS[one.to](of(one.of));
      case "pair": {
        const [a, b] = [of(one.left), of(one.right)];
        return one.sign === "+" ? a + b : one.sign === "-" ? a - b : one.sign === "*" ? a * b : a / b;
      }
    }
  };
  const result = of(term);
  if (!Number.isFinite(result)) throw new RangeError("The formula gives no number: does it divide by 0?");
  return result;
}

/** Reads and evaluates in one step. @throws RangeError with the formula in its words */
export function calculate(text: string, values: Values): number {
  const read = readFormula(text);
  if (!read.ok) throw new RangeError(`The formula "${text}" cannot be read: ${read.why}.`);
  return evaluate(read.term, values);
}
