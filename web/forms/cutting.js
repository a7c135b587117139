// Techniques, components and cuts.
import { code, day, group, likely, list, nuclides, number, origin, pick, picks, prose, refs, rows, text, whole } from './field.js';
import { shape } from './shape.js';
import { posture, spot } from './stand.js';

export const components = {
  one: 'component', article: 'a', title: 'Components', tab: 'cuts',
  fields: [
    text('name', 'Name'), code(),
    shape(),
    text('material', 'Material', { hint: 'As the techniques name it, such as stainless-304.' }), number('density_kg_per_m3', 'Density', 'kg/m³'),
    number('mass_kg', 'Mass', 'kg', { hint: 'As weighed or drawn; held against shape and density.' }), number('top_depth_mm', 'Its top under the water', 'mm'),
    spot('place', 'Where its middle stands, seen from above', { maybe: true, start: false, hint: 'For calculated dose rates.' }), posture,
    whole('pieces', 'Pieces it is cut into'), whole('packages', 'Packages they fill'), pick('package_type', 'Which packages', refs('packages'), { maybe: true }),
    list('routines', 'Routines, in their order', 'routine', pick('', 'Routine',
      ({ camp }) => camp.doc.routines.filter(routine => routine.applies === 'component').map(routine => [routine.code, `${routine.name} (${routine.code})`])), { start: 1 }),
    picks('after', 'Waits for these components', refs('components'), { wide: true, notSelf: true }),
    group('inventory', 'Nuclide inventory', [
      day('reference_on', 'Reference day'),
      rows('activities', 'Activities', 'nuclide', [pick('nuclide', 'Nuclide', nuclides), number('becquerel', 'Activity', 'GBq', { power: 9, sent: 'Bq' })], { line: true, start: 1 }),
      origin,
    ], { maybe: true, start: false }),
    prose('note', 'Note', { wide: true }),
  ],
};

export const cuts = {
  one: 'cut', article: 'a', title: 'Cuts', tab: 'cuts',
  fields: [
    pick('component', 'Component', refs('components')), code(), text('name', 'Name'), pick('technique', 'Technique', refs('techniques')),
    whole('count', 'How many'), number('length_mm', 'Length of each', 'mm'), number('thickness_mm', 'Thickness', 'mm'),
    number('metal_share', 'Part of the face that is metal', '%', { power: -2, maybe: true, hint: 'Less than 100 where the tool also crosses holes: the kerf is less, the way of the tool is not.' }),
  ],
};

const byTable = draft => draft.speed_table.length > 0;
export const techniques = {
  one: 'technique', article: 'a', title: 'Techniques', tab: 'cuts',
  fields: [
    text('name', 'Name'), code(),
    pick('medium', 'Works in', [['water', 'water'], ['air', 'air'], ['either', 'water or air']]),
    list('materials', 'Materials', 'material', text('', 'Material'), { hint: 'None named means all.' }),
    number('min_thickness_mm', 'Thinnest section', 'mm'), number('max_thickness_mm', 'Thickest section in one pass', 'mm'),
    likely('area_rate_cm2_per_min', 'Cut face made per minute', 'cm²/min', { maybe: true, hint: 'This or a speed table, one of the two.', when: draft => !byTable(draft) }),
    rows('speed_table', 'Speed table', 'reading', [
      number('thickness_mm', 'Thickness', 'mm'), likely('mm_per_min', 'Speed', 'mm/min')], { hint: 'In rising thickness, at least two. Never extended beyond its ends.' }),
    likely('kerf_mm', 'Kerf width', 'mm'),
    group('wear', 'Wear and waste', [
      likely('tool_life_h', 'Tool life', 'h', { maybe: true, hint: 'Give the tool life one way only.' }), likely('tool_life_m2', 'Tool life in cut face', 'm²', { maybe: true }),
      likely('tool_life_m', 'Tool life in length', 'm', { maybe: true }), likely('tool_life_cuts', 'Tool life in cuts', 'cuts', { maybe: true }),
      likely('abrasive_kg_per_min', 'Abrasive', 'kg/min', { maybe: true }), likely('filter_life_h', 'Filter life', 'tool-on h', { maybe: true }),
      likely('drum_kg', 'Spent solids in one drum', 'kg', { maybe: true }),
    ], { hint: 'What is left blank is not known; a step that needs it is then refused.' }),
    likely('faults_per_h', 'Faults', 'per tool-on h', { maybe: true, hint: 'How often it jams, leaks or stops until somebody clears it. Left blank: not known.' }),
    group('faults_origin', 'Where the fault rate comes from', origin.fields, { maybe: true, start: false, hint: 'Not given: where the technique comes from.' }),
    prose('caution', 'Its own hazards', { wide: true }), origin,
  ],
};
