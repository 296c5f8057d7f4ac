import type { UnitKind } from './unit-kind.ts';

/** A factor as the product of `times` divided by the product of `over`: exact decimals, never a rounded result. */
export type Factor = { readonly times: readonly string[]; readonly over?: readonly string[] };

export type UnitRow = {
  readonly kind: UnitKind;
  /** Case-sensitive UCUM code (The Unified Code for Units of Measure). */
  readonly ucum: string;
  /** Size in the base unit of the kind, the row whose factor is 1. */
  readonly size: Factor;
  /** Reading at the zero of the base unit; temperatures only. */
  readonly zeroAt?: string;
  /** Units that differ only by a decimal prefix or a power of ten share a family: each may stand for another on a sheet. */
  readonly family?: string;
  readonly plural?: string;
  /** Printed against its number without a space (NIST SP 811, 7.2: the degree of plane angle). */
  readonly closeUp?: true;
  /** A converted value is never rounded more coarsely than this power of ten. */
  readonly coarsestPlace?: number;
};

/**
 * Exact by definition: the international inch (25.4 mm) and avoirdupois pound (0.453 592 37 kg), 1959; standard gravity
 * (9.806 65 m/s²), CGPM 1901; the US gallon (231 in³) and imperial gallon (4.546 09 L); conventional mercury
 * (13 595.1 kg/m³), as NIST SP 811 (2008) App. B uses them.
 */
const pound = '0.45359237';
const gravity = '9.80665';
const footInMetres = ['12', '0.0254'];
const inchInMetres = '0.0254';
const usGallon = ['231', '0.254', '0.254', '0.254'];
const imperialGallon = '4.54609';
const mercury = '13595.1';
const pascalsInKilopascal = '1000';

const one: Factor = { times: ['1'] };

/** Every unit, under the spelling that is printed. The only home of a conversion factor. */
export const unitTable = {
  N·m: { kind: 'torque', ucum: 'N.m', size: one, family: 'newton metre' },
  cN·m: { kind: 'torque', ucum: 'cN.m', size: { times: ['0.01'] }, family: 'newton metre' },
  kN·m: { kind: 'torque', ucum: 'kN.m', size: { times: ['1000'] }, family: 'newton metre' },
  lbf·ft: {
    kind: 'torque',
    ucum: '[lbf_av].[ft_i]',
    size: { times: [pound, gravity, ...footInMetres] },
  },
  lbf·in: {
    kind: 'torque',
    ucum: '[lbf_av].[in_i]',
    size: { times: [pound, gravity, inchInMetres] },
  },
  kgf·m: { kind: 'torque', ucum: 'kgf.m', size: { times: [gravity] }, family: 'kgf metre' },
  kgf·cm: {
    kind: 'torque',
    ucum: 'kgf.cm',
    size: { times: [gravity, '0.01'] },
    family: 'kgf metre',
  },

  L: { kind: 'volume', ucum: 'L', size: one, family: 'litre' },
  mL: { kind: 'volume', ucum: 'mL', size: { times: ['0.001'] }, family: 'litre' },
  'US gal': { kind: 'volume', ucum: '[gal_us]', size: { times: usGallon } },
  'US qt': { kind: 'volume', ucum: '[qt_us]', size: { times: usGallon, over: ['4'] } },
  'US pt': { kind: 'volume', ucum: '[pt_us]', size: { times: usGallon, over: ['8'] } },
  'US fl oz': { kind: 'volume', ucum: '[foz_us]', size: { times: usGallon, over: ['128'] } },
  'imp gal': { kind: 'volume', ucum: '[gal_br]', size: { times: [imperialGallon] } },
  'imp qt': { kind: 'volume', ucum: '[qt_br]', size: { times: [imperialGallon], over: ['4'] } },
  'imp pt': { kind: 'volume', ucum: '[pt_br]', size: { times: [imperialGallon], over: ['8'] } },
  'imp fl oz': {
    kind: 'volume',
    ucum: '[foz_br]',
    size: { times: [imperialGallon], over: ['160'] },
  },

  mm: { kind: 'length', ucum: 'mm', size: one, family: 'metre' },
  cm: { kind: 'length', ucum: 'cm', size: { times: ['10'] }, family: 'metre' },
  m: { kind: 'length', ucum: 'm', size: { times: ['1000'] }, family: 'metre' },
  km: { kind: 'length', ucum: 'km', size: { times: ['1000000'] }, family: 'metre' },
  µm: { kind: 'length', ucum: 'um', size: { times: ['0.001'] }, family: 'metre' },
  in: { kind: 'length', ucum: '[in_i]', size: { times: ['25.4'] }, family: 'inch' },
  thou: {
    kind: 'length',
    ucum: '[mil_i]',
    size: { times: ['25.4'], over: ['1000'] },
    family: 'inch',
  },
  ft: { kind: 'length', ucum: '[ft_i]', size: { times: ['12', '25.4'] } },
  mi: { kind: 'length', ucum: '[mi_i]', size: { times: ['5280', '12', '25.4'] } },

  kPa: { kind: 'pressure', ucum: 'kPa', size: one, family: 'pascal' },
  MPa: { kind: 'pressure', ucum: 'MPa', size: { times: ['1000'] }, family: 'pascal' },
  bar: { kind: 'pressure', ucum: 'bar', size: { times: ['100'] }, family: 'bar' },
  mbar: { kind: 'pressure', ucum: 'mbar', size: { times: ['0.1'] }, family: 'bar' },
  psi: {
    kind: 'pressure',
    ucum: '[psi]',
    size: { times: [pound, gravity], over: [inchInMetres, inchInMetres, pascalsInKilopascal] },
  },
  'kgf/cm²': {
    kind: 'pressure',
    ucum: 'kgf/cm2',
    size: { times: [gravity], over: ['0.01', '0.01', pascalsInKilopascal] },
  },
  // UCUM rounds its column of mercury, so tools that follow it are 3 parts in a million lower than SP 811.
  inHg: {
    kind: 'pressure',
    ucum: "[in_i'Hg]",
    size: { times: [mercury, gravity, inchInMetres], over: [pascalsInKilopascal] },
  },

  kg: { kind: 'mass', ucum: 'kg', size: one, family: 'gram' },
  g: { kind: 'mass', ucum: 'g', size: { times: ['0.001'] }, family: 'gram' },
  t: { kind: 'mass', ucum: 't', size: { times: ['1000'] }, family: 'gram' },
  lb: { kind: 'mass', ucum: '[lb_av]', size: { times: [pound] } },
  oz: { kind: 'mass', ucum: '[oz_av]', size: { times: [pound], over: ['16'] } },
  'short ton': { kind: 'mass', ucum: '[ston_av]', size: { times: [pound, '2000'] } },
  'long ton': { kind: 'mass', ucum: '[lton_av]', size: { times: [pound, '2240'] } },

  N: { kind: 'force', ucum: 'N', size: one, family: 'newton' },
  kN: { kind: 'force', ucum: 'kN', size: { times: ['1000'] }, family: 'newton' },
  lbf: { kind: 'force', ucum: '[lbf_av]', size: { times: [pound, gravity] } },
  kgf: { kind: 'force', ucum: 'kgf', size: { times: [gravity] } },

  '°C': { kind: 'temperature', ucum: 'Cel', size: one },
  '°F': {
    kind: 'temperature',
    ucum: '[degF]',
    size: { times: ['5'], over: ['9'] },
    zeroAt: '32',
  },

  '°': { kind: 'angle', ucum: 'deg', size: one, closeUp: true, coarsestPlace: 0 },
  turn: { kind: 'angle', ucum: 'circ', size: { times: ['360'] }, plural: 'turns' },

  'r/min': { kind: 'rotation', ucum: '{rev}/min', size: one },

  'km/h': { kind: 'speed', ucum: 'km/h', size: one },
  mph: {
    kind: 'speed',
    ucum: '[mi_i]/h',
    size: { times: ['5280', ...footInMetres], over: ['1000'] },
  },

  s: { kind: 'time', ucum: 's', size: one },
  min: { kind: 'time', ucum: 'min', size: { times: ['60'] } },
  h: { kind: 'time', ucum: 'h', size: { times: ['3600'] } },
  d: { kind: 'time', ucum: 'd', size: { times: ['86400'] } },

  '%': { kind: 'share', ucum: '%', size: one },
} as const satisfies Readonly<Record<string, UnitRow>>;
