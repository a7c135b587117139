// Where it is hot, how old the survey is; one area in full under its own address.
import { html, nothing } from '../lib/vendor.js';
import { areaSketch, startRates } from '../elements/area-sketch.js';
import { addLink, editLink, kindPanel } from '../elements/manage.js';
import { missing } from '../elements/missing.js';
import { areaDetail } from './area-detail.js';
import { calculatedPanel, loadExposure, poolPanel, questionPanels } from './exposure.js';
import { fromWord } from '../lib/exposure.js';
import { link } from '../lib/route.js';
import { nameOf, plural } from '../lib/words.js';
import { day, heat, msv, percent, rate as rateOf } from '../lib/units.js';

export const title = ({ route, camp }) => `${route.rest[0] ? nameOf(camp, 'areas', route.rest[0]) : 'Areas'} of ${camp.doc.settings.name}`;

export const load = ({ route, camp }) => (route.rest[0] ? null : loadExposure(camp));

export function body(page) {
  return page.route.rest[0] ? areaDetail(page) : all(page);
}

function all(page) {
  const { camp } = page;
  const { areas } = camp.doc;
  return html`
    <div class="lead"><div><h1>${heading(camp)}</h1><p class="under">${plural(areas.length, 'area')}, ${plural(camp.doc.surveys.length, 'survey')}, ${plural(camp.doc.sources.length, 'source')}.</p></div>
      <div class="doing">${addLink(camp, 'areas')}</div></div>
    <div class="grid">
      ${missing(camp)}
      ${areas.length === 0 ? html`<section class="panel empty"><h2>No areas yet</h2><p>An area is a place where people stand: pool edge, bridge, cabin.</p>${addLink(camp, 'areas', null, 'Add the first area')}</section>` : html`
        ${page.data?.overview ? html`<div class="w5">${poolPanel(page)}</div>` : camp.forecast && areas.some(area => area.sketch) ? html`<section class="panel w5">${areaSketch(camp, { title: sketchTitle(camp), level: 2, id: 'areas-sketch' })}</section>` : nothing}
        <div class="stack ${page.data?.overview || camp.forecast ? 'w7' : ''}"><section class="panel"><h2>Areas, the hottest first</h2>${ranked(camp)}</section>${calculatedPanel(page)}</div>`}
      ${areas.length === 0 ? nothing : html`${page.data && !page.data.overview ? poolPanel(page) : nothing}${questionPanels(page)}`}
      ${kindPanel(camp, 'surveys', {
    empty: 'No surveys yet. Add the first dose rate of an area.', head: ['Survey', 'Area', '~Measured', 'Valid until', '~#Points', '~Rule', '~Instrument'],
    row: survey => [editLink(camp, 'surveys', survey), nameOf(camp, 'areas', survey.area), day(survey.surveyed_on), day(survey.valid_until), survey.points.length, survey.rule.replace('-', ' '), survey.instrument],
  })}
      ${kindPanel(camp, 'sources', {
    empty: 'No sources yet: surveys then stay as they are, without decay and without an end.', head: ['Source', 'Ends', '~Nuclides, by their share of its dose rate'],
    row: source => [editLink(camp, 'sources', source, source.name), ends(camp, source), source.nuclides.map(each => `${each.nuclide} ${percent(each.dose_share)}`).join(', ') || 'does not decay'],
  })}
      ${kindPanel(camp, 'shields', {
    empty: 'No temporary shields.', head: ['Shield', 'Material', 'Stands'],
    row: shield => [editLink(camp, 'shields', shield, shield.name), shield.material, `${shield.from ? `from ${day(shield.from)}` : 'from the beginning'} ${shield.until ? `to ${day(shield.until)}` : 'to the end'}`],
  })}
    </div>`;
}

function heading(camp) {
  const rates = [...startRates(camp)].sort((a, b) => b[1] - a[1]);
  return rates.length === 0 ? 'Areas' : `Hottest at the start: ${nameOf(camp, 'areas', rates[0][0])}, ${rateOf(rates[0][1])} µSv/h`;
}

const sketchTitle = camp => {
  const hot = [...startRates(camp).values()].filter(rate => heat(rate) >= 3).length;
  return hot === 0 ? 'No area is above 25 µSv/h at the start' : `${plural(hot, 'area')} at 25 µSv/h or more at the start`;
};

const ends = (camp, source) => {
  if (source.ends_on) return `gone from ${day(source.ends_on)}`;
  if (!source.component) return 'stays';
  const packed = camp.forecast?.components.find(component => component.component === source.component)?.packed_on;
  return `when ${nameOf(camp, 'components', source.component)} is packed${packed ? `, ${day(packed)}` : ''}`;
};

function ranked(camp) {
  const rates = startRates(camp);
  const doses = new Map((camp.forecast?.areas ?? []).map(area => [area.area, area]));
  const sorted = [...camp.doc.areas].sort((a, b) => (rates.get(b.code) ?? 0) - (rates.get(a.code) ?? 0));
  return html`<div class="table" tabindex="0" role="region" aria-label="Areas"><table><thead><tr><th scope="col">Area</th><th scope="col" class="n">µSv/h at the start</th>
    <th scope="col" class="n">highest at work</th><th scope="col" class="n mid-only">ceiling</th><th scope="col" class="mid-only">last survey</th><th scope="col" class="n">person-mSv</th></tr></thead>
    <tbody>${sorted.map(area => {
      const dose = doses.get(area.code);
      const survey = latest(camp, area.code);
      return html`<tr><th scope="row"><a href=${link(camp.id, 'areas', area.code)}>${area.name}</a><span class="sub">${fromWord(area.rate_from)}</span></th>
        <td class="n">${rates.has(area.code) ? rateOf(rates.get(area.code)) : 'not known'}</td><td class="n">${dose ? rateOf(dose.highest_usv_per_h) : ''}
          ${dose?.ceiling_usv_per_h && dose.highest_usv_per_h > dose.ceiling_usv_per_h ? html`<span class="mark decide">above ceiling</span>` : nothing}</td>
        <td class="n mid-only">${area.ceiling_usv_per_h ? rateOf(area.ceiling_usv_per_h) : 'none'}</td>
        <td class="mid-only">${survey ? html`${day(survey.surveyed_on)}<span class="sub nowrap">valid until ${day(survey.valid_until)}</span>` : area.rate_from === 'survey' ? 'none yet' : fromWord(area.rate_from)}</td>
        <td class="n">${dose ? msv(dose.person_usv) : ''}</td></tr>`;
    })}</tbody></table></div>`;
}

export const latest = (camp, area) => camp.doc.surveys.filter(survey => survey.area === area).sort((a, b) => b.surveyed_on.localeCompare(a.surveyed_on))[0];
