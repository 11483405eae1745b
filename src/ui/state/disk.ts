import { fingerprint, parseScenario, serialize } from "../../document";

/** What some browsers give beyond the types: a choice of a file that the page may then write again. */
interface Choosers {
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
  showOpenFilePicker?(options: object): Promise<readonly FileSystemFileHandle[]>;
}
interface Asking {
  queryPermission?(what: { mode: "readwrite" }): Promise<PermissionState>;
  requestPermission?(what: { mode: "readwrite" }): Promise<PermissionState>;
}

/** `kind`: what the browser calls such files in its chooser. */
const types = (kind: string) => [{ description: kind, accept: { "application/json": [".json"] } }];

const choosers = (): Choosers => window as Choosers;

/** The browser can save into a file that a person has chosen. Else the page gives out downloads. */
export const canSaveInPlace = (): boolean => choosers().showSaveFilePicker !== undefined;

/** What came of a file being written. */
export type Wrote =
  | { readonly kind: "written"; readonly name: string }
  /** The person has chosen none, or has not allowed it. */
  | { readonly kind: "left" }
  /** The file is not as this page last read or wrote it. */
  | { readonly kind: "changed"; readonly name: string };

/** A file that a person chooses to save in; null where none was chosen. */
export async function chooseFile(suggested: string, kind: string): Promise<FileSystemFileHandle | null> {
  const found = await chosen(() =>
    choosers().showSaveFilePicker?.({ suggestedName: suggested, types: types(kind) }),
  );
  return found ?? null;
}

/** A file that a person opens and may later save in place; null where none was chosen; false where browsers cannot. */
export async function openChosen(kind: string): Promise<FileSystemFileHandle | null | false> {
  if (choosers().showOpenFilePicker === undefined) return false;
  const found = await chosen(() => choosers().showOpenFilePicker?.({ types: types(kind) }));
  return found?.[0] ?? null;
}

async function chosen<T>(choose: () => Promise<T> | undefined): Promise<T | undefined> {
  try {
    return await choose();
  } catch (fault) {
    if (fault instanceof Error && fault.name === "AbortError") return undefined;
    throw fault;
  }
}

/**
 * Writes a text into a file. `was`: fingerprint of the text that this page last read from it or wrote into it; null: whatever
 * stands there may go. All of it is written, or nothing: a browser puts the new file in the old one's place at the end.
 */
export async function writeFile(
  file: FileSystemFileHandle,
  text: string,
  was: string | null,
): Promise<Wrote> {
  if (!(await mayWrite(file))) return { kind: "left" };
  if (was !== null) {
    const now = await textOf(file);
    if (now !== null && printOf(now) !== was) return { kind: "changed", name: file.name };
  }
  const stream = await file.createWritable();
  try {
    await stream.write(text);
    await stream.close();
  } catch (fault) {
    await stream.abort().catch(() => undefined);
    throw fault;
  }
  return { kind: "written", name: file.name };
}

/** The fingerprint of a file's bait however it is laid out; of the text itself where it is none. */
function printOf(text: string): string {
  const parsed = parseScenario(text);
  return fingerprint(parsed.ok ? serialize(parsed.scenario) : text);
}

/** What stands in the file; null where it is gone: it is then made anew. */
async function textOf(file: FileSystemFileHandle): Promise<string | null> {
  try {
    return await (await file.getFile()).text();
  } catch (fault) {
    if (fault instanceof Error && fault.name === "NotFoundError") return null;
    throw fault;
  }
}

async function mayWrite(file: FileSystemFileHandle & Asking): Promise<boolean> {
  const mode = { mode: "readwrite" } as const;
  if ((await file.queryPermission?.(mode)) === "granted") return true;
  // Where a browser knows no such question, the writing itself says no.
  return (await file.requestPermission?.(mode)) !== "denied";
}
