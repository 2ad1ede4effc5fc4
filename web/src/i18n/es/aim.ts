export const aim = {
  'reach.in': 'alcanzable hoy',
  'reach.out': 'no de una vez hoy',
  'reach.cell_out': (cell: string) => `${cell}: no de una vez hoy`,
  'reach.no_promise': 'Una previsión según la lectura y este estante; nada se promete.',
  'reach.not_today': (words: string) => `No de una vez hoy: ${words}`,
  'reach.working': 'Calculando lo que es alcanzable',
  'aim.reachable': 'alcanzable hoy',
  'aim.nearest': (words: string) => `lo más cercano hoy: ${words}`,
};
