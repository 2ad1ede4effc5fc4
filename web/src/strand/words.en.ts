import type { StrandWords } from './describe';

const joined = new Intl.ListFormat('en', { type: 'conjunction' });

/** English phrases for the strand. */
export const strandWordsEn: StrandWords = {
  number: (value, digits) => new Intl.NumberFormat('en', { maximumFractionDigits: digits }).format(value),
  whole: (cm) => `Hair strip, ${cm} cm from scalp to tip.`,
  span: (label, from, to) => `${label}, ${from} to ${to} cm`,
  half: (half, text) => `${half === 'today' ? 'today' : 'planned'} ${text}`,
  population: (percent, name, packets, outside) =>
    `${percent} % ${name}` +
    (packets ? ` in packets ${packets.widthMm} mm wide every ${packets.everyMm} mm` : '') +
    (outside ? ' (outside what this screen can show)' : ''),
  bowl: (letter) => `bowl ${letter}`,
  doubt: (middle, low, high) => `lightness L* ${middle}, likely ${low} to ${high}`,
  noPlan: () => 'nothing planned',
  list: (items) => joined.format(items),
  sentence: (span, parts) => `${span}: ${parts.join('; ')}.`,
};
