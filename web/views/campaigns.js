// Which campaigns need me.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { forget, standing } from '../lib/campaign.js';
import { confirm } from '../lib/confirm.js';
import { say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import { home, may } from '../lib/who.js';
import { verdict } from '../lib/verdict.js';
import { doseStrip } from '../elements/dose-strip.js';
import { plural } from '../lib/words.js';
import { day, msv, msvTyped } from '../lib/units.js';

const PAGE = 20;
let fault = null;

export const title = () => 'Campaigns';

export async function load({ route }) {
  const offset = Number(route.search.get('from')) || 0;
  const list = (await get(`/api/campaigns?offset=${offset}&limit=${PAGE}`)).body;
  const items = await Promise.all(list.items.map(async item => ({ ...item, camp: await standing(item.id).catch(() => null) })));
  return { ...list, items: items.sort((a, b) => decisions(b) - decisions(a)) };
}

const decisions = ({ camp }) => (camp?.missing ? 1 : camp?.forecast?.findings.filter(found => found.weight === 'decide').length ?? 0);

export function body({ data, reload }) {
  return html`
    <div class="lead"><div><h1>${data.total === 0 ? 'No campaigns yet' : plural(data.total, 'campaign')}</h1>
      ${data.total === 0 ? html`<p class="under">${may('POST', '/api/campaigns') ? 'Start one, or bring one in from a document.' : 'The project manager or the radiation protection officer starts one.'}</p>` : nothing}</div></div>
    ${data.items.length === 0 ? nothing : html`<ul class="campaigns">${data.items.map(item => row(item, reload))}</ul>`}
    ${data.total > PAGE ? pager(data) : nothing}
    <div class="doors" data-may="POST /api/campaigns">
      <section class="panel door"><h2>Start a campaign</h2><p class="muted">Name, first day, dose limits and calendar now; areas, components and people after that.</p>
        <a class="button ${data.total === 0 ? 'main' : ''}" href="#/new">Start a campaign</a></section>
      <section class="panel door"><h2>Bring in a document</h2><p class="muted">A campaign document gives the same forecast to the last digit, wherever it is read.</p>
        <div class="field"><label for="import">Campaign document (JSON file)</label>
          ${fault ? html`<div class="message" id="import-fault"><p>${fault.text}</p>${fault.errors.length ? html`<ul>${fault.errors.map(error => html`<li><code>${error.field}</code> ${error.detail}</li>`)}</ul>` : nothing}</div>` : nothing}
          <input type="file" id="import" accept=".json,application/json" aria-describedby=${fault ? 'import-fault' : nothing}></div>
        <button class="button" @click=${() => bring(reload)}>Bring it in</button></section>
    </div>`;
}

function row(item, reload) {
  const forecast = item.camp?.forecast;
  const target = forecast?.targets.find(each => each.scope === 'campaign');
  return html`<li class="panel campaign"><div>
      <h2><a href=${home(item.id)}>${item.name}</a>${item.camp?.forecast?.invented || item.demo ? html` <span class="mark solid">demo · invented</span>` : nothing}</h2>
      <p class="sentence">${sentence(item)}</p>
      ${forecast?.tasks.length ? html`<p class="small muted">${day(forecast.start)} to ${day(forecast.finish)}, ${plural(forecast.totals.tasks, 'task')}</p>` : nothing}</div>
    <div>${forecast?.tasks.length ? html`${doseStrip({ value: forecast.totals.person_usv, target: target?.target_usv, top: Math.max(forecast.totals.person_usv, target?.target_usv ?? 0) * 1.1 })}
      <p class="small muted">${msv(forecast.totals.person_usv)} person-mSv${target ? `, target ${msvTyped(target.target_usv)}` : ''}</p>` : nothing}</div>
    <div class="doing"><a class="button main" href=${home(item.id)}>Open<span class="spoken"> ${item.name}</span></a>
      <a class="button" href="/api/campaigns/${item.id}/document" download="${fileName(item.name)}.json">Download<span class="spoken"> ${item.name}</span></a>
      <button class="button" data-may="DELETE /api/campaigns/{id}" @click=${() => remove(item, reload)}>Delete …<span class="spoken"> ${item.name}</span></button></div></li>`;
}

function sentence(item) {
  if (!item.camp) return 'It could not be read.';
  if (item.camp.missing) return `Not forecast yet: the plan lacks ${plural(item.camp.missing.length, 'thing')}.`;
  if (item.camp.forecast.tasks.length === 0) return `${verdict(item.camp.forecast)}.`;
  const open = decisions(item);
  return html`${verdict(item.camp.forecast)}. ${open === 0 ? 'Nothing needs a decision.' : html`<span class="count">${open === 1 ? '1 thing needs' : `${open} things need`} a decision.</span>`}`;
}

const fileName = name => name.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'campaign';

async function bring(reload) {
  const file = document.getElementById('import').files[0];
  if (!file) {
    fault = { text: 'Choose a file first.', errors: [] };
    await reload();
    document.getElementById('import').focus();
    return;
  }
  try {
    const added = (await ask('POST', '/api/campaigns', { body: await file.text(), plain: true })).body;
    fault = null;
    location.hash = link(added.id, 'standing');
  } catch (problem) {
    fault = { text: `${file.name} was not taken. ${problem.errors?.length ? '' : problem.message}`, errors: problem.errors ?? [] };
    await reload();
    document.title = `Error: ${document.title}`;
    document.getElementById('import').focus();
  }
}

async function remove(item, reload) {
  const sure = await confirm({ title: `Delete "${item.name}"?`, verb: 'Delete it', text: 'The campaign with all its objects goes. What people received stays on record until its time is over. Download the campaign first if you may want it back.' });
  if (!sure) return;
  try {
    const now = await get(`/api/campaigns/${item.id}`);
    await ask('DELETE', `/api/campaigns/${item.id}`, { etag: now.etag });
    forget(item.id);
    say(`${item.name} is deleted.`);
    fault = null;
  } catch (problem) {
    fault = { text: problem.message, errors: [] };
  }
  await reload();
}

const pager = ({ offset, total }) => html`<p class="pager">${offset > 0 ? html`<a href="#/campaigns?from=${Math.max(0, offset - PAGE)}">Previous</a>` : nothing}
  ${offset + 1} to ${Math.min(total, offset + PAGE)} of ${total} ${offset + PAGE < total ? html`<a href="#/campaigns?from=${offset + PAGE}">Next</a>` : nothing}</p>`;
