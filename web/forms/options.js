// Other ways to do the work: a list of changes to the plan.
import { code, groups, number, pick, picks, prose, refs, roles, rows, text, whole, group } from './field.js';
import { shields } from './stand.js';

const KINDS = [['technique', 'another technique for a component'], ['order', 'another order of components'], ['water-level', 'another water level'], ['shield', 'a shield more'],
  ['crew', 'other people'], ['wait', 'waiting for decay'], ['filter', 'another filter for the pool'], ['decontamination', 'a source cleaned before work starts']];
const as = (...kinds) => (row => kinds.includes(row.kind.text));
const money = (name, label, more = {}) => number(name, label, '', { maybe: true, hint: 'In the currency of the prices. Blank: not known.', ...more });

const changes = rows('changes', 'Changes to the plan', 'change', [
  pick('kind', 'Change', KINDS),
  pick('component', 'Component', refs('components'), { when: as('technique', 'order') }),
  pick('technique', 'Cut with', refs('techniques'), { when: as('technique') }),
  picks('cuts', 'Only these cuts of it (none: all)', refs('cuts'), { when: as('technique'), wide: true }),
  pick('routine', 'By the routine', refs('routines'), { when: as('technique'), maybe: true, hint: 'None: the first of that technique.' }),
  picks('after', 'Waits for (none: for no component)', refs('components'), { when: as('order'), wide: true }),
  number('water_level_mm', 'Water level', 'm', { power: 3, sent: 'mm', signed: true, hint: 'Against the normal surface: 0 is normal, minus is lower.', when: as('water-level') }),
  group('shield', 'Shield', shields.fields, { when: as('shield') }),
  pick('role', 'Role', roles, { when: as('crew') }), text('group', 'Only in tasks of the group', { maybe: true, options: groups, when: as('crew') }),
  pick('component', 'Only at the component', refs('components'), { maybe: true, when: as('crew') }),
  number('people', 'People of the role at a time', '', { maybe: true, when: as('crew'), hint: 'Either this, or who they are.' }),
  rows('members', 'Who', 'person', [pick('worker', 'Person', refs('workers')), number('weight', 'Weight', '', { usual: '1' })], { line: true, when: as('crew') }),
  whole('years', 'Years of waiting', { when: as('wait') }), money('cost_per_year', 'Cost of a year of waiting', { when: as('wait') }),
  number('filter_m3_per_h', 'Flow through the filter', 'm³/h', { when: as('filter') }),
  pick('source', 'Source', refs('sources'), { when: as('decontamination') }),
  number('factor', 'Decontamination factor', '', { when: as('decontamination'), hint: 'What is loose is divided by it.' }),
  number('share', 'Part of it that is loose', '%', { power: -2, maybe: true, when: as('decontamination'), hint: 'Blank: all of it.' }),
  money('cost', 'Cost of the change'),
]);

export const options = {
  one: 'option', article: 'an', title: 'Options', tab: 'options',
  fields: [text('name', 'Name'), code(), changes, prose('note', 'Note', { wide: true })],
};
