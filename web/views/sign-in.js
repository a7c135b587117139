// Nobody is signed in yet.
import { html } from '../lib/vendor.js';
import { known, set } from '../lib/who.js';
import { signInForm } from '../elements/sign-in.js';

const state = {};

export const title = () => 'Sign in';

export function body({ redraw, reload }) {
  const done = answer => {
    set(answer);
    if (answer.account.role === 'administrator') location.hash = '#/accounts';
    reload();
  };
  return html`<div class="lead"><div><h1>Sign in</h1>
      <p class="under">${known()?.first ? 'There is no account yet. The terminal in which Kerfbook was started shows a link that makes the first administrator.'
    : 'Accounts are made by your administrator, who also helps when a password is lost.'}</p></div></div>
    <section class="panel door-in" aria-label="Sign in">${signInForm(state, redraw, done)}</section>`;
}
