// Packages that pieces go into, and cuts that were timed before the campaign.
import { code, day, number, pick, prose, refs, text } from './field.js';

export const packages = {
  one: 'package type', article: 'a', title: 'Package types', tab: 'cuts',
  fields: [
    text('name', 'Name'), code(),
    number('inner_length_mm', 'Inner length', 'mm'), number('inner_width_mm', 'Inner width', 'mm'), number('inner_height_mm', 'Inner height', 'mm'),
    number('payload_kg', 'Heaviest content', 'kg'), number('empty_kg', 'Mass when empty', 'kg'),
    number('wall_mm', 'Wall', 'mm', { hint: '0 for an open basket.' }), text('wall_material', 'Wall is of', { hint: 'A name of the table of materials.' }),
    number('surface_usv_per_h', 'Highest rate at its surface', 'µSv/h', { maybe: true }), prose('note', 'Note', { wide: true }),
  ],
};

export const trials = {
  one: 'timed trial', article: 'a', title: 'Timed trials', tab: 'cuts',
  fields: [
    code(), pick('technique', 'Technique', refs('techniques')), text('material', 'Material'), number('thickness_mm', 'Thickness', 'mm'), number('length_mm', 'Length cut', 'mm'),
    number('minutes', 'Time with the tool on', 'min'), day('done_on', 'Done on'),
    text('setting', 'Setting of the tool', { hint: 'Trials of different settings are not fitted together.' }), prose('note', 'Note', { wide: true }),
  ],
};
