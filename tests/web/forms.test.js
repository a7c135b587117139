// Runs in the browser by kerfbook.browser.ModulesTest.
const { draftOf } = await load('/forms/draft.js');
const { read } = await load('/forms/read.js');
const { labelsOf, placeOf, worded } = await load('/forms/faults.js');
const { merged } = await load('/forms/clash.js');
const { kinds } = await load('/forms/kinds.js');
const field = await load('/forms/field.js');

const survey = {
  code: 's', area: 'a', surveyed_on: '2027-01-01', valid_until: '2027-12-31', instrument: 'm', rule: 'weighted-mean',
  points: [{ name: 'p', usv_per_h: 0.1 + 0.2, weight: 1 / 3 }], shares: [{ source: 'x', share: 0.343 }], gsd: 1.25, note: 'n\nm',
};

test('LAW: a draft that nobody touched reads back as the very same object', () => {
  equal(read(kinds.surveys.fields, draftOf(kinds.surveys.fields, survey)), { value: Object.fromEntries(kinds.surveys.fields.map(each => [each.name, survey[each.name]])), faults: [] });
});
test('LAW: parts that the form does not show go back as they came, inside rows too', () => {
  const more = { ...survey, later: { deep: [1] }, points: [{ ...survey.points[0], place: { right_m: 1 } }] };
  const value = read(kinds.surveys.fields, draftOf(kinds.surveys.fields, more)).value;
  equal(value.later, { deep: [1] });
  equal(value.points[0].place, { right_m: 1 });
});
test('LAW: fields that do not belong to a choice are left out', () => {
  const draft = draftOf(kinds.surveys.fields, survey);
  draft.rule.text = 'mean';
  equal(read(kinds.surveys.fields, draft).value.points, [{ name: 'p', usv_per_h: 0.1 + 0.2 }]);
});
test('EDGE: a blank number is missing, never 0; a blank optional one is left out', () => {
  const fields = [field.number('a', 'A', 'h'), field.number('b', 'B', 'h', { maybe: true }), field.likely('c', 'C', 'h', { maybe: true }), field.likely('d', 'D', 'h')];
  const { value, faults } = read(fields, draftOf(fields));
  equal(value.a === undefined && !('b' in value) && !('c' in value), true);
  equal(faults.map(each => each.field), ['a', 'd.low', 'd.likely', 'd.high']);
});
test('EDGE: one box of three filled asks for the other two', () => {
  const fields = [field.likely('c', 'C', 'h', { maybe: true })];
  const draft = draftOf(fields);
  draft.c.low.text = '1';
  equal(read(fields, draft).faults.map(each => each.field), ['c.likely', 'c.high']);
});
test('BY HAND: 0.05 person-mSv are 50 person-µSv, 25 % are 0.25, 200 GBq are 2e11 Bq', () => {
  const fields = [field.number('a', 'A', 'mSv', { power: 3 }), field.number('b', 'B', '%', { power: -2 }), field.number('c', 'C', 'GBq', { power: 9 })];
  const draft = draftOf(fields);
  draft.a.text = '0.05';
  draft.b.text = '25';
  draft.c.text = '200';
  equal(read(fields, draft).value, { a: 50, b: 0.25, c: 2e11 });
  equal(Object.values(draftOf(fields, { a: 50, b: 0.25, c: 2e11 })).map(each => each.text), ['0.05', '25', '200']);
});
test('EDGE: a whole number with a fraction is refused', () => {
  const fields = [field.whole('a', 'A')];
  const draft = draftOf(fields);
  draft.a.text = '2,5';
  equal(read(fields, draft).faults.length, 1);
});
test('LAW: a fault goes to its own field, else to the nearest one around it', () => {
  const known = labelsOf(kinds.surveys.fields, draftOf(kinds.surveys.fields, survey));
  equal(placeOf('points[0].usv_per_h', known), 'points[0].usv_per_h');
  equal(placeOf('points[0].wrong', known), 'points[0]');
  equal(placeOf('points[7].name', known), 'points');
  equal(placeOf('somewhere.else', known), '');
  equal(worded('Background', 'must be above 0.'), 'Background must be above 0.');
  equal(worded('Area', 'There is no area "x".'), 'There is no area "x".');
});
test('LAW: of two versions each field is kept as chosen', () => {
  const clash = { mine: { a: 1, b: 2, c: 3 }, now: { a: 9, b: 8 }, keep: new Map([['a', 'mine'], ['b', 'now'], ['c', 'now']]) };
  equal(merged({ clash, fields: [{ name: 'a' }, { name: 'b' }, { name: 'c' }] }), { a: 1, b: 8 });
});
