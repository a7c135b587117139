// Which run is shown, what changed since, and a new one.
import { html, nothing } from '../lib/vendor.js';
import { busy, runPanel, watch } from './run-panel.js';
import { link } from '../lib/route.js';
import { plural } from '../lib/words.js';
import { day, fixed } from '../lib/units.js';

/** calls: {changes, done} */
export function runLine(camp, answer, calls) {
  if (answer?.going && !busy(camp.id)) {
    const number = answer.going;
    answer.going = null;
    queueMicrotask(() => watch(camp.id, number, calls));
  }
  const shown = answer?.run;
  return html`<div class="run-line">${shown ? html`<span>Run ${shown.number} of ${day(shown.asked_at.slice(0, 10))}, ${fixed(shown.trials, 0)} draws, seed ${shown.seed}</span>`
    : html`<span>Not drawn yet: the figures are means.</span>`}${runPanel(camp.id, { ...calls, label: shown ? 'Run again' : 'Draw 20 outcomes' })}</div>`;
}

export function changedSince(camp, answer) {
  const since = answer?.changed_since;
  if (!since || !(since.inputs_changed || since.work_changed || since.tables_changed)) return nothing;
  const words = [since.count > 0 ? plural(since.count, 'figure') : '', since.work_changed ? 'the log' : '', since.tables_changed ? 'the tables' : ''].filter(Boolean).join(', ');
  return html`<div class="changed" role="note"><p><strong>Inputs changed since run ${answer.run.number}: ${words || 'the plan'}.</strong> What is shown is still run ${answer.run.number}.</p>
    <a class="button little" href=${link(camp.id, 'options')}>See what changed</a></div>`;
}
