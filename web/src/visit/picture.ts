import type { Area, Head, Span } from '../api/types';
import { language } from '../i18n/index.svelte';
import type { Light } from '../shell/view.svelte';
import type { StrandPicture } from '../strand/types';
import { zoneId } from './head';
import { readZone, withPackets, type ZonePicture } from './pieces';
import { packetsOf } from './weave';
import { areaWords } from './words';

export { known } from './names';
export { lightKey, screen, type ZonePicture } from './pieces';

/** The last picture of each area and all that went into it. */
const made = new WeakMap<Area, { from: readonly unknown[]; picture: StrandPicture }>();

/** One area as the strand draws it, with the packets that lie in it; undefined while a span has no colour yet. The same again is the same object. */
export function strandPicture(
  head: Head,
  area: Area,
  zones: ReadonlyMap<string, ZonePicture>,
  light: Light,
): StrandPicture | undefined {
  const from: unknown[] = [head.hair, light, language()];
  for (const shown of [area, ...packetsOf(head, area.id)]) {
    from.push(shown);
    for (const span of shown.spans) {
      const zone = zones.get(zoneId(shown, span));
      from.push(zone?.today, zone?.planned, zone?.wished, zone?.bowls?.join());
    }
  }
  const before = made.get(area);
  if (before && before.from.length === from.length && before.from.every((one, i) => one === from[i]))
    return before.picture;
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
  const read = (of: Area) => (span: Span) => {
    const zone = zones.get(zoneId(of, span));
    return zone && readZone(span, zone, light);
  };
  const own = area.spans.map(read(area));
  if (!own.every((piece) => piece !== undefined)) return undefined;
  const packets = packetsOf(head, area.id).map((of) => ({
    name: areaWords(of),
    woven: of.woven!,
    pieces: of.spans.map(read(of)).filter((piece) => piece !== undefined),
  }));
  return {
    lengthCm: area.spans.at(-1)?.to_cm ?? 0,
    spans: own.flatMap((piece) => withPackets(piece, packets)),
    hair: { texture: head.hair?.texture ?? 'straight', diameterUm: head.hair?.diameter_um ?? 70 },
  };
}
