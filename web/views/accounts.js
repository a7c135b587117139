// All accounts: for the administrator to make and change, for the radiation protection officer to say who sees people.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { say } from '../lib/focus.js';
import { may, roleWord, roles } from '../lib/who.js';
import { moment } from '../lib/moment.js';

export const title = () => 'Accounts';

export async function load() {
  const [accounts, privacy] = await Promise.all([get('/api/accounts'), get('/api/privacy')]);
  return { accounts: accounts.body.items, privacy: { ...privacy.body, etag: privacy.etag }, open: null };
}

export function body({ data, redraw, reload }) {
  const managing = may('POST', '/api/accounts');
  return html`<div class="lead"><div><h1>${data.accounts.length === 1 ? '1 account' : `${data.accounts.length} accounts`}</h1>
      <p class="under">${managing ? 'A new account gets a link to set its password. Accounts are disabled, never deleted: what somebody did keeps its name.'
    : 'Who sees names and received doses beside you and the person. The administrator makes and changes the accounts.'}</p></div>
      <div class="doing">${managing ? html`<button class="button main" id="add-account" @click=${() => edit(data, { role: 'team-member', disabled: false }, redraw)}>Add an account</button>` : nothing}
        <a class="button" href="#/records" data-may="GET /api/retention">How long records are kept</a></div></div>
    <div class="grid">
      ${data.made ? html`<section class="panel once" id="link-made" tabindex="-1" aria-label="One-time link"><h2>Hand this link over in person: it works once</h2>
        <p>It sets the password of ${data.made.name} and ends on ${moment(data.made.expires_at)}. It is not shown again.</p><p><code class="secret">${data.made.link}</code></p></section>` : nothing}
      ${data.open ? form(data, redraw, reload) : nothing}
      <section class="panel" aria-label="Accounts"><div class="table" tabindex="0" role="region" aria-label="Accounts, table"><table><thead><tr><th scope="col">Account</th><th scope="col">Role</th><th scope="col" class="mid-only">Is in campaigns</th><th scope="col">Sees people</th><th scope="col" class="mid-only">State</th><th scope="col"><span class="spoken">What can be done</span></th></tr></thead>
        <tbody>${data.accounts.map(account => row(account, data, managing, redraw, reload))}</tbody></table></div></section>
      ${may('PUT', '/api/privacy') ? crew(data, redraw, reload) : nothing}</div>`;
}

const sees = account => (account.role === 'radiation-protection-officer' ? 'yes, by role' : account.role === 'administrator' ? 'never' : account.sees_people ? 'yes' : account.worker ? 'only itself' : 'no');
const state = account => (account.disabled ? 'disabled' : account.has_password ? 'can sign in' : 'no password yet');

function row(account, data, managing, redraw, reload) {
  const words = html`<span class="spoken"> ${account.name}</span>`;
  const grants = may('PUT', '/api/accounts/{account}/grant') && !['radiation-protection-officer', 'administrator'].includes(account.role);
  return html`<tr><th scope="row">${account.name}<span class="sub">${account.sign_in_name}</span></th><td>${roleWord(account.role)}</td><td class="mid-only">${account.worker ?? ''}</td><td>${sees(account)}</td><td class="mid-only">${state(account)}</td>
    <td><div class="form-foot">${managing ? html`<button class="button little" id="edit-${account.id}" @click=${() => edit(data, account, redraw)}>Change …${words}</button>
      ${account.disabled ? nothing : html`<button class="button little" @click=${() => link(data, account, redraw)}>${account.has_password ? 'New password link' : 'Password link'}${words}</button>
      <button class="button little" @click=${() => end(account, reload)}>Sign out${words}</button>`}` : nothing}
      ${grants ? html`<button class="button little" id="grant-${account.id}" @click=${() => grant(data, account, redraw)}>${account.sees_people ? 'No longer show people …' : 'Show people …'}${words}</button>` : nothing}</div></td></tr>`;
}

function edit(data, account, redraw) {
  open(data, { kind: 'account', account, faults: [] }, redraw);
}
function grant(data, account, redraw) {
  open(data, { kind: 'grant', account, faults: [] }, redraw);
}
function open(data, what, redraw) {
  data.open = what;
  data.made = null;
  redraw();
  document.querySelector('#account-form input, #account-form textarea')?.focus();
}

function form(data, redraw, reload) {
  const { kind, account, faults } = data.open;
  const submit = async event => {
    event.preventDefault();
    const { elements } = event.target;
    try {
      const etag = account.id ? `"${account.version}"` : undefined;
      if (kind === 'grant') {
        await ask('PUT', `/api/accounts/${account.id}/grant`, { etag, body: { sees_people: !account.sees_people, reason: elements.reason.value } });
      } else {
        const worker = elements.worker.value.trim();
        const value = { sign_in_name: elements.sign_in_name.value, name: elements.name.value, role: elements.role.value, disabled: elements.disabled?.checked ?? false, ...(worker ? { worker } : {}) };
        const saved = await ask(account.id ? 'PUT' : 'POST', account.id ? `/api/accounts/${account.id}` : '/api/accounts', { etag, body: value });
        if (!account.id) {
          await link(data, saved.body, () => {});
          const { made } = data;
          await reload();
          show(made);
          return;
        }
      }
      say('Saved.');
      await reload();
    } catch (problem) {
      data.open.faults = problem.errors?.length ? problem.errors : [{ field: '', detail: problem.message }];
      redraw();
      document.getElementById('summary')?.focus();
    }
  };
  const fault = field => faults.find(each => each.field === field);
  const box = (id, label, value, hint) => html`<div class="field ${fault(id) ? 'bad' : ''}"><label for=${id}>${label}</label>${hint ? html`<p class="hint" id="${id}-hint">${hint}</p>` : nothing}
    <div class="entry"><input id=${id} name=${id} type="text" autocomplete="off" spellcheck="false" .value=${value ?? ''} aria-describedby=${hint ? `${id}-hint` : nothing} aria-invalid=${fault(id) ? 'true' : nothing}></div></div>`;
  return html`<section class="panel" aria-labelledby="account-title"><h2 id="account-title">${kind === 'grant' ? `${account.sees_people ? 'No longer show' : 'Show'} names and received doses to ${account.name}` : account.id ? `Change ${account.name}` : 'Add an account'}</h2>
    <form class="form" id="account-form" novalidate @submit=${submit}>
      ${faults.length ? html`<div class="summary" id="summary" tabindex="-1" role="alert"><h3>Not saved</h3><ul>${faults.map(each => html`<li>${sentence(each)}</li>`)}</ul></div>` : nothing}
      ${kind === 'grant' ? html`<div class="field wide"><label for="reason">Reason</label><textarea id="reason" name="reason"></textarea></div>`
    : html`<div class="fields">${box('name', 'Name', account.name)}${box('sign_in_name', 'Name to sign in with', account.sign_in_name, 'Letters a to z, digits, . - _ @')}
        <div class="field"><label for="role">Role</label><select id="role" name="role">${roles.map(([role, word]) => html`<option value=${role} ?selected=${role === account.role}>${word}</option>`)}</select></div>
        ${box('worker', 'Code in campaigns', account.worker, 'Where this is somebody of the crew: the code of the person, the same in all campaigns.')}</div>
        ${account.id ? html`<div class="tick"><input type="checkbox" id="disabled" name="disabled" .checked=${account.disabled}><label for="disabled">Disabled: nobody can sign in, tokens are revoked</label></div>` : nothing}`}
      <div class="form-foot"><button class="button main" type="submit">${account.id ? 'Save' : 'Add'}</button><button class="button" type="button" @click=${() => { data.open = null; redraw(); }}>Cancel</button></div></form></section>`;
}

const LABEL = { sign_in_name: 'The name to sign in with', name: 'The name', role: 'The role', worker: 'The code in campaigns', reason: 'The reason', sees_people: 'Sight of people' };
const sentence = ({ field, detail }) => (field ? `${LABEL[field] ?? field} ${detail}` : detail);

async function link(data, account, redraw) {
  const made = (await ask('POST', `/api/accounts/${account.id}/link`)).body;
  data.made = { ...made, name: account.name };
  data.open = null;
  redraw();
  document.getElementById('link-made')?.focus();
}

/** After the list was read anew, the link is still to be seen. */
let shown = null;
function show(made) {
  shown?.(made);
}
export const drawn = ({ data, redraw }) => { shown = made => { data.made = made; redraw(); document.getElementById('link-made')?.focus(); }; };

async function end(account, reload) {
  await ask('DELETE', `/api/accounts/${account.id}/sessions`);
  say(`${account.name} is signed out everywhere.`);
  await reload();
}

function crew(data, redraw, reload) {
  const submit = async event => {
    event.preventDefault();
    try {
      await ask('PUT', '/api/privacy', { etag: data.privacy.etag, body: { crew_entries: !data.privacy.crew_entries, reason: event.target.elements.why.value } });
      await reload();
    } catch (problem) {
      data.crewFault = problem.errors?.length ? sentence(problem.errors[0]) : problem.message;
      redraw();
    }
  };
  return html`<section class="panel w6"><h2>Entries for the crew</h2><p>${data.privacy.crew_entries ? 'A team member may enter hours and doses for the others of the crew, and sees none of their doses.' : 'Each team member enters only their own hours and doses.'}</p>
    <form class="form narrow" @submit=${submit}>${data.crewFault ? html`<p class="message" role="alert">${data.crewFault}</p>` : nothing}
      <div class="field"><label for="why">Reason for a change</label><div class="entry"><input id="why" name="why" autocomplete="off"></div></div>
      <div class="form-foot"><button class="button" type="submit">${data.privacy.crew_entries ? 'Let each enter only their own' : 'Let them enter for the crew'}</button></div></form></section>`;
}
