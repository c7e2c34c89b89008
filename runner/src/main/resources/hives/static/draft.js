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

const key = () => `hives:${state.folder}`;

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
    localStorage.setItem(key(), JSON.stringify({ version, washes, treatments, place, plans }));
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

/** The copy that an earlier visit left; null for none. */
export function left() {
  try {
    return JSON.parse(localStorage.getItem(key()) ?? 'null');
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
