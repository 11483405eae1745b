import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request, type IncomingHttpHeaders, type Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { headers, policy } from "../../../tools/headers.mjs";
import { root } from "../../../tools/lib/process.mjs";
import { listen, serverOf } from "../../../tools/server.mjs";

const around = mkdtempSync(join(tmpdir(), "trimwright-server-"));
const folder = join(around, "dist");
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
): Promise<{ status: number; headers: IncomingHttpHeaders; body: string }> {
  return new Promise((resolve, reject) => {
    request({ host: "127.0.0.1", port, path, method }, (response) => {
      let body = "";
      response.on("data", (part: Buffer) => (body += part.toString()));
      response.on("end", () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
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

  it("says in a sentence that a port is taken or is none", async () => {
    const other = serverOf(folder);
    await expect(listen(other, String(port))).rejects.toThrow(`Port ${port} is in use`);
    await expect(listen(other, "no")).rejects.toThrow('PORT is "no"');
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
