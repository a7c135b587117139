// What has become of an entry, as a shape and a word: kept, sending, sent, needs you.
import { html, svg } from '../lib/vendor.js';
import { timeHere } from '../lib/tablet.js';

const SHAPE = {
  kept: svg`<circle class="ring" cx="8" cy="8" r="6"></circle>`,
  sending: svg`<circle class="ring" cx="8" cy="8" r="6"></circle><path class="full" d="M8 2a6 6 0 0 0 0 12z"></path>`,
  sent: svg`<circle class="ring full" cx="8" cy="8" r="6"></circle>`,
  needs: svg`<path class="decide" d="M8 1 15 8 8 15 1 8z"></path>`,
};
const SHAPE_OF = { kept: 'kept', handing: 'kept', sending: 'sending', sent: 'sent', handed: 'sent', needs: 'needs' };
const WORD = { kept: 'kept', handing: 'kept, for the RPO', sending: 'sending', needs: 'needs you' };

export function stateMark(record, sendingId) {
  const state = record.id === sendingId ? 'sending' : record.state;
  const word = state === 'sent' ? `sent ${timeHere(record.sent_at)}` : state === 'handed' ? `with the RPO since ${timeHere(record.sent_at)}` : WORD[state];
  return html`<span class="log-state ${SHAPE_OF[state]}" data-state=${state}>${svg`<svg viewBox="0 0 16 16" aria-hidden="true">${SHAPE[SHAPE_OF[state]]}</svg>`}<span>${word}</span></span>`;
}
