// One source behind layers, without a campaign: asked and answered, nothing kept.
import { html } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { ifExtrapolated, notes } from '../elements/notes.js';
import { day, group, materials, number, pick, rows } from '../forms/field.js';
import { shape } from '../forms/shape.js';
import { activities, posture, span } from '../forms/stand.js';
import { activity, day as dayWords, digits, doseRate, percent, rate, sig } from '../lib/units.js';

/** Any axes will do here, as long as source, layers and point share them. */
const point = (name, label) => group(name, label, [number('right_m', 'Right', 'm', { signed: true }), number('up_m', 'Up', 'm', { signed: true }), number('across_m', 'Across', 'm', { signed: true, maybe: true, hint: 'Blank: 0.' })]);
const shaped = { when: source => source.shape.on };

export const oneRate = {
  key: 'one', title: 'Source, layers, point, day',
  fields: [
    group('source', 'Source', [
      shape({ maybe: true, start: false, hint: 'Not given: a point.' }), { ...posture, ...shaped }, pick('material', 'Material of the source', materials, { maybe: true, ...shaped }),
      number('density_kg_per_m3', 'Density', 'kg/m³', { maybe: true, ...shaped }), day('reference_on', 'Activities hold on'), point('middle', 'Its middle'), activities(),
    ]),
    rows('layers', 'Layers', 'layer', [pick('material', 'Material', materials), span('right', 'Right', { maybe: true, start: false }), span('across', 'Across', { maybe: true, start: false }), span('up', 'Up', { maybe: true, start: false })],
      { hint: 'Matter between planes. A direction that is not given is endless; of overlapping layers the later counts.' }),
    point('point', 'Where the dosimeter is'), day('on', 'Rate on the day', { maybe: true, hint: 'Blank: the day of the activities.' }),
  ],
  start: () => ({
    source: { shape: { kind: 'ring', outer_diameter_mm: 1200, inner_diameter_mm: 1160, height_mm: 1400 }, material: 'stainless-304', density_kg_per_m3: 8000, middle: { right_m: 0, up_m: -2.7 },
      reference_on: '2025-06-30', activities: [{ nuclide: 'Co-60', becquerel: 3e14 }] },
    layers: [{ material: 'air' }, { material: 'water', up: { from_m: -10, to_m: 0 } }], point: { right_m: 0.5, up_m: 1.3 }, on: '2027-03-01',
  }),
  says: answer => finding(answer),
  answer(answer) {
    const title = finding(answer);
    const name = line => `${line.nuclide} ${digits(line.energy_mev, 4)} MeV`;
    const some = answer.lines.filter(line => line.usv_per_h > 0).slice(0, 12);
    const data = {
      id: 'one-lines', title, desc: `${answer.lines.length} photon lines: ${some.map(line => `${name(line)} ${doseRate(line.usv_per_h)}`).join(', ')}.`,
      rows: some.map(line => ({ label: name(line), marks: [{ usvPerH: line.unscattered_usv_per_h, kind: 'ring' }, { usvPerH: line.usv_per_h, kind: 'dot' }].filter(mark => mark.usvPerH > 0) })),
    };
    return html`${figureFrame({ level: 3, title, picture: some.length > 0 ? html`<dot-rows .data=${data}></dot-rows><p class="small muted" aria-hidden="true">Ring: what arrives unscattered. Dot: with what is scattered on the way${answer.lines.length > some.length ? '. The greatest lines only; the table has all' : ''}.</p>` : html`<p>Nothing arrives.</p>`,
      caption: 'Photon lines', head: ['Line', 'µSv/h', 'unscattered, µSv/h', 'share', 'mean free paths', 'build-up of'],
      rows: answer.lines.map(line => [name(line), `${rate(line.usv_per_h)}${ifExtrapolated(line)}`, rate(line.unscattered_usv_per_h), percent(Number(line.share.toPrecision(3))), sig(line.mean_free_paths, 4), line.buildup_medium]) })}
      <dl class="facts"><div><dt>Dose rate, H*(10)</dt><dd>${doseRate(answer.usv_per_h)}</dd></div><div><dt>of it unscattered</dt><dd>${doseRate(answer.unscattered_usv_per_h)}</dd></div>
        <div><dt>and scattered</dt><dd>${doseRate(answer.usv_per_h - answer.unscattered_usv_per_h)}</dd></div><div><dt>Mean free paths</dt><dd>${sig(answer.mean_free_paths)}</dd></div>
        <div><dt>Numerical error reached</dt><dd>${sig(100 * answer.numerical_error, 2)} %</dd></div>
        ${answer.activities.map(each => html`<div><dt>${each.nuclide} on ${dayWords(answer.on)}</dt><dd>${activity(each.becquerel)}</dd></div>`)}</dl>
      ${notes(answer.notes, answer.extrapolated)}`;
  },
};

const finding = answer => `${doseRate(answer.usv_per_h)} at the point on ${dayWords(answer.on)}${answer.extrapolated ? ' (extrapolated)' : ''}`;
