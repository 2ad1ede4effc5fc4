/** An open visit that can be left. */
interface Leavable {
  /** Ends once its last change is handed in or, with the server gone, laid down on the device; it goes on trying. */
  close(): Promise<void>;
  /** Tries no more: somebody else does. */
  rest(): Promise<void>;
}

/** Visits that were left. Opened before they are handed in, they would show what was there before. */
const left = new Map<string, { work: Leavable; end: Promise<void> }>();

export function leave(id: string, work: Leavable): void {
  left.set(id, { work, end: work.close() });
}

/** Ends once nothing of this visit is on its way to the server any more. */
export async function handedIn(id: string): Promise<void> {
  const before = left.get(id);
  left.delete(id);
  await before?.end;
  await before?.work.rest();
}
