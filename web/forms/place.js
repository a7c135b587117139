// Areas, sources and surveys.
import { code, day, group, list, nuclides, number, pick, prose, refs, rows, text } from './field.js';

export const areas = {
  one: 'area', article: 'an', title: 'Areas', tab: 'areas',
  fields: [
    text('name', 'Name'), code(),
    number('background_usv_per_h', 'Background', 'µSv/h', { hint: 'Rate without any source of the campaign.' }),
    number('ceiling_usv_per_h', 'Ceiling', 'µSv/h', { maybe: true, hint: 'Work there stops above it.' }),
    pick('rate_from', 'The rate comes from', [['survey', 'its surveys'], ['background', 'background only: no source reaches it'],
      ['calculated', 'what stands in the pool, calculated'], ['calibrated', 'what stands in the pool, calibrated to surveys']]),
    group('sketch', 'Place on the section sketch', [
      number('right_m', 'Right of the left pool wall', 'm', { signed: true }), number('up_m', 'Above the water', 'm', { signed: true }),
      number('across_m', 'Across from the middle', 'm', { signed: true, maybe: true })], { maybe: true, start: false }),
    prose('note', 'Note', { wide: true }),
  ],
};

export const sources = {
  one: 'source', article: 'a', title: 'Sources', tab: 'areas',
  fields: [
    text('name', 'Name'), code(),
    pick('component', 'Belongs to the component', refs('components'), { maybe: true, hint: 'It ends when that component is packed.' }),
    day('ends_on', 'Gone from', { maybe: true, hint: 'Only without a component.' }),
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
      number('weight', 'Weight', '', { when: (row, root) => root.rule.text === 'weighted-mean' })], { line: true, start: 1 }),
    rows('shares', 'Which source makes how much', 'source', [
      pick('source', 'Source', refs('sources')), number('share', 'Share of the rate above background', '%', { power: -2 })],
    { line: true, hint: 'What is left over is "not told apart": it stays and does not decay.' }),
    number('gsd', 'Geometric standard deviation', '', { maybe: true, hint: '1 or more, if somebody knows it.' }),
    prose('note', 'Note', { wide: true }),
  ],
};

const span = (name, label) => group(name, label, [number('from_m', 'From', 'm', { signed: true }), number('to_m', 'To', 'm', { signed: true })], { maybe: true, start: false });
export const shields = {
  one: 'shield', article: 'a', title: 'Temporary shields', tab: 'areas',
  fields: [
    text('name', 'Name'), code(), text('material', 'Material', { hint: 'A name of the table of materials, such as lead.' }),
    day('from', 'Stands from', { maybe: true }), day('until', 'Stands until', { maybe: true }),
    span('right', 'Right of the left pool wall'), span('across', 'Across from the middle'), span('up', 'Above the water'),
  ],
};
