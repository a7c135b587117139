// Every input of a campaign that says where it comes from.
import { speedWords, three } from './speed.js';
import { activity, plain } from './units.js';

/** @returns rows {kind, code, name, figure, origin} */
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
    kind, code, name: `${task.name}: ${step.name}`, figure: `${three(step.hours_each, 'h')} ${step.driver === 'campaign' ? 'in all' : `per ${step.driver.replace(/-/g, ' ')}`}`, origin: step.origin,
  })));
  for (const routine of doc.routines) steps('routines', routine.code, routine.tasks);
  for (const task of doc.tasks) steps('tasks', task.code, [task]);
  return rows;
}
