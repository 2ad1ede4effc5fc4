import type { PlanAnswer, Visit } from '../../api/types';
import { whatIf } from '../../api/visits';
import { troubleOf, type Trouble } from '../../visit/failed';
import { Latest } from '../../visit/latest';
import { ownBowl } from '../../visit/work.svelte';
import { todaysBowls, type Way } from './ways';

/** Another way that is looked at and not taken: nothing of the visit changes. */
export class Look {
  way = $state.raw<Way>();
  /** The whole answer for its bowls; undefined until it is there. */
  plan = $state.raw<PlanAnswer>();
  trouble = $state.raw<Trouble>();
  #asked = new Latest<PlanAnswer>();

  /** Works out what the way's bowls do, all of it: clock, reasons, limits. */
  async see(visit: Visit, way: Way): Promise<void> {
    this.back();
    this.way = way;
    try {
      const bowls = todaysBowls(way).map(ownBowl);
      const answer = await this.#asked.run((signal) => whatIf({ ...visit, bowls }, signal));
      if (answer) this.plan = answer;
    } catch (error) {
      this.trouble = troubleOf(error);
    }
  }

  back(): void {
    this.#asked.stop();
    this.way = this.plan = this.trouble = undefined;
  }
}
