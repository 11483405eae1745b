/**
 * The service worker: it keeps all files of one release, so that the page opens without a network. It answers from what it
 * keeps and looks for a newer release only by itself being fetched anew, which browsers do. A newer release waits until
 * no page of this one is open, or until a person asks for it.
 */

/** The build writes this in front of the file (tools/offline.mjs). */
declare const BUILT: {
  /** Names what is in all files: another release has another one. */
  readonly release: string;
  /** Their addresses, seen from the page's folder. */
  readonly files: readonly string[];
};

/** What is used of the types of service workers: those of the page and theirs do not go together in one program. */
interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Asked extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Told extends Waiting {
  readonly data: unknown;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: {
    matchAll(which: { type: "window"; includeUncontrolled: true }): Promise<readonly unknown[]>;
    claim(): Promise<void>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", then: (event: Waiting) => void): void;
  addEventListener(type: "fetch", then: (event: Asked) => void): void;
  addEventListener(type: "message", then: (event: Told) => void): void;
}
const scope = self as unknown as Scope;

const PREFIX = "trimwright/";
const OWN = PREFIX + BUILT.release;
/** The page stands under its folder's address. */
const PAGE = "./";
const files = new Set(BUILT.files);

scope.addEventListener("install", (event) => event.waitUntil(fill()));
// The first release takes the open page over at once: it has no other.
scope.addEventListener("activate", (event) => event.waitUntil(tidy().then(() => scope.clients.claim())));
scope.addEventListener("message", (event) => {
  if (event.data === "take over") event.waitUntil(scope.skipWaiting());
});
scope.addEventListener("fetch", (event) => {
  const { request } = event;
  const start = scope.registration.scope;
  const [address = ""] = request.url.split(/[?#]/, 1);
  if (request.method !== "GET" || !address.startsWith(start)) return;
  const path = address.slice(start.length);
  if (path === "" || path === "index.html") {
    event.waitUntil(tidy());
    event.respondWith(answer(PAGE, request));
  } else if (files.has(path) || path.startsWith("assets/")) event.respondWith(answer(path, request));
});

/** Fetches all files; one that fails leaves the release that is kept in its place. */
async function fill(): Promise<void> {
  const cache = await caches.open(OWN);
  await Promise.all(
    [PAGE, ...BUILT.files].map(async (path) => {
      // A name under assets/ carries a hash of what is in the file: a copy of another release is as good.
      const lasting = path.startsWith("assets/");
      const copy = lasting ? await caches.match(path) : undefined;
      const reply = copy ?? (await fetch(path, { cache: lasting ? "default" : "no-cache" }));
      if (!reply.ok || reply.redirected) throw new Error(`${path} is not to be had.`);
      if (path === PAGE) await fits(reply.clone());
      await cache.put(path, reply);
    }),
  );
}

/** A page that loads files of yet another release would be half there. */
async function fits(reply: Response): Promise<void> {
  for (const [path] of (await reply.text()).matchAll(/assets\/[^"']+/g))
    if (!files.has(path)) throw new Error(`The page names ${path}, which is of another release.`);
}

/** This release's copy; a page of an earlier one, still open, gets what belongs to it. */
async function answer(path: string, request: Request): Promise<Response> {
  const own = await (await caches.open(OWN)).match(path, { ignoreVary: true });
  return own ?? (await caches.match(path, { ignoreVary: true })) ?? fetch(request);
}

/** Forgets what earlier releases kept, once no page can be one of theirs. */
async function tidy(): Promise<void> {
  const open = await scope.clients.matchAll({ type: "window", includeUncontrolled: true });
  if (open.length > 0) return;
  const all = await caches.keys();
  await Promise.all(
    all.filter((one) => one.startsWith(PREFIX) && one !== OWN).map((one) => caches.delete(one)),
  );
}
