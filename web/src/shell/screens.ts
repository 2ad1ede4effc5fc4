import type { Component } from 'svelte';
import type { Clock } from '../visit/clock.svelte';
import type { Work } from '../visit/work.svelte';
import type { Step } from './route.svelte';

type Screen = Component<{ work: Work; clock: Clock }>;

// Each comes by itself: nobody waits for the screen of a step that is not looked at. The device keeps all of them.
const sources: Partial<Record<Step, () => Promise<Screen>>> = {
  gate: async () => (await import('../features/gate')).Gate,
  assess: async () => (await import('../features/assess')).Assess,
  aim: async () => (await import('../features/aim')).Aim,
  plan: async () => (await import('../features/learn')).PlanFirst,
  weigh: async () => (await import('../features/bowl')).Bowl,
  agree: async () => (await import('../features/agree')).Agree,
  record: async () => (await import('../features/record')).Ending,
  beside: async () => (await import('../features/beside')).Beside,
  incident: async () => (await import('../features/incident')).Incident,
  aftercare: async () => (await import('../features/aftercare')).Aftercare,
  clock: async () => (await import('../features/clock')).Clock,
};

/** The screen of a step; rejects where it does not come. */
export async function screenOf(step: Step): Promise<Screen> {
  const source = sources[step];
  if (!source) throw new Error(`no screen for ${step}`);
  return source();
}
