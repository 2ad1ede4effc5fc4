import { describe, expect, it } from 'vitest';
import { cellsOf, clientsIn, partsOf, textOf } from './list';

describe('a list of clients', () => {
  it('is read as RFC 4180 writes it', () => {
    expect(cellsOf('a,"b, ""c""",d\r\n1,"two\nlines",3\r\n')).toEqual([
      ['a', 'b, "c"', 'd'],
      ['1', 'two\nlines', '3'],
    ]);
    expect(cellsOf('a;b\n1;2,5')).toEqual([
      ['a', 'b'],
      ['1', '2,5'],
    ]);
    expect(cellsOf('')).toEqual([]);
  });
  it('finds its columns by headings in four languages and loses none', () => {
    const read = clientsIn('\uFEFFTeléfono;Nombre;Ficha;Alergia\n12;Ana;6.3 20 g;no\n;;\n34;Béa;;\n56;;x;');
    expect(read?.clients.map(({ id: _, ...rest }) => rest)).toEqual([
      { name: 'Ana', contact: '12', text: '6.3 20 g\nAlergia: no', date: '' },
      { name: 'Béa', contact: '34', text: '', date: '' },
    ]);
    expect(read?.nameless).toEqual(['56 · x']);
    expect(new Set(read?.clients.map((one) => one.id)).size).toBe(2);
    expect(clientsIn('x;y\n1;2')).toBeUndefined();
  });
  it('is read in the two encodings that lists come in', () => {
    const bytes = (...of: number[]) => new Uint8Array(of).buffer;
    expect(textOf(bytes(0x42, 0xc3, 0xa9, 0x61))).toBe('Béa');
    expect(textOf(bytes(0x42, 0xe9, 0x61))).toBe('Béa');
  });
  it('is handed in by parts', () => {
    const one = { id: 'x', name: 'x' };
    expect(partsOf(Array.from({ length: 1001 }, () => one)).map((part) => part.length)).toEqual([
      500, 500, 1,
    ]);
    expect(partsOf([])).toEqual([]);
  });
});
