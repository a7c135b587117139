// Where things stand, as calculated dose rates need it: places, spans, bodies, shields and the pool itself.
import { code, day, group, materials, nuclides, number, origin, pick, rows, text } from './field.js';
import { shape } from './shape.js';
import { water } from './water.js';

const right = more => number('right_m', 'Right of the left pool wall', 'm', { signed: true, ...more });
const up = more => number('up_m', 'Above the normal water', 'm', { signed: true, hint: 'Minus is under water.', ...more });
const across = more => number('across_m', 'Across from the middle of the pool', 'm', { signed: true, maybe: true, hint: 'Blank: in the middle.', ...more });

/** A point in space. */
export const place = (name, label, more = {}) => group(name, label, [right(), up(), across()], more);
/** A point seen from above. */
export const spot = (name, label, more = {}) => group(name, label, [right(), across()], more);
/** From here to there along one direction. */
export const span = (name, label, more = {}) => group(name, label, [number('from_m', 'From', 'm', { signed: true }), number('to_m', 'To', 'm', { signed: true })], more);

export const posture = pick('posture', 'It stands', [['upright', 'upright'], ['flat', 'lying flat']], { maybe: true, hint: 'None: as its shape usually does.' });
export const activities = more => rows('activities', 'Activities', 'nuclide', [pick('nuclide', 'Nuclide', nuclides), number('becquerel', 'Activity', 'GBq', { power: 9, sent: 'Bq' })],
  { line: true, start: 1, ...more });

export const body = group('body', 'What it looks like and where it stands', [
  shape(), posture, pick('material', 'Material', materials), number('density_kg_per_m3', 'Density', 'kg/m³'), place('middle', 'Its middle'),
  group('inventory', 'Nuclide inventory', [day('reference_on', 'Reference day'), activities(), origin]),
], { maybe: true, start: false, hint: 'For calculated rates, and only without a component: a component brings its own.' });

export const shields = {
  one: 'shield', article: 'a', title: 'Temporary shields', tab: 'areas',
  fields: [
    text('name', 'Name'), code(), pick('material', 'Material', materials),
    span('right', 'Right of the left pool wall', { maybe: true, start: false, hint: 'A direction that is not given is endless; at least one is needed.' }),
    span('across', 'Across from the middle of the pool', { maybe: true, start: false }), span('up', 'Above the normal water', { maybe: true, start: false }),
    day('from', 'Stands from', { maybe: true, hint: 'Blank: from the beginning.' }), day('until', 'Stands until', { maybe: true, hint: 'Blank: to the end.' }),
  ],
};

export const pool = group('pool', 'Pool', [
  number('length_m', 'Length', 'm', { hint: 'From the left wall to the right one.' }), number('width_m', 'Width', 'm'), number('depth_m', 'Depth', 'm', { hint: 'From the normal water surface to the floor.' }),
  number('deck_mm', 'Deck above the normal water', 'm', { power: 3, sent: 'mm' }),
  number('water_level_mm', 'Water level now', 'm', { power: 3, sent: 'mm', signed: true, hint: 'Against the normal surface: 0 is normal, minus is lower.' }),
  group('basket', 'Basket where cut pieces wait', [right(), across(), number('top_depth_mm', 'Water above the pieces', 'm', { power: 3, sent: 'mm' }),
    number('filling', 'Part of it that is metal', '%', { power: -2, maybe: true, hint: 'Blank: 30 %.' })], { maybe: true, start: false }),
  spot('hook', 'Hook where pieces hang while they are lifted', { maybe: true, start: false }),
  water,
], { maybe: true, start: false, hint: 'Dose rates are calculated in its coordinates: right of its left wall, across from its middle, above its normal water surface.' });
