// How long a cut takes, and at which abrasive feed a metre costs least. Nothing is stored.
import { html, nothing } from '../lib/vendor.js';
import { get } from '../lib/api.js';
import { duration, sig } from '../lib/units.js';
import { calculating, feeding } from '../forms/calculating.js';
import { announce, askForm } from '../forms/page.js';
import { Session } from '../forms/session.js';
import { cuttingAnswer } from '../elements/cutting-answer.js';
import { figureFrame } from '../elements/figure-frame.js';
import { subnav } from '../elements/subnav.js';
import '../elements/line-picture.js';

export const title = ({ camp }) => `Cutting time, ${camp.doc.settings.name}`;

export async function load() {
  const handbook = (await get('/api/tables/techniques')).body;
  const session = new Session({ fields: calculating(handbook, 'bar'), value: { technique_code: handbook.techniques[0].technique.code, material: handbook.materials[0].code }, etag: null, address: '/api/cutting-time', method: 'POST' });
  const feed = new Session({ fields: feeding, value: { from_kg_per_min: 0.1, to_kg_per_min: 0.8 }, etag: null, address: '/api/feed-optimum', method: 'POST' });
  return { handbook, session, feed, unit: 'bar', answer: null, asked: null, best: null };
}

export function body({ camp, tables, data, redraw }) {
  const { session, unit } = data;
  const isJet = data.handbook.techniques.find(({ technique }) => technique.code === session.draft.technique_code.text)?.technique.speed?.jet !== undefined;
  return html`<div class="lead"><div><h1>How long a cut takes</h1><p class="under">By the handbook of techniques. Nothing is stored; a campaign's own techniques and trials are used in its forecast.</p></div></div>
    ${subnav(camp, 'cuts', 'calculator')}
    <div class="stack">
      <section class="panel"><div class="head"><h2>The cut</h2>${isJet ? html`<fieldset class="choice"><legend class="spoken">Pressure in</legend>${['bar', 'MPa'].map(each => html`<label><input type="radio" name="pressure-unit" value=${each} .checked=${unit === each} @change=${() => turn(data, each, redraw)}>${each}</label>`)}</fieldset>` : nothing}</div>
        ${askForm({ session, camp, tables, redraw, verb: 'Work it out', label: 'The cut', submit: () => work(data, redraw) })}</section>
      ${data.answer ? html`<section class="panel stack" id="result" tabindex="-1">${cuttingAnswer(data.answer)}</section>` : nothing}
      ${data.answer?.applicable && data.asked?.jet ? html`<section class="panel stack"><h2>Which abrasive feed costs least</h2>
        ${askForm({ session: data.feed, camp, tables, redraw, verb: 'Find the cheapest feed', label: 'Prices', submit: () => cheapest(data, redraw) })}${data.best ? curve(data.best) : nothing}</section>` : nothing}
    </div>`;
}

/** The other unit: what was typed moves its decimal point along. */
function turn(data, unit, redraw) {
  const [from, to, factor] = unit === 'MPa' ? ['pressure_bar', 'pressure_mpa', 0.1] : ['pressure_mpa', 'pressure_bar', 10];
  const inside = data.session.draft.parameters.in;
  const typedIn = inside[from]?.text.trim() ?? '';
  const value = Number(typedIn.replace(',', '.'));
  inside[to] = { text: typedIn !== '' && Number.isFinite(value) ? String(Number((value * factor).toPrecision(12))) : typedIn, was: '', value: undefined };
  data.unit = unit;
  data.session.fields = calculating(data.handbook, unit);
  redraw();
}

async function work(data, redraw) {
  const { session } = data;
  let asked;
  const answer = await session.sendAs(value => { asked = value; return value; }, '');
  if (answer) {
    session.refuse([]);
    const found = data.handbook.techniques.find(({ technique }) => technique.code === asked.technique_code);
    Object.assign(data, { answer: answer.body, asked: { ...asked, jet: found?.technique.speed?.jet !== undefined }, best: null });
  }
  redraw();
  if (!answer) announce();
  else document.getElementById('result')?.focus();
}

async function cheapest(data, redraw) {
  const { technique_code: code, material, thickness_mm: thickness, medium, parameters } = data.asked;
  const answer = await data.feed.sendAs(value => ({ ...value, technique_code: code, material, thickness_mm: thickness, ...(medium ? { medium } : {}), ...(parameters ? { parameters } : {}) }), '');
  if (answer) {
    data.feed.refuse([]);
    data.best = answer.body;
  }
  redraw();
  if (!answer) announce();
}

function curve({ best, best_cost_per_m: cost, at_edge: edge, extrapolated, curve: points }) {
  const title = `A metre costs least at ${sig(best.kg_per_min)} kg/min: ${sig(cost)}`;
  const data = {
    title, desc: `Cost of a metre against abrasive feed, ${points.length} feeds.`, x: { words: 'abrasive, kg/min' }, y: { words: 'cost of a metre' },
    lines: [{ points: points.map(each => ({ x: each.point.kg_per_min, y: each.cost_per_m })) }], spots: [{ x: best.kg_per_min, y: cost, words: `${sig(best.kg_per_min)} kg/min` }],
  };
  return html`${figureFrame({
    level: 3, title, picture: html`<line-picture .data=${data}></line-picture>`, caption: 'Cost by abrasive feed', head: ['kg/min', 'mm/min', 'for a metre', 'kg/m', 'cost of time', 'of dose', 'of abrasive', 'of waste', 'together'],
    rows: points.map(({ point, cost_per_m: sum }) => [sig(point.kg_per_min), sig(point.mm_per_min), duration(point.hours_per_m), sig(point.kg_per_m), ...['time', 'dose', 'abrasive', 'waste'].map(name => sig(point[`${name}_cost_per_m`])), sig(sum)]),
  })}
    ${edge ? html`<p class="small"><span class="mark decide">at the edge of the search</span> A feed outside these bounds may cost less.</p>` : nothing}${extrapolated ? html`<p class="small"><span class="mark decide">beyond the data</span> of the speed equation.</p>` : nothing}`;
}
