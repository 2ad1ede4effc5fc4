import type { Area, ColourView, Head, Rgb, Span, UnderLights } from '../api/types';
import { isKey, language, t, type Key } from '../i18n/index.svelte';
import type { Light } from '../shell/view.svelte';
import { bedBetweenPackets } from '../strand/colour';
import type {
  ColourFan,
  Packets,
  Population,
  Rgb as Screen,
  StrandPicture,
  StrandSpan,
} from '../strand/types';
import { zoneId } from './head';
import { valueOf } from './reading';

/** The switch's three lights by the server's names. */
export const lightKey: Record<Light, keyof UnderLights> = {
  daylight: 'daylight',
  salon: 'led',
  evening: 'lamp',
};

/** "#rrggbb" as three parts of one. */
export function screen(hex: string): Screen {
  const n = parseInt(hex.slice(1), 16);
  return [(n >> 16) / 255, ((n >> 8) & 255) / 255, (n & 255) / 255];
}

/** What one zone shows: today, and after the plan where there is one. */
export interface ZonePicture {
  today: ColourView;
  planned?: ColourView;
  /** Letters of the bowls on it, in the order of their steps. */
  bowls?: readonly string[];
}

// Every frame of a held value asks for the same few names.
const keyOf = new Map<string, Map<string, Key | undefined>>();

/** A name of the document in the words of the screen where the dictionary knows it. */
export function known(prefix: string, name: string): string {
  let names = keyOf.get(prefix);
  if (!names) keyOf.set(prefix, (names = new Map()));
  let key = names.get(name);
  if (key === undefined && !names.has(name)) {
    const made = `${prefix}.${name.replaceAll(' ', '_')}`;
    key = isKey(made) ? made : undefined;
    names.set(name, key);
  }
  return key ? t(key as 'ui.close') : name;
}

type PacketsOf = ReadonlyMap<string, Packets>;

/** Strands read as packets, by name: so far apart that packets of this width carry their share of the hair. */
function packetsIn(span: Span): PacketsOf {
  const found = new Map<string, Packets>();
  for (const p of span.populations ?? []) {
    const share = valueOf(p.share, 0);
    if (p.name && p.packet_mm && share > 0)
      found.set(p.name, { widthMm: p.packet_mm, everyMm: Math.max(p.packet_mm / share, p.packet_mm) });
  }
  return found;
}

function populations(view: ColourView, light: Light, packets: PacketsOf): Population[] {
  return view.populations.map((p) => {
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
}

/** Populations of one half and the colour in which those that are mixed are seen together. */
function halfOf(view: ColourView, light: Light, packets: PacketsOf) {
  const list = populations(view, light, packets);
  return { list, bed: bedBetweenPackets(list, screen(view.srgb[lightKey[light]].hex)) };
}

function fan(view: ColourView, light: Light): ColourFan | undefined {
  const [p10, p50, p90] = view.fan.map((blade) => screen(blade.srgb[lightKey[light]].hex));
  return p10 && p50 && p90 ? { p10, p50, p90 } : undefined;
}

/** The last picture of each area and all that went into it. */
const made = new WeakMap<Area, { from: readonly unknown[]; picture: StrandPicture }>();

/** One area as the strand draws it; undefined while a span has no colour yet. The same again is the same object. */
export function strandPicture(
  head: Head,
  area: Area,
  zones: ReadonlyMap<string, ZonePicture>,
  light: Light,
): StrandPicture | undefined {
  const from: unknown[] = [head.hair, light, language()];
  for (const span of area.spans) {
    const zone = zones.get(zoneId(area, span));
    from.push(zone?.today, zone?.planned, zone?.bowls?.join());
  }
  const before = made.get(area);
  if (before && before.from.every((one, i) => one === from[i])) return before.picture;
  const picture = makePicture(head, area, zones, light);
  if (picture) made.set(area, { from, picture });
  return picture;
}

function makePicture(
  head: Head,
  area: Area,
  zones: ReadonlyMap<string, ZonePicture>,
  light: Light,
): StrandPicture | undefined {
  const spans: StrandSpan[] = [];
  for (const span of area.spans) {
    const zone = zones.get(zoneId(area, span));
    if (!zone) return undefined;
    const doubt = zone.planned && zone.bowls?.length ? fan(zone.planned, light) : undefined;
    const packets = packetsIn(span);
    const today = halfOf(zone.today, light, packets);
    const planned = zone.planned && halfOf(zone.planned, light, packets);
    spans.push({
      id: span.id,
      fromCm: span.from_cm ?? 0,
      toCm: span.to_cm,
      label: known('span', span.id),
      today: today.list,
      planned: planned?.list ?? [],
      mixedBed: { today: today.bed, ...(planned ? { planned: planned.bed } : {}) },
      ...(zone.bowls?.length ? { bowls: zone.bowls } : {}),
      ...(doubt ? { fan: doubt } : {}),
    });
  }
  return {
    lengthCm: area.spans.at(-1)?.to_cm ?? 0,
    spans,
    hair: { texture: head.hair?.texture ?? 'straight', diameterUm: head.hair?.diameter_um ?? 70 },
  };
}
