// From a draft back to the object that is sent. Rules of the trade stay with the server; here only what cannot be sent at all is found.
import { shift } from '../lib/units.js';
import { typed } from '../lib/typed.js';
import { UNSHOWN } from './draft.js';

/** @returns {{value: object, faults: {field: string, detail: string}[]}} */
export function read(fields, draft) {
  const faults = [];
  return { value: object(fields, draft, '', faults, draft), faults };
}

function object(fields, draft, path, faults, root) {
  const value = { ...draft[UNSHOWN] };
  for (const field of fields) {
    if (field.when && !field.when(draft, root)) continue;
    const given = any(field, draft[field.name], path === '' ? field.name : `${path}.${field.name}`, faults, root);
    if (given !== undefined) value[field.name] = given;
  }
  return value;
}

function any(field, draft, path, faults, root) {
  switch (field.type) {
    case 'likely': return three(field, draft, path, faults);
    case 'group': return draft.on ? object(field.fields, draft.in, path, faults, root) : undefined;
    case 'rows': return field.maybe && draft.length === 0 ? undefined : draft.map((row, i) => object(field.fields, row, `${path}[${i}]`, faults, root));
    case 'list': return draft.map((item, i) => any(field.item, item, `${path}[${i}]`, faults, root));
    case 'picks': return [...draft];
    default: return leaf(field, draft, path, faults);
  }
}

function three(field, draft, path, faults) {
  const names = ['low', 'likely', 'high'];
  if (field.maybe && names.every(name => draft[name].text.trim() === '')) return undefined;
  return Object.fromEntries(names.map(name => [name, leaf({ ...field, type: 'number', maybe: false }, draft[name], `${path}.${name}`, faults)]));
}

export function leaf(field, box, path, faults) {
  if (field.type === 'tick') return field.maybe && !box.text && box.value === undefined ? undefined : box.text;
  if (box.value !== undefined && box.text === box.was) return box.value;
  if (field.type === 'number' || field.type === 'whole') return numeric(field, box.text, path, faults);
  const text = field.type === 'prose' ? box.text : box.text.trim();
  if (text !== '') return text;
  if (field.maybe) return undefined;
  if (field.type === 'text' || field.type === 'prose') return '';
  faults.push({ field: path, detail: 'is missing. Give it a value.' });
  return undefined;
}

function numeric(field, text, path, faults) {
  const found = typed(text);
  if (found.blank) {
    if (!field.maybe) faults.push({ field: path, detail: 'is missing. Give it a value.' });
    return undefined;
  }
  if (found.fault) {
    faults.push({ field: path, detail: found.fault });
    return undefined;
  }
  if (field.type === 'whole' && !Number.isInteger(found.value)) {
    faults.push({ field: path, detail: `must be a whole number. You typed "${text.trim().slice(0, 40)}".` });
    return undefined;
  }
  return field.power ? shift(found.value, field.power) : found.value;
}
