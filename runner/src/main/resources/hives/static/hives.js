// The page for one's own hives: steps, saving, and what is said when something changed or is gone.

import { element } from './dom.js';
import { Changed, Gone, cancel, keepToken, send, words, work } from './asking.js';
import {
  changed, forget, left, nameTab, saved, state, takeLoaded, takeOver, whenChanged,
} from './draft.js';
import { showWhere } from './where.js';
import { showCounts } from './counts.js';
import { showDone } from './done.js';
import { showStand } from './stand.js';
import { showPlans } from './plans.js';
import { showAway } from './takeaway.js';

const SHOW = {
  where: showWhere, counts: showCounts, done: showDone, stand: showStand, plans: showPlans,
  away: showAway,
};
const notice = document.getElementById('notice');
const bar = document.getElementById('work');
let asked = 0;
let running = 0;
let saving = false;

// Until the files are loaded and what was typed is looked for, no step begins its work.
let ready = false;

/** Says something above the page, with buttons if need be. */
export function say(text, buttons = []) {
  notice.replaceChildren();
  if (!text) {
    return;
  }
  const box = element('div', '', 'problem');
  box.append(element('p', text));
  if (buttons.length > 0) {
    const row = element('p', '', 'buttons');
    for (const [label, act] of buttons) {
      const button = element('button', label);
      button.type = 'button';
      button.addEventListener('click', act);
      row.append(button);
    }
    box.append(row);
  }
  notice.append(box);
}

/** Says what went wrong. */
export function trouble(error) {
  if (error instanceof Changed) {
    say(error.message, [
      ['Load the files', () => { forget(); load(false); }],
      ['Keep what I typed', keepMine],
    ]);
  } else {
    say(words(error), error instanceof Gone ? [['Try again', () => save()]] : []);
  }
}

async function keepMine() {
  try {
    const loaded = await send('load');
    state.version = loaded.version;
    changed();
    say('What you typed is on the page. Save puts it in place of the files; '
      + 'their last version stays beside them, as washes.before.csv.');
  } catch (error) {
    trouble(error);
  }
}

/** Saves what stands on the page; gives whether it is saved. */
export async function save(withoutRemarks = false) {
  if (!state.place) {
    say('First say where your hives are.', [['Your place', () => { location.hash = '#where'; }]]);
    return false;
  }
  saving = true;
  try {
    const { version, washes, treatments, place, plans } = state;
    const answer = await send('save', {
      version, washes, treatments, place, plans, withoutRemarks,
    });
    if (answer.lost.length > 0) {
      say('Nothing is saved yet. Saving takes these remarks out of study.json, because they are inside '
        + `what you changed: ${answer.lost.join(' ')} The last version stays beside it, as `
        + 'study.before.json.', [['Save without these remarks', () => save(true)]]);
      return false;
    }
    saved(answer.version);
    say('');
    return true;
  } catch (error) {
    trouble(error);
    return false;
  } finally {
    saving = false;
  }
}

/** Notices what a command or another page did to the files; gives whether they are as shown. */
async function asShown() {
  const before = state.version;
  const { version } = await send('version');
  // What this page saves meanwhile is no news.
  if (version === state.version || before !== state.version || saving) {
    return true;
  }
  if (state.dirty) {
    trouble(new Changed('The files were changed by another page or program. What you typed is not saved.'));
  } else {
    await load(false);
    say('The files were changed by another page or program. This page shows them as they are now.');
  }
  return false;
}

/** Works something out while a bar shows how far it is; saves first. Null when it was stopped. */
export async function answer(what, body) {
  let now = 0;
  const mine = ++asked;
  try {
    // Whoever asks later must also begin later, or the older question would stop the newer one.
    if ((state.dirty ? !(await save()) : !(await asShown())) || mine !== asked) {
      return null;
    }
    now = ++running;
    bar.hidden = false;
    return await work(what, body, (step) => {
      document.getElementById('work-words').textContent = step.what
        ? step.what.charAt(0).toUpperCase() + step.what.slice(1) : 'Waiting';
      /** @type {HTMLProgressElement} */ (document.getElementById('work-bar')).value = step.percent;
    });
  } catch (error) {
    trouble(error);
    return null;
  } finally {
    // What was overtaken leaves the bar to what overtook it.
    bar.hidden = bar.hidden || now === running;
  }
}

async function load(withDraft) {
  try {
    const loaded = await send('load');
    takeLoaded(loaded);
    const faults = [loaded.washes.fault, loaded.treatments.fault, loaded.study.fault]
      .filter((fault) => fault);
    const copy = withDraft ? await left() : null;
    document.getElementById('folder').textContent = `Your files: ${loaded.folder}`;
    ready = true;
    if (copy && copy.version === loaded.version) {
      takeOver(copy);
      say('What you typed before is back. It is not saved yet.');
    } else if (copy) {
      say('This browser keeps what you typed before, and the files were changed since.', [
        ['Use what I typed', () => { takeOver(copy); say(''); show(); }],
        ['Leave it', () => { forget(); say(''); }],
      ]);
    } else {
      say(faults.join(' '));
    }
    show();
  } catch (error) {
    trouble(error);
  }
}

function here() {
  const name = location.hash.slice(1);
  if (name in SHOW) {
    return name;
  }
  return state.place ? (state.washes.rows.length > 0 ? 'stand' : 'counts') : 'where';
}

function show() {
  const name = here();
  document.querySelectorAll('.screen').forEach((screen) => {
    screen.toggleAttribute('hidden', screen.id !== name);
  });
  for (const link of document.querySelectorAll('.steps a')) {
    if (link.getAttribute('href') === `#${name}`) {
      link.setAttribute('aria-current', 'step');
    } else {
      link.removeAttribute('aria-current');
    }
  }
  SHOW[name]();
}

whenChanged(() => {
  document.getElementById('unsaved').textContent = state.dirty ? 'Not saved yet.' : 'Saved.';
  document.getElementById('save').toggleAttribute('disabled', !state.dirty);
});
document.getElementById('save').addEventListener('click', () => { save(); });
document.getElementById('stop').addEventListener('click', () => { cancel().catch(trouble); });
window.addEventListener('hashchange', () => {
  if (ready) {
    show();
    document.getElementById(here()).querySelector('h2').scrollIntoView({ block: 'nearest' });
  }
});
window.addEventListener('focus', () => {
  if (ready) {
    asShown().catch(trouble);
  }
});

keepToken();
nameTab().then(() => load(true));
