import { lightness } from './colour';
import type { Half, Population, StrandPicture, StrandSpan } from './types';

/** The phrases of one language; every figure arrives ready to be written. */
export interface StrandWords {
  /** A number in the language's own way with at most `digits` decimals. */
  number(value: number, digits: number): string;
  /** "30 cm from scalp to tip." */
  whole(lengthCm: string): string;
  /** "Regrowth, 0 to 1.5 cm" */
  span(label: string, fromCm: string, toCm: string): string;
  /** "today 25 % white, 75 % natural brown" */
  half(half: Half, populations: string): string;
  /** "25 % white" with its packets and the note for a colour that the screen cannot show, when they apply. */
  population(
    percent: string,
    name: string,
    packets: { widthMm: string; everyMm: string } | null,
    outside: boolean,
  ): string;
  /** "bowl A" */
  bowl(letter: string): string;
  /** "lightness L* 32, likely 28 to 37" */
  doubt(middle: string, low: string, high: string): string;
  /** "nothing planned" */
  noPlan(): string;
  /** Joins "25 % white" and "75 % brown" in the language's own way. */
  list(items: readonly string[]): string;
  /** Makes one sentence of the parts of a span. */
  sentence(span: string, parts: readonly string[]): string;
}

/** The populations of a group as one under its name. */
function told(list: readonly Population[]): Population[] {
  const groups = new Map<number, Population>();
  for (const p of list) {
    const group = p.packets?.group;
    if (!group) continue;
    const so = groups.get(group.nth);
    const share = p.share + (so?.share ?? 0);
    const outOfGamut = p.outOfGamut || (so?.outOfGamut ?? false);
    groups.set(group.nth, { ...p, name: group.name, share, outOfGamut });
  }
  return [...list.filter((p) => !p.packets?.group), ...groups.values()];
}

function populations(list: readonly Population[], words: StrandWords): string {
  return words.list(
    told(list)
      .filter((p) => p.share > 0)
      .map((p) => {
        const packets = p.packets && {
          widthMm: words.number(p.packets.widthMm, 1),
          everyMm: words.number(p.packets.everyMm, 1),
        };
        return words.population(words.number(p.share * 100, 0), p.name, packets ?? null, p.outOfGamut);
      }),
  );
}

function describeSpan(span: StrandSpan, words: StrandWords): string {
  const parts = [words.half('today', populations(span.today, words))];
  parts.push(
    span.planned.length > 0 ? words.half('planned', populations(span.planned, words)) : words.noPlan(),
  );
  if (span.bowls?.length) parts.push(words.list(span.bowls.map((letter) => words.bowl(letter))));
  if (span.fan && span.planned.length > 0) {
    const [low, middle, high] = [span.fan.p10, span.fan.p50, span.fan.p90].map(lightness) as [
      number,
      number,
      number,
    ];
    const text = (v: number) => words.number(v, 0);
    parts.push(words.doubt(text(middle), text(Math.min(low, high)), text(Math.max(low, high))));
  }
  return words.sentence(
    words.span(span.label, words.number(span.fromCm, 1), words.number(span.toCm, 1)),
    parts,
  );
}

/** What the picture shows, as sentences: one for the whole strip, one for each span. */
export function describeStrand(picture: StrandPicture, words: StrandWords): string[] {
  return [
    words.whole(words.number(picture.lengthCm, 1)),
    ...picture.spans.map((span) => describeSpan(span, words)),
  ];
}
