// What the pages say and draw about calculated dose rates.
const { doseRate, levelUp } = await load('/lib/units.js');
const { rateScale } = await load('/lib/log-axis.js');
const { draftOf } = await load('/forms/draft.js');
const { read } = await load('/forms/read.js');
const { settings } = await load('/forms/settings.js');
const { areas, sources, surveys } = await load('/forms/place.js');
const { shields } = await load('/forms/stand.js');

// BY HAND: the unit changes at 1 mSv/h and at 1 Sv/h.
test('a_dose_rate_carries_the_unit_that_people_read', () => {
  equal(doseRate(0.416), '0.42 µSv/h');
  equal(doseRate(45.168), '45.2 µSv/h');
  equal(doseRate(1884.6), '1.88 mSv/h');
  equal(doseRate(2.5e6), '2.50 Sv/h');
});

// BY HAND: −153.61 mm becomes 153 mm below, never 154: less water would break the ceiling.
test('a_level_that_must_not_be_undercut_is_rounded_to_more_water', () => {
  equal(levelUp(-153.61), '153 mm below the normal water');
  equal(levelUp(12.1), '13 mm above the normal water');
});

// BY HAND: 10 to 1000 µSv/h is two decades; 20 to 60 is drawn from nought.
test('rates_that_differ_much_stand_on_powers_of_ten', () => {
  const wide = rateScale([10, 1000], [0, 200]);
  equal(wide.log, true);
  near(wide.at(100), 100, 1e-9);
  equal(wide.ticks.map(tick => tick.words).join(), '10 µSv,100 µSv,1.0 mSv');
  const narrow = rateScale([20, 60], [0, 66]);
  equal(narrow.log, false);
  near(narrow.at(30), 30, 1e-9);
});

// EDGE: a rate of 0 and a single value still make an axis.
test('nothing_above_nought_still_makes_an_axis', () => {
  near(rateScale([0, 0], [0, 100]).at(0), 0, 1e-9);
  equal(Number.isFinite(rateScale([7], [0, 100]).at(7)), true);
});

// LAW: what a form was filled with comes back as it was, and what is left out stays left out.
test('places_pool_bodies_and_shields_come_back_as_they_were', () => {
  const same = (fields, value) => {
    const found = read(fields, draftOf(fields, value));
    equal(found.faults.length, 0, JSON.stringify(found.faults));
    const sorted = each => JSON.stringify(each, (_, part) => (part && typeof part === 'object' && !Array.isArray(part) ? Object.fromEntries(Object.entries(part).sort()) : part));
    equal(sorted(found.value), sorted(value));
  };
  const inventory = { reference_on: '2026-10-05', activities: [{ nuclide: 'Co-60', becquerel: 2.9e13 }], origin: { text: 'Invented.', status: 'invented' } };
  same(areas.fields, { code: 'a', name: 'A', background_usv_per_h: 0.5, rate_from: 'calibrated', sketch: { right_m: 0.05, up_m: -1.05, across_m: 0.3 }, note: '' });
  same(sources.fields, { code: 's', name: 'S', nuclides: [], body: { shape: { kind: 'bolts', outer_diameter_mm: 20, length_mm: 90, count: 7, outline_diameter_mm: 300 }, material: 'lead', density_kg_per_m3: 11350, middle: { right_m: 1, up_m: -2 }, inventory } });
  same(shields.fields, { code: 'x', name: 'X', material: 'lead', up: { from_m: 0.5, to_m: 0.51 }, until: '2027-05-01' });
  same(surveys.fields, { code: 'v', area: 'a', surveyed_on: '2026-10-05', valid_until: '2027-03-31', instrument: 'meter', rule: 'mean', points: [{ name: 'p', usv_per_h: 44.1, place: { right_m: -0.15, up_m: 1.1 } }, { name: 'q', usv_per_h: 3 }], shares: [], note: '' });
  same(settings.fields, { name: 'N', start: '2027-03-01', rule_set: 'eu', invented: true, story: '', calendar: { working_days: ['MONDAY'], shifts_per_day: 1, productive_hours_per_shift: 6, holidays: [] },
    pool: { length_m: 4.4, width_m: 2.4, depth_m: 8, deck_mm: 200, water_level_mm: -35, basket: { right_m: 3.6, top_depth_mm: 4500, filling: 0.3 }, hook: { right_m: 2.3 } } });
});
