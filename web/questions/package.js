import { html } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { originMark } from '../elements/marks.js';
import { ifExtrapolated, notes } from '../elements/notes.js';
import { day, group, materials, number, pick, rows } from '../forms/field.js';
import { nameOf } from '../lib/words.js';
import { day as dayWords, digits, doseRate, percent, plain, sig } from '../lib/units.js';
import { component, withInventory } from './fields.js';

const FACE = { side: 'Side', 'long-side': 'Long side', 'short-side': 'Short side', top: 'Top' };

export const loadedPackage = {
  key: 'package', path: 'package', words: 'Loaded package', title: 'Does a loaded package keep the transport limits?',
  fields: [
    component, number('share', 'Part of the component in it', '%', { power: -2, maybe: true, hint: 'Blank: an even part for each of its packages.' }), day('on', 'On the day', { maybe: true, hint: 'Blank: the day it is packed.' }),
    group('inside', 'Inside of the package', [number('diameter_mm', 'Diameter', 'mm', { maybe: true, hint: 'Of a drum; or length and width of a box.' }), number('length_mm', 'Length', 'mm', { maybe: true }),
      number('width_mm', 'Width', 'mm', { maybe: true }), number('height_mm', 'Height', 'mm')]),
    rows('walls', 'Walls, from the inside out', 'wall', [pick('material', 'Material', materials), number('thickness_mm', 'Thickness', 'mm')], { line: true, start: 1 }),
  ],
  start: (camp, { component: given }) => ({ component: given ?? withInventory(camp)[0]?.code, ...typeOf(camp) }),
  says: (answer, camp) => finding(answer, camp),
  answer(answer, camp) {
    const title = finding(answer, camp);
    const distances = [...new Set(answer.points.map(point => point.distance_mm))].sort((a, b) => a - b);
    const label = (mm, i) => (i === 0 ? 'Surface' : `${digits(mm / 1000, 4)} m from it`);
    const bounds = limitsAt(answer);
    const data = {
      id: 'package-rows', title, desc: `Package with ${percent(answer.share)} of ${nameOf(camp, 'components', answer.component)} on ${dayWords(answer.on)}: ${distances.map((mm, i) => `${label(mm, i)} ${at(answer, mm).map(point => `${FACE[point.face]} ${doseRate(point.usv_per_h)}`).join(', ')}`).join('; ')}.`,
      rows: distances.map((mm, i) => ({ label: label(mm, i), marks: at(answer, mm).map(point => ({ usvPerH: point.usv_per_h, kind: point.face === 'top' ? 'ring' : 'dot' })), bounds: bounds[i] })),
    };
    return html`${figureFrame({ level: 3, title, picture: html`<dot-rows .data=${data}></dot-rows><p class="small muted" aria-hidden="true">Dot: side. Ring: top. Double line: limits in mSv/h.</p>`, caption: `Dose rates of the loaded package, ${dayWords(answer.on)}`, head: ['Face', 'Distance', 'Dose rate'],
      rows: answer.points.map(point => [FACE[point.face], point.distance_mm < 100 ? `${plain(point.distance_mm)} mm` : `${digits(point.distance_mm / 1000, 4)} m`, `${doseRate(point.usv_per_h)}${ifExtrapolated(point)}`]) })}
      <dl class="facts"><div><dt>Contents</dt><dd>${sig(answer.mass_kg)} kg, ${percent(Number(answer.filling.toPrecision(3)))} of the inside</dd></div><div><dt>Part of the component</dt><dd>${percent(Number(answer.share.toPrecision(4)))}</dd></div>
        <div><dt>Transport index</dt><dd>${plain(answer.transport_index)}</dd></div><div><dt>Label</dt><dd>${answer.label === 'not-to-be-sent' ? 'not to be sent' : answer.label}</dd></div></dl>
      <div class="table" tabindex="0" role="region" aria-label="Transport limits"><table><thead><tr><th scope="col">Limit</th><th scope="col" class="n">calculated</th><th scope="col" class="n">at most</th><th scope="col">kept</th><th scope="col" class="mid-only">for</th></tr></thead>
        <tbody>${answer.verdicts.map(each => html`<tr><th scope="row">${each.what}</th><td class="n">${each.value === undefined ? 'not calculated' : digits(each.value, 3)}</td><td class="n">${plain(each.largest)}${each.unit === '1' ? '' : ` ${each.unit}`}</td>
          <td>${each.kept === undefined ? 'cannot be told here' : each.kept ? 'yes' : html`<span class="mark decide">no</span>`}</td><td class="mid-only">${each.condition}<span class="sub">${originMark(each.origin)} ${each.origin.text}</span></td></tr>`)}</tbody></table></div>
      ${notes(answer.notes, answer.extrapolated)}`;
  },
};

/** The first package type of the plan that has a wall, else a shielded drum to be changed. */
function typeOf(camp) {
  const type = (camp.doc.packages ?? []).find(each => each.wall_mm > 0);
  if (!type) return { inside: { diameter_mm: 1000, height_mm: 1200 }, walls: [{ material: 'lead', thickness_mm: 150 }, { material: 'carbon-steel', thickness_mm: 30 }] };
  return { inside: { length_mm: type.inner_length_mm, width_mm: type.inner_width_mm, height_mm: type.inner_height_mm }, walls: [{ material: type.wall_material, thickness_mm: type.wall_mm }] };
}

const at = (answer, mm) => answer.points.filter(point => point.distance_mm === mm);

/** Limits of the surface and of 2 m as marks in their rows. */
function limitsAt(answer) {
  const of = pattern => answer.verdicts.filter(each => each.unit === 'mSv/h' && each.value !== undefined && pattern.test(each.what)).map(each => each.largest * 1000);
  return [of(/surface/i), [], of(/2 m/i)];
}

function finding(answer, camp) {
  const what = `The package with ${nameOf(camp, 'components', answer.component)}`;
  const rates = `${doseRate(answer.surface_usv_per_h)} at the surface, ${doseRate(answer.one_metre_usv_per_h)} at 1 m, ${doseRate(answer.two_metres_usv_per_h)} at 2 m`;
  if (answer.non_exclusive) return `${what} keeps the limits of non-exclusive use: ${rates}`;
  if (answer.exclusive) return `${what} needs exclusive use: ${rates}`;
  return `${what} keeps neither set of limits: ${rates}`;
}
