import type { Head } from '../api/types';
import { readSpan, writeSpan } from './reading';

/** How far off a reading may be: levels, and percentage points of white. */
export interface Misreading {
  level?: number;
  white?: number;
}

const between = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);

/** The head as it would be if every reading were off by this much; readings stay on their scales. */
export function misread(head: Head, { level = 0, white = 0 }: Misreading): Head {
  return {
    ...head,
    areas: head.areas.map((area) => ({
      ...area,
      spans: area.spans.map((span) => {
        const reading = readSpan(span);
        return writeSpan(span, {
          ...reading,
          level: between(reading.level + level, 1, 10),
          white: reading.white > 0 ? between(reading.white + white, 0, 100) : 0,
        });
      }),
    })),
  };
}
