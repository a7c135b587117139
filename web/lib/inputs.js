// Every input of a campaign that says where it comes from.
import { speedWords, three } from './speed.js';
import { activity, plain } from './units.js';

/** The row of a step. */
export const stepId = (kind, code, task, step) => `${kind}/${code}/${kind === 'tasks' ? '' : `${task}/`}${step}`;

/** The row of the shipped tables that an input has beside it: the same code, or a technique's own name. */
export function besides(row, tables) {
  if (row.kind === 'factors') return tables.difficulty.some(each => each.factor === row.code) ? `difficulty/${row.code}` : null;
  if (row.kind !== 'techniques') return null;
  const name = row.name.toLowerCase();
  const found = tables.techniques.find(each => each.technique === row.code) ?? tables.techniques.find(each => each.name.toLowerCase() === name) ?? tables.techniques.find(each => each.name.toLowerCase().startsWith(name));
  return found ? `techniques/${found.technique}` : null;
}

/** @returns rows {id, kind, code, name, figure, origin} */
export function inputs(doc) {
  const rows = [];
  for (const each of doc.techniques) rows.push({ kind: 'techniques', code: each.code, name: each.name, figure: speedWords(each), origin: each.origin });
  for (const each of doc.factors) rows.push({ kind: 'factors', code: each.code, name: each.name, figure: three(each.percent, '%'), origin: each.origin });
  for (const each of doc.components.filter(component => component.inventory)) {
    const sum = each.inventory.activities.reduce((bq, part) => bq + part.becquerel, 0);
    rows.push({ kind: 'components', code: each.code, name: `Inventory of ${each.name}`, figure: activity(sum), origin: each.inventory.origin });
  }
  for (const each of doc.prices) rows.push({ kind: 'prices', code: each.code, name: each.name, figure: `${plain(each.amount)} ${each.currency}`, origin: each.origin });
  const steps = (kind, code, tasks) => tasks.forEach(task => task.steps.forEach(step => rows.push({
    kind, code, id: stepId(kind, code, task.code, step.code), name: `${task.name}: ${step.name}`, figure: `${three(step.hours_each, 'h')} ${step.driver === 'campaign' ? 'in all' : `per ${step.driver.replace(/-/g, ' ')}`}`, origin: step.origin,
  })));
  for (const routine of doc.routines) steps('routines', routine.code, routine.tasks);
  for (const task of doc.tasks) steps('tasks', task.code, [task]);
  return rows.map(row => ({ id: `${row.kind}/${row.code}`, ...row }));
}
