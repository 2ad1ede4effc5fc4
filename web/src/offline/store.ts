/** The device's own store: unsaved documents and facts, sealed by a key that never leaves this device. Runs in the worker. */

const NAME = 'strandline';
const KEYS = 'keys';
const DRAFTS = 'drafts';

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the browser’s store refused'));
  });
}

function openStore(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore(KEYS);
    request.result.createObjectStore(DRAFTS);
  };
  return asked(request);
}

const store = (db: IDBDatabase, name: string, mode: IDBTransactionMode = 'readonly') =>
  db.transaction(name, mode).objectStore(name);

/** The device's own key; it can be used here but not read out. */
async function deviceKey(db: IDBDatabase): Promise<CryptoKey> {
  const found = await asked<CryptoKey | undefined>(store(db, KEYS).get('draft'));
  if (found) return found;
  const made = await crypto.subtle.generateKey({ name: 'AES-GCM', length: 256 }, false, [
    'encrypt',
    'decrypt',
  ]);
  await asked(store(db, KEYS, 'readwrite').put(made, 'draft'));
  return made;
}

interface Sealed {
  iv: Uint8Array<ArrayBuffer>;
  body: ArrayBuffer;
}

/** Runs `work` on the store; `otherwise` where this browser gives none (private window, no secure origin). */
async function inStore<T>(work: (db: IDBDatabase) => Promise<T>, otherwise: T): Promise<T> {
  if (typeof indexedDB === 'undefined' || !globalThis.crypto?.subtle) return otherwise;
  try {
    const db = await openStore();
    try {
      return await work(db);
    } finally {
      db.close();
    }
  } catch (error) {
    // DOMException: the store is switched off or full, or the key is gone and the draft cannot be opened any more.
    if (error instanceof DOMException) return otherwise;
    throw error;
  }
}

/** Lays a document into the store; false where this browser gives none. */
export const keep = ({ id, draft }: { id: string; draft: unknown }): Promise<boolean> =>
  inStore(async (db) => {
    const key = await deviceKey(db);
    const iv = crypto.getRandomValues(new Uint8Array(12));
    const plain = new TextEncoder().encode(JSON.stringify(draft));
    const body = await crypto.subtle.encrypt({ name: 'AES-GCM', iv }, key, plain);
    await asked(store(db, DRAFTS, 'readwrite').put({ iv, body } satisfies Sealed, id));
    return true;
  }, false);

export const read = (id: string): Promise<unknown> =>
  inStore<unknown>(async (db) => {
    const sealed = await asked<Sealed | undefined>(store(db, DRAFTS).get(id));
    if (!sealed) return undefined;
    const key = await deviceKey(db);
    const plain = await crypto.subtle.decrypt({ name: 'AES-GCM', iv: sealed.iv }, key, sealed.body);
    return JSON.parse(new TextDecoder().decode(plain)) as unknown;
  }, undefined);

export const drop = (id: string): Promise<void> =>
  inStore<void>(async (db) => {
    await asked(store(db, DRAFTS, 'readwrite').delete(id));
  }, undefined);
