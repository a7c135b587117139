// A one-time link: the first administrator, or a password.
import { html, nothing } from '../lib/vendor.js';
import { ask } from '../lib/api.js';
import { set } from '../lib/who.js';

export const title = () => 'Welcome';

export async function load({ route }) {
  const secret = route.rest[0] ?? '';
  try {
    return { secret, purpose: (await ask('POST', '/api/links', { body: { secret } })).body, faults: [] };
  } catch (problem) {
    if (problem.status !== 404) throw problem;
    return { gone: problem.message };
  }
}

export function body({ data, redraw }) {
  if (data.gone) return html`<div class="lead"><div><h1>This link does not work</h1><p class="under">${data.gone}</p></div></div><p><a class="button" href="#/campaigns">Sign in</a></p>`;
  const first = data.purpose.makes === 'first-administrator';
  const submit = async event => {
    event.preventDefault();
    const { elements } = event.target;
    if (elements.password.value !== elements.repeated.value) {
      refuse([{ field: 'repeated', detail: 'The two are not the same.' }]);
      return;
    }
    try {
      const names = first ? { sign_in_name: elements.sign_in_name.value, name: elements.name.value } : {};
      set((await ask('POST', '/api/links/use', { body: { secret: data.secret, password: elements.password.value, ...names } })).body);
      location.hash = first ? '#/accounts' : '#/campaigns';
    } catch (problem) {
      refuse(problem.errors?.length ? problem.errors : [{ field: '', detail: problem.message }]);
    }
  };
  const refuse = faults => { data.faults = faults; redraw(); document.getElementById('summary')?.focus(); };
  const fault = field => data.faults.find(each => each.field === field)?.detail;
  const box = (id, label, type, more = {}) => html`<div class="field ${fault(id) ? 'bad' : ''}"><label for=${id}>${label}</label>
    ${more.hint ? html`<p class="hint" id="${id}-hint">${more.hint}</p>` : nothing}${fault(id) ? html`<p class="message" id="${id}-fault">${sentence(label, fault(id))}</p>` : nothing}
    <div class="entry"><input id=${id} name=${id} type=${type} autocomplete=${more.complete} ?readonly=${more.fixed !== undefined} .value=${more.fixed ?? ''} aria-describedby=${fault(id) ? `${id}-fault` : more.hint ? `${id}-hint` : nothing}></div></div>`;
  return html`<div class="lead"><div><h1>${first ? 'Make the first administrator' : 'Set your password'}</h1>
      <p class="under">${first ? 'The administrator makes accounts for all others. Administrators see no doses.' : 'This link works once.'}</p></div></div>
    <section class="panel door-in" aria-label="Account"><form class="form narrow" novalidate @submit=${submit}>
      ${data.faults.length ? html`<div class="summary" id="summary" tabindex="-1" role="alert"><h2>Not done yet</h2><ul>${data.faults.map(each => html`<li>${sentence(each.field.replaceAll('_', ' '), each.detail)}</li>`)}</ul></div>` : nothing}
      ${first ? html`${box('name', 'Your name', 'text', { complete: 'name' })}${box('sign_in_name', 'Name to sign in with', 'text', { complete: 'username', hint: 'Letters a to z, digits, . - _ @' })}`
    : box('sign_in_name', 'Name to sign in with', 'text', { complete: 'username', fixed: data.purpose.sign_in_name })}
      ${box('password', 'New password', 'password', { complete: 'new-password', hint: 'At least 12 characters. A few words are easy to remember; digits and signs are not needed.' })}
      ${box('repeated', 'The same again', 'password', { complete: 'new-password' })}
      <div class="form-foot"><button class="button main" type="submit">${first ? 'Make the account' : 'Set the password'}</button></div></form></section>`;
}

const sentence = (label, detail) => (/^[a-z]/.test(detail) ? `${label.charAt(0).toUpperCase()}${label.slice(1)} ${detail}` : detail);
