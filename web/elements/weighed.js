// What each method says of the same options, with its working.
import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from './figure-frame.js';
import { fixed, msv, msvTyped, sig } from '../lib/units.js';
import './switch-band.js';

/** The answer of the decision aids; {@code names} of the options come with it. */
export function weighed(answer) {
  const names = new Map(answer.options.map(option => [option.code, option.name]));
  const name = code => names.get(code) ?? code;
  return html`<section class="panel stack" id="result" tabindex="-1"><h2>${answer.agreement}</h2>
      <p><strong>None of these methods decides.</strong> A person chooses, and says why.</p>${options(answer)}</section>
    <div class="grid"><section class="panel w6 stack">${totals(answer, name)}</section>
      <section class="panel w6 stack">${steps(answer, name)}</section>
      <section class="panel w12 stack">${switching(answer, name)}</section>
      ${answer.utility ? html`<section class="panel w6 stack">${utility(answer, name)}</section>` : nothing}
      ${answer.outranking ? html`<section class="panel w6 stack">${outranking(answer, name)}</section>` : nothing}</div>
    <ul class="small muted">${answer.notes.map(note => html`<li>${note}</li>`)}</ul>`;
}

const money = value => fixed(value, Math.abs(value) < 100 ? 2 : 0);
const table = (label, head, rows) => html`<div class="table" tabindex="0" role="region" aria-label=${label}><table><thead><tr>${head.map((word, i) => html`<th scope="col" class=${i > 0 ? 'n' : ''}>${word}</th>`)}</tr></thead>
  <tbody>${rows.map(({ cells, best, key }) => html`<tr class=${best ? 'best-row' : ''} data-key=${key ?? nothing}>${cells.map((cell, i) => (i === 0 ? html`<th scope="row">${cell}${best ? html` <span class="mark solid">best here</span>` : nothing}</th>` : html`<td class="n">${cell}</td>`))}</tr>`)}</tbody></table></div>`;

function options({ options: all, currency }) {
  return table('Options', ['Option', `Cost, ${currency}`, 'Collective dose, person-mSv', 'Highest person, mSv', `Dose valued, ${currency}`], all.map(option => ({
    key: option.code, cells: [html`${option.name}${option.because ? html`<span class="sub">dominated: ${option.because}</span>` : nothing}`, money(option.cost), msv(option.person_usv, 4), msvTyped(option.highest_usv), money(option.dose_cost + (option.beta_cost ?? 0))],
  })));
}

function totals({ plain, extended, currency }, name) {
  const rows = (ranked, label, sum) => html`${table(label, ['Option', 'Cost', 'α S', ...(sum ? ['Σ β S'] : []), `Sum, ${currency}`], ranked.totals.map(each => ({
    best: each.code === ranked.best, cells: [name(each.code), money(each.cost), money(each.dose_cost), ...(sum ? [money(each.beta_cost)] : []), money(each.total)],
  })))}<p class="small">${ranked.sentence}</p>`;
  return html`<h2>Cost and benefit: ${name(plain.best)}</h2><p class="small muted">Least sum of cost and valued dose.</p>${rows(plain, 'Plain cost-benefit', false)}
    ${extended ? html`<h3>Extended: ${name(extended.best)}</h3>${rows(extended, 'Extended cost-benefit', true)}` : nothing}`;
}

function steps({ effectiveness, differential, integral, currency }, name) {
  const judged = (form, label) => html`${form.steps.length === 0 ? nothing : table(label, ['Step', `Costs more, ${currency}`, `Dose saved is worth, ${currency}`, 'Taken'], form.steps.map(step => ({
    cells: [`${name(step.from)} → ${name(step.to)}`, money(step.more_cost), money(step.worth), step.taken ? 'yes' : 'no'],
  })))}<p class="small">${form.sentence}</p>`;
  return html`<h2>Step by step: ${name((differential.applies ? differential : integral).best)}</h2><p class="small muted">${effectiveness.sentence}</p>
    ${effectiveness.steps.length === 0 ? nothing : table('Cost-effectiveness', ['Step', `Costs more, ${currency}`, 'Saves, person-mSv', `${currency} per person-Sv`], effectiveness.steps.map(step => ({
    cells: [`${name(step.from)} → ${name(step.to)}`, money(step.more_cost), msv(step.less_person_usv), money(step.per_person_sv)],
  })))}
    <h3>Differential form</h3>${judged(differential, 'Differential form')}${integral.applies ? html`<h3>Integral form</h3>${judged(integral, 'Integral form')}` : nothing}`;
}

function switching({ switching: found, currency }, name) {
  const unit = found.of === 'alpha' ? `${currency} per person-Sv` : 'times the value of dose given';
  const here = found.ranges.findLast(range => found.at >= range.from);
  const rows = found.ranges.map(range => [name(range.option), range.from === 0 ? '0' : money(range.from), range.to === undefined ? 'upwards' : money(range.to)]);
  const data = {
    title: found.sentence, desc: `${found.ranges.length} options are best somewhere, one after the other as the value of dose rises.`, at: found.at, unit,
    ranges: found.ranges.map(range => ({ ...range, name: name(range.option), here: range === here })),
  };
  return html`${figureFrame({ title: found.sentence, picture: html`<switch-band .data=${data}></switch-band>`, caption: `Best option by ${unit}`, head: ['Option', 'from', 'to'], rows })}
    <p class="small muted">Across: ${unit}, each step along the line multiplies. The filled band holds the value given.</p>`;
}

function utility({ utility: found }, name) {
  return html`<h2>Utility, own weights: ${name(found.best)}</h2><p class="small muted">0 is the worst of the options in a criterion, 1 the best. The weights are yours, not published ones.</p>
    ${table('Utility', ['Option', ...found.weights.map(each => `${each.of} · ${sig(each.weight)}`), 'Utility'], found.options.map(option => ({
    best: option.code === found.best, cells: [name(option.code), ...option.parts.map(part => sig(part.utility)), sig(option.utility)],
  })))}`;
}

function outranking({ outranking: found, options: all }, name) {
  const pair = (a, b) => found.pairs.find(each => each.a === a && each.b === b);
  return html`<h2>${found.sentence}</h2><p class="small muted">A row outranks a column where criteria with at least ${sig(found.least_concordance)} of the weight agree and no drawback is above ${sig(found.most_discordance)} of a range. In a cell: weight that agrees, largest drawback.</p>
    <div class="table" tabindex="0" role="region" aria-label="Outranking"><table class="matrix"><thead><tr><th scope="col">Outranks →</th>${all.map(each => html`<th scope="col" class="n">${each.name}</th>`)}</tr></thead>
      <tbody>${all.map(a => html`<tr><th scope="row">${name(a.code)}</th>${all.map(b => {
    const cell = pair(a.code, b.code);
    return cell ? html`<td class="n ${cell.outranks ? 'yes' : ''}">${cell.outranks ? 'yes' : 'no'}<span class="sub">${sig(cell.concordance, 2)}, ${sig(cell.discordance, 2)}</span></td>` : html`<td class="n">–</td>`;
  })}</tr>`)}</tbody></table></div>`;
}
