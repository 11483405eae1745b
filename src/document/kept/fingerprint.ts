import { Fnv1a } from "../../model/base";

/** A text in 16 hexadecimal digits: equal texts have equal fingerprints. It finds changes, and is no protection. */
export function fingerprint(text: string): string {
  const hash = new Fnv1a();
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    hash.byte(unit & 0xff).byte(unit >> 8);
  }
  return hash.hex();
}
