// What a new object's form starts with: the address may name fields, and objects without a name get a numbered code.
const NUMBERED = { surveys: 'survey', trials: 'trial', overrides: 'figure', roster: 'roster', targets: 'target', constraints: 'constraint' };
const TODAY = { overrides: 'decided_on', surveys: 'surveyed_on' };

export function preset(name, kind, camp, search) {
  const value = {};
  for (const field of kind.fields) {
    if (search.has(field.name) && ['text', 'pick', 'code'].includes(field.type)) value[field.name] = search.get(field.name);
  }
  if (NUMBERED[name]) value.code ??= free(NUMBERED[name], camp.byCode[name]);
  if (TODAY[name]) value[TODAY[name]] = today();
  if ((name === 'targets' || name === 'constraints') && !value.valid_from) value.valid_from = camp.doc.settings.start;
  return value;
}

export function free(stem, taken) {
  let number = (taken?.size ?? 0) + 1;
  while (taken?.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}

/** The day it is here, not in Greenwich. */
export function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map(part => String(part).padStart(2, '0')).join('-');
}
