/** A text as a file of this device. */
export function download(name: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/csv' }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

const DAY_MS = 86_400_000;
/** The civil date (UTC) from which so many days end today. */
export const since = (days: number, now = Date.now()): string =>
  new Date(now - (days - 1) * DAY_MS).toISOString().slice(0, 10);
