// Accepted units per quantity with their factor to the first one, and the spellings under which they arrive. Data only.

/**
 * One accepted unit. Number in the first unit of the kind = number x times / over x 10^tenTo.
 * Powers of ten are kept apart so that they can be applied without rounding.
 */
export interface UnitRow {
  /** UCUM, without annotation; the key under which a converted value is found. */
  readonly code: string;
  readonly tenTo: number;
  readonly times?: number;
  readonly over?: number;
  /** Other spellings, lower case, without white space; matched after the same treatment. */
  readonly also?: readonly string[];
  /** Spellings that count only in exactly these letters. */
  readonly exactly?: readonly string[];
  /** A value converted into this unit is rounded half up to a whole number before any comparison. */
  readonly wholeWhenConverted?: true;
}

export interface QuantityUnits {
  readonly units: readonly UnitRow[];
  /** A bare number is complete: a count, or a ratio of like quantities. */
  readonly unitless?: true;
  /** Largest possible number in the first unit, where arithmetic (not medicine) sets one. */
  readonly most?: number;
  /** Sentence for a number that came without a unit. */
  readonly whenMissing?: string;
  /** Units refused on purpose, lower case, with the reason. */
  readonly refused?: Readonly<Record<string, string>>;
  readonly source: string;
}

const rules = 'clinical-rules 1.6, read';
const ucum = 'UCUM, read';
const table = 'terminology.md section 11, read';

const enzyme: QuantityUnits = {
  units: [
    { code: 'U/L', tenTo: 0, also: ['u/l', 'units/l', 'unit/l', 'u/litre', 'u/liter', 'u/lt', 'ui/l'] },
    // UCUM itself does not convert the international unit; for enzymes the two are the same.
    { code: '[IU]/L', tenTo: 0, also: ['iu/l', '[iu]/l', 'iu/litre', 'iu/liter', 'iu/lt', 'i.u./l'] },
    { code: 'mU/mL', tenTo: 0, also: ['mu/ml'] },
    // 1 katal is 1 mol/s, 1 U is 1 umol/min.
    { code: 'ukat/L', tenTo: 0, times: 60, also: ['ukat/l', 'mckat/l'] },
    { code: 'nkat/L', tenTo: -3, times: 60, also: ['nkat/l'] },
  ],
  source: `${table}; katal by definition`,
};

const perMinute: QuantityUnits = {
  units: [
    {
      code: '/min',
      tenTo: 0,
      also: [
        '/min',
        '1/min',
        'min-1',
        'bpm',
        'beats/min',
        'beats/minute',
        'beatsperminute',
        'beat/min',
        'breaths/min',
        'breaths/minute',
        'breathsperminute',
        'breath/min',
        '/minute',
        'perminute',
        'permin',
        'rpm',
      ],
    },
  ],
  source: ucum,
};

const creatinineRatio: QuantityUnits = {
  units: [
    {
      code: 'mg/mmol',
      tenTo: 0,
      also: ['mg/mmol', 'mg/mmolcreat', 'mg/mmolcreatinine', 'mg/mmolcr', 'mgs/mmol', 'mg/mmolk'],
    },
    {
      code: 'g/mol',
      tenTo: 0,
      also: ['g/mol', 'g/molcreat', 'g/molcreatinine', 'g/molk', 'g/molk.', 'g/molcr'],
    },
    { code: 'g/mmol', tenTo: 3, also: ['g/mmol'] },
    { code: 'ug/mmol', tenTo: -3, also: ['ug/mmol', 'mcg/mmol'] },
    { code: 'mg/mg', tenTo: 0, times: 113.1, also: ['mg/mg', 'mg/mgcreat', 'mg/mgcreatinine', 'mg/mgcr'] },
    { code: 'g/g', tenTo: 0, times: 113.1, also: ['g/g', 'g/gcreat', 'g/gcreatinine', 'g/gcr', 'gm/gm'] },
    {
      code: 'mg/g',
      tenTo: -3,
      times: 113.1,
      also: ['mg/g', 'mg/gcreat', 'mg/gcreatinine', 'mg/gcr', 'mg/gm'],
    },
    { code: 'ug/mg', tenTo: -3, times: 113.1, also: ['ug/mg', 'ug/mgcreat', 'mcg/mg', 'mcg/mgcreat'] },
    { code: 'g/kg', tenTo: -3, times: 113.1, also: ['g/kg'] },
  ],
  whenMissing:
    'A ratio without a unit cannot be used: it may be mg/g, mg/mg or mg/mmol, which differ a thousandfold. Send the UCUM unit.',
  refused: {
    '1': 'A ratio in unit 1 cannot be used: it may be mg/mg or mol/mol. Send mg/mg, mg/g or mg/mmol.',
    'mmol/mol': 'A molar ratio cannot be converted without the mass of the protein. Send mg/mmol or mg/g.',
    'umol/g': 'A molar ratio cannot be converted without the mass of the protein. Send mg/mmol or mg/g.',
    'mol/mol': 'A molar ratio cannot be converted without the mass of the protein. Send mg/mmol or mg/g.',
  },
  source: rules,
};

const mass24h: QuantityUnits = {
  units: [
    {
      code: 'mg/(24.h)',
      tenTo: 0,
      also: ['mg/(24.h)', 'mg/24.h', 'mg/24h', 'mg/24hr', 'mg/24hrs', 'mg/24hours', 'mg/24hour', 'mg/(24h)'],
    },
    { code: 'mg/d', tenTo: 0, also: ['mg/d', 'mg/day', 'mgperday', 'mg/dag', 'mg/tag'] },
    {
      code: 'g/(24.h)',
      tenTo: 3,
      also: [
        'g/(24.h)',
        'g/24.h',
        'g/24h',
        'g/24hr',
        'g/24hrs',
        'g/24hours',
        'g/24hour',
        'g/(24h)',
        'gm/24h',
        'gm/24hrs',
      ],
    },
    { code: 'g/d', tenTo: 3, also: ['g/d', 'g/day', 'gm/day', 'gperday'] },
  ],
  source: table,
};

const massConcentration: QuantityUnits = {
  units: [
    { code: 'mg/dL', tenTo: 0, also: ['mg/dl', 'mg%', 'mgs%', 'mg/100ml', 'mgs/dl', 'mg/dlt'] },
    { code: 'g/L', tenTo: 2, also: ['g/l', 'gm/l', 'g/litre', 'g/liter'] },
    { code: 'g/dL', tenTo: 3, also: ['g/dl', 'gm/dl', 'gms/dl', 'g%', 'gm%', 'gms%', 'g/100ml'] },
    { code: 'mg/L', tenTo: -1, also: ['mg/l', 'mg/litre', 'mg/liter', 'ug/ml', 'mcg/ml'] },
  ],
  source: ucum,
};

const micromole = ['umol/l', 'mcmol/l', 'micromol/l', 'umol/litre', 'umol/liter', 'micromoles/l', 'umols/l'];
const milligramPerDecilitre = ['mg/dl', 'mg%', 'mgs%', 'mg/100ml', 'mgs/dl'];
const count9 = [
  '10*9/l',
  '10^9/l',
  'x10^9/l',
  'x10*9/l',
  'x10e9/l',
  '10e9/l',
  'x109/l',
  '109/l',
  '×10^9/l',
  '×109/l',
];
const count3 = [
  '10*3/ul',
  '10^3/ul',
  'x10^3/ul',
  'x10*3/ul',
  'x10e3/ul',
  '10e3/ul',
  'x103/ul',
  '×10^3/ul',
  '×103/ul',
  'k/ul',
  'thou/ul',
  'thousand/ul',
  'th/ul',
  '10*3/mm3',
  '10^3/mm3',
  'x10^3/mm3',
  'x103/mm3',
  'k/mm3',
  'thou/mm3',
  '1000/ul',
  '10*3/mcl',
  'k/mcl',
];

/**
 * Everything a quantity may be sent in.
 *
 * Notes    1. The first unit of a kind is its canonical one.
 *          2. Factors of molar mass are the customary rounded ones of clinical-rules 1.6, so that our figures
 *             agree with the printed ones; the exact molar masses differ in the fifth digit.
 *          3. Spellings other than UCUM are from memory and from the files listed in QUIRKS.md.
 */
export const quantityUnits = {
  pressure: {
    units: [
      {
        code: 'mm[Hg]',
        tenTo: 0,
        also: [
          'mm[hg]',
          'mmhg',
          'mm(hg)',
          'mm.hg',
          'mmofhg',
          'millimeterofmercury',
          'millimetersofmercury',
          'torr',
        ],
        wholeWhenConverted: true,
      },
      { code: 'kPa', tenTo: 0, times: 7.50062, also: ['kpa', 'kilopascal'] },
    ],
    whenMissing: 'A pressure without a unit cannot be used. Send mm[Hg] or kPa (UCUM).',
    source: rules,
  },
  'protein-creatinine-ratio': creatinineRatio,
  'albumin-creatinine-ratio': creatinineRatio,
  'protein-excretion': mass24h,
  'protein-concentration': massConcentration,
  platelets: {
    units: [
      { code: '10*9/L', tenTo: 0, also: count9, exactly: ['G/L', 'Giga/L'] },
      { code: '10*3/uL', tenTo: 0, also: count3 },
      {
        code: '/uL',
        tenTo: -3,
        also: [
          '/ul',
          '/mm3',
          '/cmm',
          '/cumm',
          '/cu.mm',
          'cells/ul',
          'cells/cumm',
          'cells/mm3',
          '1/ul',
          '/mcl',
        ],
      },
      {
        code: '10*5/uL',
        tenTo: 2,
        also: [
          '10*5/ul',
          'lakh/ul',
          'lakhs/ul',
          'lakh/cumm',
          'lakhs/cumm',
          'lakh/mm3',
          'lakhs/mm3',
          'lac/cumm',
          'lacs/cumm',
          'lakh/cmm',
          'lakhs/cmm',
        ],
      },
      { code: '10*6/L', tenTo: -3, also: ['10*6/l', '10^6/l'] },
      { code: '/L', tenTo: -9, also: ['/l'] },
    ],
    source: rules,
  },
  creatinine: {
    units: [
      { code: 'umol/L', tenTo: 0, also: micromole },
      { code: 'mg/dL', tenTo: 0, times: 88.4, also: milligramPerDecilitre },
      { code: 'mg/L', tenTo: -1, times: 88.4, also: ['mg/l'] },
      { code: 'mmol/L', tenTo: 3, also: ['mmol/l'] },
    ],
    source: rules,
  },
  alt: enzyme,
  ast: enzyme,
  ldh: enzyme,
  bilirubin: {
    units: [
      { code: 'umol/L', tenTo: 0, also: micromole },
      { code: 'mg/dL', tenTo: 0, times: 17.1, also: milligramPerDecilitre },
      { code: 'mg/L', tenTo: -1, times: 17.1, also: ['mg/l'] },
    ],
    source: rules,
  },
  haemoglobin: {
    units: [
      { code: 'g/L', tenTo: 0, also: ['g/l', 'gm/l', 'g/litre', 'g/liter'] },
      { code: 'g/dL', tenTo: 1, also: ['g/dl', 'gm/dl', 'gms/dl', 'g%', 'gm%', 'gms%', 'g/100ml'] },
    ],
    refused: {
      'mmol/l':
        'Haemoglobin in mmol/L is not converted: laboratories count one chain or four. Send g/L or g/dL.',
    },
    source: `${ucum}; terminology.md section 4`,
  },
  urate: {
    units: [
      { code: 'umol/L', tenTo: 0, also: micromole },
      { code: 'mmol/L', tenTo: 3, also: ['mmol/l'] },
      { code: 'mg/dL', tenTo: 0, times: 59.484, also: milligramPerDecilitre },
    ],
    source: table,
  },
  fibrinogen: {
    units: [
      { code: 'g/L', tenTo: 0, also: ['g/l', 'gm/l', 'g/litre', 'g/liter'] },
      { code: 'mg/dL', tenTo: -2, also: milligramPerDecilitre },
      { code: 'g/dL', tenTo: 1, also: ['g/dl', 'gm/dl'] },
    ],
    source: ucum,
  },
  'sflt1-plgf-ratio': {
    units: [{ code: '1', tenTo: 0, also: ['1', 'ratio', '{ratio}'] }],
    unitless: true,
    refused: {
      '%': 'A growth-factor ratio in per cent cannot be used: laboratories report the plain ratio. Send unit 1.',
    },
    source: 'terminology.md section 4, read',
  },
  plgf: {
    units: [
      { code: 'pg/mL', tenTo: 0, also: ['pg/ml'] },
      { code: 'ng/L', tenTo: 0, also: ['ng/l'] },
      { code: 'ng/mL', tenTo: 3, also: ['ng/ml'] },
    ],
    source: ucum,
  },
  'oxygen-saturation': {
    units: [
      { code: '%', tenTo: 0, also: ['%', 'percent', 'percentage', '%spo2', 'pct', '%o2', '%{saturation}'] },
      { code: '1', tenTo: 2 },
    ],
    most: 100,
    source: ucum,
  },
  'heart-rate': perMinute,
  'respiratory-rate': perMinute,
  'body-mass-index': {
    units: [{ code: 'kg/m2', tenTo: 0, also: ['kg/m2', 'kg/m^2', 'kg/m*2', 'kg/sqm', 'kg/sq.m', 'kg/m**2'] }],
    source: ucum,
  },
  'fundal-height': {
    units: [
      { code: 'cm', tenTo: 0, also: ['cm', 'cms', 'centimeter', 'centimeters', 'centimetre', 'centimetres'] },
      { code: 'mm', tenTo: -1, also: ['mm'] },
    ],
    source: ucum,
  },
  'urine-output': {
    units: [
      { code: 'mL/h', tenTo: 0, also: ['ml/h', 'ml/hr', 'ml/hour', 'cc/h', 'cc/hr'] },
      {
        code: 'mL/(24.h)',
        tenTo: 0,
        over: 24,
        also: ['ml/(24.h)', 'ml/24.h', 'ml/24h', 'ml/24hr', 'ml/24hrs', 'ml/24hours'],
      },
      { code: 'mL/d', tenTo: 0, over: 24, also: ['ml/d', 'ml/day'] },
      { code: 'L/(24.h)', tenTo: 3, over: 24, also: ['l/(24.h)', 'l/24h', 'l/24hr', 'l/24hrs'] },
      { code: 'L/d', tenTo: 3, over: 24, also: ['l/d', 'l/day'] },
    ],
    refused: {
      ml: 'A urine volume without its time cannot be used. Send mL/h or mL/(24.h).',
      l: 'A urine volume without its time cannot be used. Send mL/h or mL/(24.h).',
    },
    source: ucum,
  },
  hcg: {
    units: [
      { code: '[IU]/L', tenTo: 0, also: ['iu/l', '[iu]/l'] },
      { code: 'm[IU]/mL', tenTo: 0, also: ['miu/ml', 'm[iu]/ml'] },
      { code: 'U/L', tenTo: 0, also: ['u/l'] },
      { code: 'mU/mL', tenTo: 0, also: ['mu/ml'] },
      { code: 'k[IU]/L', tenTo: 3, also: ['kiu/l', 'k[iu]/l'] },
    ],
    source: ucum,
  },
  potassium: {
    units: [
      { code: 'mmol/L', tenTo: 0, also: ['mmol/l'] },
      { code: 'meq/L', tenTo: 0, also: ['meq/l'] },
    ],
    source: 'one charge per ion, by definition',
  },
  magnesium: {
    units: [
      { code: 'mmol/L', tenTo: 0, also: ['mmol/l'] },
      { code: 'mg/dL', tenTo: 0, over: 2.431, also: milligramPerDecilitre },
      { code: 'mg/L', tenTo: -1, over: 2.431, also: ['mg/l'] },
      { code: 'meq/L', tenTo: 0, over: 2, also: ['meq/l'] },
    ],
    source: rules,
  },
  'urine-specific-gravity': {
    units: [{ code: '1', tenTo: 0, also: ['1', 'sg', 's.g.', 'relativedensity'] }],
    unitless: true,
    // Written without its decimal point (1015) it is refused, not guessed.
    most: 2,
    source: ucum,
  },
  'urine-ph': {
    units: [{ code: '[pH]', tenTo: 0, also: ['[ph]', 'ph', '1'] }],
    unitless: true,
    most: 14,
    source: ucum,
  },
  'gestational-age': {
    units: [
      { code: 'd', tenTo: 0, also: ['d', 'day', 'days'] },
      {
        code: 'wk',
        tenTo: 0,
        times: 7,
        also: ['wk', 'wks', 'week', 'weeks', 'w', 'weeksofgestation', 'week(s)'],
      },
    ],
    refused: {
      mo: 'A gestational age in months cannot be used: months differ in length. Send wk or d.',
      months: 'A gestational age in months cannot be used: months differ in length. Send wk or d.',
      month: 'A gestational age in months cannot be used: months differ in length. Send wk or d.',
    },
    source: ucum,
  },
  count: {
    units: [
      {
        code: '1',
        tenTo: 0,
        also: ['1', '#', 'count', 'number', 'fetuses', 'fetus', 'pregnancies', 'births'],
      },
    ],
    unitless: true,
    source: ucum,
  },
  length: {
    units: [
      { code: 'cm', tenTo: 0, also: ['cm', 'cms', 'centimeter', 'centimeters', 'centimetre', 'centimetres'] },
      { code: 'mm', tenTo: -1, also: ['mm'] },
      { code: 'm', tenTo: 2, also: ['m'] },
      { code: '[in_i]', tenTo: 0, times: 2.54, also: ['[in_i]', 'in', 'inch', 'inches'] },
    ],
    source: ucum,
  },
  duration: {
    units: [
      { code: 'min', tenTo: 0, also: ['min', 'mins', 'minute', 'minutes'] },
      { code: 's', tenTo: 0, over: 60, also: ['s', 'sec', 'seconds'] },
      { code: 'h', tenTo: 0, times: 60, also: ['h', 'hr', 'hour', 'hours'] },
    ],
    source: ucum,
  },
} as const satisfies Readonly<Record<string, QuantityUnits>>;

export type QuantityKind = keyof typeof quantityUnits;
