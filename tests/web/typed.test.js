// Runs in the browser by kerfbook.browser.ModulesTest.
const { typed } = await load('/lib/typed.js');

test('LAW: comma and point both part the decimals', () => {
  equal(typed('0,42').value, 0.42);
  equal(typed('0.42').value, 0.42);
  equal(typed(' 12 ').value, 12);
  equal(typed('-3,5').value, -3.5);
  equal(typed('2e11').value, 2e11);
  equal(typed('.5').value, 0.5);
});
test('EDGE: what may be a thousands separator is asked about', () => {
  equal(typed('1.200').fault, 'could be 1.2000 or 1200. Write one of these two.');
  equal(typed('1,200').fault, 'could be 1.2000 or 1200. Write one of these two.');
  equal(typed('1.200.000').fault.includes('1200000'), true);
  equal(typed('1 200').fault.includes('1200'), true);
  equal(typed('0.200').value, 0.2, 'no thousands begin with 0');
  equal(typed('1.2000').value, 1.2);
  equal(typed('1.20').value, 1.2);
});
test('EDGE: letters, signs alone and what is too large are refused, a blank is a blank', () => {
  for (const text of ['4o', '-', '.', '1..2', '1e', '1e999', 'NaN', 'Infinity', '0x10', '1,2,3']) equal(typed(text).value === undefined && typed(text).fault !== undefined, true, text);
  equal(typed('4o').fault, 'must be a number, like 42 or 4.2. You typed "4o".');
  equal(typed('').blank, true);
  equal(typed('  ').blank, true);
});
