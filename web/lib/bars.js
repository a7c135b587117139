// Rows of the picture of bars over time: tasks under their group or component, in the order in which the work starts.
import { dayNumber } from './units.js';

/** @returns {{name, tasks, from, to, critical, waits: [{task, on, hours}]}[]} one per group or component */
export function barRows(tasks, by, nameOf) {
  const rows = new Map();
  for (const task of tasks) {
    const key = by === 'component' ? task.component ?? '' : task.group;
    if (!rows.has(key)) rows.set(key, []);
    rows.get(key).push(task);
  }
  return [...rows].map(([key, all]) => {
    const list = [...all].sort((a, b) => a.start_hour - b.start_hour || a.id.localeCompare(b.id));
    return {
      key, name: key === '' ? 'no component' : nameOf(key), tasks: list, from: Math.min(...list.map(task => dayNumber(task.start))), to: Math.max(...list.map(task => dayNumber(task.finish))) + 1,
      critical: list.filter(task => task.critical).length, waits: list.filter(task => task.wait_hours > 0),
    };
  }).sort((a, b) => a.tasks[0].start_hour - b.tasks[0].start_hour || a.name.localeCompare(b.name));
}

/** Tasks that wait for a resource, the longest wait first. */
export const waiting = tasks => tasks.filter(task => task.wait_hours > 0).sort((a, b) => b.wait_hours - a.wait_hours || a.start_hour - b.start_hour);
