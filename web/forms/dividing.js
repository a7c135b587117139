// What may be asked of the division of a component.
import { group, nuclides, number, picks, pick, refs, rows, tick, whole } from './field.js';

const PATTERNS = [['bands', 'bands of segments (shells and rings)'], ['sectors', 'sectors (round plates)'], ['strips', 'strips and pieces (plates and grids)'],
  ['parts', 'parts in three directions (blocks)'], ['lengths', 'lengths (tubes and rods)']];

export const dividing = [
  pick('package_type', 'Package', refs('packages')), pick('technique', 'Technique', refs('techniques'), { hint: 'Its kerf is what the cuts take away.' }),
  number('hoist_kg', 'Heaviest lift', 'kg', { maybe: true, hint: 'Blank: as in the settings.' }),
  whole('most_pieces', 'At most so many pieces', { maybe: true, hint: 'Blank: 500.' }),
  number('metres_allowance', 'Metres it may cost', 'times the fewest', { maybe: true, hint: 'For fewer packages or lighter lifts. Blank: 1.5.' }),
  tick('hoists_packages', 'The same hoist lifts loaded packages'),
  group('largest_piece', 'Largest piece that may be handled', [number('length_mm', 'Length', 'mm'), number('width_mm', 'Width', 'mm'), number('height_mm', 'Height', 'mm')], { maybe: true, start: false }),
  group('activity_limit', 'Activity that one package may hold', [
    rows('becquerels', 'Limits', 'nuclide', [pick('nuclide', 'Nuclide', nuclides), number('becquerel', 'At most', 'GBq', { power: 9, sent: 'Bq' })], { line: true, start: 1 }),
    picks('unlimited', 'Without a limit', ({ component }) => (component?.inventory?.activities ?? []).map(each => [each.nuclide, each.nuclide])),
  ], { maybe: true, start: false }),
  group('division', 'A division of your own, beside the three', [
    pick('pattern', 'Pattern', PATTERNS), whole('first', 'First number'), whole('second', 'Second number', { usual: '1' }), whole('third', 'Third number', { usual: '1' }),
  ], { maybe: true, start: false, hint: 'For bands: bands, segments in a band. For strips: strips, pieces in a strip.' }),
];

/** What is known already: the campaign's lifting gear, the technique of the first cut, the package the component goes into. */
export function firstQuestion(camp, component) {
  const { handling } = camp.doc.settings;
  const technique = camp.doc.cuts.find(cut => cut.component === component.code)?.technique;
  const packages = camp.doc.packages ?? [];
  return {
    package_type: packages.some(each => each.code === component.package_type) ? component.package_type : packages[0]?.code,
    technique: technique ?? camp.doc.techniques[0]?.code, hoists_packages: handling?.hoists_packages ?? false, hoist_kg: handling?.hoist_kg,
  };
}

/** The limits as the server wants them: a table by nuclide. */
export function question(value) {
  if (!value.activity_limit) return value;
  const { becquerels, unlimited } = value.activity_limit;
  return { ...value, activity_limit: { becquerels: Object.fromEntries(becquerels.map(row => [row.nuclide, row.becquerel])), unlimited } };
}
