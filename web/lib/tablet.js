// What this browser can do: keep entries for good, work without the network.
export const secure = () => window.isSecureContext && typeof indexedDB !== 'undefined';

/** A random id, version 4, also where the page is not secure. */
export function newId() {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 15) | 64;
  bytes[8] = (bytes[8] & 63) | 128;
  const hex = [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

/** Whether the browser promises not to delete what is kept; asks it to. */
export async function lasting() {
  try {
    return await navigator.storage.persisted() || await navigator.storage.persist();
  } catch {
    return false;
  }
}

/** Lets the pages open without the network. */
export async function workOffline() {
  if (!window.isSecureContext || !navigator.serviceWorker) return false;
  try {
    await navigator.serviceWorker.register('/worker.js', { type: 'module', updateViaCache: 'none' });
    const ready = await navigator.serviceWorker.ready;
    ready.active?.postMessage('refresh');
    return true;
  } catch (problem) {
    console.warn(problem);
    return false;
  }
}

/** The day by the clock of this tablet, as 2027-03-15. */
export function dayHere(date = new Date()) {
  return `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
}

/** Monday and Sunday around a day. */
export function week(day) {
  const date = new Date(`${day}T12:00:00`);
  const monday = new Date(date.setDate(date.getDate() - (date.getDay() + 6) % 7));
  return [dayHere(monday), dayHere(new Date(new Date(monday).setDate(monday.getDate() + 6)))];
}

export const timeHere = stamp => new Date(stamp).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
