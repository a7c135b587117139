// Areas, sources and surveys.
import { code, day, nuclides, number, pick, prose, refs, rows, text } from './field.js';
import { body, place } from './stand.js';

export const areas = {
  one: 'area', article: 'an', title: 'Areas', tab: 'areas',
  fields: [
    text('name', 'Name'), code(),
    number('background_usv_per_h', 'Background', 'µSv/h', { hint: 'Rate without any source of the campaign.' }),
    number('ceiling_usv_per_h', 'Ceiling', 'µSv/h', { maybe: true, hint: 'Work there stops above it.' }),
    pick('rate_from', 'The rate comes from', [['survey', 'its surveys'], ['calculated', 'calculation from what stands in the pool'],
      ['calibrated', 'calculation, fitted to the surveys'], ['background', 'background only: no source reaches it']]),
    place('sketch', 'Where its dosimeter is', { maybe: true, start: false, hint: 'Place on the section sketch, and the point that is calculated.' }),
    prose('note', 'Note', { wide: true }),
  ],
};

export const sources = {
  one: 'source', article: 'a', title: 'Sources', tab: 'areas',
  fields: [
    text('name', 'Name'), code(),
    pick('component', 'Belongs to the component', refs('components'), { maybe: true, hint: 'It ends when that component is packed.' }),
    day('ends_on', 'Gone from', { maybe: true, hint: 'Only without a component.' }),
    body,
    rows('nuclides', 'Nuclides', 'nuclide', [
      pick('nuclide', 'Nuclide', nuclides), number('dose_share', 'Share of its dose rate', '%', { power: -2 })],
    { line: true, hint: 'Shares add up to 100 %. Without nuclides the source does not decay.' }),
    day('shares_on', 'Shares hold on', { maybe: true, hint: 'With nuclides only.' }),
  ],
};

export const surveys = {
  one: 'survey', article: 'a', title: 'Surveys', tab: 'areas',
  fields: [
    pick('area', 'Area', refs('areas')), code(),
    day('surveyed_on', 'Measured on'), day('valid_until', 'Valid until', { hint: 'Last day without a new survey.' }),
    text('instrument', 'Instrument'),
    pick('rule', 'The area rate is the', [['mean', 'mean of the points'], ['weighted-mean', 'mean weighted by the stay at each point'], ['highest', 'highest point']]),
    rows('points', 'Points', 'point', [
      text('name', 'Point'), number('usv_per_h', 'Dose rate', 'µSv/h'),
      number('weight', 'Weight', '', { when: (row, root) => root.rule.text === 'weighted-mean' }),
      place('place', 'Where it was measured', { maybe: true, start: false, hint: 'For calibration.' })], { line: true, start: 1 }),
    rows('shares', 'Which source makes how much', 'source', [
      pick('source', 'Source', refs('sources')), number('share', 'Share of the rate above background', '%', { power: -2 })],
    { line: true, hint: 'What is left over is "not told apart": it stays and does not decay.' }),
    number('gsd', 'Geometric standard deviation', '', { maybe: true, hint: '1 or more, if somebody knows it.' }),
    prose('note', 'Note', { wide: true }),
  ],
};
