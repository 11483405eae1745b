/** One of the project's own scenarios, by its file. */
export interface Example {
  readonly file: string;
  readonly name: string;
  readonly notes: string;
  readonly text: string;
}

const files = import.meta.glob<string>("../../../scenarios/*.json", { query: "?raw", import: "default" });

/** All scenarios of the project, loaded when asked for, in the order of their names. */
export async function examples(): Promise<readonly Example[]> {
  const loaded = await Promise.all(
    Object.entries(files).map(async ([path, load]) => {
      const text = await load();
      const head = JSON.parse(text) as { name?: unknown; notes?: unknown };
      const file = path.slice(path.lastIndexOf("/") + 1);
      return {
        file,
        name: typeof head.name === "string" ? head.name : file,
        notes: typeof head.notes === "string" ? head.notes : "",
        text,
      };
    }),
  );
  return loaded.sort((a, b) => a.name.localeCompare(b.name));
}
