// Path texts of the marks. Form tells the kinds apart; colour only helps.
import { line, symbol, symbolDiamond, type SymbolType } from 'd3-shape';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Down to the systolic, up to the diastolic: the tip is the value. */
export const caretDown = ({ x, y }: Spot): string =>
  `M${f(x - 5)},${f(y - 7)}L${f(x)},${f(y)}L${f(x + 5)},${f(y - 7)}`;
export const caretUp = ({ x, y }: Spot): string =>
  `M${f(x - 5)},${f(y + 7)}L${f(x)},${f(y)}L${f(x + 5)},${f(y + 7)}`;
export const ring = ({ x, y }: Spot, r = 4): string =>
  `M${f(x - r)},${f(y)}a${r},${r} 0 1 0 ${2 * r},0a${r},${r} 0 1 0 ${-2 * r},0`;
export const square = ({ x, y }: Spot, r = 4): string =>
  `M${f(x - r)},${f(y - r)}h${2 * r}v${2 * r}h${-2 * r}z`;
export const cross = ({ x, y }: Spot, r = 5): string =>
  `M${f(x - r)},${f(y - r)}l${2 * r},${2 * r}M${f(x - r)},${f(y + r)}l${2 * r},${-2 * r}`;
export const stem = (x: number, top: number, bottom: number): string => `M${f(x)},${f(top)}V${f(bottom)}`;

const d3Diamond = pathOf(symbolDiamond, 70);
export const diamond = ({ x, y }: Spot): string => moved(d3Diamond, x, y);

function pathOf(type: SymbolType, size: number): string {
  return symbol(type, size)() ?? '';
}

/** The symbol is four points around the origin. */
function moved(path: string, x: number, y: number): string {
  return path.replaceAll(/([ML])(-?[\d.]+),(-?[\d.]+)/g, (_all, letter: string, dx: string, dy: string) => {
    return `${letter}${f(x + Number(dx))},${f(y + Number(dy))}`;
  });
}

/** Straight pieces between contacts; a gap stays a gap. */
export function straight(spots: readonly (Spot | undefined)[]): string {
  const path = line<Spot | undefined>()
    .defined((spot) => spot !== undefined)
    .x((spot) => spot?.x ?? 0)
    .y((spot) => spot?.y ?? 0)
    .digits(1);
  return path([...spots]) ?? '';
}

const f = (value: number): string => String(Math.round(value * 10) / 10);
