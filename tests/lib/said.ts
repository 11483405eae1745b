import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/** What stands in a place of a text that is put together: a number, as most places have. */
const FILLED = "7.5";
/** No text has more forms than this. */
const MOST = 200;

const filesIn = (place: string): readonly string[] =>
  place.endsWith(".ts")
    ? [place]
    : readdirSync(place, { recursive: true, encoding: "utf8" })
        .filter((file) => file.endsWith(".ts"))
        .sort()
        .map((file) => join(place, file));

/** What the constants of a file are set to, by their names; a name that is set twice counts with both. */
function constantsOf(source: ts.SourceFile): ReadonlyMap<string, readonly ts.Expression[]> {
  const found = new Map<string, ts.Expression[]>();
  const visit = (node: ts.Node): void => {
    if (ts.isVariableDeclaration(node) && ts.isIdentifier(node.name) && node.initializer !== undefined)
      found.set(node.name.text, [...(found.get(node.name.text) ?? []), node.initializer]);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

const isText = (node: ts.Node): node is ts.StringLiteral | ts.NoSubstitutionTemplateLiteral =>
  ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node);
const isPlus = (node: ts.Node): node is ts.BinaryExpression =>
  ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken;

const joined = (parts: readonly (readonly string[])[]): readonly string[] =>
  parts.reduce<readonly string[]>(
    (all, some) => all.flatMap((start) => some.map((end) => start + end)).slice(0, MOST),
    [""],
  );

/** All forms that a text of the source takes, its places filled. */
function formsOf(
  node: ts.Expression,
  constants: ReadonlyMap<string, readonly ts.Expression[]>,
  deep = 0,
): readonly string[] {
  const forms = (one: ts.Expression): readonly string[] => formsOf(one, constants, deep + 1);
  if (deep > 8) return [FILLED];
  if (isText(node)) return [node.text];
  if (ts.isParenthesizedExpression(node)) return forms(node.expression);
  if (ts.isConditionalExpression(node)) return [...forms(node.whenTrue), ...forms(node.whenFalse)];
  if (isPlus(node)) return joined([forms(node.left), forms(node.right)]);
  if (ts.isTemplateExpression(node))
    return joined([
      [node.head.text],
      ...node.templateSpans.flatMap(({ expression, literal }) => [forms(expression), [literal.text]]),
    ]);
  if (
    ts.isCallExpression(node) &&
    ts.isPropertyAccessExpression(node.expression) &&
    node.expression.name.text === "toLowerCase"
  )
    return forms(node.expression.expression).map((one) => one.toLowerCase());
  if (ts.isIdentifier(node)) {
    const set = (constants.get(node.text) ?? []).filter(
      (one) => isText(one) || isPlus(one) || ts.isTemplateExpression(one) || ts.isConditionalExpression(one),
    );
    if (set.length > 0) return set.flatMap(forms);
  }
  return [FILLED];
}

/** Errors of the program itself: they are for whoever mends it. */
const isFault = (node: ts.Node): boolean =>
  ts.isThrowStatement(node) && /^new (?:Error|RangeError|TypeError)\(/.test(node.expression.getText());

export interface Said {
  readonly file: string;
  readonly text: string;
}

/**
 * Every text of two words and more that the source of these places says, its places filled with a number. What begins
 * with a blank or a comma, or ends with a blank, is a piece of such a text, and is found within it.
 *
 * @param faults also what is thrown as a plain error or a range error
 */
export function saidIn(places: readonly string[], faults = false): readonly Said[] {
  return places.flatMap(filesIn).flatMap((file): Said[] => {
    const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest, true);
    const constants = constantsOf(source);
    const found = new Set<string>();
    const visit = (node: ts.Node): void => {
      if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
      if (!faults && isFault(node)) return;
      if (isText(node) || ts.isTemplateExpression(node) || isPlus(node)) {
        for (const one of formsOf(node, constants)) found.add(one);
        // What a place calls may say something of its own.
        const inner = (one: ts.Node): void => {
          if (ts.isCallExpression(one)) one.arguments.forEach(visit);
          else ts.forEachChild(one, inner);
        };
        if (!isText(node)) inner(node);
        return;
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    return [...found]
      .filter((text) => /^[^ ,;)].*[^ ]$/s.test(text) && /[A-Za-z]{2,}[,:;]? [A-Za-z]{2,}/.test(text))
      .map((text) => ({ file, text }));
  });
}

/** Whether a text has words of English alone, outside what is quoted: names, and the keys of a file. */
export const english = (text: string): boolean =>
  /\b(?:the|of|or|and|is|are|with|from|give|that|found|allowed|must|need|light|heavy|within|each)\b/i.test(
    text.replaceAll(/"[^"]*"|„[^“]*“|‚[^‘]*‘|\{\w+\}|\b[a-z]+[._[][\w.[\]]+/g, ""),
  );
