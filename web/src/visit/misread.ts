import type { Head } from '../api/types';
import { readSpan, valueOf, writeSpan } from './reading';

/** How far off a reading may be: levels, percentage points of white, steps of porosity. */
export interface Misreading {
  level?: number;
  white?: number;
  porosity?: number;
}

const between = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);

/** The head as it would be if every reading were off by this much; readings stay on their scales. */
export function misread(head: Head, { level = 0, white = 0, porosity = 0 }: Misreading): Head {
  return {
    ...head,
    areas: head.areas.map((area) => ({
      ...area,
      spans: area.spans.map((span) => {
        const reading = readSpan(span);
        const off = writeSpan(span, {
          ...reading,
          level: between(reading.level + level, 1, 10),
          white: reading.white > 0 ? between(reading.white + white, 0, 100) : 0,
        });
        return porosity ? { ...off, porosity: between(valueOf(span.porosity, 1) + porosity, 0, 3) } : off;
      }),
    })),
  };
}
