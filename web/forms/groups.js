// Fields of all types; groups, rows and lists call themselves.
import { html, live, nothing } from '../lib/vendor.js';
import { draftOf, one } from './draft.js';
import { entry, idOf, leaf } from './boxes.js';

export function fieldsOf(fields, draft, path, ctx) {
  return html`<div class="fields">${fields.map(field => {
    if (field.when && !field.when(draft, ctx.root)) return nothing;
    return any(field, draft[field.name], path === '' ? field.name : `${path}.${field.name}`, ctx);
  })}</div>`;
}

function any(field, draft, path, ctx) {
  switch (field.type) {
    case 'likely': return three(field, draft, path, ctx);
    case 'group': return group(field, draft, path, ctx);
    case 'rows': return rows(field, draft, path, ctx);
    case 'list': return listOf(field, draft, path, ctx);
    case 'picks': return ticks(field, draft, path, ctx);
    default: return leaf(field, draft, path, ctx);
  }
}

function three(field, draft, path, ctx) {
  const fault = ctx.faultAt(path);
  const id = idOf(path);
  return html`<fieldset class="field ${fault ? 'bad' : ''}" id=${id} tabindex="-1">
    <legend>${field.label} <span class="maybe">(${field.unit})</span>${field.maybe ? html` <span class="maybe">optional</span>` : nothing}</legend>
    ${field.hint ? html`<p class="hint">${field.hint}</p>` : nothing}
    ${fault ? html`<p class="message">${fault}</p>` : nothing}
    <div class="three">${['low', 'likely', 'high'].map(name => {
      const at = `${path}.${name}`;
      const wrong = ctx.faultAt(at);
      return html`<div class=${wrong ? 'bad' : ''}><label for=${idOf(at)}>${name}<span class="spoken"> ${field.label} in ${field.unit}</span></label>
        ${wrong ? html`<p class="message" id="${idOf(at)}-fault">${wrong}</p>` : nothing}
        ${entry({ ...field, type: 'number' }, draft[name], idOf(at), wrong ? `${idOf(at)}-fault` : '', wrong, ctx)}</div>`;
    })}<span class="unit" aria-hidden="true">${field.unit}</span></div></fieldset>`;
}

const box = (field, path, ctx, content) => {
  const fault = ctx.faultAt(path);
  return html`<fieldset class="box ${fault ? 'bad' : ''}" id=${idOf(path)} tabindex="-1"><legend>${field.label}${field.maybe ? html` <span class="maybe">optional</span>` : nothing}</legend>
    ${field.hint ? html`<p class="hint">${field.hint}</p>` : nothing}${fault ? html`<p class="message">${fault}</p>` : nothing}${content}</fieldset>`;
};

function group(field, draft, path, ctx) {
  const given = field.maybe ? html`<div class="tick"><input type="checkbox" id="${idOf(path)}-on" .checked=${live(draft.on)}
    @change=${event => { draft.on = event.target.checked; ctx.redraw(); }}><label for="${idOf(path)}-on">Give it</label></div>` : nothing;
  return box(field, path, ctx, html`${given}${draft.on ? fieldsOf(field.fields, draft.in, path, ctx) : nothing}`);
}

function rows(field, draft, path, ctx) {
  const words = i => `${field.one} ${i + 1}`;
  return box(field, path, ctx, html`<div class="rows">${draft.map((row, i) => {
    const at = `${path}[${i}]`;
    const name = row.name?.text || '';
    if (field.line) {
      return html`<div class="row-line" role="group" aria-label=${words(i)} id=${idOf(at)}>${fieldsOf(field.fields, row, at, ctx)}${remove(draft, i, words(i), ctx, path)}</div>`;
    }
    return html`<details class="row-block" id=${idOf(at)} ?open=${ctx.opened(at, draft.length)} @toggle=${event => ctx.remember(at, event)}>
      <summary>${words(i)}${name ? `: ${name}` : ''}</summary>${fieldsOf(field.fields, row, at, ctx)}
      <div class="doing">${i > 0 ? html`<button type="button" class="button little" @click=${() => { draft.splice(i - 1, 2, row, draft[i - 1]); ctx.redraw(); }}>Move up<span class="spoken"> ${words(i)}</span></button>` : nothing}
        ${remove(draft, i, words(i), ctx, path)}</div></details>`;
  })}</div>${add(field, draft, () => draftOf(field.fields), ctx, path)}`);
}

function listOf(field, draft, path, ctx) {
  return box(field, path, ctx, html`<div class="rows">${draft.map((item, i) => html`<div class="row-line">
    <div class="fields">${leaf({ ...field.item, label: `${field.item.label} ${i + 1}` }, item, `${path}[${i}]`, ctx)}</div>${remove(draft, i, `${field.one} ${i + 1}`, ctx, path)}</div>`)}</div>
    ${add(field, draft, () => one(field.item), ctx, path)}`);
}

const remove = (draft, i, words, ctx, path) => html`<button type="button" class="button little" @click=${() => {
  draft.splice(i, 1);
  ctx.redraw();
  document.getElementById(`${idOf(path)}-add`)?.focus();
}}>Remove<span class="spoken"> ${words}</span></button>`;

const add = (field, draft, make, ctx, path) => html`<button type="button" class="button little" id="${idOf(path)}-add" @click=${() => {
  draft.push(make());
  ctx.redraw();
  document.getElementById(idOf(`${path}[${draft.length - 1}]`))?.querySelector?.('input, select, textarea')?.focus();
}}>Add ${/^[aeiou]/.test(field.one) ? 'an' : 'a'} ${field.one}</button>`;

function ticks(field, draft, path, ctx) {
  const options = (typeof field.options === 'function' ? field.options(ctx) : field.options).filter(([value]) => !(field.notSelf && value === ctx.self));
  const fault = ctx.faultAt(path);
  return html`<fieldset class="field wide ${fault ? 'bad' : ''}" id=${idOf(path)} tabindex="-1"><legend>${field.label}</legend>
    ${fault ? html`<p class="message">${fault}</p>` : nothing}
    ${options.length === 0 ? html`<p class="hint">Nothing to choose yet.</p>` : nothing}
    <div class="ticks">${options.map(([value, words]) => html`<div class="tick"><input type="checkbox" id="${idOf(path)}-${value}" .checked=${live(draft.includes(value))}
      @change=${event => toggle(draft, value, event.target.checked, options)}><label for="${idOf(path)}-${value}">${words}</label></div>`)}</div></fieldset>`;
}

/** Keeps the order of the options. */
function toggle(draft, value, on, options) {
  const chosen = new Set(draft);
  if (on) chosen.add(value);
  else chosen.delete(value);
  const order = options.map(([code]) => code);
  draft.splice(0, draft.length, ...[...chosen].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
}
