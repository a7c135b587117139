// What one unit of something costs.
import { code, number, origin, pick, refs, roles, text, whole } from './field.js';

const WHAT = [['labour-hour', 'an hour of a role'], ['tool-on-hour', 'a tool-on hour of a technique'], ['working-day', 'a working day with a technique'], ['tool-change', 'a tool of a technique'],
  ['kg-abrasive', 'a kg of abrasive'], ['filter', 'a filter'], ['drum', 'a drum'], ['package', 'a package'], ['fixed', 'once, fixed']];
const OF_TECHNIQUE = ['tool-on-hour', 'working-day', 'tool-change'];
const MAYBE_OF_TECHNIQUE = ['kg-abrasive', 'filter', 'drum'];
const among = list => (draft => list.includes(draft.what.text));

export const prices = {
  one: 'price', article: 'a', title: 'Prices', tab: 'basis',
  fields: [
    text('name', 'Name'), code(), pick('what', 'Price of', WHAT),
    pick('of', 'Which role', roles, { when: among(['labour-hour']) }), pick('of', 'Which technique', refs('techniques'), { when: among(OF_TECHNIQUE) }),
    pick('of', 'Only with the technique', refs('techniques'), { maybe: true, when: among(MAYBE_OF_TECHNIQUE) }),
    pick('of', 'Only the package', refs('packages'), { maybe: true, when: among(['package']) }),
    number('amount', 'Amount for one unit', '', { hint: '0 if it is known to cost nothing.' }), text('currency', 'Currency', { hint: 'Three capital letters, such as EUR; one for all prices.' }),
    whole('price_year', 'Price of the year'), origin,
  ],
};
