import { setPriority } from 'node:os';
import type { Browser, Page } from '@playwright/test';

/** An event of Chromium's own trace: times in µs. */
interface TraceEvent {
  name: string;
  ph: string;
  ts: number;
  dur?: number;
  /** Processor time of the thread. */
  tdur?: number;
  pid: number;
  tid: number;
  args?: { name?: string; data?: { type?: string } };
}

const SCRIPT = new Set([
  'FunctionCall',
  'EvaluateScript',
  'RunMicrotasks',
  'FireAnimationFrame',
  'TimerFire',
  'EventDispatch',
  'MinorGC',
  'MajorGC',
]);

/**
 * Processor time in ms of the page's script in every frame in which it ran any. Time in which the thread only waits,
 * for the drawing of a slow graphics driver say, does not count.
 */
function scriptPerFrame(events: TraceEvent[]): number[] {
  // The main thread ends a frame by handing it to the compositor.
  const ends = events.filter((e) => e.name === 'Commit');
  const main = ends[0];
  if (!main) throw new Error('the trace holds no frame');
  const here = (e: TraceEvent) => e.pid === main.pid && e.tid === main.tid;
  const cuts = ends.filter(here).map((e) => e.ts);
  cuts.sort((a, b) => a - b);
  const script = events.filter((e) => e.ph === 'X' && here(e) && SCRIPT.has(e.name));
  const frames = new Map<number, number>();
  let end = -Infinity;
  for (const e of script.sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0))) {
    if (e.ts < end) continue; // inside the one before
    end = e.ts + (e.dur ?? 0);
    const frame = cuts.findLastIndex((cut) => cut <= e.ts);
    frames.set(frame, (frames.get(frame) ?? 0) + (e.tdur ?? e.dur ?? 0) / 1000);
  }
  return [...frames.values()].filter((ms) => ms > 0.05);
}

export function quantile(values: readonly number[], q: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? NaN;
}

/**
 * Lets the threads of pages go before all others, as where a core is free for them: the browser's own slowing counts a wait
 * for a core several times over. False where this machine does not allow it.
 */
export async function pagesFirst(browser: Browser): Promise<boolean> {
  const cdp = await browser.newBrowserCDPSession();
  const { processInfo } = await cdp.send('SystemInfo.getProcessInfo');
  await cdp.detach();
  try {
    // On Linux the number of a process is also that of its first thread, and a priority belongs to a thread.
    for (const { type, id } of processInfo) if (type === 'renderer') setPriority(id, -20);
    return true;
  } catch (error) {
    if ((error as { info?: { code?: string } }).info?.code === 'EACCES') return false;
    throw error;
  }
}

/** Script time per frame (ms) of this page while `act` runs. */
export async function traceFrames(browser: Browser, page: Page, act: () => Promise<void>): Promise<number[]> {
  await browser.startTracing(page, {
    categories: ['devtools.timeline', 'devtools.timeline.frame', 'disabled-by-default-devtools.timeline'],
  });
  await act();
  const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  return scriptPerFrame(trace.traceEvents);
}
