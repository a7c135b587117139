// How far the chosen task is, and its end: said at once, for others plan by it.
import { html, nothing } from '../lib/vendor.js';
import { confirm } from '../lib/confirm.js';
import { say } from '../lib/focus.js';
import { typed } from '../lib/typed.js';
import { plain } from '../lib/units.js';
import { may } from '../lib/who.js';

export function progress(desk, redraw) {
  const task = desk.task();
  if (!task || desk.choicesAt || !may('POST', '/api/campaigns/{id}/progress')) return nothing;
  const fault = desk.shareFault?.task === task.id ? desk.shareFault.words : '';
  return html`<section class="log-list" aria-labelledby="log-progress-title"><h2 id="log-progress-title">How far ${task.name} is</h2>
    <form class="log-extra" id="log-progress" novalidate @submit=${event => { event.preventDefault(); tell(desk, task, false, redraw); }}>
      <div class=${fault ? 'field bad' : 'field'}><label for="log-share">Part that is done (%)</label>
        ${fault ? html`<span class="message" id="log-share-fault" role="alert">${fault}</span>` : nothing}
        <input id="log-share" type="text" inputmode="decimal" autocomplete="off" aria-invalid=${fault ? 'true' : nothing} aria-describedby=${fault ? 'log-share-fault log-share-last' : 'log-share-last'}>
        <span class="hint" id="log-share-last">${task.share === undefined ? 'Nobody has said it yet.' : `Last said: ${plain(100 * task.share)} %.`}</span></div>
      <div class="log-answers"><button class="button" id="log-share-say">Say how far it is</button>
        <button type="button" class="button" id="log-close" @click=${() => tell(desk, task, true, redraw)}>Close the task …</button></div></form></section>`;
}

async function tell(desk, task, closed, redraw) {
  if (desk.telling) return;
  desk.telling = true;
  const box = document.getElementById('log-share');
  try {
    const percent = read(box.value, closed);
    const rest = percent === 100 ? 'It counts as done.' : `${plain(percent)} % of it counts as done, and the rest is not done any more.`;
    if (closed && !await confirm({ title: `Close ${task.name}?`, text: `${rest} Nobody can log work on it from then on.`, verb: 'Close it' })) return;
    desk.shareFault = null;
    await desk.tellProgress(task, percent / 100, closed);
    box.value = '';
    say(closed ? `${task.name} is closed.` : `${task.name}: ${plain(percent)} % done.`);
  } catch (problem) {
    desk.shareFault = { task: task.id, words: problem.message };
  } finally {
    desk.telling = false;
    redraw();
  }
}

/** Percent that somebody typed; a task that is closed without a word is done. */
function read(text, closed) {
  const { value, blank, fault } = typed(text);
  if (blank && closed) return 100;
  if (blank) throw new Error('Say how much is done, in percent.');
  if (fault) throw new Error(`The part ${fault}`);
  if (!(value >= 0 && value <= 100)) throw new Error('The part must be between 0 and 100 %.');
  return value;
}
