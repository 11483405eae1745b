import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request, type IncomingHttpHeaders, type Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { headers, policy } from "../../../tools/headers.mjs";
import { root } from "../../../tools/lib/process.mjs";
import { listen, networkAddresses, serverOf } from "../../../tools/server.mjs";

const around = mkdtempSync(join(tmpdir(), "trimwright-server-"));
const folder = join(around, "dist");
const long = "export const words = 1;\n".repeat(400);
let server: Server;
let port: number;

beforeAll(async () => {
  mkdirSync(join(folder, "assets"), { recursive: true });
  mkdirSync(join(folder, ".vite"));
  mkdirSync(join(around, "dist-beside"));
  writeFileSync(join(around, "secret.txt"), "secret");
  writeFileSync(join(around, "dist-beside/secret.txt"), "secret");
  writeFileSync(join(folder, "index.html"), "<!doctype html>");
  writeFileSync(join(folder, "assets/main-1a2b.js"), "export {};");
  writeFileSync(join(folder, "assets/solid-worker-5E_f.js"), "export {};");
  writeFileSync(join(folder, "assets/long-3c4d.js"), long);
  writeFileSync(join(folder, "assets/picture.png"), "x".repeat(5000));
  writeFileSync(join(folder, "assets/two words.svg"), "<svg/>");
  writeFileSync(join(folder, ".vite/manifest.json"), "{}");
  symlinkSync(join(around, "secret.txt"), join(folder, "assets/link.txt"));
  server = serverOf(folder);
  port = Number(new URL(await listen(server, "0")).port);
});
afterAll(() => {
  server.close();
  rmSync(around, { recursive: true });
});

/** A request with its path exactly as given: nothing on the way tidies it up. */
function ask(
  path: string,
  method = "GET",
  more: Record<string, string> = {},
): Promise<{ status: number; headers: IncomingHttpHeaders; body: string; bytes: Buffer }> {
  return new Promise((resolve, reject) => {
    request({ host: "127.0.0.1", port, path, method, headers: more }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => {
        const bytes = Buffer.concat(parts);
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: bytes.toString(),
          bytes,
        });
      });
    })
      .on("error", reject)
      .end();
  });
}

describe("the server", () => {
  it("serves the page at its root, with the policy and the other headers", async () => {
    const answer = await ask("/");
    expect(answer.status).toBe(200);
    expect(answer.body).toBe("<!doctype html>");
    expect(answer.headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(answer.headers["cache-control"]).toBe("no-cache");
    for (const [name, value] of Object.entries(headers))
      expect(answer.headers[name.toLowerCase()]).toBe(value);
  });

  it("gives each kind of file its type, and lets hashed files be kept", async () => {
    const script = await ask("/assets/main-1a2b.js?x=1");
    expect(script.headers["content-type"]).toBe("text/javascript; charset=utf-8");
    expect(script.headers["cache-control"]).toContain("immutable");
    expect((await ask("/assets/two%20words.svg")).headers["content-type"]).toBe(
      "image/svg+xml; charset=utf-8",
    );
  });

  it("answers HEAD without a body, and refuses what is neither GET nor HEAD", async () => {
    const head = await ask("/", "HEAD");
    expect([head.status, head.body, head.headers["content-length"]]).toEqual([200, "", "15"]);
    const post = await ask("/", "POST");
    expect([post.status, post.headers.allow]).toEqual([405, "GET, HEAD"]);
  });

  it.each([
    "/../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/secret.txt",
    "/%2e%2e%2fsecret.txt",
    "/assets/../../secret.txt",
    "/..\\secret.txt",
    "/../dist-beside/secret.txt",
    "//etc/passwd",
    "/assets/link.txt",
    "/.vite/manifest.json",
    "/assets",
    "/assets/",
    "/nothing.html",
  ])("does not serve %s", async (path) => {
    const answer = await ask(path);
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain("secret");
  });

  it.each(["/%", "/%zz", "/a%00.html", "nowhere"])("calls %s a bad request", async (path) => {
    expect((await ask(path)).status).toBe(400);
  });

  it("answers to its own names alone", async () => {
    const own = [`127.0.0.1:${port}`, `localhost:${port}`, `LOCALHOST:${port}`];
    for (const host of own) expect((await ask("/", "GET", { host })).status, host).toBe(200);
    const others = [
      ...[`rebound.example:${port}`, "127.0.0.1", "localhost", `127.0.0.1:${port + 1}`, `127.0.0.1.:${port}`],
      ...[`127.0.0.2:${port}`, `0.0.0.0:${port}`, `[::1]:${port}`, `127.0.0.1:${port}.rebound.example`],
    ];
    for (const host of others) {
      const answer = await ask("/", "GET", { host });
      expect(answer.status, host).toBe(421);
      expect(answer.body, host).not.toContain("doctype");
    }
  });

  it("sends text compressed to whoever takes it, and every form gives the same file", async () => {
    const plain = await ask("/assets/long-3c4d.js");
    expect(plain.headers["content-encoding"]).toBeUndefined();
    expect(plain.headers.vary).toBe("Accept-Encoding");
    expect(plain.body).toBe(long);
    for (const [accepted, coding, decode] of [
      ["gzip, deflate, br, zstd", "br", brotliDecompressSync],
      ["gzip, deflate", "gzip", gunzipSync],
      ["br;q=0, gzip;q=0.5", "gzip", gunzipSync],
      ["*", "br", brotliDecompressSync],
    ] as const) {
      const answer = await ask("/assets/long-3c4d.js", "GET", { "accept-encoding": accepted });
      expect(answer.headers["content-encoding"], accepted).toBe(coding);
      expect(answer.headers["content-length"], accepted).toBe(String(answer.bytes.length));
      expect(answer.bytes.length, accepted).toBeLessThan(long.length / 10);
      expect(decode(answer.bytes).toString(), accepted).toBe(long);
      expect(answer.headers["cache-control"]).toContain("immutable");
      expect(answer.headers["content-security-policy"]).toBe(headers["Content-Security-Policy"]);
    }
  });

  it.each([
    ["/assets/long-3c4d.js", "identity"],
    ["/assets/long-3c4d.js", "gzip;q=0, br;q=0"],
    ["/assets/long-3c4d.js", "*;q=0"],
    ["/assets/picture.png", "gzip, br"],
    ["/", "gzip, br"],
  ])("sends %s as it is to whoever asks with %s", async (path, accepted) => {
    const answer = await ask(path, "GET", { "accept-encoding": accepted });
    expect(answer.status).toBe(200);
    expect(answer.headers["content-encoding"]).toBeUndefined();
  });

  it("says that the browser's copy still holds, until the file changes", async () => {
    const page = join(folder, "changing.html");
    writeFileSync(page, "one");
    const first = await ask("/changing.html");
    const tag = first.headers.etag ?? "";
    const again = await ask("/changing.html", "GET", { "if-none-match": tag });
    expect([again.status, again.body, again.headers["cache-control"]]).toEqual([304, "", "no-cache"]);
    writeFileSync(page, "two, longer");
    const changed = await ask("/changing.html", "GET", { "if-none-match": tag });
    expect([changed.status, changed.body]).toEqual([200, "two, longer"]);
    expect(changed.headers.etag).not.toBe(tag);
  });

  it("says in a sentence that a port is taken or is none", async () => {
    const other = serverOf(folder);
    await expect(listen(other, String(port))).rejects.toThrow(`Port ${port} is in use`);
    await expect(listen(other, "no")).rejects.toThrow('PORT is "no"');
  });
});

describe("the server for other devices", () => {
  it("answers to each address of this machine by that address, and to no other name", async () => {
    const open = serverOf(folder);
    const address = await listen(open, "0", true);
    try {
      for (const one of [address, ...networkAddresses(address)]) {
        expect((await fetch(one)).status).toBe(200);
        const { port: asked, hostname } = new URL(one);
        const status = await new Promise((resolve, reject) => {
          const named = { Host: `elsewhere.example:${asked}` };
          request({ host: hostname, port: asked, headers: named }, (reply) =>
            resolve(reply.resume().statusCode),
          )
            .on("error", reject)
            .end();
        });
        expect(status).toBe(421);
      }
    } finally {
      open.close();
    }
  });
  it("is not there for other devices unless it is told to be", async () => {
    for (const one of networkAddresses(`http://127.0.0.1:${port}/`))
      await expect(fetch(one)).rejects.toThrow("fetch failed");
  });
});

describe("the policy of the worker that makes solids", () => {
  it("lets it compile its library, and nothing else has that", async () => {
    const policyOf = async (path: string) => (await ask(path)).headers["content-security-policy"];
    const usual = headers["Content-Security-Policy"];
    expect(await policyOf("/assets/solid-worker-5E_f.js")).toBe(
      usual.replace("script-src 'self'", "script-src 'self' 'wasm-unsafe-eval'"),
    );
    for (const path of ["/", "/assets/main-1a2b.js", "/solid-worker-5E_f.js"])
      expect(await policyOf(path)).toBe(usual);
    expect(usual).not.toContain("unsafe");
  });
});

describe("the page's own policy", () => {
  it("is the server's, but for what a page cannot say of itself", () => {
    const page = readFileSync(join(root, "src/ui/index.html"), "utf8");
    const meta = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1] ?? "";
    const stated = Object.fromEntries(
      meta.split(";").map((part) => {
        const [directive = "", ...sources] = part.trim().split(/\s+/);
        return [directive, sources.join(" ")];
      }),
    );
    const { "frame-ancestors": onlyByHeader, ...rest } = policy;
    expect(onlyByHeader).toBe("'none'");
    expect(stated).toEqual(rest);
  });
});
