import { tick, untrack } from 'svelte';
import { hairShown } from '../strand/studio';

/** Words wait so long for their picture at most, ms (prior): where drawing is slow or hangs they go before it. */
export const LONGEST_WAIT = 250;
const hairShownSoon = () =>
  new Promise<void>((go) => {
    const longEnough = setTimeout(go, LONGEST_WAIT);
    void hairShown().then(() => {
      clearTimeout(longEnough);
      go();
    });
  });

/**
 * `newest` once the hair that was drawn for it is shown: what a screen says of an answer appears together with its picture,
 * in one frame. Call it while a component is set up.
 */
export function withHair<T>(newest: () => T): { readonly now: T } {
  let now = $state.raw(untrack(newest));
  let asked = 0;
  let told = 0;
  $effect(() => {
    const next = newest();
    const nth = ++asked;
    // The strips order their pictures in this turn.
    void tick()
      .then(hairShownSoon)
      .then(() => {
        if (nth < told) return;
        told = nth;
        now = next;
      });
  });
  return {
    get now() {
      return now;
    },
  };
}
