import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack, unpack, type Kept, type Parcel } from './parcel';

describe('an answer on its way', () => {
  it('arrives as it was sent', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (answer) => {
        const text = JSON.stringify(answer);
        expect(unpack(pack(text, 'any')).answer).toEqual(JSON.parse(text));
      }),
    );
    expect(unpack(pack('', 'any')).answer).toBeUndefined();
  });

  it('arrives as it was sent whatever the page has of those before', () => {
    const name = fc.constantFrom('a', 'b', 'c', 'd');
    const zone = fc.record(
      { zone: name, today: fc.record({ level: fc.integer({ min: 1, max: 3 }) }), bowl: name },
      { requiredKeys: ['zone'] },
    );
    const answers = fc.array(
      // Up to four questions are asked before an answer comes.
      fc.record({
        zones: fc.array(zone, { maxLength: 4 }),
        late: fc.integer({ min: 0, max: 3 }),
        more: fc.record(
          { cost: fc.integer({ min: 0, max: 2 }), notes: fc.array(name) },
          { requiredKeys: [] },
        ),
      }),
    );
    let run = 0;
    fc.assert(
      fc.property(answers, (list) => {
        const kind = `kind ${run++}`;
        const haves: (Kept | undefined)[] = [undefined];
        for (const { zones, late, more } of list) {
          const has = haves.at(-1 - Math.min(late, haves.length - 1));
          const sent = { schema: 'x', ...more, zones };
          const { answer, kept } = unpack(pack(JSON.stringify(sent), kind, has?.nth), has);
          expect(answer).toEqual(sent);
          haves.push(kept);
        }
      }),
    );
  });

  it('keeps the zones that say the same and takes the others anew', () => {
    const at = (level: number) =>
      JSON.stringify({ schema: 'x', zones: [{ zone: 'a' }, { zone: 'b', level }] });
    const first = unpack(pack(at(5), 'plan'));
    const parcel: Parcel = pack(at(6), 'plan', first.kept?.nth);
    expect(parcel.zones).toEqual([0, { like: 1, but: '{"level":6}' }]);
    const again = unpack(parcel, first.kept);
    expect(again.kept?.zones[0]).toBe(first.kept?.zones[0]);
    expect(again.answer).toEqual({ schema: 'x', zones: [{ zone: 'a' }, { zone: 'b', level: 6 }] });
    // Another kind of question, or an answer too long ago: every zone travels.
    expect(pack(at(6), 'other', again.kept?.nth).zones).toHaveLength(2);
    for (let i = 0; i < 3; i++) pack(at(i), 'plan');
    expect(pack(at(6), 'plan', again.kept?.nth).zones?.[0]).toBe('{"zone":"a"}');
  });

  it('keeps each field that says the same, and forgets those that are gone', () => {
    const ask = (zone: object, has?: Kept) =>
      unpack(pack(JSON.stringify({ zones: [zone] }), 'fields', has?.nth), has);
    const today = { level: 5 };
    const first = ask({ zone: 'a', today, planned: { level: 6 } });
    const second = ask({ zone: 'a', today, planned: { level: 7 } }, first.kept);
    expect(second.kept?.zones).toEqual([{ zone: 'a', today, planned: { level: 7 } }]);
    const todays = [first, second].map(({ kept }) => (kept?.zones[0] as { today: object }).today);
    expect(todays[1]).toBe(todays[0]);
    expect(ask({ zone: 'a', today }, second.kept).kept?.zones).toEqual([{ zone: 'a', today }]);
  });

  it('does so with the fields of the answer itself', () => {
    const ask = (answer: object, has?: Kept) =>
      unpack(pack(JSON.stringify({ ...answer, zones: [] }), 'whole', has?.nth), has);
    const bowls = [{ label: 'A' }];
    const first = ask({ bowls, cost: 4 });
    const second = ask({ bowls, cost: 5 }, first.kept);
    expect(second.answer).toEqual({ bowls, cost: 5, zones: [] });
    expect((second.answer as { bowls: unknown }).bowls).toBe((first.answer as { bowls: unknown }).bowls);
    expect(ask({ cost: 5 }, second.kept).answer).toEqual({ cost: 5, zones: [] });
  });

  it('finds a zone again wherever it stands', () => {
    const ask = (zones: object[], has?: Kept) =>
      unpack(pack(JSON.stringify({ zones }), 'places', has?.nth), has);
    const first = ask([{ zone: 'a' }, { zone: 'b', level: 5 }]);
    const second = ask([{ zone: 'new' }, { zone: 'b', level: 5 }, { zone: 'a' }], first.kept);
    expect(second.kept?.zones[1]).toBe(first.kept?.zones[1]);
    expect(second.kept?.zones[2]).toBe(first.kept?.zones[0]);
  });

  it('lets text that is no JSON be found out by the reader', () => {
    expect(() => unpack(pack('<p>', 'any'))).toThrow(SyntaxError);
  });
});
