import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack, unpack, type Kept } from './parcel';

describe('an answer on its way', () => {
  it('arrives as it was sent', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (answer) => {
        const text = JSON.stringify(answer);
        expect(unpack(pack(text), new Map())).toEqual(JSON.parse(text));
      }),
    );
    expect(unpack(pack(''), new Map())).toBeUndefined();
  });

  it('keeps the zones that say the same and takes the others anew', () => {
    const kept: Kept = new Map();
    const at = (level: number) =>
      unpack(pack(JSON.stringify({ schema: 'x', zones: [{ zone: 'a' }, { zone: 'b', level }] })), kept) as {
        schema: string;
        zones: unknown[];
      };
    const [first, again] = [at(5), at(6)];
    expect(again.schema).toBe('x');
    expect(again.zones[0]).toBe(first.zones[0]);
    expect(again.zones[1]).toEqual({ zone: 'b', level: 6 });
  });

  it('lets text that is no JSON be found out by the reader', () => {
    expect(() => unpack(pack('<p>'), new Map())).toThrow(SyntaxError);
  });
});
