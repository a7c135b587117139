// Decisions on record: what was decided, by whom, on which run, with which effect expected. Never changed afterwards.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { say } from '../lib/focus.js';
import { latest } from '../lib/runs.js';
import { link } from '../lib/route.js';
import { plural } from '../lib/words.js';
import { day } from '../lib/units.js';

const EMPTY = { subject: '', text: '', reason: '', due: '', effect: '' };
let draft = { ...EMPTY };
let faults = [];

export const title = ({ camp }) => `${faults.length ? 'Error: ' : ''}Decisions of ${camp.doc.settings.name}`;

export async function load({ camp }) {
  const [list, run] = await Promise.all([get(`/api/campaigns/${encodeURIComponent(camp.id)}/decisions?limit=100`), latest(camp.id)]);
  return { items: list.body.items, total: list.body.total, run };
}

const FIELDS = { subject: 'd-subject', text: 'd-text', reason: 'd-reason', due: 'd-due', expected_effect: 'd-effect' };

export function body({ camp, data, redraw, reload }) {
  const send = async event => {
    event.preventDefault();
    const missing = [['subject', 'Say what it is about.'], ['text', 'Say what was decided.'], ['reason', 'Say why.']].filter(([name]) => draft[name].trim() === '');
    if (missing.length > 0) return fail(missing.map(([field, detail]) => ({ field, detail })));
    try {
      await ask('POST', `/api/campaigns/${encodeURIComponent(camp.id)}/decisions`, { body: {
        kind: 'standing', subject: draft.subject.trim(), text: draft.text.trim(), reason: draft.reason.trim(), ...(data.run ? { run: data.run.run.number } : {}),
        ...(draft.due ? { due: draft.due } : {}), ...(draft.effect.trim() ? { expected_effect: draft.effect.trim() } : {}) } });
      draft = { ...EMPTY };
      faults = [];
      say('The decision is written down.');
      reload();
    } catch (problem) {
      fail(problem.errors.length > 0 ? problem.errors : [{ field: '', detail: problem.message }]);
    }
    return undefined;
  };
  const fail = found => {
    faults = found;
    redraw();
    document.title = `Error: Decisions of ${camp.doc.settings.name} – Kerfbook`;
    document.getElementById('faults')?.focus();
  };
  const fault = name => faults.find(each => each.field === name)?.detail;
  const box = (name, label, hint, long) => {
    const id = FIELDS[name === 'effect' ? 'expected_effect' : name];
    const wrong = fault(name === 'effect' ? 'expected_effect' : name);
    const change = event => { draft[name] = event.target.value; };
    return html`<div class="field ${wrong ? 'bad' : ''}"><label for=${id}>${label}</label>${wrong ? html`<p class="message" id="${id}-m">${wrong}</p>` : nothing}
      ${long ? html`<textarea id=${id} aria-describedby="${id}-h ${wrong ? `${id}-m` : ''}" .value=${draft[name]} @input=${change}></textarea>`
    : html`<input id=${id} type=${name === 'due' ? 'date' : 'text'} aria-describedby="${id}-h ${wrong ? `${id}-m` : ''}" .value=${draft[name]} @input=${change}>`}<p class="hint" id="${id}-h">${hint}</p></div>`;
  };
  return html`<div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'standing')}>Standing</a></p><h1>${data.total === 0 ? 'No decision on record' : `${plural(data.total, 'decision')} on record`}</h1>
      <p class="under">A decision stands with who made it, when and on which run. It is never changed; a later one replaces it.</p></div></div>
    <div class="grid"><section class="panel w5"><h2>Record a decision</h2>
      ${faults.length ? html`<div class="faults" id="faults" tabindex="-1" role="alert"><h3>${plural(faults.length, 'thing')} to mend</h3><ul>${faults.map(each => html`<li>${FIELDS[each.field] ? html`<a href="#${FIELDS[each.field]}" @click=${event => { event.preventDefault(); document.getElementById(FIELDS[each.field]).focus(); }}>${each.detail}</a>` : each.detail}</li>`)}</ul></div>` : nothing}
      <form @submit=${send} novalidate>
        ${box('subject', 'About', 'For example: target of the campaign, operator OP1, pool edge.')}${box('text', 'What was decided', 'One sentence.', true)}${box('reason', 'Reason', 'What it rests on.', true)}
        ${box('due', 'To be done by (may stay empty)', 'A day.')}${box('effect', 'Effect expected (may stay empty)', 'For example: 2 person-mSv less.')}
        <p class="small muted">${data.run ? `It will name run ${data.run.run.number}.` : 'There is no run yet for it to name.'}</p>
        <div class="doing"><button class="button decide">Write it down</button></div></form></section>
      <section class="panel w7"><h2>On record, the newest first</h2>${data.items.length === 0 ? html`<p class="muted">Nothing yet.</p>` : html`<ul class="bare decisions">${data.items.map(each => html`<li>
        <p><strong>${each.text}</strong> <span class="muted">${each.subject}</span></p><p>${each.reason}</p>
        <p class="small muted">No. ${each.number}, ${day(each.decided_at.slice(0, 10))}, ${each.decided_by}${each.run ? `, on run ${each.run}` : ''}${each.due ? `, to be done by ${day(each.due)}` : ''}${each.expected_effect ? `; expected: ${each.expected_effect}` : ''}</p></li>`)}</ul>`}</section></div>`;
}
