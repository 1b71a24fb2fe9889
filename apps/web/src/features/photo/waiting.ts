/** What a photo shows: something of a buy, or a thing that is lent, a part of it, or how it went out and came back. */
export type Subject =
  | {
      readonly shows: 'bag' | 'claim' | 'delivery';
      readonly buy: string;
      readonly thingId: string;
    }
  | {
      /** `thingId` is the thing itself, its part, or the loan. */
      readonly shows: 'equipment' | 'part' | 'loan-out' | 'loan-back';
      readonly item: string;
      readonly thingId: string;
    };
export type Shown = Subject & { readonly storehouse: string };

/** A photo that the server does not have yet. Its id is its Idempotency-Key, so that it counts once however often it is sent. */
export type WaitingPhoto = Shown & { readonly id: string; readonly jpeg: Blob };

// Photos are too large for the place where drafts are kept, so they wait in a small database of the browser's own. They
// outlast a closed tab and a dead battery, and leave once the server has them.
const NAME = 'sheafbook-photos';
const STORE = 'waiting';

function open(): Promise<IDBDatabase> {
  return new Promise((done, fail) => {
    const opening = indexedDB.open(NAME, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { keyPath: 'id' });
    opening.onsuccess = () => done(opening.result);
    opening.onerror = () => fail(opening.error);
  });
}

async function within<Result>(
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<Result>,
): Promise<Result> {
  const database = await open();
  try {
    return await new Promise<Result>((done, fail) => {
      const request = work(database.transaction(STORE, mode).objectStore(STORE));
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
  } finally {
    database.close();
  }
}

export const keepWaiting = (photo: WaitingPhoto) => within('readwrite', (store) => store.put(photo));
export const dropWaiting = (id: string) => within('readwrite', (store) => store.delete(id));

export async function listAllWaiting(storehouse: string): Promise<WaitingPhoto[]> {
  const all = await within<WaitingPhoto[]>('readonly', (store) => store.getAll());
  return all.filter((photo) => photo.storehouse === storehouse);
}

export const listWaiting = async (of: Shown): Promise<WaitingPhoto[]> =>
  (await listAllWaiting(of.storehouse)).filter(
    (photo) => photo.shows === of.shows && photo.thingId === of.thingId,
  );
