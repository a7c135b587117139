// Columns of the comparison of techniques, and their order. Figures are the server's; here they are only ordered and worded.
import { day, duration, msvFixed, sig } from './units.js';

export const COLUMNS = [
  ['tool_on_hours', 'Tool on', duration], ['elapsed_hours', 'Elapsed, working time', duration], ['person_hours', 'Person-hours', value => sig(value)],
  ['component_person_usv', 'Person-mSv, component', value => msvFixed(value, 2)], ['campaign_person_usv', 'Person-mSv, campaign', value => msvFixed(value, 1)],
  ['highest_individual_usv', 'Highest person, mSv', value => msvFixed(value, 2)], ['waste', 'Secondary waste', null], ['cost', 'Cost, component', null], ['campaign_finish', 'Campaign ends', day],
];

/** Those with figures, least of a column first; equal ones stay in the server's order. */
export function inOrder(rows, by) {
  const value = row => (by === 'waste' ? (row.figures.kerf_kg ?? 0) + (row.figures.abrasive_kg ?? 0) : by === 'cost' ? row.figures.cost?.component : row.figures[by]);
  return rows.filter(row => row.figures).sort((a, b) => {
    const [one, other] = [value(a), value(b)];
    if (one === undefined || other === undefined) return (one === undefined) - (other === undefined);
    return one < other ? -1 : one > other ? 1 : 0;
  });
}
