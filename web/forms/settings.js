import { day, group, list, number, origin, pick, picks, prose, text, tick, whole } from './field.js';
import { pool } from './stand.js';

const DAYS = [['MONDAY', 'Monday'], ['TUESDAY', 'Tuesday'], ['WEDNESDAY', 'Wednesday'], ['THURSDAY', 'Thursday'], ['FRIDAY', 'Friday'], ['SATURDAY', 'Saturday'], ['SUNDAY', 'Sunday']];

const spread = (name, label, usual) => group(name, label, [
  number('value', 'Geometric standard deviation', '', { hint: 'Two outcomes of three lie within the figure divided and multiplied by it; 1: known.' }), origin,
], { maybe: true, start: false, hint: `Left out: ${usual}, a judgement.` });

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
    group('handling', 'Lifting gear', [
      number('hoist_kg', 'Heaviest lift', 'kg'), number('clearance_mm', 'Room around a piece', 'mm', { maybe: true }), tick('hoists_packages', 'The same hoist lifts loaded packages'),
      group('largest_piece', 'Largest piece that may be handled', [number('length_mm', 'Length', 'mm'), number('width_mm', 'Width', 'mm'), number('height_mm', 'Height', 'mm')], { maybe: true, start: false }),
    ], { maybe: true, start: false }),
    group('uncertainty', 'How far figures may be off', [
      spread('crew_gsd', 'Pace of the crew', '1.15'), spread('survey_gsd', 'Surveys that do not give their own', '1.3'),
      spread('source_gsd', 'Strength of sources that no survey fits', '1.6'),
    ], { maybe: true, start: false }),
    pool,
    prose('story', 'What it is about', { wide: true }),
  ],
};

export const NEW_SETTINGS = {
  name: '', story: '', invented: false, start: '', rule_set: '',
  calendar: { working_days: ['MONDAY', 'TUESDAY', 'WEDNESDAY', 'THURSDAY', 'FRIDAY'], shifts_per_day: 1, productive_hours_per_shift: 6, holidays: [] },
};
