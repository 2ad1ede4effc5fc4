import type { PlanAnswer, Running, RunningBowl, Visit } from '../api/types';
import * as api from '../api/visits';

const plain = ({ names: _n, range_name: _r, mix_life_min: _m, ...bowl }: RunningBowl) => bowl;
const withBowls = ({ running: _, ...visit }: Visit, bowls: readonly RunningBowl[]): Visit => ({
  ...visit,
  bowls: bowls.map(plain),
  options: { ...visit.options, scenarios: 64 },
});

/** How far the colour of a zone moves, levels and CIELAB units; the zone that moves most. */
export interface Moved {
  zone: string;
  levels: number;
  lab: number;
}

export function mostMoved(before: PlanAnswer, after: PlanAnswer): Moved | undefined {
  const moved = after.zones.flatMap((zone) => {
    const was = before.zones.find((one) => one.zone === zone.zone);
    if (!was) return [];
    const [a, b] = [was.planned, zone.planned];
    const lab = Math.hypot(b.lab.l - a.lab.l, b.lab.a - a.lab.a, b.lab.b - a.lab.b);
    return [{ zone: zone.zone, levels: b.level - a.level, lab }];
  });
  return moved.sort((a, b) => b.lab - a.lab)[0];
}

/** Predicts what the bowl as it lies there does against the one that was agreed. */
export async function predicted(visit: Visit, running: Running, asItIs: RunningBowl, signal: AbortSignal) {
  const instead = running.bowls.map((bowl) => (bowl.label === asItIs.label ? asItIs : bowl));
  const [before, after] = await Promise.all([
    api.whatIf(withBowls(visit, running.bowls), signal),
    api.whatIf(withBowls(visit, instead), signal),
  ]);
  const broken = after.verdicts.some((v) => v.bowl === asItIs.label && v.says !== 'say');
  return { moved: mostMoved(before, after), broken };
}
