// Calculated dose rates on the Areas page and on the page of one area: what is fetched for them and how they are laid out.
import { html, nothing } from '../lib/vendor.js';
import { get, Problem } from '../lib/api.js';
import { askPanel } from '../elements/ask-panel.js';
import { calibrationPanel, whyNot } from '../elements/calibration.js';
import { calculatedRates, poolToday } from '../elements/pool-today.js';
import { exposureAt } from '../lib/exposure.js';
import { link } from '../lib/route.js';
import { liftCover } from '../questions/lift-cover.js';
import { lineOfRates, platform, section } from '../questions/rate-map.js';
import { photonLines } from '../questions/photon-lines.js';
import { removal } from '../questions/removal.js';
import { shield } from '../questions/shield.js';
import { waterLevel } from '../questions/water-level.js';
import { years } from '../questions/years.js';
import '../elements/heat-map.js';
import '../elements/rate-curve.js';

const QUESTIONS = [waterLevel, liftCover, lineOfRates, platform, section, shield, removal, years];
const OF_AN_AREA = [photonLines, waterLevel, liftCover, shield, years];

/** Overview and calibration of a plan whose pool is described; each may be a problem in words instead. */
export async function loadExposure(camp) {
  if (!camp.doc.settings.pool) return null;
  const [today, calibration] = await Promise.all([fetched(exposureAt(camp)), fetched(exposureAt(camp, 'calibration'))]);
  camp.notCalculable = new Set(today.body?.not_calculable);
  return { overview: today.body, problem: today.problem, calibration: calibration.body ?? { problem: calibration.problem } };
}

async function fetched(path) {
  try {
    return { body: (await get(path)).body };
  } catch (problem) {
    if (!(problem instanceof Problem) || problem.status === 0) throw problem;
    return { problem: whyNot(problem) };
  }
}

/** The sketch with what stands in the pool; nothing if no pool is described. */
export function poolPanel({ camp, data, redraw }) {
  if (!data) return nothing;
  const ask = async on => {
    const found = on ? await fetched(`${exposureAt(camp)}?${new URLSearchParams({ on })}`) : { problem: 'Choose a day.' };
    if (found.body) data.overview = found.body;
    data.problem = found.problem;
    redraw();
  };
  return html`<section class="panel" id="pool-today">${data.overview ? nothing : html`<h2>What stands in the pool</h2>`}${poolToday(camp, { ...data, ask })}</section>`;
}

/** What is calculated beside what the plan uses, in a panel for the right-hand side. */
export const calculatedPanel = ({ camp, data }) => (data?.overview ? html`<section class="panel"><h2>What the calculation gives in each area</h2>${calculatedRates(camp, data.overview)}
  <p class="more"><a class="button" href=${link(camp.id, 'dose-rate')}>Work out one dose rate</a></p></section>` : nothing);

export function questionPanels({ camp, tables, data, redraw }) {
  if (!data) return html`<section class="panel"><h2>Dose rates where nobody has measured yet</h2>
    <p>They can be calculated from what stands in the pool once the pool is described: its size, its water level, and where things stand.
      <a href=${link(camp.id, 'settings')}>Describe the pool</a> or <a href=${link(camp.id, 'dose-rate')}>work out one dose rate</a> without it.</p></section>`;
  return html`${calibrationPanel(camp, data.calibration)}${askPanel({ camp, tables, redraw, questions: QUESTIONS, place: 'areas', heading: 'Questions to the calculation' })}`;
}

/** The questions that are about one area. */
export function areaQuestions({ camp, tables, redraw }, area) {
  if (!camp.doc.settings.pool || !area.sketch) return nothing;
  return askPanel({ camp, tables, redraw, questions: OF_AN_AREA, place: `area-${area.code}`, preset: { area: area.code }, heading: `Questions to the calculation about ${area.name}` });
}
