// One line through timed cuts: picture with spread, residuals, what it says, or why it was refused.
import { html, nothing } from '../lib/vendor.js';
import { link } from '../lib/route.js';
import { plural, sentence } from '../lib/words.js';
import { digits, percent, plain, sig } from '../lib/units.js';
import { figureFrame } from './figure-frame.js';
import './line-picture.js';

export function trialFit(camp, fit, confidence) {
  return fit.fit ? html`${speeds(fit, confidence)}${said(fit)}${residuals(fit)}` : refused(camp, fit);
}

const points = fit => fit.fit.points.map((point, i) => ({ ...point, code: fit.trials[i] }));

function speeds(fit, confidence) {
  const { curve } = fit.fit;
  const sure = percent(confidence);
  const title = `${sig(fit.band[0].trial_mm_per_min.likely)} mm/min through ${sig(curve.min_thickness_mm)} mm, ${sig(fit.band.at(-1).trial_mm_per_min.likely)} through ${sig(curve.max_thickness_mm)} mm`;
  const one = fit.band.length === 1;
  const over = name => fit.band.map(point => ({ x: point.thickness_mm, low: point[name].low, high: point[name].high }));
  const along = name => fit.band.map(point => ({ x: point.thickness_mm, y: point[name].likely }));
  const log = curve.max_thickness_mm / curve.min_thickness_mm > 1.01;
  const data = {
    title, desc: `Speed against thickness, both on even steps of ratio. ${plural(fit.trials.length, 'trial')} as dots, the line through them, the band in which ${sure} of further trials are expected, and below it the band in the field.`,
    x: { words: 'thickness, mm', log }, y: { words: 'mm/min', log: true },
    bands: one ? [] : [{ points: over('field_mm_per_min'), kind: 'far' }, { points: over('trial_mm_per_min') }],
    lines: one ? [] : [{ points: along('field_mm_per_min'), kind: 'quiet' }, { points: along('trial_mm_per_min') }], dots: points(fit).map(point => ({ x: point.trial.thickness_mm, y: point.mm_per_min })), height: 280,
  };
  return figureFrame({
    level: 3, title, picture: html`<line-picture .data=${data}></line-picture>`, under: html`<p class="small muted">Dots: trials. Line and inner band: ${sure} of further trials. Dashed line and pale band: in the field, with the trial-to-field factor.</p>`,
    caption: `Speed by thickness, ${fit.name}`, head: ['Thickness, mm', 'trial: low', 'likely', 'high', 'field: low', 'likely', 'high'],
    rows: fit.band.map(point => [sig(point.thickness_mm), ...['trial_mm_per_min', 'field_mm_per_min'].flatMap(name => ['low', 'likely', 'high'].map(part => sig(point[name][part])))]),
  });
}

function residuals(fit) {
  const data = {
    title: 'How far each trial lies from the line', desc: 'Natural logarithm of timed speed over the speed of the line, against thickness.', height: 170, x: { words: 'thickness, mm' }, y: { words: 'ln(timed ÷ line)' },
    levels: [{ y: 0, words: 'the line' }], dots: points(fit).map(point => ({ x: point.trial.thickness_mm, y: point.ln_residual })),
  };
  return figureFrame({
    level: 3, title: data.title, picture: html`<line-picture .data=${data}></line-picture>`, caption: `Residuals, ${fit.name}`, head: ['Trial', 'mm', 'timed, mm/min', 'line, mm/min', 'ln(timed ÷ line)'],
    rows: points(fit).map(point => [point.code, plain(point.trial.thickness_mm), sig(point.mm_per_min), sig(point.line_mm_per_min), digits(point.ln_residual, 3)]),
  });
}

const said = fit => html`<dl class="facts"><div><dt>Speed goes with thickness to the power</dt><dd>${sig(fit.fit.curve.slope)}${fit.fit.curve.slope_fixed ? ' (given)' : fit.fit.slope_sd === undefined ? '' : ` ± ${sig(fit.fit.slope_sd, 2)}`}</dd></div>
    <div><dt>Spread, as a ratio</dt><dd>× ÷ ${sig(fit.geometric_sd)}</dd></div><div><dt>Degrees of freedom</dt><dd>${fit.degrees_of_freedom}</dd></div></dl>
  ${fit.fit.says?.length > 0 ? html`<ul class="small">${fit.fit.says.map(line => html`<li>${sentence(line)}</li>`)}</ul>` : nothing}`;

const refused = (camp, fit) => html`<p><span class="mark decide">not fitted</span></p><ul>${fit.refused.map(each => html`<li>${sentence(`${each.field.replace(/[_.]/g, ' ')} ${each.detail}`)}</li>`)}</ul>
  <p class="small">Its trials: ${fit.trials.map((code, i) => html`${i > 0 ? ', ' : ''}<a href=${link(camp.id, 'edit', 'trials', code)}>${code}</a>`)}.</p>`;
