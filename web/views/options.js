// Which option costs which time, dose, money and waste? All figures are those of one run; nothing is counted here.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { forget } from '../lib/campaign.js';
import { say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import * as runs from '../lib/runs.js';
import { typed } from '../lib/typed.js';
import { plural, sentence } from '../lib/words.js';
import { day, fixed, msv, msvFixed, msvTyped, sig } from '../lib/units.js';
import { chooseOption } from '../elements/choose-option.js';
import { figureFrame } from '../elements/figure-frame.js';
import { classOf, optionMark } from '../elements/option-mark.js';
import { outcomeStrip, scaleOf } from '../elements/outcome-strip.js';
import { busy, runPanel, watch } from '../elements/run-panel.js';
import '../elements/dose-time.js';
import '../elements/difference-dots.js';

const ALPHA = 5000;
const kept = new Map();            // by campaign: {alpha, fault, pins}
const memory = id => kept.get(id) ?? kept.set(id, { alpha: ALPHA, text: String(ALPHA), fault: '', pins: null }).get(id);

export async function load({ camp }) {
  const own = memory(camp.id);
  const [answer, decisions, last] = await Promise.all([runs.latest(camp.id), get(`/api/campaigns/${encodeURIComponent(camp.id)}/decisions?limit=20`), runs.list(camp.id, 1)]);
  const data = { answer, decisions: decisions.body.items.filter(each => each.kind === 'option'), going: runs.going(last[0]) ? last[0].number : null, pair: null, preference: null };
  if (answer) {
    const letters = drawn(answer).map(row => row.letter);
    if (!own.pins?.every(letter => letters.includes(letter))) own.pins = firstPins(answer);
    [data.pair, data.preference] = await Promise.all([pairOf(camp, answer, own.pins), preferenceOf(camp, answer, own.alpha)]);
  }
  return data;
}

const drawn = answer => answer.options.filter(row => row.figures);
const byDose = rows => [...rows].sort((a, b) => a.figures.person_usv.mean - b.figures.person_usv.mean);
const firstPins = answer => (drawn(answer).length < 2 ? [] : [byDose(drawn(answer)).find(row => row.letter !== 'A').letter, 'A']);
const pairOf = (camp, answer, pins) => (pins.length === 2 ? runs.pair(camp.id, answer.run.number, ...pins) : null);
const preferenceOf = (camp, { run, options }, alpha) => (options[0].figures.cost ? runs.preference(camp.id, run.number, alpha).catch(() => null) : null);

export const title = ({ camp }) => `Options of ${camp.doc.settings.name}`;

export function body({ camp, data, redraw, reload }) {
  const calls = { changes: redraw, done: reload };
  if (data.going && !busy(camp.id)) {
    const number = data.going;
    data.going = null;
    queueMicrotask(() => watch(camp.id, number, calls));
  }
  const options = camp.doc.options ?? [];
  const add = html`<a class="button" href=${link(camp.id, 'add', 'options')}>Add an option</a>`;
  const panel = label => runPanel(camp.id, { ...calls, label });
  if (!data.answer) return nothingYet(camp, options, add, panel);
  const { answer } = data;
  return html`<div class="lead"><div><h1>${headline(answer)}</h1>
      <p class="under">Run ${answer.run.number} of ${day(answer.run.asked_at.slice(0, 10))}: ${fixed(answer.run.trials, 0)} draws, the same for every option. None of this decides: the choice and its reason are yours.</p></div>
      <div class="doing">${panel('Run again')}${add}</div></div>
    ${changed(camp, answer)}
    <div class="grid">
      <section class="panel w8">${picture(answer, memory(camp.id).pins)}</section>
      <section class="panel w4">${pinned(camp, answer, data.pair)}</section>
      <section class="panel">${table(camp, data, redraw, reload)}</section>
      <section class="panel w7">${waste(camp, answer)}</section>
      <section class="panel w5">${decided(data.decisions, answer)}</section>
    </div>`;
}

function nothingYet(camp, options, add, panel) {
  return html`<div class="lead"><div><h1>${options.length === 0 ? 'No options yet' : `${plural(options.length, 'option')}, not drawn yet`}</h1>
    <p class="under">An option is the plan with named changes: another technique, a shield, waiting. All are drawn with the same draws and set side by side.</p></div><div class="doing">${camp.forecast ? panel(options.length === 0 ? 'Draw the plan' : 'Draw and compare') : nothing}${add}</div></div>
    <section class="panel">${camp.forecast ? nothing : html`<p>The plan cannot be forecast yet; what it lacks is on <a href=${link(camp.id, 'standing')}>Standing</a>.</p>`}
      ${options.length === 0 ? html`<p class="muted">Add the first: for example a lead wall, and what it costs.</p>` : html`<ul class="bare">${options.map(option => html`<li><a href=${link(camp.id, 'edit', 'options', option.code)}>${option.name}</a> <span class="muted">${plural(option.changes.length, 'change')}</span></li>`)}</ul>`}</section>`;
}

function headline(answer) {
  const rows = drawn(answer);
  if (rows.length === 1) return 'Only the plan was drawn; there is no option to compare';
  const [least] = byDose(rows);
  const plan = rows[0];
  if (least.letter === 'A') return 'No option takes less dose than the plan';
  return least.figures.target && plan.figures.target
    ? `${least.name}: target kept in ${least.figures.target.kept.of20} of 20 outcomes, as planned in ${plan.figures.target.kept.of20}`
    : `Least dose: ${least.name}, ${msv(least.figures.person_usv.mean)} person-mSv`;
}

function changed(camp, { changed_since: since, run }) {
  if (!since || !(since.inputs_changed || since.options_changed || since.work_changed || since.tables_changed)) return nothing;
  const words = [since.count > 0 ? plural(since.count, 'figure') : '', since.work_changed ? 'the log' : '', since.tables_changed ? 'the tables' : ''].filter(Boolean).join(', ');
  return html`<div class="changed-since" role="note"><p><strong>Changed since run ${run.number}: ${words}.</strong> What is shown is still run ${run.number}.</p>
    ${since.count === 0 ? nothing : html`<details><summary>See what</summary><ul>${since.changes.slice(0, 30).map(each => html`<li>${difference(camp, each)}</li>`)}</ul></details>`}</div>`;
}

const shown = value => (value === undefined ? 'not given' : typeof value === 'string' ? value : JSON.stringify(value));
const difference = (camp, each) => html`${sentence(each.kind)}${each.code ? html` <a href=${link(camp.id, 'edit', each.kind, each.code)}>${each.code}</a>` : nothing}: ${each.what === 'changed'
  ? html`${each.field.replace(/_/g, ' ')} ${each.before === undefined && each.after === undefined ? 'changed' : html`was ${shown(each.before)}, is ${shown(each.after)}`}` : each.what}`;

function picture(answer, pins) {
  const rows = drawn(answer);
  const sorted = byDose(rows);
  const target = rows[0].figures.target?.bound;
  const hours = rows.map(row => row.figures.hours.p50);
  const title = rows.length === 1 ? `Half of the outcomes lie below ${msv(sorted[0].figures.person_usv.p50)} person-mSv`
    : `Medians from ${msv(Math.min(...rows.map(row => row.figures.person_usv.p50)))} to ${msv(Math.max(...rows.map(row => row.figures.person_usv.p50)))} person-mSv, and from ${sig(Math.min(...hours), 4)} to ${sig(Math.max(...hours), 4)} h`;
  const desc = `Dose against time, twenty outcomes each. ${rows.map(row => `${row.letter}, ${row.name}: median ${msv(row.figures.person_usv.p50)} person-mSv and ${sig(row.figures.hours.p50)} h${row.dominated ? `, dominated by ${row.dominated.by}` : ''}`).join('; ')}.`;
  const data = { title, desc, targetUsv: target, options: rows.map(row => ({ letter: row.letter, outcomes: row.figures.outcomes, usv: row.figures.person_usv.p50, hours: row.figures.hours.p50,
    hollow: Boolean(row.dominated), quiet: (pins ?? []).length === 2 && !pins.includes(row.letter) })) };
  return figureFrame({
    title, picture: html`<dose-time .data=${data}></dose-time>`,
    under: html`<ul class="option-key" aria-label="Marks">${rows.map(row => html`<li>${optionMark(row.letter, Boolean(row.dominated))}<span>${row.letter} ${row.name}${row.dominated ? html` <span class="muted">(dominated by ${row.dominated.by})</span>` : nothing}</span></li>`)}</ul>
      <p class="small muted">20 small marks for each option are equally likely outcomes; the cross stands at the medians.</p>`,
    caption: 'Twenty outcomes of each option', head: ['Outcome', ...rows.flatMap(row => [`${row.letter} person-mSv`, `${row.letter} h`])],
    rows: Array.from({ length: 20 }, (_, i) => [`${i + 1}`, ...rows.flatMap(row => [msv(row.figures.outcomes[i].person_usv), sig(row.figures.outcomes[i].hours, 4)])]),
  });
}

const KINDS = [['person_usv', 'Dose', value => `${signed(value / 1000)} person-mSv`], ['hours', 'Time', value => `${signed(value)} h`], ['highest_usv', 'Highest person', value => `${signed(value / 1000)} mSv`]];
const signed = value => `${value > 0 ? '+' : ''}${Math.abs(value) >= 1000 ? fixed(value, 0) : sig(value)}`;

function pinned(camp, answer, pair) {
  if (!pair) return html`<h2>Pin two options</h2><p class="muted">Tick two rows of the table to see how they differ, draw by draw.</p>`;
  const money = camp.doc.prices[0]?.currency ?? '';
  const kinds = [...KINDS, ...(pair.cost ? [['cost', costOf(answer), value => `${signed(value)} ${money}`]] : [])];
  const name = letter => answer.options.find(row => row.letter === letter).name;
  return html`<div class="head"><h2>${pair.a} less ${pair.b}, draw by draw</h2></div>
    <p class="small muted">${optionMark(pair.a)} ${pair.a} ${name(pair.a)}, less ${optionMark(pair.b)} ${pair.b} ${name(pair.b)}. Filled: ${pair.a} is lower.</p>
    <div class="differences">${kinds.map(([kind, word, words]) => differenceOf(kind, word, words, pair))}</div>
    <details class="as-table"><summary>Show as a table<span class="spoken">: ${pair.a} less ${pair.b}</span></summary><div class="table" tabindex="0" role="region" aria-label="Numbers: ${pair.a} less ${pair.b}"><table><caption>Twenty outcomes of ${pair.a} less ${pair.b}</caption>
      <thead><tr><th scope="col">Outcome</th>${kinds.map(([, word]) => html`<th scope="col" class="n">${word}</th>`)}</tr></thead>
      <tbody>${Array.from({ length: 20 }, (_, i) => html`<tr><th scope="row">${i + 1}</th>${kinds.map(([kind, , words]) => html`<td class="n">${words(pair[kind].spread.outcomes[i])}</td>`)}</tr>`)}</tbody></table></div></details>`;
}

function differenceOf(kind, word, words, pair) {
  const { spread, sentence: said } = pair[kind];
  const desc = `Twenty outcomes of the difference, from ${words(spread.outcomes[0])} to ${words(spread.outcomes[19])}, median ${words(spread.p50)}.`;
  return html`<figure data-kind=${kind}><h3>${word} <span class="muted plain">median ${words(spread.p50)}</span></h3><p class="sentence">${said}</p>
    ${spread.outcomes[0] === spread.outcomes[19] ? nothing : html`<difference-dots .data=${{ id: `difference-${kind}`, outcomes: spread.outcomes, words, title: said, desc }}></difference-dots>`}</figure>`;
}

function table(camp, data, redraw, reload) {
  const { answer } = data;
  const own = memory(camp.id);
  const rows = drawn(answer);
  const priced = rows.every(row => row.figures.cost);
  const money = camp.doc.prices[0]?.currency ?? '';
  const target = rows[0].figures.target?.bound;
  const drums = row => row.figures.waste.find(each => each.what === 'drums')?.amount;
  const wasted = rows.every(row => drums(row));
  const scales = { hours: scaleOf(rows.map(row => row.figures.hours)), usv: scaleOf(rows.map(row => row.figures.person_usv), target), cost: priced ? scaleOf(rows.map(row => row.figures.cost)) : null, drums: wasted ? scaleOf(rows.map(drums)) : null };
  const strip = (row, spread, scale, bound) => html`${outcomeStrip({ outcomes: spread.outcomes, median: spread.p50, scale, bound, letter: classOf(row.letter) })}`;
  const pin = letter => async event => {
    const pins = event.target.checked ? [...own.pins, letter].slice(-2) : own.pins.filter(each => each !== letter);
    own.pins = pins;
    data.pair = pins.length === 2 ? await runs.pair(camp.id, answer.run.number, ...pins) : null;
    say(data.pair ? data.pair.person_usv.sentence : 'One option is pinned.');
    redraw();
  };
  const choose = row => async () => {
    const made = await chooseOption({ camp, run: answer.run, row });
    if (!made) return;
    say('Written down.');
    if (made.taken) forget(camp.id);
    reload();
  };
  const columns = 6 + Number(priced) * 2 + Number(wasted) + Number(target !== undefined) + Number(Boolean(rows[0].figures.constraint));
  return html`<div class="head"><h2>All options on the same draws</h2></div>${priced ? alpha(camp, data, own, money, redraw) : html`<p class="small muted">Without prices no cost is worked out and nothing can be weighed against it.</p>`}
    <div class="table options-table" tabindex="0" role="region" aria-label="Options"><table><caption class="spoken">Medians of time, dose, cost and waste of each option with twenty outcomes as ticks</caption><thead><tr><th scope="col">Option</th><th scope="col">Pin</th>
      <th scope="col">Time, h</th><th scope="col">Dose, person-mSv</th>${priced ? html`<th scope="col">${costOf(answer)}, ${money}</th>` : nothing}${wasted ? html`<th scope="col">Waste, drums</th>` : nothing}
      <th scope="col" class="n">Highest person, mSv</th>${target === undefined ? nothing : html`<th scope="col" class="n">Target ${msvTyped(target)} kept</th>`}
      ${rows[0].figures.constraint ? html`<th scope="col" class="n">Nobody above ${msvTyped(rows[0].figures.constraint.bound)} mSv</th>` : nothing}${priced ? html`<th scope="col" class="n">Comes first</th>` : nothing}<th scope="col"><span class="spoken">Choose</span></th></tr></thead>
      <tbody>${answer.options.map(row => (row.figures ? html`<tr class="${row.dominated ? 'dominated' : ''} ${because(row) ? 'has-because' : ''}" data-option=${row.letter}><th scope="row"><span class="name">${optionMark(row.letter, Boolean(row.dominated))}<span><span class="letter">${row.letter}</span> ${row.option && camp.byCode.options?.has(row.option) ? html`<a href=${link(camp.id, 'edit', 'options', row.option)}>${row.name}</a>` : row.name}
          <span class="sub">until ${day(row.figures.finish)}</span></span></span></th>
        <td><label class="pin"><input type="checkbox" .checked=${own.pins.includes(row.letter)} @change=${pin(row.letter)}><span class="spoken">Pin ${row.letter}, ${row.name}</span></label></td>
        <td class="strip-cell"><span class="value">${sig(row.figures.hours.p50)}</span>${strip(row, row.figures.hours, scales.hours)}</td>
        <td class="strip-cell"><span class="value">${msv(row.figures.person_usv.p50)}</span>${strip(row, row.figures.person_usv, scales.usv, target)}</td>
        ${priced ? html`<td class="strip-cell"><span class="value">${fixed(row.figures.cost.p50, 0)}${row.not_priced.length > 0 ? html`<span class="sub">without the price of: ${row.not_priced.join(', ')}</span>` : nothing}</span>${strip(row, row.figures.cost, scales.cost)}</td>` : nothing}
        ${wasted ? html`<td class="strip-cell"><span class="value">${sig(drums(row).p50)}</span>${strip(row, drums(row), scales.drums)}</td>` : nothing}
        <td class="n">${msvFixed(row.figures.highest_usv.p50, 2)}</td>
        ${row.figures.target ? html`<td class="n of20">${row.figures.target.kept.of20} of 20</td>` : target === undefined ? nothing : html`<td class="n"></td>`}
        ${row.figures.constraint ? html`<td class="n of20">${row.figures.constraint.kept.of20} of 20</td>` : nothing}
        ${priced ? html`<td class="n of20">${first(data.preference, row)}</td>` : nothing}
        <td><button class="button little decide" @click=${choose(row)}>Choose …<span class="spoken"> ${row.letter}, ${row.name}</span></button></td></tr>
        ${because(row) ? html`<tr class="dominated-why"><td colspan=${columns}><p>${because(row)}</p></td></tr>` : nothing}`
    : html`<tr data-option=${row.letter}><th scope="row"><span class="name">${optionMark(row.letter, true)}<span><span class="letter">${row.letter}</span> <a href=${link(camp.id, 'edit', 'options', row.option)}>${row.name}</a></span></span></th>
        <td colspan=${columns - 1}><p>It does not fit the plan any more: ${row.refused.join(' ')}</p></td></tr>`))}</tbody></table></div>
    <p class="small muted">Figures are medians; ticks are twenty equally likely outcomes on one axis for the column, the heavy one the median${target === undefined ? '' : ', the dashed line the target'}.${answer.outlook.as_of ? html` Cost and drums are of what is still to do from ${day(answer.outlook.as_of)} on, with what each change costs; dose and time are of the whole campaign, with what was received and worked.` : nothing}</p>`;
}

/** Once work has begun, what it has cost is no longer in the figure. */
const costOf = answer => (answer.outlook.as_of ? 'Cost still to come' : 'Cost');
/** Runs kept from before there were cautions have none. */
const because = row => [row.dominated ? `Dominated: ${row.dominated.because}` : '', ...(row.cautions ?? [])].filter(Boolean).join(' ');
function first(preference, { letter }) {
  const found = preference?.options.find(each => each.letter === letter);
  return found ? `${found.of20} of 20` : '–';
}

function alpha(camp, data, own, money, redraw) {
  const change = async event => {
    own.text = event.target.value;
    const found = typed(own.text);
    own.fault = found.blank || found.fault || found.value < 0 || found.value > 1e8 ? 'Give an amount of 0 or more.' : '';
    if (own.fault === '') {
      const asked = own.text;
      own.alpha = found.value;
      const answer = await preferenceOf(camp, data.answer, Number(found.value.toFixed(6)));
      if (own.text === asked) data.preference = answer;
    }
    redraw();
  };
  return html`<div class="alpha"><label for="alpha">Money for a person-mSv (α), ${money}</label>
    <input id="alpha" type="text" inputmode="decimal" autocomplete="off" .value=${own.text} aria-invalid=${own.fault ? 'true' : 'false'} aria-describedby="alpha-says" @input=${change}>
    <span id="alpha-says" class="small muted">${own.fault || html`Changes “Comes first”: least cost + α · dose in so many of 20 draws. The value is yours to set; ${sig(ALPHA)} is only where the box starts.`}</span></div>`;
}

function waste(camp, answer) {
  const rows = drawn(answer);
  const kinds = [...new Set(rows.flatMap(row => row.figures.waste.map(each => each.what)))];
  const packageName = code => camp.byCode.packages?.get(code)?.name ?? code;
  const word = what => (what.startsWith('packages: ') ? packageName(what.slice(10)) : sentence(what));
  return html`<h2>What each option uses up and packs</h2><div class="table" tabindex="0" role="region" aria-label="Waste of each option"><table><thead><tr><th scope="col">Median</th>${rows.map(row => html`<th scope="col" class="n">${optionMark(row.letter, Boolean(row.dominated))} ${row.letter}</th>`)}</tr></thead>
    <tbody>${kinds.map(kind => html`<tr><th scope="row">${word(kind)}</th>${rows.map(row => {
      const found = row.figures.waste.find(each => each.what === kind);
      return html`<td class="n">${found ? `${found.unit === 'packages' ? fixed(found.amount.p50, 0) : sig(found.amount.p50)}${found.unit === 'kg' ? ' kg' : ''}` : '–'}</td>`;
    })}</tr>`)}</tbody></table></div>`;
}

function decided(decisions, answer) {
  const name = made => (made.subject === 'plan' ? 'As planned' : answer.options.find(row => row.option === made.subject)?.name ?? made.subject);
  return html`<h2>${decisions.length === 0 ? 'No option has been chosen yet' : `Chosen last: ${name(decisions[0])}`}</h2>
    ${decisions.length === 0 ? html`<p class="muted">Choosing asks for a reason; both are kept with the run they rest on.</p>` : html`<ul class="decided">${decisions.map(made => html`<li><strong>${made.text}</strong> <span class="muted small">${day(made.decided_at.slice(0, 10))}, ${made.decided_by}${made.run ? `, run ${made.run}` : ''}${made.taken_version ? ', carried out' : ''}</span><blockquote>${made.reason}</blockquote></li>`)}</ul>`}`;
}
