// Asking the program: everything about the user's files is sent with the token of the start.

const KEY = 'broodtide-token';
const PAGE = crypto.getRandomValues(new Uint32Array(2)).join('-');

/** The files were changed by somebody else. */
export class Changed extends Error {}

/** Nobody answers any more. */
export class Gone extends Error {}

/** Takes the token out of the address, where the program put it, and keeps it for this tab. */
export function keepToken() {
  // The address of a new start, put into the tab of an old one, moves within the page alone.
  addEventListener('hashchange', () => {
    if (location.hash.startsWith('#start=')) {
      location.reload();
    }
  });
  const found = /^#start=([0-9a-f]+)$/.exec(location.hash);
  if (found) {
    try {
      sessionStorage.setItem(KEY, found[1]);
    } catch {
      return; // storage is switched off; the address keeps the token
    }
    history.replaceState(null, '', location.pathname);
  }
}

function token() {
  try {
    return sessionStorage.getItem(KEY) ?? '';
  } catch {
    return (/start=([0-9a-f]+)/.exec(location.hash) ?? ['', ''])[1];
  }
}

/** Sends something and gives the answer; what is refused becomes an error with its message. */
export async function send(what, body = {}) {
  const answer = await fetch(`/api/hives/${what}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'X-Broodtide-Token': token() },
    body: JSON.stringify({ page: PAGE, ...body }),
  }).catch(() => { throw new Gone(); });
  const found = await answer.json();
  if (answer.status === 409) {
    throw new Changed(found.error);
  }
  if (!answer.ok) {
    throw new Error(found.error);
  }
  return found;
}

/** What to tell people of an error. */
export function words(error) {
  return error instanceof Gone
    ? 'The program no longer answers. What you typed is kept in this browser. Start Broodtide again, '
      + 'or take a copy of the counts.'
    : error.message;
}

const rest = (milliseconds) => new Promise((done) => { setTimeout(done, milliseconds); });

let begun = Promise.resolve();

/** Begins one work after the other, in the order in which they are asked for. */
function begin(what, body) {
  const next = begun.then(() => send('work', { what, ...body }));
  begun = next.then(() => {}, () => {});
  return next;
}

/** Works something out; tells how far it is, and ends with the answer, or null when overtaken. */
export async function work(what, body, progress) {
  let state = await begin(what, body);
  const { job } = state;
  let pause = 60;
  while (state.state === 'waiting' || state.state === 'working') {
    progress(state);
    await rest(pause);
    pause = Math.min(300, pause * 1.4);
    state = await send('job');
    if (state.job !== job) {
      return null;
    }
  }
  if (state.state === 'done') {
    return state.answer;
  }
  if (state.state === 'stopped') {
    return null;
  }
  throw new Error(state.message || 'The work has ended without an answer. Ask once more.');
}

/** Stops what is being worked out for this page. */
export function cancel() {
  return send('cancel');
}
