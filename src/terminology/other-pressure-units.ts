// Units of pressure that are not accepted for a blood pressure, so that a severe number in them is not missed. Data only.

/**
 * mm[Hg] in one unit; the unit in lower case, without brackets and spaces.
 *
 * Source   UCUM: 1 m[Hg] is 133.322 kPa, 1 [psi] is 6.894757 kPa, 1 m[H2O] is 9.80665 kPa, 1 bar is 100 kPa
 */
export const otherPressureUnits: ReadonlyMap<string, number> = new Map([
  ['cmhg', 10],
  ['mhg', 1000],
  ['psi', 51.7149],
  ['pa', 0.00750062],
  ['hpa', 0.750062],
  ['mbar', 0.750062],
  ['bar', 750.062],
  ['cmh2o', 0.735559],
  ['mmh2o', 0.0735559],
]);
