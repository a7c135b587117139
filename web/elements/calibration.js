// What was measured against what is calculated, point by point, and the factor that each source is given.
import { html, nothing } from '../lib/vendor.js';
import { figureFrame } from './figure-frame.js';
import { notes } from './notes.js';
import { nameOf, plural } from '../lib/words.js';
import { day, dayShort, digits, doseRate, fixed, rate, sig } from '../lib/units.js';
import './dot-rows.js';

/** The panel; {@code answer} of the server, or the problem that came instead. */
export function calibrationPanel(camp, answer) {
  if (!answer) return nothing;
  if (answer.problem) return html`<section class="panel"><h2>Calibration to the surveys</h2><p>${answer.problem}</p></section>`;
  const { residuals } = answer;
  if (residuals.length === 0) return html`<section class="panel"><h2>Calibration to the surveys</h2><p>No survey point can be used: it takes points with a place, in areas whose rate is a calculation fitted to the surveys.</p></section>`;
  const out = residuals.filter(each => each.outlier);
  const title = finding(residuals, out, camp);
  const data = {
    id: 'calibration-rows', title,
    desc: `${plural(residuals.length, 'survey point')}: ${residuals.map(each => `${pointOf(each, camp)} read ${rate(each.read_usv_per_h)}, calibrated ${rate(each.calibrated_usv_per_h)} µSv/h`).join('; ')}.`,
    rows: residuals.map(each => ({ label: `${pointOf(each, camp)}, ${dayShort(each.on)}`, flag: each.outlier, span: [each.read_usv_per_h / each.gsd, each.read_usv_per_h * each.gsd],
      marks: [{ usvPerH: each.calculated_usv_per_h, kind: 'ring' }, { usvPerH: each.calibrated_usv_per_h, kind: 'dot' }, { usvPerH: each.read_usv_per_h, kind: 'diamond' }] })),
  };
  return html`<section class="panel calibration" id="calibration">${figureFrame({
    title, picture: html`<dot-rows .data=${data}></dot-rows>
      <p class="small muted" aria-hidden="true">Diamond: measured, with the bar of its own spread. Dot: calibrated. Ring: calculated before the fit.</p>`,
    caption: 'Measured against calculated, µSv/h', head: ['Survey point', 'Day', 'Measured', 'Calculated', 'Calibrated', 'Measured ÷ calibrated', 'Off by', 'Outlier'],
    rows: residuals.map(each => [pointOf(each, camp), day(each.on), rate(each.read_usv_per_h), rate(each.calculated_usv_per_h), rate(each.calibrated_usv_per_h), digits(each.read_usv_per_h / each.calibrated_usv_per_h, 3),
      `${fixed(each.off_by_sigmas, 1)} of its spread`, each.outlier ? 'outlier' : '']),
  })}
    ${out.length > 0 ? html`<p><span class="mark decide">${plural(out.length, 'outlier')}</span> ${out.map(each => `${pointOf(each, camp)} on ${day(each.on)}: measured ${doseRate(each.read_usv_per_h)}, calibrated ${doseRate(each.calibrated_usv_per_h)}`).join('; ')}. Measure there again, or look for a source that the plan lacks.</p>` : nothing}
    <details><summary>Factor of each source (${answer.factors.length})</summary>
      <div class="table" tabindex="0" role="region" aria-label="Factors of the sources"><table><thead><tr><th scope="col">Source</th><th scope="col" class="n">factor on its activity</th><th scope="col" class="n">spread</th><th scope="col">how it is known</th></tr></thead>
        <tbody>${answer.factors.map(each => html`<tr><th scope="row">${sourceName(camp, each.source)}</th><td class="n">${digits(each.factor, 4)}</td><td class="n">± ${sig(each.spread, 2)}</td><td>${known(each, answer)}</td></tr>`)}</tbody></table></div>
      <p class="small muted">${answer.method} Fit: χ² ${sig(answer.chi_squared)} for ${sig(answer.degrees_of_freedom)} degrees of freedom${answer.widened_by > 1 ? `; spreads widened by ${sig(answer.widened_by)}` : ''}.</p></details>
    ${notes(answer.notes)}</section>`;
}

export const sourceName = (camp, code) => camp.byCode.sources?.get(code)?.name ?? nameOf(camp, 'components', code);
const pointOf = (each, camp) => `${nameOf(camp, 'areas', each.area)}, ${each.point}`;

/** A factor whose spread is still that of the assumption was not learnt from any reading. */
function known({ seen, spread }, { prior_spread: prior }) {
  if (!seen) return 'no reading tells: as stated';
  if (prior !== undefined && spread > 0.9 * prior) return 'readings hardly tell: held near 1';
  return 'from the readings';
}

function finding(residuals, out, camp) {
  if (out.length > 0) return `${out.length} of ${residuals.length} survey points ${out.length === 1 ? 'does' : 'do'} not fit the calculation`;
  const worst = residuals.reduce((one, other) => (other.off_by_sigmas > one.off_by_sigmas ? other : one));
  return `All ${residuals.length} survey points fit the calibrated calculation; furthest off is ${pointOf(worst, camp)}`;
}

/** Why there is none, in words. */
export const whyNot = problem => problem.message;
