// What was entered on this tablet, last first; and on top what needs somebody.
import { html, nothing } from '../lib/vendor.js';
import { unsent } from '../lib/outbox.js';
import { dayHere, timeHere } from '../lib/tablet.js';
import { dayShort, duration, plain } from '../lib/units.js';
import { send, sending } from '../lib/desk.js';
import { stateMark } from './log-state.js';
import { reasonFor } from '../lib/reason.js';

const words = record => html`<span class="log-who">${record.entry.worker}</span> <span class="log-task">${record.words.task}</span>
  <span class="log-figs">${record.entry.hours === 0 ? 'taken back' : html`${plain(record.entry.usv)} µSv <span class="muted">${duration(record.entry.hours)}, ${record.words.area}${record.entry.on === dayHere() ? '' : `, ${dayShort(record.entry.on)}`}</span>`}</span>`;

/** Entries that were asked about or refused. */
export function waiting(desk, redraw) {
  const needing = desk.records.filter(record => record.state === 'needs');
  if (needing.length === 0) return nothing;
  return html`<section class="log-needs" aria-label="Entries that need you">${needing.map(record => html`<div class="log-need" data-id=${record.id}>
    <p class="log-line">${stateMark(record, null)} ${words(record)}</p>
    ${record.needs.length > 0 ? record.needs.map(need => html`<p class="log-ask">${need.words}</p>`) : html`<p class="log-ask">${record.refusal}</p>`}
    <div class="log-answers">
      ${record.needs.length > 0 ? html`<button type="button" class="button decide" data-answer="yes" @click=${() => desk.confirm(record)}>Yes, keep it</button>` : nothing}
      <button type="button" class="button" data-answer="change" @click=${() => { desk.take(record); redraw(); document.getElementById('log-dose').focus(); }}>${record.fields?.includes('task') ? 'Choose another task' : 'Change it'}</button>
      ${record.needs.length === 0 ? html`<button type="button" class="button" data-answer="rpo" @click=${async () => {
    const reason = await reasonFor({ title: 'Send to the radiation protection officer', text: 'It counts once the officer has accepted or corrected it. What should the officer know?', verb: 'Send it' });
    if (reason !== null) desk.handIn(record, reason);
  }}>Send to RPO</button>` : nothing}</div></div>`)}</section>`;
}

export function records(desk, redraw) {
  const shown = [...desk.records].reverse();
  const open = shown.filter(unsent);
  return html`<section class="log-list" aria-labelledby="log-list-title"><div class="head"><h2 id="log-list-title">Entered on this tablet</h2>
      <div class="doing">${open.length > 0 && desk.secure ? html`<button type="button" class="button" id="log-send" @click=${send}>Send now</button><button type="button" class="button" id="log-file" @click=${() => save(open)}>Save unsent as file</button>` : nothing}</div></div>
    ${shown.length === 0 ? html`<p class="muted">Nothing yet today.</p>` : html`<ul>${shown.map(record => html`<li class="log-row" data-id=${record.id}><span class="log-time">${timeHere(record.kept_at)}</span>
      <span class="log-words">${words(record)}</span>${stateMark(record, sending.id)}${actions(desk, record, redraw)}</li>`)}</ul>`}
    ${desk.others.length > 0 ? html`<p class="small" id="log-others">Entries of ${desk.others.join(', ')} are kept here too. They go out when ${desk.others.length === 1 ? 'that person signs' : 'these people sign'} in.</p>` : nothing}
    ${desk.secure ? html`<p class="small muted">${desk.lasting ? 'This browser promised not to delete what is kept here.' : 'This browser did not promise to keep what is not sent yet.'} What was sent is shown until tomorrow.</p>` : nothing}</section>`;
}

function actions(desk, record, redraw) {
  const replaced = desk.records.some(other => other.entry.replaces === record.id);
  if (replaced) return html`<span class="log-act muted">corrected</span>`;
  if (record.entry.hours === 0 || record.state === 'needs' || record.state === 'handed' || record.state === 'handing') return html`<span class="log-act"></span>`;
  return html`<span class="log-act"><button type="button" class="button little" @click=${() => { desk.take(record); redraw(); document.getElementById('log-dose').focus(); }}>Correct<span class="spoken"> the entry of ${timeHere(record.kept_at)}</span></button>
    <button type="button" class="button little" @click=${() => takeBack(desk, record.entry)}>Take back</button></span>`;
}

/** What the server has of the person who is chosen: today, and before in this week. */
export function held(desk, redraw) {
  if (!desk.draft.worker) return nothing;
  const title = html`<h2 id="log-held-title">${desk.draft.worker} this week, on the server</h2>`;
  if (!desk.held || desk.held.worker !== desk.draft.worker) {
    return html`<section class="log-list" aria-labelledby="log-held-title">${title}<p class="muted">${desk.choicesAt ? 'It shows when the network is back.' : 'Reading …'}</p></section>`;
  }
  const parts = [['Today', desk.held.rows.filter(row => desk.isToday(row.on))], ['Before, this week', desk.held.rows.filter(row => !desk.isToday(row.on))]];
  return html`<section class="log-list" aria-labelledby="log-held-title" id="log-held">${title}
    ${parts.map(([words, rows]) => html`<h3>${words}</h3>${rows.length === 0 ? html`<p class="muted">Nothing.</p>` : html`<ul>${rows.map(row => heldRow(desk, row, redraw))}</ul>`}`)}</section>`;
}

function heldRow(desk, row, redraw) {
  const { task, area } = desk.wordsOf(row);
  const figures = row.hours === 0 ? 'taken back' : `${row.usv === undefined ? 'dose not shown' : `${plain(row.usv)} µSv`}`;
  return html`<li class="log-held-row" data-held=${row.id}><span class="log-time">${desk.isToday(row.on) ? timeHere(row.received_at) : dayShort(row.on)}</span>
    <span class="log-words"><span class="log-task">${task}</span> <span class="log-figs">${figures} <span class="muted">${row.hours === 0 ? '' : `${duration(row.hours)}, `}${area}${row.step ? `, ${row.step}` : ''}</span></span></span>
    <span class="log-state">${row.replaced_by ? 'corrected' : row.hours === 0 ? 'counts as 0' : 'counts'}</span>
    <span class="log-act">${row.may_correct && row.hours > 0 ? html`<button type="button" class="button little" data-correct=${row.id} @click=${() => { desk.take({ id: row.id, state: 'sent', entry: row }); redraw(); document.getElementById('log-dose').focus(); }}>Correct<span class="spoken"> ${figures}, ${task}</span></button>
      <button type="button" class="button little" @click=${() => takeBack(desk, row)}>Take back<span class="spoken"> ${figures}, ${task}</span></button>` : nothing}</span></li>`;
}

async function takeBack(desk, entry) {
  const why = await reasonFor({ title: 'Take this entry back', text: 'It stays readable, but does not count. Say why.', verb: 'Take it back', needed: true });
  if (why !== null) desk.takeBack({ entry }, why);
}

/** What others handed in: only the radiation protection officer has any. */
export function handedIn(desk, redraw) {
  if (desk.handedIn.length === 0 && !desk.settling) return nothing;
  const decide = (item, how, title, verb) => async () => {
    const reason = await reasonFor({ title, text: 'Say why. It is kept with the entry.', verb, needed: true });
    if (reason !== null) desk.settle(item, how, reason);
  };
  return html`<section class="log-list" aria-labelledby="log-handed-title"><h2 id="log-handed-title">${desk.handedIn.length === 1 ? '1 entry waits' : `${desk.handedIn.length} entries wait`} for the radiation protection officer</h2>
    ${desk.settling ? html`<p class="message" role="alert">${desk.settling}</p>` : nothing}
    ${desk.handedIn.map(item => html`<div class="log-need" data-handed=${item.entry.id}><p class="log-line">${words({ entry: item.entry, words: desk.wordsOf(item.entry) })}</p>
      <p class="log-ask">${item.refusal}</p>${item.reason ? html`<p class="small">“${item.reason}” ${item.entered_by}</p>` : html`<p class="small">${item.entered_by}</p>`}
      <div class="log-answers"><button type="button" class="button decide" @click=${decide(item, 'accepted', 'Accept this entry', 'Accept it')}>Accept</button>
        <button type="button" class="button" data-answer="correct" @click=${() => { desk.takeHanded(item); redraw(); document.getElementById('log-dose').focus(); }}>Correct …</button>
        <button type="button" class="button" @click=${decide(item, 'turned-down', 'Turn this entry down', 'Turn it down')}>Turn down</button></div></div>`)}</section>`;
}

function save(open) {
  const file = new Blob([JSON.stringify({ kind: 'kerfbook-unsent', saved_at: new Date().toISOString(), entries: open.map(({ campaign, entry, state, refusal }) => ({ campaign, entry, state, refusal })) }, null, 2)], { type: 'application/json' });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = `kerfbook-unsent-${dayHere()}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}
