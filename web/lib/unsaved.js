// Asks before a form with something typed in it is left; nothing is dropped without a question.
import { confirm } from './confirm.js';

let changed = () => false;
let staying = '';

/** @param look says whether something was typed that is not saved; none: nothing is */
export const watch = (look = () => false) => { changed = look; };

/**
 * Whether the page goes on to another address. If something would be lost, the address stays and the question is asked; on yes the
 * address changes once more.
 */
export function goesOn(from) {
  if (!changed()) return true;
  const to = location.hash;
  history.replaceState(history.state, '', from);
  if (staying !== '') return false;
  staying = to;
  confirm({ title: 'Leave without saving?', text: 'What you typed in this form is not saved.', verb: 'Leave without saving', keep: 'Stay here' }).then(leave => {
    staying = '';
    if (!leave) return;
    watch();
    location.hash = to;
  });
  return false;
}

window.addEventListener('beforeunload', event => {
  if (changed()) event.preventDefault();
});
