import { Away, Refused } from '../../api/client';
import { newId } from '../../api/id';
import * as api from '../../api/shelves';
import type { Problem } from '../../api/types';
import { t } from '../../i18n/index.svelte';
import { closeWaysBack, notify } from '../../ui/toasts.svelte';
import { forgetShelf } from '../../visit/scale.svelte';

/** A change that is not with the server yet; handed in again under the same id it is kept once. */
interface Pending {
  readonly document: api.ShelfPaper;
  readonly seq: number;
  readonly entry: string;
  readonly said: string;
}

/** One shelf that is looked at and changed. Every change is saved at once, with a way back. */
export class Book {
  saved = $state.raw<api.SavedShelf>();
  failed = $state(false);
  busy = $state(false);
  away = $state(false);
  problems = $state.raw<readonly Problem[]>([]);
  pending = $state.raw<Pending>();
  readonly #id: string;

  constructor(id: string) {
    this.#id = id;
  }

  get document(): api.ShelfPaper {
    return this.pending?.document ?? this.saved?.document ?? { ranges: [], products: [] };
  }
  get editable(): boolean {
    return (this.saved?.seq ?? 0) > 0;
  }
  /** Somebody else saved meanwhile. */
  get conflict(): boolean {
    return this.problems.some((p) => p.code === 'shelf_changed_elsewhere');
  }
  isEmpty(product: string): boolean {
    return this.saved?.empty.includes(product) ?? false;
  }

  async open(signal?: AbortSignal): Promise<void> {
    this.failed = false;
    try {
      this.saved = await api.openShelf(this.#id, signal);
    } catch (error) {
      if (signal?.aborted) return;
      if (!(error instanceof Away || error instanceof Refused)) throw error;
      this.failed = true;
    }
  }

  /** True once it is kept. Until then it stands on the screen, and can be tried again. */
  async change(document: api.ShelfPaper, said = t('shelf.kept')): Promise<boolean> {
    this.pending = { document, seq: this.saved?.seq ?? 0, entry: newId(), said };
    return this.again();
  }

  async again(): Promise<boolean> {
    const { pending } = this;
    if (!pending) return true;
    const before = this.saved?.document;
    return this.#guarded(async () => {
      this.saved = await api.saveShelf(this.#id, pending.seq, pending.document, pending.entry);
      this.pending = undefined;
      closeWaysBack();
      notify(pending.said, before && (() => void this.change(before)));
    });
  }

  /** Of two devices: theirs, or this one's on top of it. */
  async settle(whose: 'theirs' | 'mine'): Promise<void> {
    const mine = this.pending;
    this.problems = [];
    await this.open();
    if (whose === 'mine' && mine) await this.change(mine.document);
    else this.pending = undefined;
  }

  drop(): void {
    this.pending = undefined;
    this.problems = [];
  }

  async setEmpty(product: string, called: string, empty: boolean): Promise<void> {
    const entry = newId();
    await this.#guarded(async () => {
      this.saved = await api.setEmpty(this.#id, product, empty, entry);
      closeWaysBack();
      notify(
        empty ? t('shelf.is_empty', called) : t('shelf.is_back', called),
        () => void this.setEmpty(product, called, !empty),
      );
    });
  }

  async #guarded(act: () => Promise<void>): Promise<boolean> {
    this.busy = true;
    this.away = false;
    this.problems = [];
    try {
      await act();
      forgetShelf();
      return true;
    } catch (error) {
      if (error instanceof Refused) this.problems = error.problems;
      else if (error instanceof Away) this.away = true;
      else throw error;
      return false;
    } finally {
      this.busy = false;
    }
  }
}

/** What a product is called: the code on the tube before its name. */
export const called = (product: api.ShelfProduct): string =>
  [product.code, product.name || (product.code ? '' : product.id)].filter(Boolean).join(' · ');

/** A number as people type it; undefined for nothing, NaN for what is none. */
export function typedNumber(text: string): number | undefined {
  const plain = text.trim().replace(',', '.');
  return plain === '' ? undefined : Number(plain);
}
