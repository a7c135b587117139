// Techniques, components and cuts.
import { code, day, group, likely, list, nuclides, number, origin, pick, picks, prose, refs, rows, text, whole } from './field.js';

const TAKES = {
  ring: ['outer_diameter_mm', 'inner_diameter_mm', 'height_mm'], 'cylinder-shell': ['outer_diameter_mm', 'inner_diameter_mm', 'height_mm'],
  plate: ['length_mm', 'width_mm', 'thickness_mm'], 'round-plate': ['outer_diameter_mm', 'thickness_mm'],
  grid: ['length_mm', 'width_mm', 'thickness_mm', 'open_fraction'], 'round-grid': ['outer_diameter_mm', 'thickness_mm', 'open_fraction'],
  'tube-bundle': ['outer_diameter_mm', 'inner_diameter_mm', 'length_mm', 'count'], 'rod-bundle': ['outer_diameter_mm', 'length_mm', 'count'],
  block: ['length_mm', 'width_mm', 'height_mm'], bolts: ['outer_diameter_mm', 'length_mm', 'count'],
};
const KINDS = [['ring', 'Ring'], ['cylinder-shell', 'Cylinder shell'], ['plate', 'Plate'], ['round-plate', 'Round plate'], ['grid', 'Grid'], ['round-grid', 'Round grid'],
  ['tube-bundle', 'Tube bundle'], ['rod-bundle', 'Rod bundle'], ['block', 'Block'], ['bolts', 'Bolts']];
const takes = name => ({ when: shape => TAKES[shape.kind.text]?.includes(name) });

export const components = {
  one: 'component', article: 'a', title: 'Components', tab: 'cuts',
  fields: [
    text('name', 'Name'), code(),
    group('shape', 'Shape', [
      pick('kind', 'Kind', KINDS),
      number('outer_diameter_mm', 'Outer diameter', 'mm', takes('outer_diameter_mm')), number('inner_diameter_mm', 'Inner diameter', 'mm', takes('inner_diameter_mm')),
      number('length_mm', 'Length', 'mm', takes('length_mm')), number('width_mm', 'Width', 'mm', takes('width_mm')),
      number('thickness_mm', 'Thickness', 'mm', takes('thickness_mm')), number('height_mm', 'Height', 'mm', takes('height_mm')),
      whole('count', 'How many', takes('count')),
      number('outline_diameter_mm', 'Circle around all', 'mm', { maybe: true, when: shape => ['tube-bundle', 'rod-bundle', 'bolts'].includes(shape.kind.text) }), number('open_fraction', 'Part that is hole', '%', { power: -2, ...takes('open_fraction') }),
    ]),
    text('material', 'Material', { hint: 'As the techniques name it, such as stainless-304.' }), number('density_kg_per_m3', 'Density', 'kg/m³'),
    number('mass_kg', 'Mass', 'kg', { hint: 'As weighed or drawn; held against shape and density.' }), number('top_depth_mm', 'Its top under the water', 'mm'),
    pick('posture', 'Stands', [['upright', 'upright'], ['flat', 'flat']], { maybe: true, hint: 'None: plates and grids lie flat.' }),
    group('place', 'Where its middle stands, seen from above', [
      number('right_m', 'Right of the left pool wall', 'm', { signed: true }), number('across_m', 'Across from the middle', 'm', { signed: true, maybe: true })], { maybe: true, start: false }),
    whole('pieces', 'Pieces it is cut into'), whole('packages', 'Packages they fill'),
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
    prose('caution', 'Its own hazards', { wide: true }), origin,
  ],
};
