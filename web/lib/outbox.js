// What was entered on this tablet, in IndexedDB: written down for good before anybody is told "kept". Nothing here ever expires unsent.
const NAME = 'kerfbook-log';
const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('kerfbook-log');
/** Tells of every change, also of those made in other tabs. */
export const changed = new EventTarget();
let opening;

channel?.addEventListener('message', event => tell(event.data));

function tell(detail) {
  changed.dispatchEvent(new CustomEvent('change', { detail }));
}

/** Passes a change on to this tab and all others. */
export function announce(detail = {}) {
  channel?.postMessage(detail);
  tell(detail);
}

function open() {
  opening ??= new Promise((done, fail) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore('entries', { keyPath: 'id' });
      asked.result.createObjectStore('memory');
    };
    asked.onsuccess = () => {
      asked.result.onversionchange = () => { asked.result.close(); opening = undefined; };
      asked.result.onclose = () => { opening = undefined; };
      done(asked.result);
    };
    asked.onerror = () => fail(asked.error);
    asked.onblocked = () => fail(new Error('blocked'));
  }).catch(problem => { opening = undefined; throw problem; });
  return opening;
}

/** Runs work in one transaction and answers when it is on the disk, with what the work's last request found. */
async function transact(store, mode, work) {
  const db = await open();
  return new Promise((done, fail) => {
    const transaction = db.transaction(store, mode, { durability: 'strict' });
    const found = { value: undefined };
    transaction.oncomplete = () => done(found.value);
    transaction.onabort = () => fail(transaction.error ?? new Error('stopped'));
    transaction.onerror = () => fail(transaction.error);
    work(transaction.objectStore(store), value => { found.value = value; });
  });
}

/** Writes a record down for good. */
export async function keep(record) {
  await transact('entries', 'readwrite', store => store.put(record));
  announce();
}

/** Changes one record in a transaction of its own, so that two tabs never overwrite each other; the change may say "leave it" with null. */
export async function change(id, how) {
  const after = await transact('entries', 'readwrite', (store, found) => {
    const asked = store.get(id);
    asked.onsuccess = () => {
      const next = asked.result ? how(asked.result) : null;
      if (next) store.put(next);
      found(next);
    };
  });
  announce();
  return after;
}

/** All records, oldest first. */
export async function all() {
  const records = await transact('entries', 'readonly', (store, found) => {
    const asked = store.getAll();
    asked.onsuccess = () => found(asked.result);
  });
  return records.sort((a, b) => a.kept_at - b.kept_at || (a.id < b.id ? -1 : 1));
}

export const unsent = record => record.state !== 'sent' && record.state !== 'handed';

/** How many are not sent, of all or of some. */
export async function countUnsent(which = () => true) {
  return (await all()).filter(record => unsent(record) && which(record)).length;
}

/** Forgets what was sent before this moment, or is of those; never what was not sent. */
export async function forgetSent(before = Infinity, those = () => false) {
  const records = await all();
  const gone = records.filter(record => !unsent(record) && ((record.sent_at ?? record.kept_at) < before || those(record)));
  if (gone.length === 0) return;
  await transact('entries', 'readwrite', store => gone.forEach(record => store.delete(record.id)));
  announce();
}

export const remember = (key, value) => transact('memory', 'readwrite', store => store.put(value, key));
export const recall = key => transact('memory', 'readonly', (store, found) => {
  const asked = store.get(key);
  asked.onsuccess = () => found(asked.result);
});
