// The entry that is being put together: what was pressed, what it makes, what is wrong with it.
import { typed } from './typed.js';
import { dayHere, newId } from './tablet.js';

const STEP_H = 1 / 12;
const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

export const emptyDraft = () => ({ worker: '', task: '', area: '', step: '', dose: '', minutes: 60, on: '', found: '', remark: '', replaces: null, changing: null, handed: null, fresh: false, takesBack: false });

/** A key of the keypad onto what stands in the dose field. */
export function pressed(text, key) {
  if (key === 'del') return text.slice(0, -1);
  if (key === ',') return /[.,]/.test(text) ? text : `${text === '' ? '0' : text},`;
  if (text === '0') return key;
  return text.length >= 7 ? text : text + key;
}

/** Minutes after a step; between 5 minutes and the most that one entry takes. */
export const stepped = (minutes, by, most = 720) => Math.min(most, Math.max(5, minutes + by));

/**
 * @param today the day of an entry that names none
 * @returns {{entry?: object, faults: [string, string][]}} the entry, or what is wrong: field and words
 */
export function made(draft, ranges, now = new Date(), today = dayHere(now)) {
  const faults = [];
  if (!draft.worker) faults.push(['worker', 'Choose who worked.']);
  if (!draft.task) faults.push(['task', 'Choose the task.']);
  if (!draft.area) faults.push(['area', 'Choose the area.']);
  const dose = number(draft.dose, 'Dose', ranges.most_usv, 'µSv', faults, 'dose');
  if (dose === undefined && draft.dose.trim() === '') faults.push(['dose', 'Dose is missing. Type the reading, also when it is 0.']);
  const found = draft.found.trim() === '' ? undefined : number(draft.found, 'The rate found', ranges.most_usv_per_h, 'µSv/h', faults, 'found');
  const hours = draft.minutes / 60;
  if (!(hours > 0 && hours <= ranges.most_hours)) faults.push(['hours', `Hours in one entry must be between 0 and ${ranges.most_hours}. Split longer work into two entries.`]);
  if (draft.remark.length > ranges.longest_remark) faults.push(['remark', `The remark is longer than ${ranges.longest_remark} characters. Shorten it.`]);
  if (faults.length > 0) return { faults };
  const entry = {
    id: draft.changing && UUID.test(draft.changing) ? draft.changing : newId(), worker: draft.worker, task: draft.task, on: draft.on || today, area: draft.area,
    hours: Math.round(hours / STEP_H) / 12, usv: dose, remark: draft.remark.trim(), made_at: now.toISOString(), confirmed: [],
  };
  if (draft.step) entry.step = draft.step;
  if (found !== undefined) entry.found_usv_per_h = found;
  if (draft.replaces) entry.replaces = draft.replaces;
  return { entry, faults: [] };
}

function number(text, name, most, unit, faults, field) {
  const read = typed(text);
  if (read.blank) return undefined;
  if (read.fault) {
    faults.push([field, `${name} ${read.fault}`]);
    return undefined;
  }
  if (!(read.value >= 0 && read.value <= most)) {
    faults.push([field, `${name} must be between 0 and ${most} ${unit}.`]);
    return undefined;
  }
  return read.value;
}

/** What takes an entry back: 0 h and 0 µSv in its place. */
export function takingBack(entry, why, now = new Date()) {
  return { id: newId(), worker: entry.worker, task: entry.task, on: entry.on, area: entry.area, hours: 0, usv: 0, remark: why, made_at: now.toISOString(), replaces: entry.id, confirmed: [] };
}
