// Words for describing a form. Each field is plain data; draft.js fills it, read.js reads it, draw.js shows it.
const leaf = type => (name, label, more = {}) => ({ type, name, label, ...more });

export const text = leaf('text');
export const prose = leaf('prose');
export const code = (more = {}) => ({ type: 'code', name: 'code', label: 'Code', hint: 'Short and lasting: letters, digits, dash. Other objects refer to it.', ...more });
export const day = leaf('day');
export const month = leaf('month');
export const tick = leaf('tick');

/** A number; {@code power} moves the decimal point between what is typed and what is sent (mSv to µSv: 3). */
export const number = (name, label, unit, more = {}) => ({ type: 'number', name, label, unit, ...more });
export const whole = (name, label, more = {}) => ({ type: 'whole', name, label, ...more });

/** Low, likely and high. */
export const likely = (name, label, unit, more = {}) => ({ type: 'likely', name, label, unit, ...more });

/** One of several; options are [value, words] or a function of the campaign. */
export const pick = (name, label, options, more = {}) => ({ type: 'pick', name, label, options, ...more });

/** Any of several. */
export const picks = (name, label, options, more = {}) => ({ type: 'picks', name, label, options, ...more });

/** An object inside the object. */
export const group = (name, label, fields, more = {}) => ({ type: 'group', name, label, fields, ...more });

/** A list of objects; {@code line} puts each in one row. */
export const rows = (name, label, one, fields, more = {}) => ({ type: 'rows', name, label, one, fields, ...more });

/** A list of single values. */
export const list = (name, label, one, item, more = {}) => ({ type: 'list', name, label, one, item, ...more });

export const origin = group('origin', 'Where this comes from', [
  prose('text', 'Source', { hint: 'In words that let somebody find it again.', wide: true }),
  pick('status', 'How it is known', [['measured', 'Measured on this site'], ['seen', 'Read in a published text'], ['computed', 'Worked out from such figures'],
    ['memory', 'From memory (assumption)'], ['judgement', 'Judgement (assumption)'], ['invented', 'Invented for a demonstration (assumption)']]),
  rows('rows', 'Rows of the shipped tables it was copied from', 'row', [text('table', 'Table'), text('row', 'Row')], { line: true, maybe: true, hint: 'Take a row out when the figure is no longer that of the row.' }),
]);

/** Objects of a kind as options. */
export const refs = kind => ({ camp }) => (camp.doc[kind] ?? []).map(object => [object.code, object.name ? `${object.name} (${object.code})` : object.code]);
export const roles = ({ camp }) => [...new Set(camp.doc.workers.flatMap(worker => worker.roles))].sort().map(role => [role, role]);
export const groups = ({ camp }) => [...new Set([...camp.doc.routines.flatMap(routine => routine.tasks), ...camp.doc.tasks].map(task => task.group))]
  .sort().map(name => [name, name]);
export const taskIds = ({ camp }) => (camp.forecast?.tasks ?? []).map(task => [task.id, `${task.id}: ${task.name}`]);
export const materials = ({ tables }) => tables.materials.map(name => [name, name]);
export const nuclides = ({ tables }) => tables.nuclides.map(nuclide => [nuclide.name, nuclide.name]);
