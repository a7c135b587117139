// Runs in the browser by kerfbook.browser.ModulesTest.
const { at, cumulate, firstAbove } = await load('/lib/cumulate.js');
const { monthTicks } = await load('/lib/months.js');
const { dayNumber } = await load('/lib/units.js');
const { firstState, ordered, picked } = await load('/lib/tasklist.js');
const { byNearness } = await load('/lib/nearness.js');
const { bands, countIn } = await load('/lib/bands.js');
const { verdict } = await load('/lib/verdict.js');
const { link, parse, withQuery } = await load('/lib/route.js');
const { faultLine } = await load('/lib/faulty.js');

const task = (id, finish, usv, start) => ({ id, name: id, group: 'g', finish, person_usv: usv, start_hour: start, hours: 1, person_hours: 1, float_hours: 0 });
const tasks = [task('b', '2027-03-05', 30, 2), task('a', '2027-03-02', 10, 1), task('c', '2027-03-05', 5, 3)];

test('BY HAND: 10 on the 2nd and 30 + 5 on the 5th are 10, then 45', () => {
  const points = cumulate(tasks);
  equal(points.map(point => [point.on, point.usv, point.finished]), [['2027-03-02', 10, 1], ['2027-03-05', 45, 3]]);
  equal(at(points, dayNumber('2027-03-01')).usv, 0);
  equal(at(points, dayNumber('2027-03-04')).usv, 10);
  equal(at(points, dayNumber('2027-03-05')).usv, 45);
  equal(firstAbove(points, 44).on, '2027-03-05');
  equal(firstAbove(points, 45), undefined, 'the target itself is kept');
});
test('EDGE: months are thinned, years named, short spans counted in days', () => {
  equal(monthTicks(dayNumber('2027-03-01'), dayNumber('2027-06-30'), 6).map(tick => tick.words), ['Mar 2027', 'Apr', 'May', 'Jun']);
  equal(monthTicks(dayNumber('2027-11-15'), dayNumber('2028-02-15'), 6).map(tick => tick.words), ['Dec 2027', 'Jan 2028', 'Feb']);
  equal(monthTicks(dayNumber('2027-03-01'), dayNumber('2027-03-03'), 6).map(tick => tick.words), ['1 Mar', '2 Mar', '3 Mar'], 'a short span has days');
  equal(monthTicks(dayNumber('2027-02-20'), dayNumber('2027-04-10'), 6).map(tick => tick.words), ['20 Feb', '6 Mar', '20 Mar', '3 Apr']);
  equal(monthTicks(dayNumber('2020-01-01'), dayNumber('2032-01-01'), 5).length <= 5, true);
});
test('LAW: sorting keeps every task; the same figure stays in order of time', () => {
  const state = firstState(new URLSearchParams('sort=hours'));
  equal(ordered(tasks, state).map(each => each.id), ['a', 'b', 'c']);
  equal(ordered(tasks, { by: 'dose', down: true }).map(each => each.id), ['b', 'a', 'c']);
  equal(picked(tasks, { text: 'B', group: '', component: '' }, { byCode: { components: new Map() } }).map(each => each.id), ['b']);
});
test('BY HAND: 4 of 5 is nearer than 10 of 20', () => {
  const person = (worker, planned, total) => ({ worker, usv: planned, constraints: [{ constraint: 'k', constraint_usv: 5, planned_usv: planned }],
    periods: [{ period: 'calendar-year', worst: { label: '2027', total_usv: total, before_usv: total - planned, limit_usv: 20 } }] });
  const sorted = byNearness({ people: [person('y', 1, 10), person('x', 4, 6)] });
  equal(sorted.map(near => [near.person.worker, near.part, near.bound]), [['x', 0.8, 5], ['y', 0.5, 20]]);
});
test('LAW: every dose falls into one band', () => {
  for (const doses of [[0, 0], [1, 2, 3], [5722, 5130, 1290], [0.01, 0.09], [100, 100]]) {
    const edges = bands(doses);
    equal(edges.reduce((count, edge) => count + countIn(doses, edge), 0), doses.length, JSON.stringify(edges));
  }
});
test('BY HAND: 43.1 against 40 is 3.1 above', () => {
  const of = (usv, target) => ({ totals: { person_usv: usv }, targets: target ? [{ scope: 'campaign', target_usv: target, person_usv: usv }] : [] });
  equal(verdict(of(43100, 40000)), 'Forecast 43.1 person-mSv, 3.1 above the target of 40');
  equal(verdict(of(36900, 40000)), 'Forecast 36.9 person-mSv, 3.1 below the target of 40');
  equal(verdict(of(40000, 40000)), 'Forecast 40.0 person-mSv, just the target');
  equal(verdict(of(40000)), 'Forecast 40.0 person-mSv; no target is set');
  equal(verdict({ totals: { person_usv: 0, tasks: 0 }, targets: [] }), 'No tasks yet, so nothing is forecast', 'nothing planned is not a dose of 0');
});
test('LAW: an address that was made is read back', () => {
  const address = withQuery(link('1', 'add', 'overrides'), { task: 'ring/cut', role: null, figure: 'people' });
  const route = parse(address);
  equal([route.id, route.page, route.rest, route.search.get('task'), route.search.has('role')], ['1', 'add', ['overrides'], 'ring/cut', false]);
  equal(parse('').page, 'campaigns');
  equal(parse('#/c/7').page, 'standing');
});
test('BY HAND: faults are told with the third and the eighteenth of twenty outcomes; none are no line', () => {
  const number = (mean, low, high) => ({ mean, outcomes: [low, low, low, ...Array(14).fill(mean), high, high, high] });
  equal(faultLine({ number: number(12.73, 7, 20), techniques: [{ name: 'Jet', number: number(5.13, 2, 9) }, { name: 'Torch', number: number(0.187, 0, 0) }] }),
    'Faults to be cleared while cutting: about 13; 8 in 10: 7 to 20. Jet: about 5.1; 8 in 10: 2 to 9. Torch: about 0.19; 8 in 10: 0.');
  equal(faultLine({ number: number(3, 1, 5), techniques: [{ name: 'Jet', number: number(3, 1, 5) }] }), 'Faults to be cleared while cutting: about 3.0; 8 in 10: 1 to 5.');
  equal(faultLine(undefined), '');
});
