/**
 * A text as a QR code (ISO/IEC 18004, model 2): UTF-8 bytes, error correction L, versions 1 to 25. Rows of modules, true = dark.
 * Undefined where the text does not fit: 1273 bytes at most.
 */
export function qrCode(text: string): boolean[][] | undefined {
  const bytes = [...new TextEncoder().encode(text)];
  for (let version = 1; version <= PER_BLOCK.length; version++) {
    const counted = version < 10 ? 8 : 16; // bits of the length
    const room = dataBytes(version);
    if (4 + counted + bytes.length * 8 > room * 8) continue;
    return drawn(version, corrected(version, packed(bytes, counted, room)));
  }
  return undefined;
}

// The standard's table 9, level L: correction codewords of a block, and blocks, by version.
const PER_BLOCK = [
  ...[7, 10, 15, 20, 26, 18, 20, 24, 30, 18, 20, 24, 26, 30, 22],
  ...[24, 28, 30, 28, 28, 28, 28, 30, 30, 26],
];
const BLOCKS = [1, 1, 1, 1, 1, 2, 2, 2, 2, 4, 4, 4, 4, 4, 6, 6, 6, 6, 7, 8, 8, 9, 9, 10, 12];

/** Codewords that hold data and correction: what the patterns of a version leave. */
function allBytes(version: number): number {
  const along = Math.floor(version / 7) + 2;
  let bits = (16 * version + 128) * version + 64;
  if (version > 1) bits -= (25 * along - 10) * along - 55;
  if (version > 6) bits -= 36;
  return Math.floor(bits / 8);
}
const dataBytes = (version: number) => allBytes(version) - PER_BLOCK[version - 1]! * BLOCKS[version - 1]!;

function packed(bytes: readonly number[], counted: number, room: number): number[] {
  const bits: number[] = [];
  const put = (value: number, length: number) => {
    for (let i = length - 1; i >= 0; i--) bits.push((value >>> i) & 1);
  };
  put(0b0100, 4);
  put(bytes.length, counted);
  for (const byte of bytes) put(byte, 8);
  put(0, Math.min(4, room * 8 - bits.length));
  put(0, (8 - (bits.length % 8)) % 8);
  for (let fill = 0xec; bits.length < room * 8; fill ^= 0xec ^ 0x11) put(fill, 8);
  return Array.from({ length: room }, (_, i) =>
    bits.slice(i * 8, i * 8 + 8).reduce((byte, bit) => byte * 2 + bit, 0),
  );
}

/** Product in the field of 256 elements over x⁸ + x⁴ + x³ + x² + 1. */
function times(a: number, b: number): number {
  let out = 0;
  for (let i = 7; i >= 0; i--) {
    out = (out << 1) ^ ((out >>> 7) * 0x11d);
    out ^= ((b >>> i) & 1) * a;
  }
  return out;
}

/** Remainder of Reed and Solomon: the correction of one block. */
function correction(data: readonly number[], many: number): number[] {
  const divisor = [...Array<number>(many - 1).fill(0), 1];
  for (let i = 0, root = 1; i < many; i++, root = times(root, 2))
    for (let j = 0; j < many; j++) divisor[j] = times(divisor[j]!, root) ^ (divisor[j + 1] ?? 0);
  const out = Array<number>(many).fill(0);
  for (const byte of data) {
    const factor = byte ^ out.shift()!;
    out.push(0);
    divisor.forEach((one, i) => (out[i]! ^= times(one, factor)));
  }
  return out;
}

/** Data in its blocks, the shorter ones first, each with its correction; then taken from all in turn. */
function corrected(version: number, data: readonly number[]): number[] {
  const [many, blocks] = [PER_BLOCK[version - 1]!, BLOCKS[version - 1]!];
  const short = blocks - (data.length % blocks);
  const length = Math.floor(data.length / blocks);
  let at = 0;
  const parts = Array.from({ length: blocks }, (_, i) => {
    const part = data.slice(at, (at += length + (i < short ? 0 : 1)));
    return { part, after: correction(part, many) };
  });
  const out: number[] = [];
  for (let i = 0; i <= length; i++) for (const { part } of parts) if (i < part.length) out.push(part[i]!);
  for (let i = 0; i < many; i++) for (const { after } of parts) out.push(after[i]!);
  return out;
}

const masks: readonly ((x: number, y: number) => number)[] = [
  (x, y) => (x + y) % 2,
  (_, y) => y % 2,
  (x) => x % 3,
  (x, y) => (x + y) % 3,
  (x, y) => (Math.floor(x / 3) + Math.floor(y / 2)) % 2,
  (x, y) => ((x * y) % 2) + ((x * y) % 3),
  (x, y) => (((x * y) % 2) + ((x * y) % 3)) % 2,
  (x, y) => (((x + y) % 2) + ((x * y) % 3)) % 2,
];

function drawn(version: number, codewords: readonly number[]): boolean[][] {
  const size = version * 4 + 17;
  const dark = Array.from({ length: size }, () => Array<boolean>(size).fill(false));
  const fixed = dark.map((row) => row.map(() => false));
  const set = (x: number, y: number, on: boolean) => {
    if (x < 0 || y < 0 || x >= size || y >= size) return;
    dark[y]![x] = on;
    fixed[y]![x] = true;
  };
  const square = (cx: number, cy: number, reach: number, light: readonly number[]) => {
    for (let dy = -reach; dy <= reach; dy++)
      for (let dx = -reach; dx <= reach; dx++)
        set(cx + dx, cy + dy, !light.includes(Math.max(Math.abs(dx), Math.abs(dy))));
  };
  for (let i = 0; i < size; i++) {
    set(6, i, i % 2 === 0);
    set(i, 6, i % 2 === 0);
  }
  for (const [x, y] of [
    [3, 3],
    [size - 4, 3],
    [3, size - 4],
  ] as const)
    square(x, y, 4, [2, 4]);
  const along = version === 1 ? 0 : Math.floor(version / 7) + 2;
  const step = Math.ceil((version * 4 + 4) / (along * 2 - 2)) * 2;
  const places = Array.from({ length: along }, (_, i) => (i ? size - 7 - (along - 1 - i) * step : 6));
  for (const [i, x] of places.entries())
    for (const [j, y] of places.entries()) {
      const corner = (i === 0 && (j === 0 || j === along - 1)) || (i === along - 1 && j === 0);
      if (!corner) square(x, y, 2, [1]);
    }
  const format = (mask: number) => {
    const data = (1 << 3) | mask;
    let rest = data;
    for (let i = 0; i < 10; i++) rest = (rest << 1) ^ ((rest >>> 9) * 0x537);
    const bits = ((data << 10) | rest) ^ 0x5412;
    const bit = (i: number) => ((bits >>> i) & 1) === 1;
    for (let i = 0; i < 15; i++) {
      // Beside the upper left corner, over the lines of timing; and shared out to the two others.
      if (i < 8) set(8, i < 6 ? i : i + 1, bit(i));
      else set(i === 8 ? 7 : 14 - i, 8, bit(i));
      if (i < 8) set(size - 1 - i, 8, bit(i));
      else set(8, size - 15 + i, bit(i));
    }
    set(8, size - 8, true);
  };
  format(0);
  if (version > 6) {
    let rest = version;
    for (let i = 0; i < 12; i++) rest = (rest << 1) ^ ((rest >>> 11) * 0x1f25);
    const bits = (version << 12) | rest;
    for (let i = 0; i < 18; i++) {
      const [a, b] = [size - 11 + (i % 3), Math.floor(i / 3)];
      set(a, b, ((bits >>> i) & 1) === 1);
      set(b, a, ((bits >>> i) & 1) === 1);
    }
  }
  let next = 0;
  for (let right = size - 1; right >= 1; right -= 2) {
    if (right === 6) right = 5;
    for (let down = 0; down < size; down++)
      for (const x of [right, right - 1]) {
        const y = ((right + 1) & 2) === 0 ? size - 1 - down : down;
        if (fixed[y]![x]) continue;
        dark[y]![x] = (((codewords[next >>> 3] ?? 0) >>> (7 - (next & 7))) & 1) === 1;
        next++;
      }
  }
  const plain = dark.map((row) => [...row]);
  const masked = (mask: number) => {
    format(mask);
    for (let y = 0; y < size; y++)
      for (let x = 0; x < size; x++)
        if (!fixed[y]![x]) dark[y]![x] = plain[y]![x]! !== (masks[mask]!(x, y) === 0);
    return dark.map((row) => [...row]);
  };
  const tried = masks.map((_, mask) => masked(mask));
  return tried.reduce((best, one) => (trouble(one) < trouble(best) ? one : best));
}

/** How hard a pattern is to read: the four penalties of the standard's section on masks. */
function trouble(dark: readonly boolean[][]): number {
  const size = dark.length;
  const columns = dark.map((_, x) => dark.map((row) => row[x]!));
  let out = 0;
  for (const line of [...dark, ...columns]) {
    const text = line.map((on) => (on ? '1' : '0')).join('');
    for (const run of text.match(/0{5,}|1{5,}/g) ?? []) out += run.length - 2;
    for (const like of [/(?=10111010000)/g, /(?=00001011101)/g]) out += 40 * (text.match(like)?.length ?? 0);
  }
  for (let y = 1; y < size; y++)
    for (let x = 1; x < size; x++) {
      const on = dark[y]![x];
      if (on === dark[y - 1]![x] && on === dark[y]![x - 1] && on === dark[y - 1]![x - 1]) out += 3;
    }
  const share = dark.flat().filter(Boolean).length / (size * size);
  return out + 10 * Math.floor(Math.abs(share - 0.5) * 20);
}
