import { call } from './client';
import type { Problem } from './types';

/** What the scale of the counter says. */
export interface ScaleWord {
  /** Rises with every change; 0 = there is no scale. */
  seq: number;
  state: 'none' | 'away' | 'stable' | 'moving' | 'below_zero' | 'overload' | 'fault';
  grams: number;
  problems?: Problem[];
}

/** Held by the server until the scale says something else than `after`, a few seconds at most. */
export const scaleAfter = (after: number, signal?: AbortSignal) =>
  call<ScaleWord>('GET', `scale?after=${after}`, undefined, signal);
