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
  "connect-src": "'self'",
  "worker-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
  "frame-ancestors": "'none'",
};

/** Sent with every answer of the server. */
export const headers = {
  "Content-Security-Policy": Object.entries(policy)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join("; "),
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Embedder-Policy": "require-corp",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
};
