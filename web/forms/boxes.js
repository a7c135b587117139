// One box for one value: label, hint, message, entry, unit, echo.
import { html, live, nothing } from '../lib/vendor.js';
import { activity, plain, shift } from '../lib/units.js';
import { typed } from '../lib/typed.js';

export const idOf = path => `f-${path}`;

/** Label, hint and message around an entry; {@code more} is what follows the entry. */
export function leaf(field, box, path, ctx) {
  if (field.type === 'tick') return tickBox(field, box, path, ctx);
  const id = idOf(path);
  const fault = ctx.faultAt(path);
  const about = [field.hint ? `${id}-hint` : '', fault ? `${id}-fault` : '', field.power > 0 ? `${id}-echo` : ''].filter(Boolean).join(' ');
  return html`<div class="field ${field.wide || field.type === 'prose' ? 'wide' : ''} ${fault ? 'bad' : ''}">
    <label for=${id}>${field.label}${field.unit ? html` <span class="maybe">(${field.unit})</span>` : nothing}${field.maybe ? html` <span class="maybe">optional</span>` : nothing}</label>
    ${field.hint ? html`<p class="hint" id="${id}-hint">${field.hint}</p>` : nothing}
    ${fault ? html`<p class="message" id="${id}-fault">${fault}</p>` : nothing}
    <div class="entry">${entry(field, box, id, about, fault, ctx)}${field.unit ? html`<span class="unit" aria-hidden="true">${field.unit}</span>` : nothing}</div>
    ${field.power > 0 ? html`<output class="echo" id="${id}-echo" for=${id}>${echo(field, box.text)}</output>` : nothing}
  </div>`;
}

export function entry(field, box, id, about, fault, ctx) {
  const set = event => {
    box.text = event.target.value;
    if (id === idOf('name')) ctx.named?.(box.text);
    if (field.power > 0 || field.type === 'pick') ctx.redraw();
  };
  const described = about || nothing;
  const bad = fault ? 'true' : nothing;
  if (field.type === 'prose') return html`<textarea id=${id} aria-describedby=${described} aria-invalid=${bad} .value=${live(box.text)} @input=${set}></textarea>`;
  if (field.type === 'pick') return select(field, box, id, described, bad, set, ctx);
  if (field.type === 'day' || field.type === 'month') {
    return html`<input id=${id} class="short" type=${field.type === 'day' ? 'date' : 'month'} aria-describedby=${described} aria-invalid=${bad} .value=${live(box.text)} @input=${set}>`;
  }
  const isNumber = field.type === 'number' || field.type === 'whole';
  const mode = !isNumber || field.signed ? nothing : field.type === 'whole' ? 'numeric' : 'decimal';
  const options = field.options ? field.options(ctx) : null;
  return html`<input id=${id} class=${isNumber ? 'short' : ''} type="text" inputmode=${mode} autocomplete="off" spellcheck=${isNumber ? 'false' : nothing}
      ?readonly=${field.type === 'code' && ctx.codeFixed && id === idOf('code')} list=${options ? `${id}-list` : nothing}
      aria-describedby=${described} aria-invalid=${bad} .value=${live(box.text)} @input=${set}>
    ${options ? html`<datalist id="${id}-list">${options.slice(0, 500).map(([value, words]) => html`<option value=${value}>${words}</option>`)}</datalist>` : nothing}`;
}

function select(field, box, id, described, bad, set, ctx) {
  const options = typeof field.options === 'function' ? field.options(ctx) : field.options;
  const lacking = box.text !== '' && !options.some(([value]) => value === box.text);
  return html`<select id=${id} aria-describedby=${described} aria-invalid=${bad} @change=${set}>
    <option value="" ?selected=${box.text === ''}>${field.maybe ? 'none' : options.length === 0 ? 'nothing to choose yet' : 'choose …'}</option>
    ${lacking ? html`<option value=${box.text} selected>${box.text}</option>` : nothing}
    ${options.map(([value, words]) => html`<option value=${value} ?selected=${live(box.text === value)}>${words}</option>`)}</select>`;
}

function tickBox(field, box, path, ctx) {
  const id = idOf(path);
  return html`<div class="field"><div class="tick"><input type="checkbox" id=${id} .checked=${live(box.text)} @change=${event => { box.text = event.target.checked; ctx.redraw(); }}>
    <label for=${id}>${field.label}</label></div></div>`;
}

/** What was understood: "0,42 mSv = 420 µSv". */
function echo(field, text) {
  const found = typed(text);
  if (found.value === undefined) return '';
  return `${text.trim()} ${field.unit} = ${field.sent === 'Bq' ? activity(shift(found.value, field.power)) : `${plain(shift(found.value, field.power))} ${field.sent}`}`;
}
