// What stands on the page, and what of it is not saved yet. A copy survives a reload.

export const state = {
  folder: '', version: '', today: '', empty: true,
  washes: { columns: [], rows: [] },
  treatments: { columns: [], rows: [] },
  place: null, plans: [], climates: [], questions: [], controls: [], thresholds: [], neighbours: [],
  methods: [], frames: [],
  dirty: false, hive: '', stand: null,
};

const listeners = [];

/** Calls a function after every change of what is or is not saved. */
export function whenChanged(listener) {
  listeners.push(listener);
}

function tell() {
  listeners.forEach((listener) => listener());
}

// Each tab keeps a copy of its own under its name. While a tab is open it holds a lock of that
// name, so that another can tell a copy in use from one that a closed tab has left.
const TAB = 'broodtide-tab';
const COPY = /^hives:([0-9a-f]+-[0-9a-f]+):([^]*)$/;
const PATIENCE = 1000;
let tab = '';

const newName = () => Array.from(
  crypto.getRandomValues(new Uint32Array(2)), (part) => part.toString(16)).join('-');
const lock = (name) => `broodtide-tab:${name}`;
const key = () => `hives:${tab}:${state.folder}`;

/** Holds the lock of a name as long as the page is open; false where another tab holds it. */
function hold(name) {
  if (!navigator.locks) {
    return Promise.resolve(true);
  }
  return new Promise((done) => {
    navigator.locks.request(lock(name), { signal: AbortSignal.timeout(PATIENCE) }, () => {
      done(true);
      return new Promise(() => {});
    }).catch(() => done(false));
  });
}

/** Gives this tab its name, which a reload keeps and no other open tab has. */
export async function nameTab() {
  let kept = '';
  try {
    kept = sessionStorage.getItem(TAB) ?? '';
  } catch {
    // the name lasts as long as the page then
  }
  // A duplicate of a tab begins with the name of the first, which still holds its lock.
  tab = kept && await hold(kept) ? kept : newName();
  if (tab !== kept) {
    await hold(tab);
    try {
      sessionStorage.setItem(TAB, tab);
    } catch {
      // as above
    }
  }
}

/** Notes that something was changed, and keeps a copy of it in this browser. */
export function changed() {
  state.dirty = true;
  state.stand = null;
  remember();
  tell();
}

function remember() {
  const { version, washes, treatments, place, plans } = state;
  try {
    localStorage.setItem(key(), JSON.stringify({
      version, washes, treatments, place, plans, at: Date.now(),
    }));
  } catch {
    // nothing survives a reload then; the bar says that it is not saved
  }
}

/** Notes that everything was saved. */
export function saved(version) {
  state.version = version;
  state.dirty = false;
  forget();
  tell();
}

/** Drops the copy. */
export function forget() {
  try {
    localStorage.removeItem(key());
  } catch {
    // there is none then
  }
}

function copyAt(name) {
  return JSON.parse(localStorage.getItem(name) ?? 'null');
}

/** Names of copies of this folder that closed tabs have left, the newest first. */
async function strays() {
  const held = new Set(((await navigator.locks?.query())?.held ?? []).map((one) => one.name));
  return Object.keys(localStorage)
    .filter((name) => {
      const found = COPY.exec(name);
      return found && found[2] === state.folder && !held.has(lock(found[1]));
    })
    .sort((a, b) => copyAt(b).at - copyAt(a).at);
}

/** The copy that an earlier visit of this tab left, or else a tab that is closed; null for none. */
export async function left() {
  try {
    const own = copyAt(key());
    const [stray] = own ? [] : await strays();
    if (!stray) {
      return own;
    }
    const copy = copyAt(stray);
    localStorage.setItem(key(), JSON.stringify(copy));
    localStorage.removeItem(stray);
    return copy;
  } catch {
    return null;
  }
}

/** Takes over a copy; it stays unsaved. */
export function takeOver(copy) {
  state.washes = copy.washes;
  state.treatments = copy.treatments;
  state.place = copy.place;
  state.plans = copy.plans;
  state.dirty = true;
  tell();
}

/** Takes over what the program read from the files. */
export function takeLoaded(loaded) {
  Object.assign(state, {
    folder: loaded.folder, version: loaded.version, today: loaded.today, empty: loaded.empty,
    washes: { columns: loaded.washes.columns, rows: loaded.washes.rows },
    treatments: { columns: loaded.treatments.columns, rows: loaded.treatments.rows },
    climates: loaded.climates, questions: loaded.questions, controls: loaded.controls, thresholds: loaded.thresholds,
    neighbours: loaded.neighbours, methods: loaded.methods, frames: loaded.frames, stand: null, dirty: false,
  });
  const { study } = loaded;
  state.place = study.there
    ? {
      climate: study.climate, south: study.south, neighbours: study.neighbours,
      threshold: study.threshold, supers: study.supers, winterBees: study.winterBees,
      title: study.climateTitle, shipped: study.shipped,
    }
    : null;
  state.plans = study.plans ?? [];
  tell();
}

/** Names of the hives in the table, in its order. */
export function hives() {
  const at = state.washes.columns.indexOf('colony');
  return [...new Set(state.washes.rows.map((row) => row[at] ?? '').filter((name) => name))];
}

/** Makes sure that a table has a column; gives its place. */
export function column(table, name) {
  let at = table.columns.indexOf(name);
  if (at < 0) {
    table.columns.push(name);
    table.rows.forEach((row) => row.push(''));
    at = table.columns.length - 1;
  }
  return at;
}
