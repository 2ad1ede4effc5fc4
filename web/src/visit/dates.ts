const DAY_MS = 86_400_000;

/** The civil date `weeks` after another, YYYY-MM-DD; whole days. */
export function weeksAfter(day: string, weeks: number): string {
  const start = Date.parse(`${day}T00:00:00Z`);
  return new Date(start + Math.round(weeks * 7) * DAY_MS).toISOString().slice(0, 10);
}

/** A day of the calendar that a person keeps, or hours of one. */
export interface Entry {
  uid: string;
  /** First and last civil date; or both as instants of UTC, the end not part of it. */
  from: string;
  until: string;
  summary: string;
  description?: string;
}

const INSTANT = '2026-03-09T09:00:00Z'.length;

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
  const plain = (day: string) => day.replace(/[-:]/g, '');
  const instant = stamp.toISOString().replace(/[-:]|\.\d+/g, '');
  const lines = [
    ...['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Strandline//EN', 'CALSCALE:GREGORIAN'],
    ...entries.flatMap((entry) => [
      'BEGIN:VEVENT',
      `UID:${entry.uid}`,
      `DTSTAMP:${instant}`,
      ...(entry.from.length === INSTANT
        ? [`DTSTART:${plain(entry.from)}`, `DTEND:${plain(entry.until)}`]
        : [
            `DTSTART;VALUE=DATE:${plain(entry.from)}`,
            `DTEND;VALUE=DATE:${plain(weeksAfter(entry.until, 1 / 7))}`,
          ]),
      `SUMMARY:${escaped(entry.summary)}`,
      ...(entry.description ? [`DESCRIPTION:${escaped(entry.description)}`] : []),
      `TRANSP:${entry.from.length === INSTANT ? 'OPAQUE' : 'TRANSPARENT'}`,
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return lines.map(folded).join('\r\n') + '\r\n';
}

/** Hands a text over as a file of that name. */
export function download(text: string, name: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}
