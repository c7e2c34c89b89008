// Many washes from one colony on one day: how much counts differ by chance.

import { ask, draw, element, pairList, SVG } from './dom.js';

export function washesTask(form) {
  const get = (id) => /** @type {HTMLInputElement} */ (document.getElementById(id));
  const bees = Number(form.dataset.bees);
  const whole = (id) => (/^[0-9]+$/.test(get(id).value.trim()) ? Number(get(id).value) : NaN);

  const ownCounts = () => get('counted').value.split(/[\s,;]+/).filter(Boolean)
    .map((text) => (/^[0-9]+$/.test(text) ? Number(text) : NaN));

  get('more').addEventListener('click', () => {
    get('seed').value = String((whole('seed') + 1) % 1000000);
    form.dispatchEvent(new Event('again'));
  });

  return {
    taken: () => ({ words: `${whole('lowest')} to ${whole('highest')}` }),
    clear() {
      get('lowest').value = '';
      get('highest').value = '';
    },
    /** What the washes show where nobody typed a range: the class showed hands. */
    async alone(name) {
      const drawn = await ask(`/api/lessons/${name}/washes?seed=${whole('seed') || 0}`);
      const [low, high] = [Math.min(...drawn.counts), Math.max(...drawn.counts)];
      return {
        verdict: `The washes found ${low} to ${high} mites, ${high - low} apart.`,
        shown: [dots(drawn), note(drawn)],
      };
    },
    pairs: (all) => ({ verdict: '', shown: pairList(all, () => '') }),
    problem() {
      const [low, high, seed] = [whole('lowest'), whole('highest'), whole('seed')];
      if (!(low >= 0 && high <= bees && low <= high)) {
        return `Give the lowest and the highest count you expect, whole numbers from 0 to ${bees}.`;
      }
      const own = ownCounts();
      if (own.length > 200 || own.some((c) => !(c >= 0 && c <= bees))) {
        return `The class's counts are whole numbers from 0 to ${bees}, at most 200 of them.`;
      }
      return seed >= 0 && seed <= 999999 ? '' : 'The seed is a whole number from 0 to 999999.';
    },
    async reveal(answer, name) {
      const drawn = await ask(`/api/lessons/${name}/washes?seed=${whole('seed')}`);
      const [low, high] = [whole('lowest'), whole('highest')];
      const inside = drawn.counts.filter((c) => c >= low && c <= high).length;
      get('more').hidden = false;
      const verdict = `The washes found ${Math.min(...drawn.counts)} to ${Math.max(...drawn.counts)}`
        + ` mites. ${inside} of ${drawn.counts.length} lie in your range, ${low} to ${high}.`;
      const own = ownCounts();
      const more = own.length > 0 ? [histogram(own, drawn.theory)] : [];
      return { verdict, shown: [...more, dots(drawn, low, high), note(drawn)] };
    },
  };
}

function note(drawn) {
  return element('p',
    `The 90 % interval of such washes is ${drawn.low} to ${drawn.high} mites. Seed`
    + ` ${drawn.seed}. In order: ${drawn.counts.join(', ')}.`);
}

/** One dot for each wash, stacked over its count; the learner's range, if given, is shaded. */
function dots({ counts, high }, mineLow = NaN, mineHigh = NaN) {
  const figure = element('figure', '', 'chart');
  figure.append(element('figcaption', 'Each dot is one wash'));
  const plot = element('div', '', 'plot');
  const top = Math.max(...counts, high, Math.min(mineHigh || 0, 40)) + 2;
  const stack = new Map();
  const most = Math.max(...counts.map((c) => counts.filter((d) => d === c).length), 4);
  const width = document.querySelector('.lesson').clientWidth;
  const x = (count) => 12 + ((count + 0.5) / (top + 1)) * (width - 24);
  const radius = Math.min(12, (x(1) - x(0)) * 0.45);
  const height = 90 + most * radius * 2.3;
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', `Washes in order: ${counts.join(', ')} mites.`);
  const floor = height - 36;
  const right = Math.min(mineHigh, top);
  if (mineLow >= 0) {
    draw(svg, 'rect',
      { x: x(mineLow - 0.5), y: 4, width: x(right + 0.5) - x(mineLow - 0.5), height: floor - 4, class: 'range' });
    draw(svg, 'text', { x: x(mineLow - 0.5) + 6, y: 20 }, 'your range');
  }
  draw(svg, 'line', { x1: 12, x2: width - 12, y1: floor, y2: floor, class: 'foot-line' });
  const every = [1, 2, 5, 10, 20].find((n) => n * (x(1) - x(0)) > 30) ?? 50;
  for (let count = 0; count <= top; count += every) {
    draw(svg, 'text', { x: x(count), y: floor + 20, 'text-anchor': 'middle' }, String(count));
  }
  counts.forEach((count) => {
    const above = stack.get(count) ?? 0;
    stack.set(count, above + 1);
    draw(svg, 'circle', { cx: x(count), cy: floor - radius * (1.3 + 2.3 * above), r: radius, class: 'washed' });
  });
  plot.append(svg);
  figure.append(plot);
  return figure;
}

/** The class's own counts as bars, and what chance alone makes of so many washes as a line. */
function histogram(own, theory) {
  const figure = element('figure', '', 'chart');
  const within = own.filter((c) => c < theory.length).length;
  figure.append(element('figcaption',
    `The class's own ${own.length} counts (bars), and what chance alone gives (line)`));
  const top = Math.max(...own, theory.findLastIndex((share) => share * own.length > 0.05)) + 1;
  const bars = Array.from({ length: top + 1 }, (_, c) => own.filter((d) => d === c).length);
  const most = Math.max(...bars, ...theory.map((share) => share * own.length), 1);
  const width = document.querySelector('.lesson').clientWidth;
  const height = 240;
  const floor = height - 30;
  const wide = (width - 24) / (top + 1);
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', `The class's counts: ${own.join(', ')}.`
    + (within < own.length ? ' Some lie beyond what chance gives.' : ''));
  const y = (value) => floor - (value / most) * (floor - 10);
  bars.forEach((n, c) => draw(svg, 'rect',
    { x: 12 + c * wide + 1, y: y(n), width: Math.max(1, wide - 2), height: floor - y(n), class: 'own' }));
  const path = theory.slice(0, top + 1)
    .map((share, c) => `${c ? 'L' : 'M'}${(12 + (c + 0.5) * wide).toFixed(1)} ${y(share * own.length).toFixed(1)}`)
    .join('');
  draw(svg, 'path', { d: path, class: 'theory' });
  const every = [1, 2, 5, 10, 20].find((n) => n * wide > 30) ?? 50;
  for (let count = 0; count <= top; count += every) {
    draw(svg, 'text', { x: 12 + (count + 0.5) * wide, y: floor + 20, 'text-anchor': 'middle' }, String(count));
  }
  const plot = element('div', '', 'plot');
  plot.append(svg);
  figure.append(plot);
  return figure;
}
