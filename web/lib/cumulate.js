// Running sums of the server's task doses, for drawing. A task counts on the day it finishes.
import { dayNumber } from './units.js';

/** @returns {{on: string, day: number, usv: number, finished: number, names: string[]}[]} one per finish day, rising */
export function cumulate(tasks) {
  const byDay = new Map();
  for (const task of tasks) {
    if (!byDay.has(task.finish)) byDay.set(task.finish, []);
    byDay.get(task.finish).push(task);
  }
  let usv = 0;
  let finished = 0;
  return [...byDay.keys()].sort().map(on => {
    const done = byDay.get(on);
    usv += done.reduce((sum, task) => sum + task.person_usv, 0);
    finished += done.length;
    return { on, day: dayNumber(on), usv, finished, names: done.map(task => task.name) };
  });
}

/** The sum on a day: that of the last finish up to it. */
export function at(points, day) {
  let found = { usv: 0, finished: 0, names: [] };
  for (const point of points) {
    if (point.day > day) break;
    found = point;
  }
  return found;
}

export const firstAbove = (points, usv) => points.find(point => point.usv > usv);
