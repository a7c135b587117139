// Workers, who does what, targets and constraints.
import { code, day, groups, list, month, number, pick, prose, refs, roles, rows, taskIds, text, whole } from './field.js';

export const workers = {
  one: 'person', article: 'a', title: 'People', tab: 'people',
  fields: [
    text('name', 'Name'), code({ hint: 'Role codes for all, names for the radiation protection officer and the person.' }),
    list('roles', 'Roles', 'role', text('', 'Role', { options: roles }), { start: 1 }),
    whole('exposed_since', 'Exposed work since the year', { maybe: true }),
    rows('years', 'Dose received before, by calendar year', 'year', [whole('year', 'Year'), number('usv', 'Effective dose', 'mSv', { power: 3, sent: 'µSv' })],
      { line: true, hint: 'All employers. The year of the start and the four before it must be there; write 0 only where it is known to be 0.' }),
    rows('months', 'The same by month, where known', 'month', [month('month', 'Month'), number('usv', 'Effective dose', 'mSv', { power: 3, sent: 'µSv' })], { line: true }),
    prose('dose_source', 'Where the doses are known from', { wide: true }),
  ],
};

export const roster = {
  one: 'roster entry', article: 'a', title: 'Who fills which role', tab: 'people',
  fields: [
    code(), pick('role', 'Role', roles), text('group', 'Only in tasks of the group', { maybe: true, options: groups }),
    pick('component', 'Only at the component', refs('components'), { maybe: true }),
    text('task', 'Only in the task', { maybe: true, options: taskIds, hint: 'An id as the task list shows it.' }),
    rows('members', 'Who', 'person', [pick('worker', 'Person', refs('workers')), number('weight', 'Weight', '', { usual: '1' })], { line: true, start: 1, hint: 'Hours are shared by weight.' }),
  ],
};

const scope = [['campaign', 'the campaign'], ['group', 'a group of tasks'], ['component', 'a component'], ['task', 'a task']];
const scoped = word => (draft => draft.scope.text === word);
const of = [
  pick('of', 'Which group', groups, { when: scoped('group') }), pick('of', 'Which component', refs('components'), { when: scoped('component') }),
  text('of', 'Which task', { options: taskIds, when: scoped('task') }),
];

export const targets = {
  one: 'target', article: 'a', title: 'Targets', tab: 'people',
  fields: [
    pick('scope', 'For', scope), ...of,
    number('person_usv', 'Collective dose', 'person-mSv', { power: 3, sent: 'person-µSv', hint: 'A planning value. Going above it asks for a recorded decision.' }),
    day('valid_from', 'Valid from'), prose('reason', 'Reason', { wide: true }), code(),
  ],
};

export const constraints = {
  one: 'constraint', article: 'a', title: 'Constraints', tab: 'people',
  fields: [
    pick('scope', 'For', scope), ...of,
    number('individual_usv', 'Dose of one person', 'mSv', { power: 3, sent: 'µSv', hint: 'Set by the radiation protection officer. Not a limit of the law.' }),
    day('valid_from', 'Valid from'), prose('reason', 'Reason', { wide: true }), code(),
  ],
};
