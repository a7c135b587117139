// Difficulty factors, routines, manual tasks, replaced figures.
import { code, day, groups, likely, list, number, origin, pick, picks, prose, refs, roles, rows, taskIds, text, tick, whole } from './field.js';

const DRIVERS = [['campaign', 'for the campaign'], ['component', 'a component'], ['package', 'a package'], ['piece', 'a piece'], ['cut', 'a cut'], ['metre', 'a metre cut'],
  ['tool-on-hour', 'a tool-on hour'], ['tool-change', 'a tool change'], ['fault', 'a fault'], ['kg-abrasive', 'a kg of abrasive'], ['filter', 'a filter'], ['drum', 'a drum'],
  ['wait-hour', 'an hour of waiting for clear water'], ['shift', 'a shift'], ['week', 'a week'], ['count', 'a time (give how many)']];

const steps = rows('steps', 'Steps', 'step', [
  text('name', 'Name'), code({ hint: '' }),
  pick('driver', 'Counted by', DRIVERS, { hint: 'Hours for …' }), number('count', 'How many times', '', { when: step => step.driver.text === 'count' }),
  likely('hours_each', 'Hours each', 'h'),
  pick('mode', 'Work is', [['hands-on', 'hands-on'], ['remote', 'remote']]),
  tick('alongside', 'Runs alongside, adds no time to the task'),
  picks('factors', 'Difficulty factors', refs('factors'), { wide: true }),
  rows('staff', 'Who is where', 'role', [
    pick('role', 'Role', roles), number('people', 'People', ''), pick('area', 'Area', refs('areas')),
    number('presence', 'Presence in the area', '%', { power: -2 })], { line: true }),
  origin,
], { start: 1 });

const needs = rows('needs', 'Resources it uses', 'resource', [pick('resource', 'Resource', refs('resources')), whole('amount', 'How many', { usual: '1' })], { line: true });

const inGroup = text('group', 'Group', { options: groups, hint: 'Heading under which tasks are added up.' });

export const factors = {
  one: 'difficulty factor', article: 'a', title: 'Difficulty factors', tab: 'basis',
  fields: [
    text('name', 'Name'), code(),
    pick('stage', 'Percentage of', [['critical', 'the bare duration'], ['adjusted', 'the duration after access and the like'], ['productive', 'the productive duration']]),
    likely('percent', 'Extra time', '%'), origin,
  ],
};

export const routines = {
  one: 'routine', article: 'a', title: 'Routines', tab: 'basis',
  fields: [
    text('name', 'Name'), code(),
    pick('applies', 'Its tasks arise', [['component', 'for each component that lists it'], ['before', 'once, before the components'], ['after', 'once, after the components'], ['weekly', 'every week']]),
    pick('technique', 'Belongs to the technique', refs('techniques'), { maybe: true, hint: 'Counts the cuts of this technique only.' }),
    rows('tasks', 'Tasks', 'task', [
      text('name', 'Name'), code({ hint: '' }), inGroup,
      list('after', 'Waits for', 'task', text('', 'Code of an earlier task of this routine')),
      number('lag_hours', 'Pause before it', 'working h', { usual: '0' }), needs, tick('packs', 'The component is packed when it is finished'), tick('frees', 'The component is cut free when it is finished', { maybe: true }),
      number('lift_cover_mm', 'Water kept over lifted pieces', 'm', { power: 3, sent: 'mm', maybe: true, hint: 'Only for a task that lifts them.' }), steps,
    ], { start: 1 }),
  ],
};

export const tasks = {
  one: 'task', article: 'a', title: 'Tasks added by hand', tab: 'tasks',
  fields: [
    text('name', 'Name'), code(), inGroup,
    pick('component', 'Counted with the component', refs('components'), { maybe: true }),
    list('after', 'Waits for', 'task', text('', 'Task', { options: taskIds })), list('before', 'Must be finished before', 'task', text('', 'Task', { options: taskIds })),
    number('lag_hours', 'Pause before it', 'working h', { usual: '0' }), day('not_before', 'Not before', { maybe: true }), needs, steps,
  ],
};

export const FIGURES = [['quantity', 'the quantity'], ['hours-each', 'the hours each'], ['difficulty', 'the difficulty'], ['hours', 'the hours'], ['people', 'the people'],
  ['presence', 'the presence (0 to 1)'], ['usv-per-h', 'the dose rate (µSv/h)']];
export const overrides = {
  one: 'replaced figure', article: 'a', title: 'Replaced figures', tab: 'tasks',
  fields: [
    text('task', 'Task', { options: taskIds }), text('step', 'Code of its step'), pick('figure', 'What is replaced', FIGURES),
    pick('role', 'Whose', roles, { maybe: true, when: draft => ['people', 'presence', 'usv-per-h'].includes(draft.figure.text) }),
    number('value', 'New value', ''), day('decided_on', 'Decided on'), prose('reason', 'Why', { wide: true }), code({ hint: '' }),
  ],
};

export const resources = {
  one: 'resource', article: 'a', title: 'Resources', tab: 'tasks',
  fields: [
    text('name', 'Name'), code(), whole('capacity', 'How many can be in use together'),
    pick('role', 'Counts the people of the role', roles, { maybe: true, hint: 'None: a thing, which tasks name among their needs.' }),
  ],
};
