// The log: who did what, where, how long and at what dose; kept on the tablet first, then sent.
import { html, live, nothing } from '../lib/vendor.js';
import { deskOf, send, sending } from '../lib/desk.js';
import { stepped } from '../lib/logdraft.js';
import { say } from '../lib/focus.js';
import { unsent } from '../lib/outbox.js';
import { timeHere } from '../lib/tablet.js';
import { dayShort } from '../lib/units.js';
import { plural } from '../lib/words.js';
import { keypad, picks, stepper } from '../elements/log-pad.js';
import { link } from '../lib/route.js';
import { progress } from '../elements/log-progress.js';
import { handedIn, held, records, waiting } from '../elements/log-list.js';

/** This page reads no plan and no forecast: it opens without the network, and on a tablet that many use. */
export const alone = true;

export const title = ({ data }) => `Log of ${data.camp.doc.settings.name}`;

export async function load({ route }) {
  const desk = await deskOf(route.id);
  const asked = route.search.get('task');
  if (asked && desk.task(asked) && !desk.draft.changing && !desk.draft.replaces) desk.chooseTask(asked);
  return { desk, camp: { id: route.id, doc: { settings: { name: desk.choices.name, invented: desk.choices.invented } } } };
}

export function body({ data: { desk }, redraw }) {
  desk.redraw = redraw;
  return html`<div class="log">
    <div class="lead"><div><h1>${heading(desk)}</h1><p class="under">${under(desk)}</p></div></div>
    ${warnings(desk)}
    ${waiting(desk, redraw)}
    <form class="log-form" novalidate @submit=${event => submit(event, desk, redraw)}>
      ${summary(desk)}${correcting(desk)}
      <div class="log-what">${choices(desk, redraw)}</div>
      <div class="log-how">
        <div class="log-figures">
          <div class="log-figure ${faultOf(desk, 'dose') ? 'bad' : ''}"><label class="log-label" for="log-dose">Dose<span class="spoken"> in µSv, reading of the dosimeter</span></label>
            ${faultOf(desk, 'dose') ? html`<span class="message" id="log-dose-fault">${faultOf(desk, 'dose')}</span>` : nothing}
            <span class="log-box"><input id="log-dose" type="text" inputmode="none" autocomplete="off" spellcheck="false" aria-describedby=${faultOf(desk, 'dose') ? 'log-dose-fault' : nothing}
              aria-invalid=${faultOf(desk, 'dose') ? 'true' : nothing} .value=${live(desk.draft.dose)} @input=${event => { Object.assign(desk.draft, { dose: event.target.value, fresh: false }); }}><span aria-hidden="true">µSv</span></span></div>
          <div class="log-figure"><span class="log-label" id="log-hours-label">Time in the area</span>${stepper(desk.draft.minutes, by => { desk.draft.minutes = stepped(desk.draft.minutes, by); redraw(); })}</div>
        </div>
        ${keypad(key => { desk.press(key); redraw(); })}
        <button class="log-keep" id="log-keep">${desk.draft.handed ? 'Keep it as corrected' : desk.draft.replaces ? 'Keep the correction' : desk.draft.changing ? 'Keep it as changed' : 'Keep this entry'}</button>
        ${desk.draft.replaces || desk.draft.changing ? html`<button type="button" class="button log-cancel" @click=${() => cancel(desk, redraw)}>Leave it as it was</button>` : nothing}
      </div>
      ${more(desk, redraw)}
    </form>
    ${progress(desk, redraw)}
    ${records(desk, redraw)}
    ${held(desk, redraw)}
    ${handedIn(desk, redraw)}
    ${desk.choices.brings ? html`<p class="small"><a href=${link(desk.campaign, 'import')}>Bring in dosimeter readings from a table</a></p>` : nothing}</div>`;
}

function heading(desk) {
  const needing = desk.records.filter(record => record.state === 'needs').length;
  const open = desk.records.filter(unsent).length - needing;
  if (needing > 0) return `${needing === 1 ? '1 entry needs' : `${needing} entries need`} you`;
  if (open > 0) return `${plural(open, 'entry', 'entries')} kept on this tablet`;
  return desk.records.length > 0 ? 'Everything entered here is sent' : 'Write down the work of this shift';
}

function under(desk) {
  const parts = [];
  if (desk.records.some(unsent) && sending.trouble) parts.push(`${sending.trouble} What is kept will be sent when the network is back.`);
  const last = sending.last ?? Math.max(0, ...desk.records.map(record => record.sent_at ?? 0));
  if (last) parts.push(`Last sent ${timeHere(last)}.`);
  if (desk.choicesAt) parts.push(`The task list is from ${timeHere(desk.choicesAt)} on ${new Date(desk.choicesAt).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })}.`);
  return parts.join(' ') || 'An entry is one person, one task, one area. It is kept here first, then sent.';
}

function warnings(desk) {
  if (!desk.secure) return html`<p class="log-warning" id="log-insecure">This page came over plain http: this browser then keeps nothing. Each entry is sent at once, and stays in the form until the server has it. Ask for the https address.</p>`;
  if (!desk.lasting && sending.trouble && desk.records.some(record => unsent(record) && record.state !== 'needs')) {
    return html`<p class="log-warning" id="log-fleeting">This browser may delete kept entries. Send them before you leave. <button type="button" class="button" @click=${send}>Send now</button></p>`;
  }
  return nothing;
}

const faultOf = (desk, field) => desk.faults.find(([name]) => name === field)?.[1];

function summary(desk) {
  if (desk.faults.length === 0) return nothing;
  return html`<div class="summary" id="log-faults" tabindex="-1" role="alert"><strong>Not kept yet</strong><ul>${desk.faults.map(([field, words]) => html`<li>${words}</li>`)}</ul></div>`;
}

/** Which entry the form holds, where it is not a new one. */
function correcting({ draft }) {
  if (draft.handed) return html`<p class="log-correcting" id="log-correcting">This is the entry of ${draft.worker} that was handed in. Change what was wrong: it is then kept under your name and reason.</p>`;
  if (draft.replaces) return html`<p class="log-correcting" id="log-correcting">This takes the place of an entry of ${draft.worker}. The old one stays readable.</p>`;
  return nothing;
}

function choices(desk, redraw) {
  const { draft } = desk;
  const toggle = name => () => { desk.opened = desk.opened === name ? '' : name; redraw(); };
  const choose = (name, how) => value => { how(value); desk.opened = ''; desk.faults = desk.faults.filter(([field]) => field !== name); redraw(); document.querySelector(`#log-${name} [aria-pressed="true"]`)?.focus(); };
  const person = code => [code, code, ''];
  const task = each => [each.id, each.name, [each.component, each.today ? '' : dayShort(each.start)].filter(Boolean).join(' · ')];
  const area = each => [each.code, each.name, ''];
  const closed = draft.task && !desk.task() ? [[draft.task, draft.task, 'closed, or not in the plan']] : [];
  const ofTask = desk.task()?.areas ?? desk.choices.areas.slice(0, 4).map(each => each.code);
  return html`
    ${picks({ name: 'worker', label: 'Who', options: desk.people().map(person), all: desk.choices.people.map(each => [each.code, each.code, each.roles.join(', ')]), chosen: draft.worker, open: desk.opened === 'worker', fault: faultOf(desk, 'worker'), toggle: toggle('worker'), choose: choose('worker', value => { draft.worker = value; desk.readHeld(); }) })}
    ${picks({ name: 'task', label: 'Task', options: [...closed, ...desk.tasks().map(task)], all: [...closed, ...desk.choices.tasks.map(task)], chosen: draft.task, open: desk.opened === 'task', fault: faultOf(desk, 'task'), toggle: toggle('task'), choose: choose('task', value => desk.chooseTask(value)) })}
    ${picks({ name: 'area', label: 'Area', options: desk.choices.areas.filter(each => ofTask.includes(each.code)).map(area), all: desk.choices.areas.map(area), chosen: draft.area, open: desk.opened === 'area', fault: faultOf(desk, 'area'), toggle: toggle('area'), choose: choose('area', value => { draft.area = value; }) })}`;
}

function more(desk, redraw) {
  const { draft } = desk;
  const steps = desk.task()?.steps ?? [];
  const given = [steps.find(step => step.code === draft.step)?.name ?? draft.step, draft.on ? dayShort(draft.on) : '', draft.found ? 'rate found' : '', draft.remark ? 'remark' : ''].filter(Boolean).join(', ');
  return html`<details class="log-more" ?open=${Boolean(draft.step || draft.on || draft.found || draft.remark) || faultOf(desk, 'found') || faultOf(desk, 'remark')}><summary>${steps.length > 0 ? 'Step, another day' : 'Another day'}, rate found, remark${given ? ` (${given})` : ''}</summary>${steps.length > 0 ? stepPick(steps, desk, redraw) : nothing}<div class="log-extra">
    <div class="field"><label for="log-on">Day of the work</label><input id="log-on" type="date" .value=${live(draft.on)} @change=${event => { draft.on = event.target.value; redraw(); }}><span class="hint">Empty: ${desk.choices.invented ? `${dayShort(desk.choices.today)}, the day as which this example is shown` : 'today'}.</span></div>
    <div class="field"><label for="log-found">Dose rate found (µSv/h) <span class="maybe">optional</span></label><input id="log-found" type="text" inputmode="decimal" autocomplete="off" .value=${live(draft.found)} @input=${event => { draft.found = event.target.value; }}></div>
    <div class="field wide"><label for="log-remark">Remark <span class="maybe">optional</span></label><input id="log-remark" type="text" maxlength="500" autocomplete="off" .value=${live(draft.remark)} @input=${event => { draft.remark = event.target.value; }}></div></div></details>`;
}

/** A press on the one that is chosen takes the choice back. */
const stepPick = (steps, desk, redraw) => html`<div class="log-pick" role="group" aria-labelledby="log-step-label" id="log-step" data-pick="step">
  <div class="log-label"><span id="log-step-label">Step of the task <span class="maybe">optional</span></span></div>
  <div class="log-options">${steps.map(({ code, name }) => html`<button type="button" class="log-option" data-value=${code} aria-pressed=${code === desk.draft.step ? 'true' : 'false'}
    @click=${() => { desk.draft.step = code === desk.draft.step ? '' : code; redraw(); }}><span class="words">${name}</span></button>`)}</div></div>`;

async function submit(event, desk, redraw) {
  event.preventDefault();
  if (desk.busy) return;
  desk.busy = true;
  const correction = desk.draft.replaces || desk.draft.handed;
  const kept = await desk.keepIt().finally(() => { desk.busy = false; });
  redraw();
  if (kept) {
    say(correction ? 'Correction kept.' : 'Entry kept.');
    document.getElementById('log-keep').focus({ preventScroll: true });
  } else {
    document.getElementById('log-faults')?.focus();
  }
}

function cancel(desk, redraw) {
  desk.clear();
  desk.faults = [];
  redraw();
}
