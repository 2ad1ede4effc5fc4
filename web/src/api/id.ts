const SIGNS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
const LENGTH = 22; // 131 bits: never the same twice

/** A new id for something that this device makes. Works without a secure origin too. */
export function newId(): string {
  let out = '';
  while (out.length < LENGTH) {
    // Of 64 values the last two are thrown away, so that every sign is as likely.
    for (const byte of crypto.getRandomValues(new Uint8Array(LENGTH))) out += SIGNS[byte % 64] ?? '';
  }
  return out.slice(0, LENGTH);
}
