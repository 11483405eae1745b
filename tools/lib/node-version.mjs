// Imported first by every command, and written so that an old Node can read it.

const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
const good = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;

if (!good) {
  console.error(
    `Trimwright needs Node 20.19 or newer (of the 22 series 22.12 or newer); this is Node ${process.versions.node}. ` +
      "Please install a newer Node and run the command again.",
  );
  process.exit(1);
}
