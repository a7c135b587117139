// Waiting for decay: dose by year of start, and where a further year no longer pays.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { number, whole } from '../forms/field.js';
import { announce, askForm } from '../forms/page.js';
import { read } from '../forms/read.js';
import { Session } from '../forms/session.js';
import { figureFrame } from './figure-frame.js';
import { day, fixed, msv } from '../lib/units.js';
import './line-picture.js';

/** Another name than the server's: the form above it on the page has an alpha of its own. */
const WORTH = 'waiting_alpha';
const fields = [whole('years', 'Longest wait', { hint: 'Years, 1 to 40.' }), number('cost_per_year', 'Cost of a year of waiting', ''), number(WORTH, 'Value of a person-sievert', '')];

export const waitingSession = camp => ({ session: new Session({ fields, value: { years: 10 }, etag: null, address: `/api/campaigns/${encodeURIComponent(camp.id)}/waiting`, method: 'GET' }), answer: null });

export function waitingPanel({ camp, tables, room, redraw }) {
  return html`<section class="panel stack" id="waiting"><h2>${room.answer ? room.answer.sentence : 'Does waiting for decay pay?'}</h2>
    ${askForm({ session: room.session, camp, tables, redraw, verb: 'Forecast later starts', label: 'Waiting', submit: () => work(room, redraw) })}${room.answer ? picture(room.answer) : nothing}</section>`;
}

async function work(room, redraw) {
  const { session } = room;
  const { value, faults } = read(session.fields, session.draft);
  session.refuse(faults);
  if (faults.length === 0) {
    session.busy = true;
    redraw();
    try {
      room.answer = (await get(`${session.address}?${new URLSearchParams({ years: value.years, cost_per_year: value.cost_per_year, alpha: value[WORTH] })}`)).body;
    } catch (problem) {
      session.refuse(problem.errors?.length ? problem.errors.map(error => (error.field === 'alpha' ? { ...error, field: WORTH } : error)) : [{ field: '', detail: problem.message }]);
    }
    session.busy = false;
  }
  redraw();
  if (session.failed) announce();
}

function picture(answer) {
  const { years, best_years: best } = answer;
  const data = {
    title: answer.sentence, desc: `Collective dose for ${years.length} starts, one a year.`, x: { words: 'years of waiting' }, y: { words: 'person-mSv', from: 0 },
    lines: [{ points: years.map(each => ({ x: each.years, y: each.person_usv / 1000 })) }], dots: years.map(each => ({ x: each.years, y: each.person_usv / 1000, hollow: each.years > best })),
    spots: [{ x: best, y: years[best].person_usv / 1000, words: best === 0 ? 'no wait' : `${best} a` }],
  };
  return html`${figureFrame({
    level: 3, title: 'Collective dose by year of start: filled as long as a wait lowers the sum, hollow where it no longer pays', picture: html`<line-picture .data=${data}></line-picture>`,
    caption: 'Each year of waiting', head: ['Start', 'years', 'person-mSv', 'saved by this year', 'worth', 'pays', 'sum'],
    rows: years.map(each => [day(each.start), each.years, msv(each.person_usv, 4), each.years === 0 ? '' : msv(each.saved_person_usv), each.years === 0 ? '' : fixed(each.worth, 0), each.years === 0 ? '' : each.pays ? 'yes' : 'no', fixed(each.total, 0)]),
  })}<ul class="small muted">${answer.notes.map(note => html`<li>${note}</li>`)}</ul>`;
}
