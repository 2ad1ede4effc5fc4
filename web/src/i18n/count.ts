/** The forms of a noun: what the language's own plural rules ask for, "other" always. */
type Forms = Partial<Record<Intl.LDMLPluralRule, string>> & { other: string };

const thousands = /^-?\d{1,3}([.,]\d{3})+$/;

/**
 * Numbers with their nouns in one language: `count(1, { one: 'level', other: 'levels' })`. The number may be written
 * already ("1.0", "2,430"); noughts alone after its point are left out ("1 level"), other digits count as the language
 * says (« 1,5 ton », "1.5 levels").
 */
export function counter(language: string, point: '.' | ',') {
  const rules = new Map<number, Intl.PluralRules>();
  return (number: string | number, forms: Forms): string => {
    const spelt = String(number);
    const given = thousands.test(spelt) ? spelt : spelt.replace(/[.,]0+$/, '');
    const written = thousands.test(given) || point === '.' ? given : given.replace('.', ',');
    const plain = thousands.test(given)
      ? given.replace(/[.,]/g, '')
      : given.replace(/[\s\u00a0\u202f]/g, '').replace(',', '.');
    const digits = plain.split('.')[1]?.length ?? 0;
    let rule = rules.get(digits);
    if (!rule) rules.set(digits, (rule = new Intl.PluralRules(language, { minimumFractionDigits: digits })));
    return `${written} ${forms[rule.select(Number(plain))] ?? forms.other}`;
  };
}
