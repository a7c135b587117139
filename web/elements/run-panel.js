// Asking for a run and watching it: counts, cancel, the first outcomes. The old answer stays until the new one is there.
import { html, nothing, svg } from '../lib/vendor.js';
import { say } from '../lib/focus.js';
import * as runs from '../lib/runs.js';
import { fixed, msv } from '../lib/units.js';

const state = new Map();          // by campaign: {number, shown, trouble, stop, heard}
const QUARTERS = [25, 50, 75];

/** What is going on with this campaign's runs; changes() is called when there is news, done() when an answer is there. */
export function runPanel(id, { changes, done, trials = 20000, label }) {
  const now = state.get(id);
  if (now?.number) return watching(id, now);
  return html`${now?.trouble ? html`<p class="copper-text">${now.trouble}</p>` : nothing}
    <div class="doing"><button class="button main" id="run-start" @click=${() => begin(id, { trials }, { changes, done })}>${label}</button></div>`;
}

export const busy = id => Boolean(state.get(id)?.number);

async function begin(id, asking, calls) {
  if (busy(id)) return;
  try {
    const run = await runs.start(id, asking);
    say(`Run ${run.number} has started.`);
    watch(id, run.number, calls);
  } catch (problem) {
    state.set(id, { trouble: problem.message });
    calls.changes();
  }
}

/** Follows a run that somebody asked for, here or elsewhere. */
export function watch(id, number, { changes, done }) {
  if (state.get(id)?.number === number) {
    Object.assign(state.get(id), { changes, done });
    return;
  }
  const mine = { number, shown: null, changes, done, heard: 0 };
  state.set(id, mine);
  const followed = runs.follow(id, number, shown => {
    mine.shown = shown;
    hear(mine);
    mine.changes();
  });
  mine.stop = followed.stop;
  followed.ended.then(end => {
    state.delete(id);
    if (end?.status === 'done') {
      say(`Run ${number} is done.`);
      mine.done();
      return;
    }
    if (end) {
      const words = end.status === 'cancelled' ? `Run ${number} was cancelled.` : `Run ${number} stopped: ${end.trouble}`;
      state.set(id, { trouble: words });
      say(words);
    }
    mine.changes();
  });
  changes();
}

function hear(mine) {
  const part = (100 * mine.shown.done) / mine.shown.total;
  const passed = QUARTERS.filter(quarter => part >= quarter).at(-1) ?? 0;
  if (passed > mine.heard) {
    mine.heard = passed;
    say(`${passed} % drawn.`);
  }
}

function watching(id, { number, shown }) {
  const words = shown && shown.doing ? `${fixed(shown.done, 0)} of ${fixed(shown.total, 0)} outcomes, option ${shown.doing}` : 'Waiting for its turn';
  return html`<div class="run-going"><label for="run-progress">Run ${number}: ${words}</label>
    <progress id="run-progress" max=${shown?.total ?? 1} .value=${shown?.done ?? 0}></progress>
    <button class="button little" id="run-cancel" @click=${() => runs.cancel(id, number).catch(problem => say(problem.message))}>Cancel<span class="spoken"> run ${number}</span></button>
    ${shown?.first ? html`<p class="small muted">First outcomes of the plan: ${msv(shown.first.outcomes[0])} to ${msv(shown.first.outcomes[19])} person-mSv</p>${hollow(shown.first.outcomes)}` : nothing}</div>`;
}

/** Twenty hollow dots: not the answer yet. */
function hollow(outcomes) {
  const span = outcomes[19] - outcomes[0] || 1;
  return svg`<svg class="first-dots" aria-hidden="true"><line x1="0" x2="100%" y1="7" y2="7"></line>
    ${outcomes.map(value => svg`<circle cx="${(2 + (96 * (value - outcomes[0])) / span).toFixed(2)}%" cy="7" r="4"></circle>`)}</svg>`;
}
