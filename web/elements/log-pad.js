// The keys of the log: large enough for gloves, each a plain press.
import { html, nothing } from '../lib/vendor.js';
import { duration } from '../lib/units.js';

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', ',', '0', 'del'];
const NAME = { ',': 'decimal comma', del: 'delete the last digit' };

export const keypad = press => html`<div class="log-keys" role="group" aria-label="Keypad for the dose">${KEYS.map(key => html`<button type="button" class="log-key" data-key=${key}
  aria-label=${NAME[key] ?? nothing} @click=${() => press(key)}>${key === 'del' ? '⌫' : key}</button>`)}</div>`;

export const stepper = (minutes, step) => html`<div class="log-hours" role="group" aria-labelledby="log-hours-label">
  ${[-15, -5].map(by => stepKey(by, step))}<output id="log-hours" class="log-hours-now" aria-live="polite">${duration(minutes / 60)}</output>${[5, 15].map(by => stepKey(by, step))}</div>`;

const stepKey = (by, step) => html`<button type="button" class="log-step" data-step=${by} aria-label="${Math.abs(by)} minutes ${by < 0 ? 'less' : 'more'}" @click=${() => step(by)}>${by < 0 ? '−' : '+'}${Math.abs(by)}<span class="spoken"> minutes</span></button>`;

/**
 * One thing to choose, as large buttons: the usual ones, and all behind "Other".
 *
 * @param options [value, words, words below][]
 */
export function picks({ name, label, options, all, chosen, open, fault, toggle, choose }) {
  const usual = options.some(([value]) => value === chosen) || !chosen ? options : [...all.filter(([value]) => value === chosen), ...options].slice(0, Math.max(1, options.length));
  const shown = open ? all : usual;
  const more = all.length > usual.length;
  return html`<div class="log-pick ${fault ? 'bad' : ''}" role="group" aria-labelledby="log-${name}-label" id="log-${name}" data-pick=${name}>
    <div class="log-label"><span id="log-${name}-label">${label}</span>${fault ? html` <span class="message" id="log-${name}-fault">${fault}</span>` : nothing}</div>
    <div class="log-options ${open ? 'all' : ''}">${shown.map(([value, words, below]) => html`<button type="button" class="log-option" aria-pressed=${value === chosen ? 'true' : 'false'} data-value=${value}
        @click=${() => choose(value)}><span class="words">${words}</span>${below ? html`<span class="below">${below}</span>` : nothing}</button>`)}
      ${more ? html`<button type="button" class="log-option other" aria-expanded=${open ? 'true' : 'false'} data-other=${name} @click=${toggle}>${open ? 'Fewer' : 'Other'}</button>` : nothing}</div></div>`;
}
