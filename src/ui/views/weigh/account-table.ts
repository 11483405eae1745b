import { fromSI } from "../../../units";
import { WEIGH } from "../../words/weigh";
import type { StageAccount } from "./account";

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/**
 * The account by stage as CSV (RFC 4180): one row a thing, then one row for all of it so far, every heading with its unit. Net is
 * in the water of the file, and lifts where it is above 0. Numbers are not rounded.
 * Who reads it is a program as often as a person: it is English in every language.
 */
export function accountCsv(account: readonly StageAccount[]): string {
  const head = ["stage", "item", "in_air_g", "displaced_mL", "net_g"];
  const row = (stage: string, item: string, of: Pick<StageAccount, "mass" | "displaced" | "net">): string =>
    [stage, quoted(item), fromSI(of.mass, "g"), fromSI(of.displaced, "mL"), fromSI(of.net, "g")].join(",");
  const rows = account.flatMap((one) => [
    ...one.lines.map((line) => row(one.stage, line.item, line)),
    row(one.stage, WEIGH.in("en").tell("account.soFar"), one),
  ]);
  return `${[head.join(","), ...rows].join("\r\n")}\r\n`;
}
