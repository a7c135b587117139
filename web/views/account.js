// One's own account: password, where one is signed in, tokens for scripts.
import { html, nothing } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { confirm } from '../lib/confirm.js';
import { say } from '../lib/focus.js';
import { NAMES, roleWord, set } from '../lib/who.js';
import { moment } from '../lib/moment.js';
import { forgetSent, remember } from '../lib/outbox.js';
import { mayLeave } from '../elements/leaving.js';

export const title = () => 'Your account';

export async function load() {
  const [me, sessions, tokens] = await Promise.all([get('/api/account'), get('/api/account/sessions'), get('/api/account/tokens')]);
  return { me: me.body, sessions: sessions.body.items, tokens: tokens.body.items };
}

export function body({ data, redraw, reload }) {
  const { me } = data;
  return html`<div class="lead"><div><h1>${me.name}</h1>
      <p class="under">${roleWord(me.role)}, signed in as ${me.sign_in_name}.${me.worker ? ` In campaigns you are ${me.worker}.` : ''} ${me.sees_people ? 'You see names and received doses.' : me.role === 'administrator' ? 'Administrators see no doses.' : NAMES}</p></div>
      <div class="doing"><button class="button main" @click=${() => leave('/api/session')}>Sign out</button></div></div>
    <div class="grid">
      <section class="panel w6"><h2>Password</h2>${password(data, redraw)}</section>
      <section class="panel w6"><h2>Signed in here</h2>${sessions(data)}</section>
      <section class="panel"><h2>Tokens for scripts and devices</h2>${tokens(data, redraw, reload)}</section></div>`;
}

async function leave(path) {
  if (!await mayLeave()) return;
  await ask('DELETE', path);
  await Promise.all([forgetSent(), remember('account', null)]).catch(problem => console.warn(problem));        // whoever comes next does not see what others sent
  set(null);
  location.hash = '#/campaigns';
  location.reload();
}

function password(data, redraw) {
  const submit = async event => {
    event.preventDefault();
    const form = event.target;
    const { old, fresh, repeated } = form.elements;
    data.fault = fresh.value !== repeated.value ? 'The two new ones are not the same.' : null;
    if (!data.fault) {
      try {
        await ask('PUT', '/api/account/password', { body: { old_password: old.value, new_password: fresh.value } });
        form.reset();
        data.changed = true;
        data.tokens = await get('/api/account/tokens').then(answer => answer.body.items, () => data.tokens);
        say('The password is changed.');
      } catch (problem) {
        const word = { old_password: 'The old password', new_password: 'The new password' };
        data.fault = problem.errors?.length ? problem.errors.map(each => `${word[each.field] ?? ''} ${each.detail}`).join(' ') : problem.message;
      }
    }
    redraw();
    if (data.fault) document.getElementById('password-fault').focus();
  };
  const box = (id, label, complete, hint) => html`<div class="field"><label for=${id}>${label}</label>${hint ? html`<p class="hint" id="${id}-hint">${hint}</p>` : nothing}
    <div class="entry"><input id=${id} name=${id} type="password" autocomplete=${complete} aria-describedby=${hint ? `${id}-hint` : nothing}></div></div>`;
  return html`<form class="form narrow" @submit=${submit}>
    ${data.fault ? html`<p class="message" id="password-fault" tabindex="-1" role="alert">${data.fault}</p>` : data.changed ? html`<p>Changed. Other sessions and all tokens have ended.</p>` : nothing}
    ${box('old', 'Old password', 'current-password')}${box('fresh', 'New password', 'new-password', 'At least 12 characters.')}${box('repeated', 'The new one again', 'new-password')}
    <div class="form-foot"><button class="button" type="submit">Change it</button><span class="small muted">Other sessions and all tokens end with it.</span></div></form>`;
}

const sessions = data => html`<ul class="plain-list">${data.sessions.map(each => html`<li>${device(each.device)}${each.this_one ? html` <span class="mark solid">this one</span>` : nothing}
    <span class="small muted">since ${moment(each.created_at)}, last used ${moment(each.seen_at)}, ends ${moment(each.expires_at)}</span></li>`)}</ul>
  <p class="form-foot"><button class="button" @click=${() => leave('/api/account/sessions')}>Sign out everywhere</button></p>`;

function device(agent) {
  const browser = /Firefox\//.test(agent) ? 'Firefox' : /Edg\//.test(agent) ? 'Edge' : /Chrom(e|ium)\//.test(agent) ? 'Chromium or Chrome' : /Safari\//.test(agent) ? 'Safari' : 'A browser';
  const system = /Android/.test(agent) ? 'Android' : /iPad|iPhone/.test(agent) ? 'iOS' : /Windows/.test(agent) ? 'Windows' : /Mac OS/.test(agent) ? 'macOS' : /Linux/.test(agent) ? 'Linux' : '';
  return system ? `${browser} on ${system}` : browser;
}

function tokens(data, redraw, reload) {
  const make = async event => {
    event.preventDefault();
    const { elements } = event.target;
    try {
      data.made = (await ask('POST', '/api/account/tokens', { body: { name: elements.name.value, role: elements.role.value, days: Number(elements.days.value) } })).body;
      data.tokenFault = null;
      data.tokens = (await get('/api/account/tokens')).body.items;
      event.target.reset();
    } catch (problem) {
      data.tokenFault = problem.errors?.length ? problem.errors.map(each => `${each.field} ${each.detail}`).join(' ') : problem.message;
    }
    redraw();
    document.getElementById(data.tokenFault ? 'token-fault' : 'token-made')?.focus();
  };
  const revoke = async token => {
    if (!await confirm({ title: `Revoke "${token.name}"?`, text: 'Whatever uses this token is refused from now on.', verb: 'Revoke it' })) return;
    await ask('DELETE', `/api/account/tokens/${token.id}`);
    await reload();
  };
  const roles = [...new Set([data.me.role, ...(data.me.role === 'administrator' ? [] : ['reader'])])];
  return html`<p class="muted">A token lets a script or a dosimeter reader in as you, or only to read. Each can be revoked.</p>
    ${data.made ? html`<div class="panel once" id="token-made" tabindex="-1"><h3>Copy it now: it is not shown again</h3><p><code class="secret">${data.made.secret}</code></p><p class="small muted">Send it as <code>Authorization: Bearer …</code>. It ends on ${moment(data.made.expires_at)}.</p></div>` : nothing}
    ${data.tokenFault ? html`<p class="message" id="token-fault" tabindex="-1" role="alert">${data.tokenFault}</p>` : nothing}
    ${data.tokens.length === 0 ? html`<p>No tokens yet.</p>` : html`<div class="table" tabindex="0" role="region" aria-label="Tokens"><table><thead><tr><th scope="col">Token</th><th scope="col">Role</th><th scope="col" class="mid-only">Made</th><th scope="col">Ends</th><th scope="col"><span class="spoken">Revoke</span></th></tr></thead>
      <tbody>${data.tokens.map(token => html`<tr><th scope="row">${token.name}</th><td>${roleWord(token.role)}</td><td class="mid-only">${moment(token.created_at)}</td><td>${token.revoked_at ? `revoked ${moment(token.revoked_at)}` : moment(token.expires_at)}</td>
        <td>${token.revoked_at ? nothing : html`<button class="button little" @click=${() => revoke(token)}>Revoke …<span class="spoken"> ${token.name}</span></button>`}</td></tr>`)}</tbody></table></div>`}
    <form class="inline-form" @submit=${make}>
      <div class="field"><label for="token-name">Name of a new token</label><div class="entry"><input id="token-name" name="name" required autocomplete="off"></div></div>
      <div class="field"><label for="token-role">May do</label><select id="token-role" name="role">${roles.map(role => html`<option value=${role}>${role === 'reader' ? 'only read' : `as ${roleWord(role).toLowerCase()}`}</option>`)}</select></div>
      <div class="field"><label for="token-days">Days until it ends</label><div class="entry"><input id="token-days" name="days" class="short" type="text" inputmode="numeric" value="30" required></div></div>
      <button class="button" type="submit">Make a token</button></form>`;
}
