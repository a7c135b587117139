import { html } from '../lib/vendor.js';
import { figureFrame } from '../elements/figure-frame.js';
import { ifExtrapolated, notes } from '../elements/notes.js';
import { day, whole } from '../forms/field.js';
import { monthTicks } from '../lib/months.js';
import { nameOf, plural } from '../lib/words.js';
import { day as dayWords, dayNumber, doseRate, isoOf, plain } from '../lib/units.js';
import { area, firstArea } from './fields.js';

export const years = {
  key: 'years-later', path: 'years-later', words: 'Years later', title: 'What is the rate years later, if nothing is moved?',
  fields: [
    area, day('standing_on', 'What stands is what stands on', { maybe: true, hint: 'Blank: first day of the campaign.' }),
    day('from', 'From'), day('until', 'Until'), whole('steps', 'Days between them', { hint: '2 to 401, both ends counted.' }),
  ],
  start(camp, { area: given }) {
    const from = camp.doc.settings.start;
    return { area: given ?? firstArea(camp), from, until: isoOf(dayNumber(from) + 10957), steps: 31 };
  },
  says: (answer, camp) => finding(answer, camp),
  answer(answer, camp) {
    const title = finding(answer, camp);
    const points = answer.days.map(each => ({ x: dayNumber(each.on), usvPerH: each.usv_per_h, extrapolated: each.extrapolated, words: `${dayWords(each.on)}: ${doseRate(each.usv_per_h)}${ifExtrapolated(each)}` }));
    const area = camp.byCode.areas.get(answer.area);
    const data = {
      id: 'years-curve', points, title, xTicks: (count, [from, to]) => monthTicks(from, to, count).map(tick => ({ x: tick.day, words: tick.words })), xLabel: 'Day', read: 0,
      ceiling: area?.ceiling_usv_per_h, ceilingWords: `ceiling ${plain(area?.ceiling_usv_per_h)} µSv/h`,
      desc: `Dose rate of ${nameOf(camp, 'areas', answer.area)} from ${points[0].words} to ${points.at(-1).words}.`,
    };
    return html`${figureFrame({ level: 3, title, picture: html`<rate-curve .data=${data}></rate-curve>`, caption: 'Dose rate by day, nothing moved', head: ['Day', 'Dose rate'],
      rows: answer.days.map(each => [dayWords(each.on), `${doseRate(each.usv_per_h)}${ifExtrapolated(each)}`]) })}
      <p class="small">${plural(answer.sources.length, 'source')} as they stand on ${dayWords(answer.standing_on)}: ${answer.sources.map(code => nameOf(camp, 'components', nameOf(camp, 'sources', code))).join(', ')}. ${plain(answer.background_usv_per_h)} µSv/h is background and stays.</p>
      ${notes(answer.notes, answer.days.some(each => each.extrapolated))}`;
  },
};

function finding(answer, camp) {
  const [first, last] = [answer.days[0], answer.days.at(-1)];
  return `${nameOf(camp, 'areas', answer.area)}: ${doseRate(first.usv_per_h)} on ${dayWords(first.on)}, ${doseRate(last.usv_per_h)} on ${dayWords(last.on)}`;
}
