/** Where an arrow or end key leads in a grid of rows × columns; undefined for any other key. */
export function moved(
  key: string,
  ctrl: boolean,
  [row, column]: readonly [number, number],
  [rows, columns]: readonly [number, number],
): [number, number] | undefined {
  const clamp = (value: number, count: number) => Math.min(Math.max(value, 0), count - 1);
  switch (key) {
    case 'ArrowUp':
      return [clamp(row - 1, rows), column];
    case 'ArrowDown':
      return [clamp(row + 1, rows), column];
    case 'ArrowLeft':
      return [row, clamp(column - 1, columns)];
    case 'ArrowRight':
      return [row, clamp(column + 1, columns)];
    case 'Home':
      return [ctrl ? 0 : row, 0];
    case 'End':
      return [ctrl ? rows - 1 : row, columns - 1];
    default:
      return undefined;
  }
}
