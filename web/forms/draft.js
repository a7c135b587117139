// A draft is what stands in the boxes, as text. A box that nobody touched gives back the very value it was filled with.
import { shift } from '../lib/units.js';

/** Parts of an object that its form does not show: they go back as they came. */
export const UNSHOWN = Symbol('unshown');

/** @param value the object as the server sent it, or undefined for a new one */
export function draftOf(fields, value) {
  const draft = {};
  const names = new Set(fields.map(field => field.name));
  draft[UNSHOWN] = Object.fromEntries(Object.entries(value ?? {}).filter(([name]) => !names.has(name)));
  for (const field of fields) {
    if (draft[field.name] === undefined || value?.[field.name] !== undefined) draft[field.name] = one(field, value?.[field.name]);
  }
  return draft;
}

export function one(field, value) {
  switch (field.type) {
    case 'likely': return { low: box(field, value?.low), likely: box(field, value?.likely), high: box(field, value?.high) };
    case 'group': return { on: !field.maybe || value !== undefined || field.start === true, in: draftOf(field.fields, value) };
    case 'rows': return (value ?? blanks(field)).map(row => draftOf(field.fields, row));
    case 'list': return (value ?? blanks(field)).map(item => one(field.item, item));
    case 'picks': return [...(value ?? [])];
    default: return box(field, value);
  }
}

const blanks = field => Array.from({ length: field.start || 0 }, () => undefined);

function box(field, value) {
  if (value === undefined && field.usual !== undefined) return { text: field.usual, was: '', value };
  const text = shown(field, value);
  return { text, was: text, value };
}

function shown(field, value) {
  if (value === undefined || value === null) return field.type === 'tick' ? false : '';
  if (field.type === 'tick') return value;
  return field.power ? String(shift(value, -field.power)) : String(value);
}
