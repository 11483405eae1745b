import { deflateSync, Inflate } from "fflate";
import { LARGEST_TEXT } from "../json";
import { parseScenario } from "../parse";
import type { Scenario } from "../schema";
import { serialize } from "../serialize";
import { fingerprint } from "./fingerprint";

/**
 * A bait in the part of an address that stands behind '#', which browsers do not send to any server: 'bait=', the version
 * of this form, the fingerprint of the text, and the text, deflated (RFC 1951) and in base64url (RFC 4648).
 */
const FORM = /^#?bait=(\d{1,4})\.([0-9a-f]{16})\.([\w-]+)$/;
const VERSION = "1";

/** Longest link that is read, in characters. */
const LONGEST = 400_000;
/** Bytes of compressed text that are looked at between two looks at what came out of them. */
const PIECE = 1024;

export type ReadLink =
  | { readonly ok: true; readonly scenario: Scenario; readonly notes: readonly string[] }
  | { readonly ok: false; readonly why: string };

/** The bait as the part of an address behind '#'. */
export function linkOf(scenario: Scenario): string {
  const text = JSON.stringify(JSON.parse(serialize(scenario)));
  const packed = deflateSync(new TextEncoder().encode(text), { level: 9 });
  return `bait=${VERSION}.${fingerprint(text)}.${toBase64(packed)}`;
}

const DAMAGED =
  "This link is damaged: a part of it is missing or was changed on the way. Ask for it again, or for the bait's file.";

/** Reads what stands behind '#'. A link comes from others: it is bounded, checked, and read like any file. */
export function readLink(hash: string): ReadLink {
  if (hash.length > LONGEST)
    return { ok: false, why: "This link is too long for a bait. Ask for the bait's file." };
  const [, version, sum, packed] = FORM.exec(hash) ?? [];
  if (version === undefined || sum === undefined || packed === undefined) return { ok: false, why: DAMAGED };
  if (version !== VERSION)
    return {
      ok: false,
      why: "This link was made by a newer release. Load the page anew, or ask for the bait's file.",
    };
  const text = unpacked(packed);
  if (text === null || fingerprint(text) !== sum) return { ok: false, why: DAMAGED };
  const parsed = parseScenario(text);
  return parsed.ok
    ? parsed
    : { ok: false, why: `The bait of this link is refused. ${parsed.problems[0]?.message ?? ""}`.trim() };
}

/** The text; null where it is none, or more than a file may hold. */
function unpacked(packed: string): string | null {
  try {
    const bytes = fromBase64(packed);
    const pieces: Uint8Array[] = [];
    let size = 0;
    const ends: boolean[] = [];
    const inflate = new Inflate((piece, final) => {
      size += piece.length;
      ends.push(final);
      pieces.push(piece);
    });
    for (let at = 0; at < bytes.length; at += PIECE) {
      inflate.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
      // A small text can unpack to a thousand times its size: it is looked at as it grows.
      if (size > 3 * LARGEST_TEXT) return null;
    }
    if (!ends.includes(true)) return null;
    const whole = new Uint8Array(size);
    let at = 0;
    for (const piece of pieces) {
      whole.set(piece, at);
      at += piece.length;
    }
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(whole);
  } catch {
    return null;
  }
}

export function toBase64(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** Throws where it is no base64. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const plain = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  const bytes = new Uint8Array(plain.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = plain.charCodeAt(i);
  return bytes;
}
