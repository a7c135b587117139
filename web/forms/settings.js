import { day, group, list, number, pick, picks, prose, text, tick, whole } from './field.js';

const DAYS = [['MONDAY', 'Monday'], ['TUESDAY', 'Tuesday'], ['WEDNESDAY', 'Wednesday'], ['THURSDAY', 'Thursday'], ['FRIDAY', 'Friday'], ['SATURDAY', 'Saturday'], ['SUNDAY', 'Sunday']];

export const settings = {
  one: 'settings', title: 'Settings', tab: 'basis',
  fields: [
    text('name', 'Name of the campaign'), day('start', 'First day of work'),
    pick('rule_set', 'Dose limits', ({ tables }) => tables.rule_sets.map(set => [set.code, set.name])),
    tick('invented', 'Invented: a demonstration, marked so on every page'),
    group('calendar', 'Working calendar', [
      picks('working_days', 'Working days', DAYS, { wide: true }), whole('shifts_per_day', 'Shifts a day', { hint: '1 to 3' }),
      number('productive_hours_per_shift', 'Productive time of a shift', 'h', { hint: 'What is left for the task itself.' }),
      list('holidays', 'Days without work', 'day', day('', 'Day')),
    ]),
    prose('story', 'What it is about', { wide: true }),
  ],
};

export const NEW_SETTINGS = {
  name: '', story: '', invented: false, start: '', rule_set: '',
  calendar: { working_days: ['MONDAY', 'TUESDAY', 'WEDNESDAY', 'THURSDAY', 'FRIDAY'], shifts_per_day: 1, productive_hours_per_shift: 6, holidays: [] },
};
