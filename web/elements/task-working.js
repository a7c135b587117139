// One task in full: its steps, each with the product that makes its hours and the products that make its dose.
import { html, nothing } from '../lib/vendor.js';
import { originMark } from './marks.js';
import { rateWorking } from './rate-working.js';
import { restsAt, stepId } from '../lib/inputs.js';
import { link, withQuery } from '../lib/route.js';
import { driverWord, figureWord, nameOf } from '../lib/words.js';
import { day, digits, duration, msv, plain, sig, stay } from '../lib/units.js';

/** @param trace what each figure was made of, once it is known: then each figure leads there */
export function taskWorking(camp, task, trace) {
  return html`<div class="task-working">
    <p class="small muted"><code>${task.id}</code> · ${task.group}${task.routine ? html` · from the routine <a href=${link(camp.id, 'edit', 'routines', task.routine)}>${nameOf(camp, 'routines', task.routine)}</a>` : nothing}
      ${task.id.startsWith('manual/') ? html` · <a href=${link(camp.id, 'edit', 'tasks', task.id.slice(7))}>added by hand</a>` : nothing}
      · ${day(task.start)} to ${day(task.finish)} ${task.wait_hours > 0 ? html` · waits ${duration(task.wait_hours)} for ${nameOf(camp, 'resources', task.waits_for)}` : nothing} · float ${task.critical ? 'none: critical' : duration(task.float_hours)}
      ${task.stay ? html` · ${task.stay.worker} may stay ${stay(task.stay.hours)} at ${nameOf(camp, 'areas', task.stay.area)} (${msv(task.stay.remaining_usv)} mSv left ÷ ${sig(task.stay.usv_per_h)} µSv/h)` : nothing}</p>
    ${task.steps.map(step => stepWorking(camp, task, step, trace))}</div>`;
}

function stepWorking(camp, task, step, trace) {
  const at = figure => restsAt(camp, trace, step.code, null, figure);
  const told = new Map(step.replaced.map(each => [each.figure, each]));
  const hours = told.get('hours');
  return html`<div class="step"><div class="beside"><h3>${step.name} <span class="mark solid">${step.mode}</span>${step.alongside ? html`<span class="mark solid">alongside, adds no time</span>` : nothing}</h3>
      ${replaceLink(camp, task, step, null, ['quantity', 'hours-each', 'difficulty', 'hours'])}</div>
    ${hours ? html`<p class="product">${factor(digits(step.hours, 4), 'hours', hours, at('hours'))}</p>` : html`<p class="product">
      ${term('', factor(digits(step.mean_quantity, 4), driverWord(step.driver, step.mean_quantity), told.get('quantity'), at('quantity')))}
      ${term('×', factor(`${digits(step.mean_hours_each, 4)} h`, `each, mean of ${three(step.hours_each)}`, told.get('hours-each'), at('hours-each')))}
      ${step.difficulty !== 1 || told.has('difficulty') ? term('×', factor(digits(step.difficulty, 4), step.factors.map(each => each.name.toLowerCase()).join(', ') || 'difficulty', told.get('difficulty'), at('difficulty'))) : nothing}
      ${term('=', html`<span class="factor"><span class="result">${leads(html`${digits(step.hours, 4)} h`, at('hours'), 'hours')}</span></span>`)}</p>`}
    ${step.factors.length > 0 ? difficulty(camp, step) : nothing}
    <p class="origin">${originMark(step.origin)} ${step.origin.text} ${source(camp, task, step)}</p>${speed(camp, task, step)}
    ${step.lines.length === 0 ? html`<p class="small muted">Nobody is needed.</p>` : step.lines.map((line, i) => lineWorking(camp, task, step, line, figure => restsAt(camp, trace, step.code, i, figure)))}</div>`;
}

const three = ({ low, likely, high }) => (low === high ? plain(likely) : `${plain(low)}, ${plain(likely)}, ${plain(high)}`);

/** A sign and what follows it, never parted by a line break. */
const term = (sign, what) => html`<span class="term">${sign ? html`<span class="sign">${sign}</span>` : nothing}${what}</span>`;

/** A figure that leads to what it rests on. */
const leads = (value, at, of) => (at ? html`<a class="traced" href=${at.href} data-figure=${at.figure}>${value}<span class="spoken"> ${of}: where it comes from</span></a>` : value);

const factor = (value, of, replaced, at) => html`<span class="factor"><span>${leads(value, at, of)}${replaced ? html` <span class="mark replaced">replaced</span>` : nothing}</span>
  <span class="of">${of}${replaced ? ` (was ${digits(replaced.derived, 4)}: ${replaced.reason})` : ''}</span></span>`;

/** To the row of the inputs that the step's hours come from. */
function source(camp, task, step) {
  const id = task.id.startsWith('manual/') ? stepId('tasks', task.id.slice(7), '', step.code) : task.routine ? stepId('routines', task.routine, task.id.split('/').at(-1), step.code) : null;
  return id ? html`<a href=${withQuery(link(camp.id, 'basis'), { input: id })}>Its row among the inputs<span class="spoken">: ${step.name}</span></a>` : nothing;
}

const OF_TECHNIQUE = new Set(['tool-on-hour', 'tool-change', 'fault', 'kg-abrasive', 'filter', 'drum']);

/** Quantities that follow from how fast a technique cuts are only as good as that figure. */
function speed(camp, task, step) {
  const routine = camp.byCode.routines.get(task.routine);
  const technique = OF_TECHNIQUE.has(step.driver) && camp.byCode.techniques.get(routine?.technique);
  if (!technique) return nothing;
  const row = under => withQuery(link(camp.id, 'basis'), { input: `techniques/${technique.code}${under}` });
  const faults = step.driver === 'fault' ? html`, and on <a href=${row('/faults')}>how often it fails</a> ${originMark(technique.faults_origin ?? technique.origin)}` : nothing;
  return html`<p class="origin">The quantity rests on the speed of <a href=${row('')}>${technique.name}</a> ${originMark(technique.origin)}${faults}</p>`;
}

function difficulty(camp, step) {
  const stages = [['critical', 'of the bare time'], ['adjusted', 'of the time so far'], ['productive', 'of the productive time']];
  const terms = stages.map(([stage, words]) => [words, step.factors.filter(each => each.stage === stage)]).filter(([, used]) => used.length > 0);
  return html`<details class="working"><summary>Difficulty ${digits(step.difficulty, 4)}</summary><p class="product">${terms.map(([words, used], i) => term(i > 0 ? '×' : '', html`<span class="factor"><span>(1 + ${used.map(each => digits(each.mean_percent / 100, 4)).join(' + ')})</span><span class="of">${used.map(each => html`${each.name.toLowerCase()} ${known(camp, each)}`)} ${words}</span></span>`))}
    ${term('=', html`<span class="factor"><span class="result">${digits(step.difficulty, 4)}</span></span>`)}</p></details>`;
}

const known = (camp, used) => {
  const factor = camp.byCode.factors.get(used.factor);
  return factor ? html`<a href=${withQuery(link(camp.id, 'basis'), { input: `factors/${used.factor}` })}>${originMark(factor.origin)}<span class="spoken"> of ${used.name}</span></a>` : nothing;
};

function lineWorking(camp, task, step, line, at) {
  const told = new Map(line.replaced.map(each => [each.figure, each]));
  const rate = line.rate && camp.forecast.rates.find(each => each.id === line.rate);
  return html`<div class="line-of"><div class="beside"><p class="who">${line.role} at <a href=${link(camp.id, 'areas', line.area)}>${nameOf(camp, 'areas', line.area)}</a></p>
      ${replaceLink(camp, task, step, line.role, ['people', 'presence', 'usv-per-h'])}</div>
    <p class="product line-product">${term('', factor(html`<span data-factor="hours">${digits(step.hours)}</span> h`, 'hours'))}
      ${term('×', factor(html`<span data-factor="people">${digits(line.people)}</span>`, 'people', told.get('people'), at('people')))}
      ${term('×', factor(html`<span data-factor="presence">${digits(line.presence)}</span>`, 'presence', told.get('presence'), at('presence')))}
      ${term('×', factor(html`<span data-factor="rate">${digits(line.usv_per_h)}</span> µSv/h`, 'dose rate', told.get('usv-per-h'), at('usv-per-h')))}
      ${term('=', html`<span class="factor"><span class="result">${leads(html`<span data-factor="dose">${digits(line.person_usv)}</span> person-µSv`, at('person-usv'), 'dose')}</span><span class="of">${msv(line.person_usv)} person-mSv</span></span>`)}</p>
    ${rate ? html`<details class="working"><summary>How ${sig(line.usv_per_h)} µSv/h comes about</summary>${rateWorking(camp, rate)}</details>` : nothing}</div>`;
}

/** What is replaced already leads to its entry; the rest can be replaced. */
function replaceLink(camp, task, step, role, figures) {
  const done = camp.doc.overrides.filter(each => each.task === task.id && each.step === step.code && (each.role ?? null) === role && figures.includes(each.figure));
  const open = figures.filter(figure => !done.some(each => each.figure === figure));
  return html`<p class="small replacing">${done.map(each => html`<a href=${link(camp.id, 'edit', 'overrides', each.code)}>Change or remove the replaced ${figureWord(each.figure)}</a> `)}
    ${open.length === 0 ? nothing : html`<span class="muted">Replace</span> ${open.map((figure, i) => html`${i > 0 ? ' · ' : ''}<a href=${withQuery(link(camp.id, 'add', 'overrides'), { task: task.id, step: step.code, figure, role })}>${figureWord(figure)}</a>`)}`}</p>`;
}
