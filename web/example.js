// A made-up job for a newcomer to look at: the maker, the shop and the owner
// don't exist, and the readings are those of a reckoned crank.

export function example() {
  return {
    number: 'Example: CB 0417',
    engine: 'Calderbrook 499 single, 1951',
    owner: 'J. Marlowe',
    'date.in': '2026-03-02',
    'date.out': '2026-03-13',
    notes: 'Came in with big-end knock. New crankpin and bush, new mains.\nAn example: Calderbrook and its owner are made up.',
    tolerance: '2',
    centres: 'good',
    throw: '42',
    rim: '190',
    ...half('drive'),
    ...half('timing'),
    ...round('1', 1, ['4.5', '8'], ['4.5', '4']),
    'pass.1.note': 'Pressed up dry, before truing.',
    ...did('1', 'strike', 'timing', '3', '1.5'),
    ...round('2', 2, ['2.5', '6:30'], ['2.5', '5:30']),
    ...did('2', 'squeeze', '', '6', '2'),
    ...round('3', 3, ['0.5', '7:30'], ['0.5', '3:30']),
    bench: '1', // as found: what follows is stepped through
    ...found,
    ...lightened,
    ...balanced,
    ...fitted,
  };
}

function half(side) {
  return { [`${side}.at`]: '75', [`${side}.pin`]: '120', [`${side}.bearing`]: '70', [`${side}.tip`]: '10', [`${side}.division`]: '0.5' };
}

function round(key, order, drive, timing) {
  const at = `pass.${key}.`;
  return {
    [`${at}order`]: String(order),
    [`${at}drive.tir`]: drive[0],
    [`${at}drive.high`]: drive[1],
    [`${at}timing.tir`]: timing[0],
    [`${at}timing.high`]: timing[1],
  };
}

function did(key, kind, wheel, hour, strength) {
  const at = `pass.${key}.done.1.`;
  const fields = { [`${at}kind`]: kind, [`${at}hour`]: hour, [`${at}strength`]: strength, [`${at}order`]: '1' };
  return wheel ? { ...fields, [`${at}wheel`]: wheel } : fields;
}

const found = {
  'found.rock': '14',
  'found.pin': '31.7',
  'found.width': '18',
  'found.side': '16',
  ...Object.fromEntries(['oilways', 'sludge', 'cracks', 'pinseats', 'tapers', 'threads', 'keyways', 'witness'].map((what) => [`found.${what}`, 'good'])),
};

const lightened = {
  'wheel.drive.diameter': '190',
  'wheel.drive.width': '26',
  'wheel.drive.bore': '24',
  'wheel.drive.pinhole': '22',
  'cut.1.order': '1',
  'cut.1.from': '70',
  'cut.1.to': '150',
  'cut.1.depth': '5',
  'lighten.idle': '900',
};

const balanced = {
  'weight.piston': '310',
  'weight.rings': '18',
  'weight.gudgeon': '62',
  'weight.clips': '2',
  'weight.small': '165',
  'weight.big': '410',
  'weight.bearing': '95',
  'weight.crankpin': '420',
  'knife.whole.hung': '141',
  target: 'factor',
  'target.factor': '58',
};

const fitted = {
  'bigend.pin': '31.750 31.748 31.750',
  'bigend.bush': '31.792 31.790',
  'bigend.least': '1.5',
  'bigend.most': '2.5',
  'press.drive': '26',
  'press.timing': '26',
  'press.rod': '18',
  'press.over': '70.35',
  'float.faces': '100.20',
  'float.crank': '98.80',
  'float.washers': '1.20',
  'cases.drive': '1',
  'cases.timing': '0.5',
};
