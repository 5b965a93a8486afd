declare module '@lhncbc/ucum-lhc' {
  export interface Conversion {
    readonly status: 'succeeded' | 'failed' | 'error';
    readonly toVal: number | null;
  }
  export interface Utils {
    convertUnitTo(from: string, value: number, to: string): Conversion;
    validateUnitString(unit: string): { readonly status: 'valid' | 'invalid' | 'error' };
  }
  export const UcumLhcUtils: { getInstance(): Utils };
}
