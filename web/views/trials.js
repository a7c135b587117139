// Timed cuts on cold metal: entered or pasted, fitted, accepted by a person.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { forget } from '../lib/campaign.js';
import { say } from '../lib/focus.js';
import { pasted } from '../lib/pasted.js';
import { link } from '../lib/route.js';
import { nameOf, plural } from '../lib/words.js';
import { day, plain, sig } from '../lib/units.js';
import { announce, askForm } from '../forms/page.js';
import { free, today } from '../forms/preset.js';
import { Session } from '../forms/session.js';
import { accepting, together } from '../forms/trialing.js';
import { editLink, kindPanel } from '../elements/manage.js';
import { originLine } from '../elements/marks.js';
import { subnav } from '../elements/subnav.js';
import { trialFit } from '../elements/trial-fit.js';

const SURE = [['0.5', '5 in 10'], ['0.8', '8 in 10'], ['0.95', '19 in 20']];

export const title = ({ camp }) => `Timed trials, ${camp.doc.settings.name}`;

const base = camp => `/api/campaigns/${encodeURIComponent(camp.id)}`;
const read = async (camp, { confidence, slope }) => (await get(`${base(camp)}/trial-fits?confidence=${confidence}${slope === '' ? '' : `&slope=${encodeURIComponent(slope.replace(',', '.'))}`}`)).body;

export async function load({ camp }) {
  const how = { confidence: '0.8', slope: '', fault: '' };
  const entry = new Session({ fields: together, value: { done_on: today() }, etag: null, address: `${base(camp)}/trials`, method: 'POST' });
  return { how, entry, fits: await read(camp, how), accepts: new Map() };
}

export function body({ camp, tables, data, redraw, reload }) {
  const { fits } = data.fits;
  const good = fits.filter(fit => fit.fit).length;
  return html`<div class="lead"><div><h1>${fits.length === 0 ? 'No timed trials yet' : `${good} of ${plural(fits.length, 'set')} of trials can be fitted`}</h1>
      <p class="under">A trial on cold metal, accepted by a person, replaces an assumed speed. Each technique, material and setting is fitted by itself.</p></div></div>
    ${subnav(camp, 'cuts', 'trials')}
    <div class="stack">
      ${fits.length > 0 ? how(camp, data, redraw) : nothing}
      ${fits.map(fit => html`<section class="panel" aria-label=${`${fit.name}, ${fit.setting}`}><div class="head"><h2>${fit.name} in ${fit.material}, ${fit.setting || 'no setting named'}</h2>
        ${fit.accepted ? html`<span class="mark solid">rests on trials now</span>` : nothing}</div>
        <div class="fit"><div>${trialFit(camp, fit, data.fits.confidence)}</div>${fit.fit ? acceptance(camp, tables, data, fit, redraw, reload) : nothing}</div></section>`)}
      <section class="panel"><h2>Enter or paste trials</h2>${askForm({ session: data.entry, camp, tables, redraw, verb: 'Add these trials', label: 'Trials', submit: () => add(camp, data, redraw, reload) })}</section>
      ${kindPanel(camp, 'trials', {
    empty: 'No timed trials yet.', head: ['Trial', 'Technique', '~Material', '#mm thick', '#mm/min', '~Setting', '~Done'], folded: true,
    row: each => [editLink(camp, 'trials', each), nameOf(camp, 'techniques', each.technique), each.material, plain(each.thickness_mm), sig(each.length_mm / each.minutes), each.setting, day(each.done_on)],
  })}</div>`;
}

function how(camp, data, redraw) {
  const set = data.how;
  const anew = async event => {
    event?.preventDefault();
    try {
      Object.assign(data, { fits: await read(camp, set) });
      set.fault = '';
    } catch (problem) {
      set.fault = problem.errors?.map(error => error.detail).join(' ') || problem.message;
    }
    redraw();
  };
  return html`<form class="tools" novalidate aria-label="How to fit" @submit=${anew}>
    <div class="field"><label for="fit-sure">Band holds</label><div class="entry"><select id="fit-sure" class="auto" @change=${event => { set.confidence = event.target.value; anew(); }}>${SURE.map(([value, words]) => html`<option value=${value} ?selected=${set.confidence === value}>${words} trials</option>`)}</select></div></div>
    <div class="field ${set.fault ? 'bad' : ''}"><label for="fit-slope">Power of thickness, if given <span class="maybe">optional</span></label>${set.fault ? html`<p class="message" id="fit-slope-fault">${set.fault}</p>` : nothing}
      <div class="entry"><input id="fit-slope" class="short" type="text" autocomplete="off" aria-describedby=${set.fault ? 'fit-slope-fault' : nothing} .value=${set.slope} @input=${event => { set.slope = event.target.value.trim(); }}></div></div>
    <button class="button" type="submit">Fit anew</button></form>`;
}

function acceptance(camp, tables, data, fit, redraw, reload) {
  const key = `${fit.technique}/${fit.material}/${fit.setting}`;
  if (!data.accepts.has(key)) data.accepts.set(key, { open: false, session: null, stale: false });
  const state = data.accepts.get(key);
  const open = () => {
    for (const other of data.accepts.values()) other.open = false;   // one form at a time: no id stands twice
    state.open = true;
    state.session ??= new Session({ fields: accepting, value: { field_factor: data.fits.field_factor, accepted_on: today() }, etag: `"${fit.technique_version}"`, address: `${base(camp)}/trial-fits/${encodeURIComponent(fit.technique)}/accept`, method: 'POST' });
    redraw();
  };
  if (!state.open) return html`<p data-may="POST /api/campaigns/{id}/trial-fits/{code}/accept"><button class="button main" type="button" @click=${open}>Accept this fit …<span class="spoken"> of ${fit.name}, ${fit.setting}</span></button></p>`;
  return html`<div class="accept"><h3>Accept this fit into ${fit.name}</h3><p class="small">The technique then works at these speeds, in ${fit.material} only, between the thicknesses that were tried.</p>
    ${originLine(data.fits.field_factor_origin)}
    ${state.stale ? html`<p class="message" role="alert">The technique was changed meanwhile and is read anew. Look at the fit again, then accept it.</p>` : nothing}
    ${askForm({ session: state.session, camp, tables, redraw, verb: 'Accept it', label: `Accept the fit of ${fit.name}`, submit: () => accept(camp, data, fit, state, redraw, reload) })}</div>`;
}

async function accept(camp, data, fit, state, redraw, reload) {
  const { session } = state;
  session.etag = `"${fit.technique_version}"`;
  const done = await session.sendAs(({ beside, ...value }) => ({
    ...value, ...beside, material: fit.material, setting: fit.setting, confidence: data.fits.confidence, ...(data.fits.slope === undefined ? {} : { slope: data.fits.slope }),
  }), '');
  if (done) {
    forget(camp.id);
    say(`${fit.name} rests on the trials now.`);
    await reload();
    return;
  }
  const now = await read(camp, data.how).catch(() => data.fits);
  const same = now.fits.find(each => each.technique === fit.technique && each.material === fit.material && each.setting === fit.setting);
  state.stale = same !== undefined && same.technique_version !== fit.technique_version;
  data.fits = now;
  redraw();
  announce();
}

/** One after the other; what was taken leaves the box, what was refused stays in it with the reason. */
async function add(camp, data, redraw, reload) {
  const { entry } = data;
  const rows = pasted(entry.draft.lines.text);
  const faults = rows.length === 0 ? [{ field: 'lines', detail: 'hold no trial. Paste at least one line.' }] : rows.filter(row => row.fault).slice(0, 1).map(row => ({ field: 'lines', detail: row.fault }));
  const text = name => entry.draft[name].text.trim();
  for (const name of ['technique', 'material', 'done_on']) if (text(name) === '') faults.push({ field: name, detail: 'is missing. Give it a value.' });
  const taken = new Map(camp.byCode.trials);
  const rest = [...rows];
  while (faults.length === 0 && rest.length > 0) {
    const code = free('trial', taken);
    const value = { code, technique: text('technique'), material: text('material'), ...rest[0].value, setting: rest[0].value.setting || text('setting'), done_on: text('done_on'), note: '' };
    try {
      await ask('POST', entry.address, { body: value });
      taken.set(code, value);
      rest.shift();
    } catch (problem) {
      const errors = problem.errors?.length > 0 ? problem.errors : [{ field: '', detail: problem.message }];
      faults.push(...errors.map(error => (['technique', 'material', 'done_on', 'setting'].includes(error.field) ? error : { field: 'lines', detail: `line ${rest[0].line}: ${error.field.replace(/_/g, ' ')} ${error.detail}` })));
    }
  }
  const added = rows.length - rest.length;
  if (added > 0) {
    forget(camp.id);
    say(`${plural(added, 'trial')} added.`);
  }
  if (faults.length === 0) {
    await reload();
    return;
  }
  if (added > 0) entry.draft.lines.text = rest.map(row => row.text).join('\n');
  entry.refuse(faults);
  if (added > 0) entry.general.push(`${plural(added, 'trial')} added; the lines left in the box were not.`);
  redraw();
  announce();
}
