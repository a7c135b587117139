import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { addLink, editLink } from '../elements/manage.js';
import { areaQuestions } from './exposure.js';
import { rateWorking } from '../elements/rate-working.js';
import { link } from '../lib/route.js';
import { nameOf } from '../lib/words.js';
import { day, msv, percent, plain, rate, sig } from '../lib/units.js';
import '../elements/rate-history.js';

export function areaDetail(page) {
  const { route, camp, redraw } = page;
  const area = camp.byCode.areas.get(route.rest[0]);
  if (!area) return html`<div class="lead"><div><h1>There is no area "${route.rest[0]}"</h1><p class="under"><a href=${link(camp.id, 'areas')}>All areas</a></p></div></div>`;
  const dose = camp.forecast?.areas.find(each => each.area === area.code);
  const surveys = camp.doc.surveys.filter(survey => survey.area === area.code).sort((a, b) => b.surveyed_on.localeCompare(a.surveyed_on));
  const start = dose?.history[0];
  return html`
    <div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'areas')}>Areas</a></p>
      <h1>${area.name}${start ? `: ${rate(start.usv_per_h)} µSv/h at the start` : ''}</h1>${area.note ? html`<p class="under">${area.note}</p>` : nothing}</div>
      <div class="doing"><a class="button" href=${link(camp.id, 'edit', 'areas', area.code)}>Edit the area</a>${addLink(camp, 'surveys', { area: area.code })}</div></div>
    <div class="grid">
      <section class="panel ${dose ? 'w4' : ''}"><h2>Figures</h2><dl class="facts">
        <div><dt>Background</dt><dd>${plain(area.background_usv_per_h)} µSv/h</dd></div>
        <div><dt>Ceiling</dt><dd>${area.ceiling_usv_per_h ? `${plain(area.ceiling_usv_per_h)} µSv/h` : 'none set'}</dd></div>
        <div><dt>Rate comes from</dt><dd>${RATE_FROM[area.rate_from] ?? area.rate_from}</dd></div>
        ${dose ? html`<div><dt>Highest while people work</dt><dd>${rate(dose.highest_usv_per_h)} µSv/h</dd></div>
          <div><dt>Hours of all people there</dt><dd>${sig(dose.person_hours)} h</dd></div><div><dt>Dose taken there</dt><dd>${msv(dose.person_usv)} person-mSv</dd></div>` : nothing}
      </dl></section>
      ${dose && dose.history.length > 0 ? html`<section class="panel w8">${history(area, dose)}</section>` : nothing}
      ${surveys.map(survey => surveyPanel(camp, survey))}
      ${surveys.length === 0 ? html`<section class="panel empty"><h2>No surveys of ${area.name} yet</h2>${area.rate_from === 'survey' ? html`<p>Without one, nothing can be forecast here.</p>` : nothing}${addLink(camp, 'surveys', { area: area.code }, 'Add the first dose rate')}</section>` : nothing}
      ${camp.forecast ? workings(camp, area, redraw) : nothing}
      ${areaQuestions(page, area)}
    </div>`;
}

function history(area, dose) {
  const first = dose.history[0];
  const last = dose.history.at(-1);
  const way = last.usv_per_h < first.usv_per_h * 0.99 ? 'falls' : last.usv_per_h > first.usv_per_h * 1.01 ? 'rises' : 'stays';
  const heading = way === 'stays' ? `The rate stays at about ${sig(first.usv_per_h, 2)} µSv/h` : `The rate ${way} from ${rate(first.usv_per_h)} to ${rate(last.usv_per_h)} µSv/h`;
  const data = { history: dose.history, ceiling: area.ceiling_usv_per_h, title: heading, desc: `Dose rate of ${area.name} on ${dose.history.length} days from ${day(first.on)} to ${day(last.on)}.` };
  return figureFrame({ title: heading, picture: html`<rate-history .data=${data}></rate-history>`, caption: `Dose rate of ${area.name}`, head: ['Day', 'µSv/h'],
    rows: dose.history.map(each => [day(each.on), sig(each.usv_per_h)]) });
}

function surveyPanel(camp, survey) {
  return html`<section class="panel w6"><div class="head"><h2>Survey of ${day(survey.surveyed_on)}</h2>${editLink(camp, 'surveys', survey, `Edit ${survey.code}`)}</div>
    <p class="small muted">Valid until ${day(survey.valid_until)}. ${survey.instrument}. The area rate is the ${survey.rule.replace('-', ' ')} of the points.</p>
    <div class="table" tabindex="0" role="region" aria-label=${`Points of ${survey.code}`}><table><thead><tr><th scope="col">Point</th><th scope="col" class="n">µSv/h</th>${survey.rule === 'weighted-mean' ? html`<th scope="col" class="n">weight</th>` : nothing}</tr></thead>
      <tbody>${survey.points.map(point => html`<tr><th scope="row">${point.name}</th><td class="n">${plain(point.usv_per_h)}</td>${survey.rule === 'weighted-mean' ? html`<td class="n">${plain(point.weight)}</td>` : nothing}</tr>`)}</tbody></table></div>
    ${survey.shares.length === 0 ? html`<p class="small">No source is told apart: the rate stays as measured.</p>` : html`<p class="small">Above background: ${survey.shares.map(share => `${nameOf(camp, 'sources', share.source)} ${percent(share.share)}`).join(', ')}.</p>`}
    ${survey.note ? html`<p class="small muted">${survey.note}</p>` : nothing}</section>`;
}

const RATE_FROM = { survey: 'its surveys', background: 'background only', calculated: 'activities, calculated', calibrated: 'activities, calibrated to surveys' };
const chosen = new Map();

function workings(camp, area, redraw) {
  const rates = camp.forecast.rates.filter(rate => rate.area === area.code).sort((a, b) => a.on.localeCompare(b.on) || a.id.localeCompare(b.id));
  if (rates.length === 0) return nothing;
  const key = `${camp.id}/${area.code}`;
  const shown = rates.find(rate => rate.id === chosen.get(key)) ?? rates[0];
  return html`<section class="panel"><h2>How the rate comes about</h2>
    <div class="field"><label for="working-day">On the day</label><div class="entry"><select id="working-day" class="auto" @change=${event => { chosen.set(key, event.target.value); redraw(); }}>
      ${rates.map(rate => html`<option value=${rate.id} ?selected=${rate === shown}>${day(rate.on)}: ${sig(rate.usv_per_h)} µSv/h</option>`)}</select></div></div>
    ${rateWorking(camp, shown)}</section>`;
}
