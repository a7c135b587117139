import { html } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { sourceName } from '../elements/calibration.js';
import { ifExtrapolated, notes } from '../elements/notes.js';
import { day } from '../forms/field.js';
import { stateWord } from '../lib/exposure.js';
import { nameOf } from '../lib/words.js';
import { day as dayWords, digits, doseRate, plain, sig } from '../lib/units.js';

export const photonLines = {
  key: 'photon-lines', path: ({ area }) => `areas/${encodeURIComponent(area)}`, method: 'GET', words: 'Photon lines', title: 'Which photon lines of which source make the rate?',
  fields: [day('on', 'On the day', { maybe: true, hint: 'Blank: first day of the campaign.' })],
  start: () => ({}),
  says: (answer, camp) => finding(answer, camp),
  answer(answer, camp) {
    const title = finding(answer, camp);
    const parts = sorted(answer).filter(each => each.part.usv_per_h > 0);
    const name = part => `${sourceName(camp, part.source)}, ${stateWord(part.state)}`;
    const strong = parts.filter(each => each.part.usv_per_h >= answer.usv_per_h / 10000);
    const data = {
      id: 'photon-rows', title, desc: `${parts.length} sources on ${dayWords(answer.on)}: ${strong.map(each => `${name(each.part)} ${doseRate(each.part.usv_per_h)}`).join(', ')}.`,
      rows: strong.map(each => ({ label: name(each.part), marks: [{ usvPerH: each.part.usv_per_h, kind: 'dot' }] })),
    };
    return html`${figureFrame({ level: 3, title, picture: html`<dot-rows .data=${data}></dot-rows>${strong.length < parts.length ? html`<p class="small muted">Sources below a ten-thousandth of the rate are in the table only.</p>` : ''}`,
      caption: `Photon lines on ${dayWords(answer.on)}, before the factor of their source`, head: ['Source', 'Line', 'Dose rate', 'unscattered', 'mean free paths', 'build-up of', '× factor'],
      rows: parts.flatMap(each => each.lines.map(line => [name(each.part), `${line.nuclide} ${digits(line.energy_mev, 4)} MeV`, `${doseRate(line.usv_per_h)}${ifExtrapolated(line)}`, doseRate(line.unscattered_usv_per_h),
        sig(line.mean_free_paths, 4), line.buildup_medium, digits(each.part.factor, 5)])) })}
      <p class="small">${plain(answer.background_usv_per_h)} µSv/h of the rate is background.</p>
      ${notes([...new Set([...answer.notes, ...strong.flatMap(each => each.notes.map(note => `${sourceName(camp, each.part.source)}: ${note}`))])], answer.extrapolated)}`;
  },
};

const sorted = answer => [...answer.parts].sort((a, b) => b.part.usv_per_h - a.part.usv_per_h);

function finding(answer, camp) {
  const top = sorted(answer)[0];
  return `${nameOf(camp, 'areas', answer.area)}: ${doseRate(answer.usv_per_h)} on ${dayWords(answer.on)}${top ? `, the greatest part from ${sourceName(camp, top.part.source)}` : ''}`;
}
