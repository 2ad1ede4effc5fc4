/** A short note about something done, with a way back. */
export interface Toast {
  id: number;
  text: string;
  undo?: () => void;
}

/** ms; a way back stays longer: hands may be wet, and the next change closes it anyway. */
const shownFor = { note: 9000, wayBack: 20000 };
let next = 1;
const timers: Record<number, ReturnType<typeof setTimeout> | undefined> = {};

export const toasts = $state<Toast[]>([]);

export function dismiss(id: number): void {
  clearTimeout(timers[id]);
  delete timers[id];
  const at = toasts.findIndex((toast) => toast.id === id);
  if (at >= 0) toasts.splice(at, 1);
}

/** Keep a toast while the pointer or the focus is on it. */
export function keep(id: number): void {
  clearTimeout(timers[id]);
}

export function release(id: number): void {
  clearTimeout(timers[id]);
  const { undo } = toasts.find((toast) => toast.id === id) ?? {};
  timers[id] = setTimeout(() => dismiss(id), undo ? shownFor.wayBack : shownFor.note);
}

/** Show a note; at most three are kept, the oldest goes first. */
export function notify(text: string, undo?: () => void): number {
  const id = next++;
  toasts.push({ id, text, undo });
  while (toasts.length > 3) dismiss(toasts[0]!.id);
  release(id);
  return id;
}

/** Something else was done: going back to before a note would take that away too, so its way back goes. */
export function closeWaysBack(): void {
  for (const toast of toasts.filter((one) => one.undo)) dismiss(toast.id);
}
