import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { serialize } from "../../../src/document";
import { fingerprintOf } from "../../../src/sheet/fingerprint";
import { sha256 } from "../../../src/sheet/sha256";
import { sampleScenario } from "../../lib/sample";

describe("the fingerprint", () => {
  it("is SHA-256, as NIST's examples and Node's own have it", () => {
    const bytes = (text: string) => new TextEncoder().encode(text);
    // FIPS 180-2, appendix B.1 and B.2.
    expect(sha256(bytes("abc"))).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    expect(sha256(bytes("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"))).toBe(
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    );
    for (let length = 0; length < 200; length++) {
      const some = Uint8Array.from({ length }, (_, i) => (i * 37 + length) % 256);
      expect(sha256(some)).toBe(createHash("sha256").update(some).digest("hex"));
    }
  });

  it("is that of the file as it is saved", () => {
    const scenario = sampleScenario();
    const own = createHash("sha256").update(serialize(scenario)).digest("hex");
    const { full, plain, short } = fingerprintOf(scenario);
    expect(full).toBe(own);
    expect(plain).toBe(own.slice(0, 12));
    expect(short.replaceAll("-", "")).toBe(plain);
    expect(fingerprintOf({ ...scenario, name: `${scenario.name} 2` }).full).not.toBe(own);
  });
});
