// A small server for the built page, for this machine only. Run by itself: node tools/server.mjs [FOLDER]
import { createReadStream, existsSync, realpathSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { headers } from "./headers.mjs";
import { root } from "./lib/process.mjs";

const host = "127.0.0.1";
const usualPort = 4173;

/** @type {Readonly<Record<string, string>>} */
const types = {
  ".css": "text/css; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml; charset=utf-8",
  ".ttf": "font/ttf",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".woff2": "font/woff2",
};

/**
 * The file that a request means, or the status that refuses it. Nothing outside the folder is ever served, whether
 * named by "..", by an encoded form of it, or by a link that leads out.
 * @param {string} folder real path
 * @param {string} url as requested
 * @returns {{ file: string, size: number } | { status: 400 | 404 }}
 */
function fileOf(folder, url) {
  let path;
  try {
    path = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? "");
  } catch {
    return { status: 400 };
  }
  if (!path.startsWith("/") || path.includes("\0")) return { status: 400 };
  const wanted = resolve(folder, `.${path}`, path.endsWith("/") ? "index.html" : "");
  if (!wanted.startsWith(folder + sep) || !existsSync(wanted)) return { status: 404 };
  const file = realpathSync(wanted);
  if (!file.startsWith(folder + sep)) return { status: 404 };
  // Names that start with a dot are not for the page.
  if (
    file
      .slice(folder.length)
      .split(sep)
      .some((part) => part.startsWith("."))
  )
    return { status: 404 };
  const found = statSync(file);
  return found.isFile() ? { file, size: found.size } : { status: 404 };
}

/**
 * A server for the files of a folder. Not listening yet.
 * @param {string} folder
 */
export function serverOf(folder) {
  const real = realpathSync(folder);
  return createServer((request, response) => {
    /** @param {number} status @param {Record<string, string>} [more] */
    const refuse = (status, more = {}) => {
      response.writeHead(status, { ...headers, ...more, "Content-Type": "text/plain; charset=utf-8" });
      response.end(`${String(status)}\n`);
    };
    if (request.method !== "GET" && request.method !== "HEAD") {
      refuse(405, { Allow: "GET, HEAD" });
      return;
    }
    const found = fileOf(real, request.url ?? "/");
    if ("status" in found) {
      refuse(found.status);
      return;
    }
    // The names under assets/ carry a hash of what is in them, so those files never change.
    const lasting = found.file.startsWith(join(real, "assets") + sep);
    response.writeHead(200, {
      ...headers,
      "Content-Type": types[extname(found.file).toLowerCase()] ?? "application/octet-stream",
      "Content-Length": String(found.size),
      "Cache-Control": lasting ? "public, max-age=31536000, immutable" : "no-cache",
    });
    if (request.method === "HEAD") {
      response.end();
      return;
    }
    createReadStream(found.file)
      .on("error", () => response.destroy())
      .pipe(response);
  });
}

/**
 * Listen on the given port, or on the first free one from 4173 up.
 * @param {import("node:http").Server} server
 * @param {string | undefined} port from the environment
 * @returns {Promise<string>} the address
 */
export async function listen(server, port) {
  const asked = port === undefined || port === "" ? null : Number(port);
  if (asked !== null && (!Number.isInteger(asked) || asked < 0 || asked > 65535))
    throw new Error(
      `PORT is "${String(port)}"; it must be a whole number from 0 to 65535 (0: any free port).`,
    );
  const candidates = asked === null ? [...Array.from({ length: 20 }, (_, i) => usualPort + i), 0] : [asked];
  for (const candidate of candidates) {
    const listening = await new Promise((settle, fail) => {
      const onError = (/** @type {NodeJS.ErrnoException} */ error) => {
        if (error.code === "EADDRINUSE") settle(false);
        else fail(error);
      };
      server.once("error", onError);
      server.listen(candidate, host, () => {
        server.off("error", onError);
        settle(true);
      });
    });
    if (listening === true) {
      const address = server.address();
      if (address === null || typeof address === "string") throw new Error("The server has no port.");
      return `http://${host}:${String(address.port)}/`;
    }
  }
  throw new Error(`Port ${String(asked)} is in use. Set PORT to another one, or unset it to have one found.`);
}

/**
 * Serve a folder until the process is told to end.
 * @param {string} folder
 * @returns {Promise<string>} the address
 */
export async function serve(folder) {
  const server = serverOf(folder);
  const address = await listen(server, process.env["PORT"]);
  for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM"]))
    process.once(signal, () => {
      server.close(() => process.exit(0));
      server.closeAllConnections();
    });
  return address;
}

const startedAlone = import.meta.url === pathToFileURL(process.argv[1] ?? "").href;
if (startedAlone) {
  try {
    console.log(await serve(resolve(process.argv[2] ?? join(root, "dist"))));
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
