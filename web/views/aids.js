// Decision aids: the same options by every method, with the working, and where the value of dose changes the answer.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { link } from '../lib/route.js';
import { fixed } from '../lib/units.js';
import { statusWord } from '../lib/words.js';
import { firstWeighing, optionsOfRun, weighing } from '../forms/weighing.js';
import { draftOf } from '../forms/draft.js';
import { announce, askForm } from '../forms/page.js';
import { Session } from '../forms/session.js';
import { waitingPanel, waitingSession } from '../elements/waiting.js';
import { weighed } from '../elements/weighed.js';

export const title = ({ camp }) => `Decision aids, ${camp.doc.settings.name}`;

export async function load({ camp }) {
  const session = new Session({ fields: weighing, value: firstWeighing(camp.doc.prices[0]?.currency ?? 'EUR'), etag: null, address: '/api/decision-aids', method: 'POST' });
  return { session, answer: null, run: await latest(camp), waiting: waitingSession(camp) };
}

/** The last finished run, if runs are there and one is finished. */
async function latest(camp) {
  try {
    return (await get(`/api/campaigns/${encodeURIComponent(camp.id)}/runs/latest`)).body;
  } catch {
    return null;
  }
}

export function body({ camp, tables, data, redraw }) {
  const fromRun = optionsOfRun(data.run);
  return html`<div class="lead"><div><p class="crumb"><a href=${link(camp.id, 'options')}>Options</a></p><h1>Decision aids</h1>
      <p class="under">Cost-effectiveness, cost–benefit in three forms, utility and outranking, side by side. They show what follows from the figures given; none decides, and nothing is stored.</p></div></div>
    <div class="stack">
      <section class="panel stack"><h2>Options and what they are worth</h2>
        ${fromRun.length > 1 ? html`<p><button class="button" type="button" @click=${() => fill(data, fromRun, redraw)}>Fill in the ${fromRun.length} options of the latest run</button> <span class="small muted">Means of collective dose, of the highest person's dose and of cost.</span></p>` : nothing}
        ${askForm({ session: data.session, camp, tables, redraw, verb: 'Weigh them', label: 'Options', submit: () => weigh(data, redraw) })}</section>
      ${data.answer ? weighed(data.answer) : nothing}
      ${camp.missing ? nothing : waitingPanel({ camp, tables, room: data.waiting, redraw })}
      ${published(tables, data, redraw)}
    </div>`;
}

function fill(data, options, redraw) {
  data.session.draft.options = draftOf(weighing, { ...firstWeighing('EUR'), options }).options;
  redraw();
}

async function weigh(data, redraw) {
  const answer = await data.session.send();
  if (answer) {
    data.session.refuse([]);
    data.answer = answer.body;
  }
  redraw();
  if (!answer) announce();
  else document.getElementById('result')?.focus();
}

function published(tables, data, redraw) {
  const rows = tables.alpha_values ?? [];
  const band = row => (row.above_usv === undefined && row.up_to_usv === undefined ? 'any' : `${row.above_usv === undefined ? '' : `above ${Number(row.above_usv) / 1000}`} ${row.up_to_usv === undefined ? '' : `to ${Number(row.up_to_usv) / 1000}`} mSv`);
  const use = row => {
    const alpha = data.session.draft.alpha.in;
    alpha.kind.text = 'value';
    alpha.per_person_sv = { ...alpha.per_person_sv, text: row.per_person_sv };
    data.session.draft.currency.text = row.currency;
    redraw();
  };
  return html`<section class="panel stack"><h2>Values of the person-sievert in print</h2>
    <p class="small muted">As printed, each of its own year and in its own money: they are not brought to one price year here. Using one takes over its currency.</p>
    <div class="table" tabindex="0" role="region" aria-label="Published values"><table><thead><tr><th scope="col">Who</th><th scope="col">Price year</th><th scope="col">Individual dose</th><th scope="col" class="n">Per person-Sv</th><th scope="col">Known</th><th scope="col"><span class="spoken">Use</span></th></tr></thead>
      <tbody>${rows.map(row => html`<tr><th scope="row">${row.who}<span class="sub">${row.source}, ${row.place}${row.note ? `; ${row.note}` : ''}</span></th><td>${row.price_year}</td><td>${band(row)}</td>
        <td class="n">${fixed(Number(row.per_person_sv), 0)} ${row.currency}</td><td>${row.status === 'seen-secondary' ? 'read in a text that quotes it' : statusWord(row.status)}</td>
        <td>${band(row) === 'any' ? html`<button class="button little" type="button" @click=${() => use(row)}>Use<span class="spoken"> the value of ${row.who}</span></button>` : nothing}</td></tr>`)}</tbody></table></div></section>`;
}
