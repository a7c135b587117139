import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { notes } from '../elements/notes.js';
import { numberTicks } from '../elements/rate-curve.js';
import { day, materials, number, pick } from '../forms/field.js';
import { span } from '../forms/stand.js';
import { link, withQuery } from '../lib/route.js';
import { nameOf } from '../lib/words.js';
import { day as dayWords, digits, doseRate, plain, sig } from '../lib/units.js';
import { area, firstArea } from './fields.js';

export const shield = {
  key: 'shield', path: 'shield', words: 'Temporary shield', title: 'How thick must a temporary shield be?',
  hint: 'One face stands fixed; the shield grows from it until the wish is met.',
  fields: [
    area, day('on', 'On the day', { maybe: true, hint: 'Blank: first day of the campaign.' }), pick('material', 'Material', materials),
    pick('normal', 'The shield stands square to', [['right', 'left and right: an upright wall'], ['across', 'across the pool: an upright wall'], ['up', 'up and down: a floor']]),
    number('at_m', 'Its fixed face is at', 'm', { signed: true, hint: 'Right of the left wall, across from the middle, or above the normal water.' }),
    pick('grows', 'It grows', [['plus', 'to the right, across, or up'], ['minus', 'the other way']]),
    number('wanted_usv_per_h', 'Wanted rate', 'µSv/h', { maybe: true, hint: 'Background included. This or the part below, one of the two.' }),
    number('wanted_factor', 'Or what may be left of the sources’ part', '%', { power: -2, maybe: true }),
    span('right', 'It reaches sideways', { maybe: true, start: false, hint: 'Not given: endless. Not along its own thickness.' }),
    span('across', 'It reaches across', { maybe: true, start: false }), span('up', 'It reaches up', { maybe: true, start: false }),
  ],
  start: (camp, { area: given }) => ({ area: given ?? firstArea(camp), material: 'lead', normal: 'up', at_m: 0.5, grows: 'plus', wanted_factor: 0.5 }),
  says: (answer, camp) => finding(answer, camp),
  answer(answer, camp) {
    const title = finding(answer, camp);
    const points = answer.thicknesses.map(each => ({ x: each.thickness_mm, usvPerH: each.usv_per_h, words: `${digits(each.thickness_mm, 4)} mm: ${doseRate(each.usv_per_h)}` }));
    const data = {
      id: 'shield-curve', points, title, xTicks: numberTicks(x => `${sig(x, 2)} mm`), xLabel: `Thickness of ${answer.material}`, read: 0,
      ceiling: answer.wanted_usv_per_h, ceilingWords: `wanted ${sig(answer.wanted_usv_per_h)} µSv/h`,
      marks: answer.outcome === 'found' ? [{ x: answer.thickness_mm, usvPerH: answer.usv_per_h, words: `${plain(answer.thickness_mm)} mm` }] : [],
      desc: `Dose rate of ${nameOf(camp, 'areas', answer.area)} behind ${answer.material}: ${points[0].words} to ${points.at(-1).words}.`,
    };
    return html`${figureFrame({ level: 3, title, picture: html`<rate-curve .data=${data}></rate-curve>`, caption: `Dose rate by thickness of ${answer.material}, ${dayWords(answer.on)}`, head: ['Thickness, mm', 'Dose rate'],
      rows: answer.thicknesses.map(each => [digits(each.thickness_mm, 4), doseRate(each.usv_per_h)]) })}
      <p class="small">Without it ${doseRate(answer.without_usv_per_h)}${answer.usv_per_h === undefined ? '' : `, with it ${doseRate(answer.usv_per_h)}`}; wanted ${doseRate(answer.wanted_usv_per_h)}, of which ${plain(answer.background_usv_per_h)} µSv/h is background. Tried up to ${digits(answer.thickest_mm, 4)} mm.</p>
      ${onStep(answer) ? html`<p class="hold"><b>Take it thicker than ${plain(answer.thickness_mm)} mm:</b> the calculated rate does not fall evenly there but drops at once, from above the wish to ${doseRate(answer.usv_per_h)}; the last note says why.</p>` : nothing}
      ${answer.outcome === 'found' ? html`<p><a class="button little" href=${withQuery(link(camp.id, 'add', 'shields'), { name: `${answer.material} shield`, material: answer.material })}>Add a shield to the plan</a></p>` : nothing}
      ${notes(answer.notes)}`;
  },
};

/** The least thickness meets the wish closely, unless the rate jumps over it. */
const onStep = answer => answer.outcome === 'found' && answer.usv_per_h < 0.97 * answer.wanted_usv_per_h;

function finding(answer, camp) {
  const area = nameOf(camp, 'areas', answer.area);
  switch (answer.outcome) {
    case 'found': return `${plain(answer.thickness_mm)} mm of ${answer.material} bring ${area} from ${doseRate(answer.without_usv_per_h)} to ${doseRate(answer.usv_per_h)}`;
    case 'not-needed': return `${area} has the wanted rate already: ${doseRate(answer.without_usv_per_h)}`;
    default: return `Even ${digits(answer.thickest_mm, 4)} mm of ${answer.material} do not bring ${area} down to ${doseRate(answer.wanted_usv_per_h)}`;
  }
}
