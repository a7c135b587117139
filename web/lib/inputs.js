// What a campaign's figures rest on, as the server tells it.
import { get } from './api.js';
import { link, withQuery } from './route.js';
import { plain } from './units.js';

const answers = new Map();
const MOST_KEPT = 200;

/** Where a step stands among the inputs. */
export const stepId = (kind, code, task, step) => `${kind}/${code}/${kind === 'tasks' ? '' : `${task}/`}${step}`;

/** The figures of a task with the inputs they were made of; undefined until they are there, then {@code arrived} is called. */
export function traceOf(camp, task, arrived) {
  const key = `${camp.id} ${camp.forecast.inputs} ${task.id}`;
  if (!answers.has(key)) {
    if (answers.size > MOST_KEPT) answers.clear();
    answers.set(key, null);
    get(`/api/campaigns/${encodeURIComponent(camp.id)}/trace?task=${encodeURIComponent(task.id)}`).then(({ body }) => {
      answers.set(key, new Map(body.figures.map(each => [`${each.step} ${each.line ?? ''} ${each.figure}`, each])));
      arrived();
    }, () => answers.delete(key));
  }
  return answers.get(key) ?? undefined;
}

/** The address where all that a figure rests on is shown, with the figure's own name; undefined while it is not known. */
export function restsAt(camp, trace, step, line, figure) {
  const found = trace?.get(`${step} ${line ?? ''} ${figure}`);
  return found && { href: `${link(camp.id, 'basis')}?${new URLSearchParams(found.inputs.map(id => ['input', id]))}`, figure: `${step} ${line ?? ''} ${figure}` };
}

/** The page of the row of a shipped table. */
export const rowAt = (camp, { table, row }) => withQuery(link(camp.id, 'handbook'), { row: `${table}/${row}` });

/** The form where an input is written down. */
export const writtenAt = (camp, { kind, code }) => (kind === 'settings' ? link(camp.id, 'settings') : link(camp.id, 'edit', kind, code));

export function figureOf({ value, unit }) {
  if (!value) return '';
  const { low, likely, high } = value;
  return `${low === high ? plain(likely) : `${plain(low)}, ${plain(likely)}, ${plain(high)}`} ${unit}`.trim();
}
