// The page around a form: title, error summary, fields, buttons.
import { html, nothing } from '../lib/vendor.js';
import { idOf } from './boxes.js';
import { fieldsOf } from './groups.js';
import { clashPanel } from './clash.js';

/** What the fields need to know of the form they stand in. */
export const context = ({ session, camp, tables, redraw, self }) => ({
  camp, tables, self, redraw, root: session.draft, codeFixed: session.method === 'PUT',
  faultAt: path => session.faults.get(path), opened: (path, count) => session.opened(path, count), remember: (path, event) => session.remember(path, event),
  named: session.named,
});

/** A form that asks the server and stores nothing: fields and one button. */
export function askForm({ session, camp, tables, redraw, verb, label, submit, more = nothing }) {
  return html`<form class="form ask" novalidate autocomplete="off" aria-label=${label} @submit=${event => { event.preventDefault(); submit(); }}>
    ${summary(session, 'Not worked out')}${fieldsOf(session.fields, session.draft, '', context({ session, camp, tables, redraw }))}
    <div class="form-foot"><button class="button main" type="submit">${session.busy ? 'Working it out …' : verb}</button>${more}</div></form>`;
}

/** @param actions {save: words, submit, cancel: address, remove?: function} */
export function formPage({ session, heading, under, actions, camp, tables, redraw, self, closed }) {
  const ctx = context({ session, camp, tables, redraw, self });
  return html`<div class="lead"><div><h1>${heading}</h1>${under ? html`<p class="under">${under}</p>` : nothing}</div></div>
    <form class="form" novalidate autocomplete="off" @submit=${event => { event.preventDefault(); actions.submit(); }}>
      ${summary(session)}
      ${session.clash ? clashPanel(session, actions, redraw) : nothing}
      ${closed ? html`<p class="told">${closed}</p>` : nothing}
      <fieldset class="panel" ?disabled=${Boolean(closed)}><legend class="spoken">${heading}</legend>${fieldsOf(session.fields, session.draft, '', ctx)}</fieldset>
      <div class="form-foot">${closed ? html`<a class="button" href=${actions.cancel}>Back</a>` : html`<button class="button main" type="submit">${session.busy ? 'Saving …' : actions.save}</button><a class="button" href=${actions.cancel} @click=${() => actions.leave?.()}>Cancel</a>
        ${actions.remove ? html`<button class="button apart" type="button" @click=${actions.remove}>Delete …</button>` : nothing}`}</div>
    </form>`;
}

function summary(session, failed = 'Not saved') {
  if (!session.failed) return nothing;
  const count = session.faults.size + session.general.length;
  return html`<div class="summary" id="summary" tabindex="-1" aria-labelledby="summary-title"><h2 id="summary-title">${session.clash ? 'Somebody else saved first' : `${failed}: ${count === 1 ? 'one thing' : `${count} things`} to put right`}</h2>
    <ul>${session.general.map(text => html`<li>${text}</li>`)}
      ${[...session.faults].map(([path, text]) => html`<li><a href="#${idOf(path)}" @click=${event => go(event, path)}>${text}</a></li>`)}</ul></div>`;
}

/** A link in the summary leads to the field and never to another page. */
function go(event, path) {
  event.preventDefault();
  const target = document.getElementById(idOf(path));
  for (let at = target?.closest('details'); at; at = at.parentElement.closest('details')) at.open = true;
  target?.focus();
  target?.scrollIntoView({ block: 'center' });
}

/** After a refusal: the title says so, the summary has the focus. */
export function announce() {
  document.title = `Error: ${document.title.replace(/^Error: /, '')}`;
  document.getElementById('summary')?.focus();
}
