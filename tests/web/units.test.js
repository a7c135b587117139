// Runs in the browser by kerfbook.browser.ModulesTest.
const units = await load('/lib/units.js');

test('BY HAND: three significant digits, never in powers of ten', () => {
  equal(units.sig(36.778884), '36.8');
  equal(units.sig(0.0123456), '0.0123');
  equal(units.sig(9.999), '10.0');
  equal(units.sig(1234567), '1\u202f234\u202f567');
  equal(units.sig(0), '0');
  equal(units.sig(-5.678), '−5.68');
});
test('EDGE: what is not a number is not known, and never 0', () => {
  for (const value of [NaN, Infinity, undefined]) equal(units.sig(value), 'not known');
  equal(units.fixed(NaN, 2), 'not known');
  equal(units.duration(undefined), 'not known');
  equal(units.digits(NaN), 'not known');
  equal(units.activity(NaN), 'not known');
});
test('EDGE: what is too small to write out is not 0', () => {
  equal(units.sig(5e-7), '<0.000001');
  equal(units.sig(1.234e-6), '0.00000123');
});
test('EDGE: a small dose does not vanish in a column', () => {
  equal(units.fixed(0.004, 2), '<0.01');
  equal(units.fixed(0.005, 2), '0.01');
  equal(units.fixed(0, 2), '0.00');
});
test('BY HAND: 1000 µSv are 1 mSv', () => {
  equal(units.msv(36778.88), '36.8');
  equal(units.msvTyped(5500), '5.5');
  equal(units.toMsv(250), 0.25);
});
test('BY HAND: 2.667 h are 2 h 40 min', () => {
  equal(units.duration(2.6667), '2 h 40 min');
  equal(units.duration(0.3), '18 min');
  equal(units.duration(3), '3 h');
  equal(units.duration(1.9999), '2 h');
  equal(units.duration(0.001), 'under 1 min');
  equal(units.duration(0), '0 min');
});
test('BY HAND: an activity takes the unit that fits', () => {
  equal(units.activity(2e11), '200 GBq');
  equal(units.activity(1.93e14), '193 TBq');
  equal(units.activity(37), '37.0 Bq');
});
test('LAW: the decimal point moves without rounding, where a multiplication would not', () => {
  equal(4.35 * 100 === 435, false);
  equal(units.shift(4.35, 2), 435);
  equal(units.shift('0.42', 3), 420);
  equal(units.shift(1e-7, 3), 0.0001);
  for (let i = 1; i < 2000; i += 7) equal(units.shift(units.shift(i / 1000, 3), -3), i / 1000);
});
test('EDGE: a date is the same day in every time zone', () => {
  equal(units.day('2027-03-01'), '1 Mar 2027');
  equal(units.isoOf(units.dayNumber('2027-12-31') + 1), '2028-01-01');
  equal(units.isoOf(units.dayNumber('2028-02-28') + 1), '2028-02-29');
});
test('EDGE: dose rate steps begin at 5, 25, 50 and 100 µSv/h', () => {
  equal([0, 4.99, 5, 24.9, 25, 49.9, 50, 99.9, 100, 1e6].map(units.heat), [1, 1, 2, 2, 3, 3, 4, 4, 5, 5]);
});
