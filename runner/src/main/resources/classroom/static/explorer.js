// The explorer: dials ask the engine, charts show what it says.

import './page.js';
import { ask, askPicture, dayAfter, dayWords, element, troubleWords } from './dom.js';
import { Chart } from './chart.js';
import { dayText, fillMonths } from './readout.js';

const NARROW = 560; // px: below this the picture from inside is drawn for a phone
const QUIET = 350; // ms without a turn before the sentences change, so that they can be read out

const form = document.querySelector('.dials');
const daySlider = document.getElementById('dial-day');
const get = (id) => document.getElementById(id);
const letters = 'capped brood'.length;
const charts = {
  mites: new Chart(get('plot-mites'), { height: 11.5, spanNames: true, letters }),
  bees: new Chart(get('plot-bees'), { height: 8.5, letters }),
  wash: new Chart(get('plot-wash'), { height: 8.5, letters }),
};

let season = null;
let kept = null;
let asking = null;
let quiet = 0;

const dateOf = (slider) => dayAfter(slider.dataset.first, Number(slider.value));

/** What a slider says, in words. */
function sliderWords(slider) {
  const value = Number(slider.value);
  switch (slider.name) {
    case 'mites': {
      const wash = Math.round(value * 3);
      return `${value.toFixed(1)} per 100 bees (${wash} in a wash of 300)`;
    }
    case 'brood':
      return value === 1 ? 'average' : `${Math.round(value * 100)} % of average`;
    case 'arrivals':
      return value === 0 ? 'none' : `${value} a day, July to November`;
    default:
      return dayWords(dateOf(slider));
  }
}

function nameSliders() {
  document.querySelectorAll('input[type="range"]').forEach((slider) => {
    const words = sliderWords(slider);
    get(`out-${slider.name}`).textContent = words;
    slider.setAttribute('aria-valuetext', words);
  });
  get('when-comb').hidden = form.elements.comb.value === 'none';
  get('when-treatment').hidden = form.elements.treatment.value === 'none';
}

function query() {
  const values = new URLSearchParams();
  ['climate', 'mites', 'brood', 'comb', 'treatment', 'arrivals'].forEach((name) => {
    values.set(name, form.elements[name].value);
  });
  ['combon', 'treaton'].forEach((name) => values.set(name, dateOf(form.elements[name])));
  return values;
}

async function play() {
  nameSliders();
  asking?.abort();
  asking = new AbortController();
  try {
    season = await ask(`/api/season?${query()}`, asking.signal);
    get('problem').textContent = '';
    show();
  } catch (error) {
    get('problem').textContent = troubleWords(error);
  }
}

function line(name, values, kind, keptLine = false) {
  return { name, values, kind, start: season.start, kept: keptLine, beyond: season.beyond };
}

function lines(pairs) {
  const now = pairs.map(([name, series, kind]) => line(name, season.series[series], kind));
  const before = kept
    ? pairs.map(([name, series, kind]) => line(name, kept.series[series], kind, true)) : [];
  return [...before, ...now];
}

function show() {
  const shared = { start: season.start, end: season.end, spans: season.spans };
  charts.mites.show({
    ...shared,
    label: 'Mites in the whole hive',
    marks: season.marks,
    lines: lines([['on bees', 'onBees', 0], ['in brood', 'inBrood', 1]]),
  });
  charts.bees.show({
    ...shared,
    label: 'Bees and capped brood',
    lines: lines([['bees', 'bees', 0], ['capped brood', 'brood', 1]]),
  });
  charts.wash.show({
    ...shared,
    label: 'What a wash finds, mites per 100 bees',
    threshold: season.threshold,
    top: washTop(),
    lines: lines([['wash', 'infestation', 3]]),
  });
  readDay();
  fillMonths(get('months'), season);
  window.clearTimeout(quiet);
  quiet = window.setTimeout(tell, get('wash').textContent ? QUIET : 0);
}

/** A colony that dies has hundreds of mites per 100 bees; what matters happens far below. */
function washTop() {
  const all = [...season.series.infestation, ...(kept?.series.infestation ?? [])];
  return Math.min(15, Math.max(5, ...all));
}

/** The season from inside, once the dials are still. */
async function showInside() {
  const host = get('inside');
  const width = host.clientWidth < NARROW ? '/narrow' : '';
  try {
    host.replaceChildren(await askPicture(`/api/inside${width}?${query()}`, asking.signal));
  } catch (error) {
    get('problem').textContent = troubleWords(error);
  }
}

/** The sentences, once the dials are still. */
function tell() {
  showInside();
  get('wash').textContent = season.wash;
  get('outcome').textContent = season.outcome;
  get('notes').replaceChildren(...season.notes.map((note) => element('li', note)));
}

function readDay() {
  const day = Number(daySlider.value);
  Object.values(charts).forEach((chart) => chart.read(day));
  get('readout').textContent = season ? dayText(season, day) : '';
}

form.addEventListener('input', play);
form.addEventListener('submit', (event) => event.preventDefault());
form.addEventListener('reset', () => window.setTimeout(play));
daySlider.addEventListener('input', () => {
  nameSliders();
  readDay();
});
Object.values(charts).forEach((chart) => {
  chart.onDay = (day) => {
    daySlider.value = day;
    nameSliders();
    readDay();
  };
});

get('keep').addEventListener('click', () => {
  kept = season;
  get('forget').hidden = false;
  show();
});
get('forget').addEventListener('click', () => {
  kept = null;
  get('forget').hidden = true;
  get('keep').focus();
  show();
});

play();
