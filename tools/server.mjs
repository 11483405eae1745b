// A small server for the built page: for this machine only, unless it is told otherwise. Run by itself: node tools/server.mjs [FOLDER]
import { existsSync, realpathSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { networkInterfaces } from "node:os";
import { basename, extname, join, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { headers, headersOf } from "./headers.mjs";
import { coder } from "./lib/coding.mjs";
import { root } from "./lib/process.mjs";

const own = "127.0.0.1";
/** Every address of this machine. */
const every = "0.0.0.0";
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
 * @returns {{ file: string, size: number, changed: number } | { status: 400 | 404 }}
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
  return found.isFile() ? { file, size: found.size, changed: found.mtimeMs } : { status: 404 };
}

/**
 * Does a request name this server by its own address? A page from elsewhere can point a name of its own at this
 * machine, and would then read what is served here as if it were its own: such a request carries that name.
 * Allowed are the address on which the request came in, and "localhost" for the machine itself.
 * @param {import("node:http").IncomingMessage} request
 */
function namesThisServer({ headers: { host: named }, socket: { localAddress, localPort } }) {
  // An IPv4 address on an IPv6 socket is written with this prefix; a zone ("%eth0") belongs to this machine alone.
  const address = (localAddress ?? "").replace(/^::ffff:/, "").replace(/%.*$/, "");
  const loopback = address === "::1" || /^127\./.test(address);
  const names = [address.includes(":") ? `[${address}]` : address, ...(loopback ? ["localhost"] : [])];
  const port = String(localPort);
  return names.some(
    (name) => named?.toLowerCase() === `${name}:${port}` || (port === "80" && named === name),
  );
}

/**
 * A server for the files of a folder. Not listening yet.
 * @param {string} folder
 */
export function serverOf(folder) {
  const real = realpathSync(folder);
  const read = coder();
  return createServer((request, response) => {
    /** @param {number} status @param {Record<string, string>} [more] */
    const refuse = (status, more = {}) => {
      response.writeHead(status, { ...headers, ...more, "Content-Type": "text/plain; charset=utf-8" });
      response.end(`${String(status)}\n`);
    };
    if (!namesThisServer(request)) {
      refuse(421);
      return;
    }
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
    const type = types[extname(found.file).toLowerCase()] ?? "application/octet-stream";
    read(found, type, request.headers["accept-encoding"]).then(
      ({ body, coding, tag }) => {
        const about = {
          ...(lasting ? headersOf(basename(found.file)) : headers),
          "Cache-Control": lasting ? "public, max-age=31536000, immutable" : "no-cache",
          ETag: tag,
          Vary: "Accept-Encoding",
        };
        // The browser has this very file: it asked only whether it still holds.
        if (request.headers["if-none-match"]?.split(/,\s*/).includes(tag) === true) {
          response.writeHead(304, about).end();
          return;
        }
        response.writeHead(200, {
          ...about,
          "Content-Type": type,
          "Content-Length": String(body.length),
          ...(coding === "identity" ? {} : { "Content-Encoding": coding }),
        });
        response.end(request.method === "HEAD" ? undefined : body);
      },
      () => refuse(500),
    );
  });
}

/**
 * Listen on the given port, or on the first free one from 4173 up.
 * @param {import("node:http").Server} server
 * @param {string | undefined} port from the environment
 * @param {boolean} [network] other devices may come too
 * @returns {Promise<string>} the address for this machine
 */
export async function listen(server, port, network = false) {
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
      server.listen(candidate, network ? every : own, () => {
        server.off("error", onError);
        settle(true);
      });
    });
    if (listening === true) {
      const address = server.address();
      if (address === null || typeof address === "string") throw new Error("The server has no port.");
      return `http://${own}:${String(address.port)}/`;
    }
  }
  throw new Error(`Port ${String(asked)} is in use. Set PORT to another one, or unset it to have one found.`);
}

/**
 * This machine's addresses in its networks: what another device calls it. The server answers only to addresses, so names
 * are not among them.
 * @param {string} address for this machine, with the port
 */
export function networkAddresses(address) {
  return Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ family, internal }) => family === "IPv4" && !internal)
    .map((one) => address.replace(own, one.address));
}

/**
 * Serve a folder until the process is told to end.
 * @param {string} folder
 * @param {boolean} [network] other devices may come too
 * @returns {Promise<string>} the address for this machine
 */
export async function serve(folder, network = false) {
  const server = serverOf(folder);
  const address = await listen(server, process.env["PORT"], network);
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
