// What a thing looks like: each kind of shape takes its own dimensions.
import { group, number, pick, whole } from './field.js';

const TAKES = {
  ring: ['outer_diameter_mm', 'inner_diameter_mm', 'height_mm'], 'cylinder-shell': ['outer_diameter_mm', 'inner_diameter_mm', 'height_mm'],
  plate: ['length_mm', 'width_mm', 'thickness_mm'], 'round-plate': ['outer_diameter_mm', 'thickness_mm'],
  grid: ['length_mm', 'width_mm', 'thickness_mm', 'open_fraction'], 'round-grid': ['outer_diameter_mm', 'thickness_mm', 'open_fraction'],
  'tube-bundle': ['outer_diameter_mm', 'inner_diameter_mm', 'length_mm', 'count', 'outline_diameter_mm'],
  'rod-bundle': ['outer_diameter_mm', 'length_mm', 'count', 'outline_diameter_mm'],
  block: ['length_mm', 'width_mm', 'height_mm'], bolts: ['outer_diameter_mm', 'length_mm', 'count', 'outline_diameter_mm'],
};
const KINDS = [['ring', 'Ring'], ['cylinder-shell', 'Cylinder shell'], ['plate', 'Plate'], ['round-plate', 'Round plate'], ['grid', 'Grid'], ['round-grid', 'Round grid'],
  ['tube-bundle', 'Tube bundle'], ['rod-bundle', 'Rod bundle'], ['block', 'Block'], ['bolts', 'Bolts']];
const takes = name => ({ when: shape => TAKES[shape.kind.text]?.includes(name) });

export const shape = (more = {}) => group('shape', 'Shape', [
  pick('kind', 'Kind', KINDS),
  number('outer_diameter_mm', 'Outer diameter', 'mm', takes('outer_diameter_mm')), number('inner_diameter_mm', 'Inner diameter', 'mm', takes('inner_diameter_mm')),
  number('length_mm', 'Length', 'mm', takes('length_mm')), number('width_mm', 'Width', 'mm', takes('width_mm')),
  number('thickness_mm', 'Thickness', 'mm', takes('thickness_mm')), number('height_mm', 'Height', 'mm', takes('height_mm')),
  whole('count', 'How many', takes('count')), number('open_fraction', 'Part that is hole', '%', { power: -2, ...takes('open_fraction') }),
  number('outline_diameter_mm', 'Circle around all of them', 'mm', { maybe: true, hint: 'Blank: a triangular pitch of 1.25 diameters, an assumption.', ...takes('outline_diameter_mm') }),
], more);
