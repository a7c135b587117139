// Name and password: as a page, and as a dialog where a session ended in the middle of something.
import { html, nothing, render } from '../lib/vendor.js';
import { ask, whenSignedOut } from '../lib/api.js';
import { known, set } from '../lib/who.js';

/** @param done what happens when somebody is signed in */
export function signInForm(state, redraw, done) {
  const submit = async event => {
    event.preventDefault();
    const form = event.target;
    state.busy = true;
    redraw();
    try {
      const answer = await ask('POST', '/api/session', { body: { sign_in_name: form.elements.name.value, password: form.elements.password.value } });
      state.fault = null;
      done(answer.body);
    } catch (problem) {
      state.fault = problem.message;
      redraw();
      form.querySelector('#sign-fault')?.focus();
    } finally {
      state.busy = false;
    }
  };
  return html`<form class="form narrow" @submit=${submit}>
    ${state.fault ? html`<div class="summary" id="sign-fault" tabindex="-1" role="alert"><h2>Not signed in</h2><p>${state.fault}</p></div>` : nothing}
    <div class="field"><label for="sign-name">Name to sign in with</label><div class="entry"><input id="sign-name" name="name" autocomplete="username" autocapitalize="none" spellcheck="false" required .value=${state.name ?? ''}></div></div>
    <div class="field"><label for="sign-password">Password</label><div class="entry"><input id="sign-password" name="password" type="password" autocomplete="current-password" required></div></div>
    <div class="form-foot"><button class="button main" type="submit">${state.busy ? 'Signing in …' : 'Sign in'}</button></div></form>`;
}

let asking = null;

/** Asks in place; what stands in the page behind stays. True when the same person is signed in again. */
function again() {
  asking ??= new Promise(finish => {
    const before = known()?.account;
    const dialog = document.createElement('dialog');
    dialog.setAttribute('aria-labelledby', 'again-title');
    const state = { name: before?.sign_in_name };
    const redraw = () => render(html`<h2 id="again-title">Sign in again</h2>
      <p>You were signed out, or signed in too long ago. What you typed is still there.</p>
      ${signInForm(state, redraw, done)}`, dialog);
    let signedIn = false;
    const done = answer => {
      const same = !before || before.id === answer.account.id;
      set(answer);
      if (!same) { location.reload(); return; }
      signedIn = true;
      dialog.close();
    };
    dialog.addEventListener('close', () => { dialog.remove(); asking = null; finish(signedIn); });
    document.body.append(dialog);
    redraw();
    dialog.showModal();
    dialog.querySelector(state.name ? '#sign-password' : '#sign-name').focus();
  });
  return asking;
}

whenSignedOut(again);
