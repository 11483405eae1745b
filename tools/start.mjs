// npm start [-- --host]: install what is missing, build, serve, and say where. With --host other devices can come too.
import "./lib/node-version.mjs";
import { join } from "node:path";
import { ensurePackages } from "./lib/packages.mjs";
import { root, runCommand } from "./lib/process.mjs";
import { networkAddresses, serve } from "./server.mjs";

const [option, ...more] = process.argv.slice(2);
if ((option !== undefined && option !== "--host") || more.length > 0) {
  console.error(
    `npm start knows one option, --host, and not ${JSON.stringify([option, ...more].join(" "))}: npm start -- --host lets ` +
      "other devices of your network open the page.",
  );
  process.exit(1);
}
const network = option === "--host";

await ensurePackages();
const { code, why } = await runCommand("vite", ["build", "--logLevel", "warn"]);
if (code !== 0) {
  console.error(
    `The page could not be built (${why ?? `exit code ${String(code)}`}): see the message above.`,
  );
  process.exit(1);
}
try {
  const address = await serve(join(root, "dist"), network);
  console.log(`Trimwright is at ${address}  (Ctrl+C ends it)`);
  if (network) {
    const found = networkAddresses(address);
    console.log(
      found.length === 0
        ? "This machine is in no network now, so no other device can open it."
        : `On other devices of this network: ${found.join(" or ")}`,
    );
    console.log(
      "Anybody on this network can open the page while this runs, so use it on a network you trust. Each browser keeps its own baits.",
    );
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
