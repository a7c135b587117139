// How clear the pool's water stays: filter, limit, what clouds it, how much each technique sets free.
import { group, likely, number, origin, pick, refs, rows, text } from './field.js';

const bySettling = row => row.diameter_um.text.trim() === '' && row.density_kg_per_m3.text.trim() === '';

export const water = group('water', 'Clear water', [
  number('filter_m3_per_h', 'Flow through the filter', 'm³/h', { hint: '0 where it stands.' }), number('volume_m3', 'Water that takes part', 'm³', { maybe: true, hint: 'Blank: the whole pool.' }),
  number('start_gram_per_m3', 'Solids before cutting', 'g/m³'),
  number('limit_gram_per_m3', 'Work goes on below', 'g/m³', { maybe: true, hint: 'This, or a turbidity.' }), number('limit_ntu', 'or below a turbidity of', 'NTU', { maybe: true }),
  number('gram_per_m3_per_ntu', 'One NTU stands for', 'g/m³', { maybe: true, hint: 'An assumption of the site, found for its fines. With a turbidity only.' }),
  pick('waits', 'People wait for clear water', [['after-each-cut', 'after each cut'], ['after-last-cut', 'after the last cut of a component']]),
  rows('sizes', 'What clouds it, by size', 'size', [
    text('name', 'Name'), number('share', 'Share', '%', { power: -2 }),
    number('settling_mm_per_s', 'It settles at', 'mm/s', { maybe: true, when: bySettling }),
    number('diameter_um', 'or its diameter', 'µm', { maybe: true }), number('density_kg_per_m3', 'and density', 'kg/m³', { maybe: true }), number('filter_efficiency', 'Caught in one pass', '%', { power: -2 }),
  ], { line: true, start: 1, hint: 'The shares make 100 %.' }),
  rows('releases', 'What stays in the water, by technique', 'technique', [
    pick('technique', 'Technique', refs('techniques')), likely('suspended', 'Part of the kerf metal', '%', { power: -2 }), likely('slow_abrasive', 'Part of the abrasive', '%', { power: -2, maybe: true }),
    likely('airborne', 'Part that leaves the water', '%', { power: -2, maybe: true }), origin,
  ], { start: 1 }),
  likely('element_kg', 'Solids that one filter element takes', 'kg', { maybe: true }), origin,
], { maybe: true, start: false });
