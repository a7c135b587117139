// Words of waste, packages and cost.
const LSA = { 'lsa-ii': 'LSA-II', 'lsa-iii': 'LSA-III', 'above-lsa': 'above LSA' };
const WHAT = { 'labour-hour': 'Hours of', 'tool-on-hour': 'Tool-on hours of', 'working-day': 'Working days with', 'tool-change': 'Tools of', 'kg-abrasive': 'Abrasive', filter: 'Filters', drum: 'Drums', package: 'Packages', fixed: 'Fixed' };

export const lsaWord = code => LSA[code] ?? code;
export const pricedWord = ({ what, of }) => `${WHAT[what] ?? what}${of ? ` ${of}` : ''}`;

/** The form of a price that is lacking, filled in as far as it is known. */
export const lackingPrice = (row, prices) => ({ what: row.what, of: row.of, name: pricedWord(row), currency: prices[0]?.currency, price_year: prices[0]?.price_year });
