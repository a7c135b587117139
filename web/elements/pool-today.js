// The pool on one day as the calculation sees it: sketch, ranked list of what gives how much where, and the day it is for.
import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from './figure-frame.js';
import { heatKey } from './heat-key.js';
import { extrapolatedMark, notes } from './notes.js';
import { fromWord, stateWord } from '../lib/exposure.js';
import { nameOf, plural } from '../lib/words.js';
import { activity, day, doseRate, levelUp, metres, percent, sig } from '../lib/units.js';
import './exposure-sketch.js';

/** @param overview of the server; {@code ask} fetches another day */
export function poolToday(camp, { overview, problem, ask }) {
  if (!overview) return problem ? html`<p class="message">${problem}</p>` : nothing;
  const title = finding(camp, overview);
  const standing = byHeight(overview.sources);
  const sources = standing.map((each, i) => ({ number: i + 1, name: `${each.name}${each.state === 'in-place' || each.state === 'standing' ? '' : `, ${stateWord(each.state)}`}`, rightM: each.right_m, upM: each.up_m, wideM: each.size_right_m, highM: each.size_up_m,
    hollow: each.form === 'ring', state: each.state, whole: each.size_right_m > overview.pool.length_m * 0.9 && each.size_up_m > overview.pool.depth_m * 0.9 }));
  const spots = spotsOf(camp, overview);
  const data = {
    id: 'pool-sketch', title, sources, pool: poolOf(overview.pool), shields: overview.shields.map(shield => shieldOf(shield, overview.pool)),
    spots,
    desc: `Section on ${day(overview.on)}, upright and sideways not to the same scale: ${spots.map(each => `${each.name} ${doseRate(each.usvPerH)} ${each.from}`).join(', ')}. ${plural(sources.length, 'source')} in the pool, the list names them.`,
  };
  return html`${figureFrame({
    title, picture: html`<exposure-sketch .data=${data}></exposure-sketch><p class="small muted sketch-names" aria-hidden="true">${sources.map(each => `${each.number} ${each.name}`).join(' · ')}</p>${heatKey()}`, caption: `What stands, ${day(overview.on)}`,
    head: ['No. and source', 'State', 'Top under normal water', 'Right, m', 'Activity'],
    rows: standing.map((each, i) => [`${i + 1} ${each.name}`, stateWord(each.state), metres(-1000 * (each.up_m + each.size_up_m / 2)), sig(each.right_m, 3), activity(each.becquerel)]),
  })}
    <div class="field day-of"><label for="pool-day">Shown as on</label>${problem ? html`<p class="message" id="pool-day-fault">${problem}</p>` : nothing}
      <div class="entry"><input type="date" id="pool-day" class="short" aria-describedby=${problem ? 'pool-day-fault' : nothing} .value=${overview.on} @change=${event => ask(event.target.value)}></div></div>
    ${overview.not_calculable.length > 0 ? html`<p class="small muted">Not calculated: ${overview.not_calculable.map(code => nameOf(camp, 'areas', code)).join(', ')}. They have no place, or one below the deck outside the pool.</p>` : nothing}
    ${notes(overview.notes)}`;
}

/** Rates by area with the three sources that give most, hottest first. */
export function calculatedRates(camp, overview) {
  const areas = [...overview.areas].sort((a, b) => shown(b) - shown(a));
  return html`<div class="table" tabindex="0" role="region" aria-label="Calculated rates"><table><caption>Calculated for ${day(overview.on)}; most of it from</caption><thead><tr><th scope="col">Area</th><th scope="col" class="n">calculated</th><th scope="col" class="n">calibrated</th><th scope="col" class="mid-only">the greatest parts</th></tr></thead>
    <tbody>${areas.map(each => html`<tr><th scope="row">${each.name}<span class="sub">plan uses: ${fromWord(each.rate_from)}</span></th><td class="n">${doseRate(each.calculated_usv_per_h)}</td>
      <td class="n">${each.calibrated_usv_per_h === undefined ? 'none' : doseRate(each.calibrated_usv_per_h)} ${each.extrapolated ? extrapolatedMark() : nothing}</td><td class="mid-only">${greatest(camp, each)}</td></tr>`)}</tbody></table></div>`;
}

const shown = each => (each.rate_from === 'calculated' ? each.calculated_usv_per_h : each.calibrated_usv_per_h ?? each.calculated_usv_per_h);

function greatest(camp, each) {
  const parts = each.calibrated.length > 0 && each.rate_from !== 'calculated' ? each.calibrated : each.calculated;
  const whole = shown(each);
  return [...parts].sort((a, b) => b.usv_per_h - a.usv_per_h).slice(0, 3)
    .filter(part => part.usv_per_h >= whole / 100).map(part => `${camp.byCode.sources.get(part.source)?.name ?? nameOf(camp, 'components', part.source)}${part.state === 'in-place' || part.state === 'standing' ? '' : `, ${stateWord(part.state)},`} ${percent(Number((part.usv_per_h / whole).toPrecision(2)))}`).join('; ');
}

/** From the top down; one component in two states stands twice. */
const byHeight = sources => [...sources].sort((a, b) => b.up_m + b.size_up_m / 2 - a.up_m - a.size_up_m / 2);

/** Every area with a place: as the plan takes its rate. What is measured is what the forecast has on the last day before, else on the first. */
function spotsOf(camp, overview) {
  const worked = new Map(overview.areas.filter(each => each.rate_from === 'calculated' || each.rate_from === 'calibrated').map(each => [each.area, shown(each)]));
  const planned = code => {
    const history = camp.forecast?.areas.find(each => each.area === code)?.history ?? [];
    return (history.filter(each => each.on <= overview.on).at(-1) ?? history[0])?.usv_per_h;
  };
  return camp.doc.areas.filter(area => area.sketch)
    .map(area => ({ name: area.name, rightM: area.sketch.right_m, upM: area.sketch.up_m, usvPerH: worked.get(area.code) ?? planned(area.code), from: fromWord(area.rate_from) })).filter(spot => spot.usvPerH !== undefined);
}

function finding(camp, { areas: all, on }) {
  const areas = all.filter(each => each.rate_from === 'calculated' || each.rate_from === 'calibrated');
  const over = areas.filter(each => each.ceiling_usv_per_h && shown(each) > each.ceiling_usv_per_h);
  if (over.length > 0) return `${over.map(each => each.name).join(', ')} above the ceiling on ${day(on)}`;
  const top = areas.reduce((one, other) => (!one || shown(other) > shown(one) ? other : one), null);
  return top ? `Hottest by calculation on ${day(on)}: ${top.name}, ${doseRate(shown(top))}` : `What stands in the pool on ${day(on)}`;
}

function poolOf(pool) {
  return {
    lengthM: pool.length_m, depthM: pool.depth_m, deckM: pool.deck_mm / 1000, waterLevelM: pool.water_level_mm / 1000, levelWords: pool.water_level_mm === 0 ? 'water at its normal level' : `water ${levelUp(pool.water_level_mm)}`,
    basket: pool.basket && { rightM: pool.basket.right_m, topM: pool.basket.top_depth_mm / 1000 }, hook: pool.hook && { rightM: pool.hook.right_m },
  };
}

const shieldOf = (shield, pool) => ({ leftM: shield.right?.from_m ?? -100, rightM: shield.right?.to_m ?? 100, topM: shield.up?.to_m ?? 3, lowM: shield.up?.from_m ?? -pool.depth_m });
