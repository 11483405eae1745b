// node tools/run.mjs COMMAND [ARGUMENTS]: a package's command, with the locked packages in place.
import "./lib/node-version.mjs";
import { ensurePackages } from "./lib/packages.mjs";
import { runCommand } from "./lib/process.mjs";

const [command, ...args] = process.argv.slice(2);
if (command === undefined) {
  console.error("Say which command to run: node tools/run.mjs COMMAND [ARGUMENTS]");
  process.exit(2);
}
await ensurePackages();
const { code, why } = await runCommand(command, args);
if (why !== null) console.error(`${command}: ${why}`);
process.exitCode = code;
