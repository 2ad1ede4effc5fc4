import type { ColourView, Rgb, Span, TargetView, UnderLights, Weave } from '../api/types';
import { language, t } from '../i18n/index.svelte';
import type { Light } from '../shell/view.svelte';
import { bedBetweenPackets } from '../strand/colour';
import type { ColourFan, Packets, Population, Rgb as Screen, StrandSpan } from '../strand/types';
import { valueOf } from './reading';
import { known } from './names';

/** What one zone shows: today, and after the plan (or as it is wished) where there is one. */
export interface ZonePicture {
  today: ColourView;
  planned?: ColourView;
  wished?: TargetView;
  /** Letters of the bowls on it, in the order of their steps. */
  bowls?: readonly string[];
}

/** The switch's three lights by the server's names. */
export const lightKey: Record<Light, keyof UnderLights> = {
  daylight: 'daylight',
  salon: 'led',
  evening: 'lamp',
};

/** Of one, by eight bits; short, as colours travel to the hair's worker as text. */
const parts = Array.from({ length: 256 }, (_, n) => Math.round((n / 255) * 1e4) / 1e4);

/** "#rrggbb" as three parts of one. */
export function screen(hex: string): Screen {
  const n = parseInt(hex.slice(1), 16);
  return [parts[(n >> 16) & 255]!, parts[(n >> 8) & 255]!, parts[n & 255]!];
}

/** The fibres of one half, the colour in which those that are mixed are seen together, and that of all. */
interface Half {
  list: Population[];
  bed: Screen;
  whole: Screen;
}

/** One span of one area as the strand draws it. */
export interface Piece {
  span: Span;
  today: Half;
  planned?: Half;
  bowls: readonly string[];
  fan?: ColourFan;
}

/** Packets of an area and what they show, scalp to tip. */
export interface WovenPieces {
  name: string;
  woven: Weave;
  pieces: readonly Piece[];
}

type PacketsOf = ReadonlyMap<string, Packets>;

const stripes = (widthMm: number, share: number): Packets => ({
  widthMm,
  everyMm: Math.max(widthMm / share, widthMm),
});

/** Strands read as packets, by name: so far apart that packets of this width carry their share of the hair. */
function packetsIn(span: Span): PacketsOf {
  const found = new Map<string, Packets>();
  for (const p of span.populations ?? []) {
    const share = valueOf(p.share, 0);
    if (p.name && p.packet_mm && share > 0) found.set(p.name, stripes(p.packet_mm, share));
  }
  return found;
}

/** The last half made of each view: most of what an answer says is what the one before said. */
const halves = new WeakMap<ColourView, { light: Light; language: string; half: Half }>();

function halfOf(view: ColourView, light: Light, packets: PacketsOf): Half {
  const before = halves.get(view);
  if (!packets.size && before?.light === light && before.language === language()) return before.half;
  const half = makeHalf(view, light, packets);
  if (!packets.size) halves.set(view, { light, language: language(), half });
  return half;
}

function makeHalf(view: ColourView, light: Light, packets: PacketsOf): Half {
  const list = view.populations.map((p) => {
    const colour: Rgb = p.srgb[lightKey[light]];
    const own = packets.get(p.name);
    return {
      name: known('fibre', p.name || p.kind),
      share: p.share,
      srgb: screen(colour.hex),
      outOfGamut: colour.out_of_gamut,
      ...(own ? { packets: own } : {}),
    };
  });
  const whole = screen(view.srgb[lightKey[light]].hex);
  return { list, bed: bedBetweenPackets(list, whole), whole };
}

function wish({ srgb }: TargetView, light: Light): Half {
  const { hex, out_of_gamut: outOfGamut } = srgb[lightKey[light]];
  const colour = screen(hex);
  return { list: [{ name: t('aim.wish'), share: 1, srgb: colour, outOfGamut }], bed: colour, whole: colour };
}

function fan(view: ColourView, light: Light): ColourFan | undefined {
  const [p10, p50, p90] = view.fan.map((blade) => screen(blade.srgb[lightKey[light]].hex));
  return p10 && p50 && p90 ? { p10, p50, p90 } : undefined;
}

/** One span as its zone shows it. */
export function readZone(span: Span, zone: ZonePicture, light: Light): Piece {
  const packets = packetsIn(span);
  const today = halfOf(zone.today, light, packets);
  const { planned, wished, bowls = [] } = zone;
  const after = planned
    ? halfOf(planned, light, packets)
    : wished && (wished.leave ? today : wish(wished, light));
  const doubt = planned && bowls.length ? fan(planned, light) : undefined;
  return { span, today, ...(after ? { planned: after } : {}), bowls, ...(doubt ? { fan: doubt } : {}) };
}

interface Inside {
  half: Half;
  woven: Weave;
  name: string;
  nth: number;
}

/** The hair between with the packets that lie in it, each by its share. */
function woven(between: Half, inside: readonly Inside[]): Half {
  if (!inside.length) return between;
  const left = inside.reduce((rest, one) => rest - one.woven.share, 1);
  const list = between.list.map((p) => ({
    ...p,
    share: p.share * left,
    ...(p.packets ? { packets: { ...p.packets, everyMm: p.packets.everyMm / left } } : {}),
  }));
  const packets = inside.flatMap(({ half, woven: { share, width_mm = 4 }, name, nth }) =>
    half.list.map((p) => ({
      ...p,
      share: p.share * share,
      packets: { ...stripes(width_mm, share), group: { name, nth, bed: half.whole } },
    })),
  );
  return { ...between, list: [...list, ...packets] };
}

const fromOf = (span: Span) => span.from_cm ?? 0;
const TOLERANCE = 1e-3;

/** One span of an area as the strand draws it, in parts wherever packets begin, change or end within it. */
export function withPackets(piece: Piece, all: readonly WovenPieces[]): StrandSpan[] {
  const { span } = piece;
  const borders = all
    .flatMap(({ pieces }) => pieces.flatMap((p) => [fromOf(p.span), p.span.to_cm]))
    .filter((cm) => cm > fromOf(span) + TOLERANCE && cm < span.to_cm - TOLERANCE);
  const starts = [fromOf(span), ...new Set(borders.toSorted((a, b) => a - b))];
  return starts.map((fromCm, part) => {
    const at = fromCm + TOLERANCE;
    const here = all.flatMap(({ name, woven: how, pieces }, nth) => {
      const found = pieces.find((p) => fromOf(p.span) <= at && p.span.to_cm > at);
      return found ? [{ piece: found, woven: how, name, nth }] : [];
    });
    const half = (which: 'today' | 'planned') =>
      woven(
        piece[which] ?? piece.today,
        here.map(({ piece: p, ...rest }) => ({ ...rest, half: p[which] ?? p.today })),
      );
    const today = half('today');
    const planned = (piece.planned ?? here.some((one) => one.piece.planned)) ? half('planned') : undefined;
    const bowls = [...new Set([...piece.bowls, ...here.flatMap((one) => one.piece.bowls)])];
    return {
      id: part ? `${span.id} ${fromCm}` : span.id,
      fromCm,
      toCm: starts[part + 1] ?? span.to_cm,
      label: known('span', span.id),
      today: today.list,
      planned: planned?.list ?? [],
      mixedBed: { today: today.bed, ...(planned ? { planned: planned.bed } : {}) },
      ...(bowls.length ? { bowls } : {}),
      ...(piece.fan && !part ? { fan: piece.fan } : {}),
      ...(part ? { goesOn: true } : {}),
    };
  });
}
