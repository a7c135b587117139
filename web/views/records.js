// How long records of individuals are kept, what is held of each campaign, and removing it after that time.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { say } from '../lib/focus.js';
import { moment } from '../lib/moment.js';
import { reasonFor } from '../lib/reason.js';
import { day } from '../lib/units.js';

export const title = () => 'Records of individuals';

export async function load() {
  return { ...(await get('/api/retention')).body, fault: '' };
}

export function body({ data, redraw }) {
  return html`<div class="lead"><div><h1>Records of individuals are kept ${data.years} years after the work</h1><p class="under">${data.source}</p></div></div>
    <div class="grid">
      <section class="panel w6"><h2>How long</h2>
        <p>${data.set ? html`Set by ${data.set.by} on ${moment(data.set.at)}: ${data.set.reason}` : 'Nobody has set it: the usual time holds.'}</p>
        ${data.may_set ? setting(data, redraw) : html`<p class="muted">The radiation protection officer sets it.</p>`}</section>
      <section class="panel w6"><h2>What goes, and what stays</h2>
        <p>Removed for good are log entries, results of dosimeters of record, acknowledgements and other steps of reviews, runs with their frozen plans, and the plans in the change notes.</p>
        <p>Decisions, learnt factors and the trail stay: who entered something and when, and its hash, but no dose. Backups made before hold everything: delete them too.</p></section>
      <section class="panel"><h2>Held of each campaign</h2>
        ${data.fault ? html`<p class="message" id="records-fault" role="alert" tabindex="-1">${data.fault}</p>` : nothing}
        ${data.items.length === 0 ? html`<p class="muted">No campaign yet.</p>` : html`<div class="table" tabindex="0" role="region" aria-label="Held of each campaign, table"><table><thead><tr><th scope="col">Campaign</th><th scope="col" class="n mid-only">Entries</th><th scope="col" class="n mid-only">Results of record</th>
          <th scope="col" class="mid-only">Last day of work</th><th scope="col">Kept until</th><th scope="col">State</th></tr></thead><tbody>${data.items.map(item => row(item, data, redraw))}</tbody></table></div>`}</section></div>`;
}

const named = item => item.name ?? 'Campaign';

function row(item, data, redraw) {
  return html`<tr data-campaign=${item.campaign}><th scope="row">${named(item)}<span class="sub">number ${item.campaign}</span></th><td class="n mid-only">${item.entries}</td><td class="n mid-only">${item.period_results}</td>
    <td class="mid-only">${item.last_day ? day(item.last_day) : ''}</td><td>${item.kept_until ? day(item.kept_until) : ''}</td><td>${state(item, data, redraw)}</td></tr>`;
}

function state(item, data, redraw) {
  if (item.removed) return html`removed ${moment(item.removed.at)}<span class="sub">${item.removed.by}: ${item.removed.reason}</span>`;
  if (!item.over) return item.there ? 'in use' : 'campaign removed, records kept';
  if (item.there) return 'time is over: remove the campaign first';
  return html`<button class="button little decide" data-remove=${item.campaign} @click=${() => remove(item, data, redraw)}>Remove the records …<span class="spoken"> of ${named(item)}</span></button>`;
}

async function remove(item, data, redraw) {
  const reason = await reasonFor({ title: `Remove the records of ${named(item)} for good?`, text: 'Nothing brings them back. Say why, and name nobody: the reason stays in the trail.', verb: 'Remove them', needed: true });
  if (reason === null) return;
  await send(data, redraw, 'POST', `/api/retention/${item.campaign}/removal`, { reason, entries: item.entries }, 'The records are removed.');
}

async function send(data, redraw, method, path, body, done) {
  try {
    Object.assign(data, { set: undefined, fault: '', settingFault: '' }, (await ask(method, path, { body })).body);
    say(done);
  } catch (problem) {
    data[method === 'PUT' ? 'settingFault' : 'fault'] = problem.errors.length ? problem.errors.map(each => `${each.field === 'years' ? 'The number of years' : 'The reason'} ${each.detail}`).join(' ') : problem.message;
  }
  redraw();
  document.getElementById(data.settingFault ? 'setting-fault' : 'records-fault')?.focus();
}

function setting(data, redraw) {
  const submit = event => {
    event.preventDefault();
    const { years, reason } = event.target.elements;
    if (!/^[0-9]{1,3}$/.test(years.value.trim()) || reason.value.trim() === '') {
      data.settingFault = 'Give whole years and the reason: which law or ruling asks for it.';
      redraw();
      document.getElementById('setting-fault').focus();
      return;
    }
    send(data, redraw, 'PUT', '/api/retention', { years: Number(years.value), reason: reason.value.trim() }, 'The time is set.');
  };
  return html`<form class="form narrow" novalidate @submit=${submit}>
    ${data.settingFault ? html`<p class="message" id="setting-fault" role="alert" tabindex="-1">${data.settingFault}</p>` : nothing}
    <div class="field"><label for="years">Years after the last day of work</label><div class="entry"><input id="years" name="years" class="short" type="text" inputmode="numeric" autocomplete="off" .value=${String(data.years)}></div><span class="hint">${data.least_years} to ${data.most_years}.</span></div>
    <div class="field"><label for="years-reason">Reason</label><textarea id="years-reason" name="reason" rows="2" maxlength="500"></textarea></div>
    <div class="form-foot"><button class="button" type="submit" id="set-years">Set the time</button></div></form>`;
}
