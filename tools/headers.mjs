/**
 * What the page may do: run its own scripts and workers, show pictures that it made itself, and nothing else.
 * The page says the same in its own meta element, where `frame-ancestors` has no meaning.
 */
export const policy = {
  "default-src": "'none'",
  "script-src": "'self'",
  "style-src": "'self'",
  "img-src": "'self' blob: data:",
  "font-src": "'self'",
  "manifest-src": "'self'",
  "connect-src": "'self'",
  "worker-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
  "frame-ancestors": "'none'",
};

/** @param {Readonly<Record<string, string>>} rules */
const inWords = (rules) =>
  Object.entries(rules)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join("; ");

/** Sent with every answer of the server. */
export const headers = {
  "Content-Security-Policy": inWords(policy),
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Embedder-Policy": "require-corp",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
};

/**
 * The worker that makes solids runs a library that is compiled to WebAssembly, which a browser counts as making code. It and
 * nothing else may do so: a worker has the policy of its own file's answer, not the page's.
 */
const solids = {
  ...headers,
  "Content-Security-Policy": inWords({ ...policy, "script-src": "'self' 'wasm-unsafe-eval'" }),
};

/** The headers of a file's answer, by the file's name. @param {string} name */
export const headersOf = (name) => (/^solid-worker-[\w-]+\.js$/.test(name) ? solids : headers);
