import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { build, type BuildOptions } from "esbuild";

const CACHE = join("node_modules", ".cache", "trimwright");

/** A copy of the sources, to which a test adds something by a recipe of DEVELOPERS.md. */
export class Copy {
  readonly #root: string;

  constructor(name: string) {
    mkdirSync(CACHE, { recursive: true });
    this.#root = mkdtempSync(join(CACHE, `${name}-`));
    cpSync("src", join(this.#root, "src"), { recursive: true });
  }

  path(file: string): string {
    return join(this.#root, file);
  }

  write(file: string, text: string): void {
    mkdirSync(dirname(this.path(file)), { recursive: true });
    writeFileSync(this.path(file), text);
  }

  /** Puts text behind words that stand in a file once. */
  put(file: string, before: string, text: string): void {
    const old = readFileSync(this.path(file), "utf8");
    if (old.split(before).length !== 2) throw new Error(`${file} does not hold "${before}" once`);
    this.write(
      file,
      old.replace(before, () => `${before}${text}`),
    );
  }

  /** Makes one script of `entry` and all that it imports; gives its place. */
  async bundle(entry: string, name: string, options: BuildOptions = {}): Promise<string> {
    const from = `${name}.entry.ts`;
    this.write(from, entry);
    const outfile = this.path(name);
    await build({
      entryPoints: [this.path(from)],
      outfile,
      bundle: true,
      platform: "node",
      format: "esm",
      logLevel: "error",
      ...options,
    });
    return outfile;
  }

  /** What `entry` exports. */
  async program<T>(entry: string, name: string): Promise<T> {
    const file = await this.bundle(entry, name);
    return (await import(/* @vite-ignore */ pathToFileURL(file).href)) as T;
  }

  remove(): void {
    rmSync(this.#root, { recursive: true, force: true });
  }
}
