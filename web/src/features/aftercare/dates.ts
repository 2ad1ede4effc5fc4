const DAY_MS = 86_400_000;

/** The civil date `weeks` after another, YYYY-MM-DD; whole days. */
export function weeksAfter(day: string, weeks: number): string {
  const start = Date.parse(`${day}T00:00:00Z`);
  return new Date(start + Math.round(weeks * 7) * DAY_MS).toISOString().slice(0, 10);
}

/** A day of the calendar that a person keeps. */
export interface Entry {
  uid: string;
  /** First and last civil date. */
  from: string;
  until: string;
  summary: string;
  description?: string;
}

const escaped = (text: string) =>
  text
    .replace(/\\/g, '\\\\')
    .replace(/([;,])/g, '\\$1')
    .replace(/\r?\n/g, '\\n');

/** Lines of at most 75 octets, the rest of each begun with a space (RFC 5545 §3.1); no sign is cut in two. */
function folded(line: string): string {
  const octets = (text: string) => new TextEncoder().encode(text).length;
  const out: string[] = [];
  let part = '';
  for (const sign of line) {
    if (octets(part + sign) > 75) {
      out.push(part);
      part = ' ';
    }
    part += sign;
  }
  return [...out, part].join('\r\n');
}

/** iCalendar text (RFC 5545) of whole days; DTEND is the day after the last one, as the standard counts. */
export function calendar(entries: readonly Entry[], stamp: Date): string {
  const plain = (day: string) => day.replaceAll('-', '');
  const instant = stamp.toISOString().replace(/[-:]|\.\d+/g, '');
  const lines = [
    ...['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Strandline//EN', 'CALSCALE:GREGORIAN'],
    ...entries.flatMap((entry) => [
      'BEGIN:VEVENT',
      `UID:${entry.uid}`,
      `DTSTAMP:${instant}`,
      `DTSTART;VALUE=DATE:${plain(entry.from)}`,
      `DTEND;VALUE=DATE:${plain(weeksAfter(entry.until, 1 / 7))}`,
      `SUMMARY:${escaped(entry.summary)}`,
      ...(entry.description ? [`DESCRIPTION:${escaped(entry.description)}`] : []),
      'TRANSP:TRANSPARENT',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return lines.map(folded).join('\r\n') + '\r\n';
}
