import { Away, Refused } from '../../api/client';
import { t } from '../../i18n/index.svelte';
import { problemWords } from '../../i18n/problems';

/** One thing that is asked of the server at a time, and the sentence for why it was not done. */
export class Asking {
  busy = $state(false);
  trouble = $state('');

  /** Whether it was done. */
  async run(act: () => Promise<void>): Promise<boolean> {
    this.busy = true;
    this.trouble = '';
    try {
      await act();
      return true;
    } catch (error) {
      if (error instanceof Refused) this.trouble = error.problems.map(problemWords).join(' ');
      else if (error instanceof Away) this.trouble = t('enter.silent');
      else throw error;
      return false;
    } finally {
      this.busy = false;
    }
  }
}
