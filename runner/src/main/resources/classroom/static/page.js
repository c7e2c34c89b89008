// What every page has: large type for a projector, remembered in this browser, and printing.

const button = document.getElementById('large');
const root = document.documentElement;

function remembered() {
  try {
    return localStorage.getItem('large-type') === 'yes';
  } catch {
    return false; // storage can be switched off; the button works all the same
  }
}

function show(large) {
  if (large) {
    root.dataset.size = 'large';
  } else {
    delete root.dataset.size;
  }
  button.setAttribute('aria-pressed', String(large));
  window.dispatchEvent(new Event('resize'));
}

button.addEventListener('click', () => {
  const large = root.dataset.size !== 'large';
  show(large);
  try {
    localStorage.setItem('large-type', large ? 'yes' : 'no');
  } catch {
    // not remembered then
  }
});

show(remembered());

document.getElementById('print')?.addEventListener('click', () => window.print());
