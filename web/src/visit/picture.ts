import type { Area, ColourView, Head, Rgb, UnderLights } from '../api/types';
import { t, isKey } from '../i18n/index.svelte';
import type { Light } from '../shell/view.svelte';
import type { ColourFan, Population, Rgb as Screen, StrandPicture, StrandSpan } from '../strand/types';
import { zoneId } from './head';

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
  bowl?: string;
}

/** A name of the document in the words of the screen where the dictionary knows it. */
export function known(prefix: string, name: string): string {
  const key = `${prefix}.${name.replaceAll(' ', '_')}`;
  return isKey(key) ? t(key as 'ui.close') : name;
}

function populations(view: ColourView, light: Light): Population[] {
  return view.populations.map((p) => {
    const colour: Rgb = p.srgb[lightKey[light]];
    return {
      name: known('fibre', p.name || p.kind),
      share: p.share,
      srgb: screen(colour.hex),
      outOfGamut: colour.out_of_gamut,
    };
  });
}

function fan(view: ColourView): ColourFan | undefined {
  const [p10, p50, p90] = view.fan;
  if (!p10 || !p50 || !p90) return undefined;
  return { p10: screen(p10.srgb.hex), p50: screen(p50.srgb.hex), p90: screen(p90.srgb.hex) };
}

/** One area as the strand draws it; undefined while a span has no colour yet. */
export function strandPicture(
  head: Head,
  area: Area,
  zones: ReadonlyMap<string, ZonePicture>,
  light: Light,
): StrandPicture | undefined {
  const spans: StrandSpan[] = [];
  for (const span of area.spans) {
    const zone = zones.get(zoneId(area, span));
    if (!zone) return undefined;
    const doubt = zone.planned && zone.bowl ? fan(zone.planned) : undefined;
    spans.push({
      id: span.id,
      fromCm: span.from_cm ?? 0,
      toCm: span.to_cm,
      label: known('span', span.id),
      today: populations(zone.today, light),
      planned: zone.planned ? populations(zone.planned, light) : [],
      mixedBed: {
        today: screen(zone.today.srgb[lightKey[light]].hex),
        ...(zone.planned ? { planned: screen(zone.planned.srgb[lightKey[light]].hex) } : {}),
      },
      ...(zone.bowl ? { bowl: zone.bowl } : {}),
      ...(doubt ? { fan: doubt } : {}),
    });
  }
  return {
    lengthCm: area.spans.at(-1)?.to_cm ?? 0,
    spans,
    hair: { texture: head.hair?.texture ?? 'straight', diameterUm: head.hair?.diameter_um ?? 70 },
  };
}
