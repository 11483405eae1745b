/** The bits that every NaN counts as: IEEE 754 leaves its sign and most of its bits open, and engines write different ones. */
const NAN_BITS = 0x7ff8000000000000n;

/**
 * FNV-1a, 64 bit, over the eight bytes (little end first) of each number's IEEE 754 bits: equal numbers, equal hash.
 * 0 and −0 differ, as their bits do; every NaN is the same. Source: Fowler, Noll & Vo; draft-eastlake-fnv (offset and prime
 * from there).
 */
export class Fnv1a {
  // The 64-bit state as four 16-bit limbs, lowest first: 0xcbf29ce484222325.
  private a = 0x2325;
  private b = 0x8422;
  private c = 0x9ce4;
  private d = 0xcbf2;
  private readonly bytes = new Uint8Array(8);
  private readonly view = new DataView(this.bytes.buffer);

  byte(value: number): this {
    // × 0x100000001b3 = 2⁴⁰ + 0x1b3, modulo 2⁶⁴.
    const a = this.a ^ (value & 0xff);
    const { b, c, d } = this;
    const p0 = a * 0x1b3;
    const p1 = b * 0x1b3 + (p0 >>> 16);
    const p2 = c * 0x1b3 + (p1 >>> 16) + ((a << 8) & 0xffff);
    const p3 = d * 0x1b3 + (p2 >>> 16) + ((b << 8) & 0xffff) + (a >>> 8);
    this.a = p0 & 0xffff;
    this.b = p1 & 0xffff;
    this.c = p2 & 0xffff;
    this.d = p3 & 0xffff;
    return this;
  }

  number(value: number): this {
    if (Number.isNaN(value)) this.view.setBigUint64(0, NAN_BITS, true);
    else this.view.setFloat64(0, value, true);
    for (let i = 0; i < 8; i++) this.byte(this.bytes[i] as number);
    return this;
  }

  numbers(values: ArrayLike<number>): this {
    for (let i = 0; i < values.length; i++) this.number(values[i] as number);
    return this;
  }

  /** 16 hexadecimal digits. */
  hex(): string {
    return [this.d, this.c, this.b, this.a].map((v) => v.toString(16).padStart(4, "0")).join("");
  }
}

/** FNV-1a 64 of a list of numbers, as 16 hexadecimal digits. */
export const hashNumbers = (values: ArrayLike<number>): string => new Fnv1a().numbers(values).hex();
