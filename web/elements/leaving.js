// Before somebody signs out: what is kept on this tablet and not sent yet is asked about, never dropped.
import { html, nothing, render } from '../lib/vendor.js';
import { countUnsent } from '../lib/outbox.js';
import { send, sending } from '../lib/sender.js';
import { mine } from '../lib/who.js';

const words = count => (count === 1 ? '1 entry is not sent yet' : `${count} entries are not sent yet`);

/** @returns {Promise<boolean>} whether to sign out now */
export async function mayLeave() {
  const first = await countUnsent(mine).catch(() => 0);
  if (first === 0) return true;
  return new Promise(done => {
    const dialog = document.createElement('dialog');
    dialog.className = 'leaving';
    dialog.setAttribute('aria-labelledby', 'leaving-title');
    const state = { count: first, busy: false, told: '', go: false };
    const close = go => { state.go = go; dialog.close(); };
    const sendAll = async () => {
      if (state.busy) return;
      Object.assign(state, { busy: true, told: '' });
      draw();
      await send();
      state.count = await countUnsent(mine);
      state.busy = false;
      if (state.count === 0) { close(true); return; }
      state.told = `Still ${words(state.count)}. ${sending.trouble || 'What needs somebody is on the log page.'}`;
      draw();
    };
    const draw = () => render(html`<h2 id="leaving-title">${words(state.count)}</h2>
      <p>Signing out deletes nothing: what is not sent stays on this tablet and goes out once you sign in here again.</p>
      <p class="message" role="alert">${state.told || nothing}</p>
      <div class="doing"><button type="button" class="button main" id="leaving-send" @click=${sendAll}>${state.busy ? 'Sending …' : 'Send, then sign out'}</button>
        <button type="button" class="button" id="leaving-keep" @click=${() => close(true)}>Keep on this tablet, sign out</button>
        <button type="button" class="button" id="leaving-stay" @click=${() => close(false)}>Stay signed in</button></div>`, dialog);
    draw();
    dialog.addEventListener('close', () => { dialog.remove(); done(state.go); });
    document.body.append(dialog);
    dialog.showModal();
    dialog.querySelector('#leaving-send').focus();
  });
}
