import { afterEach, describe, expect, it } from 'vitest';
import { settings } from '../shell/settings.svelte';
import { counter } from './count';
import { de } from './de';
import { en } from './en';
import { es } from './es';
import { level, mass, number, strength } from './format';
import { fr } from './fr';
import { setLanguage, t, type Language } from './index.svelte';
import type { Visit } from '../api/types';
import { problemLine, problemWords } from './problems';
import { whyLine } from './why';

afterEach(() => {
  setLanguage('en');
  settings.mass = 'g';
  settings.strength = 'percent';
});

describe('dictionaries', () => {
  it.each(Object.entries({ fr, es, de }))('%s has every key of English and no other', (_, dictionary) => {
    expect(Object.keys(dictionary).sort()).toEqual(Object.keys(en).sort());
  });

  it('keeps sentences and functions apart in every language', () => {
    for (const dictionary of [fr, es, de]) {
      for (const [key, entry] of Object.entries(dictionary)) {
        expect(typeof entry, key).toBe(typeof en[key as keyof typeof en]);
      }
    }
  });

  it('says in every language what the English sentence says of a code: no figure and no name is lost', () => {
    const used = (entry: unknown) => {
      const seen = new Set<string>();
      const params = new Proxy<Record<string, string>>({}, { get: (_, key) => (seen.add(String(key)), '2') });
      (entry as (p: typeof params) => string)(params);
      return [...seen].sort();
    };
    const codes = Object.keys(en).filter((key) => /^(why|problem)\./.test(key) && key !== 'problem.unknown');
    expect(codes.length).toBeGreaterThan(150);
    for (const [name, dictionary] of Object.entries({ fr, es, de }))
      for (const key of codes as (keyof typeof en)[])
        expect(used(dictionary[key]), `${name} ${key}`).toEqual(used(en[key]));
  });

  it('shows in every language each value that the English sentence shows', () => {
    const values = ['1.5', 'zwei/Längen', '3', '4', '5', '6'];
    const shown = (entry: unknown) => {
      const text = (entry as (...values: string[]) => string)(...values);
      // Figures may take the decimal sign of their language.
      return values.filter((value) => text.includes(value) || text.includes(value.replace('.', ',')));
    };
    for (const [name, dictionary] of Object.entries({ fr, es, de }))
      for (const [key, entry] of Object.entries(en)) {
        if (typeof entry !== 'function' || /^(why|problem)\./.test(key)) continue;
        expect(shown(dictionary[key as keyof typeof en]), `${name} ${key}`).toEqual(shown(entry));
      }
  });

  it('never calls anything safe', () => {
    const words = {
      en: /\b(un)?safe/i,
      fr: /\bsans (danger|risque)|\bsécurité/i,
      es: /\bsegur[oa]/i,
      de: /\b(un)?sicher(e|en|heit)?\b/i,
    };
    for (const [name, dictionary] of Object.entries({ en, fr, es, de })) {
      for (const [key, entry] of Object.entries(dictionary)) {
        expect(String(entry), `${name} ${key}`).not.toMatch(words[name as keyof typeof words]);
      }
    }
  });
});

describe('trade words', () => {
  // What docs/glossary.md says another way: a literal translation, or a second word for the same thing.
  const others = {
    de: /Sortiment|\bStufe\b|Farbrichtung|\bMittel\b|[Aa]n(ge)?rühr|Nachwuchs|Minerale?\b|[Ww]iderspenstig|Dauerfarbe|Oxidationsfarbe|Direktfarbe|Hautverträglichkeit|\bReihe erlaubt/,
    fr: /superéclair|[Rr]epigment|[Rr]amollir|[Aa]ssouplir|[Pp]aquets?\b|peroxyde|[Ss]ouhait|test de métal|hors de portée|mode d’emploi|[Hh]orloge|éclaircissante|Lecture de/,
    es: /[Cc]uenco|\bpelo\b|\b[Nn]ivel|[Dd]eseo|[Aa]parato|[Rr]emovedor|[Aa]bland|[Pp]rueba de (piel|metal)\b|[Hh]istoria\b|tiempo de pose|[Pp]aquete|Aclarar (con|la|y)\b|[Ll]ectura de/,
  };
  it.each(Object.entries({ de, fr, es }))('of %s are one word for one thing', (name, dictionary) => {
    for (const [key, entry] of Object.entries(dictionary))
      expect(String(entry), key).not.toMatch(others[name as keyof typeof others]);
  });
});

describe('numbers with their nouns', () => {
  it('take the form their language asks for', () => {
    const says = (language: Language, words: () => string) => (setLanguage(language), words());
    expect(says('en', () => t('reading.areas', 1))).toBe('1 area');
    expect(says('en', () => t('why.warmth_expected', { levels: '1.0' }))).toContain('1 level lighter');
    expect(says('en', () => t('effects.lighter', '1.0'))).toBe('1 level lighter');
    expect(says('en', () => t('effects.lighter', '1.5'))).toBe('1.5 levels lighter');
    expect(says('en', () => t('effects.lighter', '0.00'))).toBe('0 levels lighter');
    expect(says('en', () => t('plan.uneven', '1.00'))).toContain('1 level of');
    expect(says('en', () => t('why.change_minutes', { minutes: '35' }))).toContain('35 minutes');
    expect(says('fr', () => t('effects.darker', number(1.5, 1)))).toBe('plus foncé de 1,5 ton');
    expect(says('fr', () => t('effects.darker', number(2, 1)))).toBe('plus foncé de 2 tons');
    expect(says('fr', () => t('why.one_bowl_serves', { zones: '3' }))).toContain('3 zones');
    expect(says('de', () => t('route.later', '1'))).toBe('mindestens 1 Woche später');
    expect(says('es', () => t('plan.searched', number(2430)))).toContain('mezclas');
    expect(says('en', () => t('bowl.moves', 'nape', '1', '2.0'))).toContain('by 1 level (');
    expect(says('es', () => t('bowl.moves', 'nuca', '1', '2,0'))).toContain('1 altura (');
    expect(says('fr', () => t('bowl.moves', 'nuque', '1', '2,0'))).toContain('de 1 ton (');
    expect(says('fr', () => t('ask.told', 0))).toBe('0 réponse');
    expect(says('de', () => t('bowl.moves', 'Nacken', '1', '2,0'))).toContain('um 1 Tonhöhe (');
    expect(says('en', () => t('problem.try_later', { seconds: '1' }))).toContain('Wait 1 second.');
    expect(says('en', () => t('shelf.size', '1', '5'))).toBe('1 range · 5 products');
    expect(says('de', () => t('after.weeks', '1'))).toBe('1 Woche');
    expect(says('de', () => t('after.weeks', '4–6'))).toBe('4–6 Wochen');
    expect(says('en', () => t('care.fades', '1', '1'))).toContain('1 week, at 1 wash a week');
    expect(says('de', () => t('care.fades', '1', '1'))).toContain('1 Woche, bei 1 Wäsche je Woche');
  });

  it('need no agreement where the sentence has none', () => {
    setLanguage('fr');
    expect(t('why.one_bowl_fewer', { bowls: '1', worse: '0.4' })).toContain('avec 1 bol, mais');
    // To expect less is no matter of waiting less.
    expect(t('why.comes_off_early', { bowl: 'A', zone: 'nuque', minutes: '20', planned: '35' })).not.toMatch(
      /attendre moins/,
    );
  });

  it('of a note are those of a reason where it is none of a problem, and name its places', () => {
    setLanguage('en');
    const early = { code: 'comes_off_early', path: '' };
    const params = { bowl: 'B', zone: 'nape/lengths', zones: '1', minutes: '8', planned: '15' };
    expect(problemWords({ ...early, params })).toContain('Bowl B on nape, lengths: the clock lets it work 8');
    expect(problemWords({ ...early, params: { ...params, zones: '3' } })).toContain('2 more zones');
  });

  it('read thousands as thousands', () => {
    const forms = { one: 'mix', other: 'mixes' };
    expect(counter('en', '.')('1,000', forms)).toBe('1,000 mixes');
    expect(counter('es', ',')('1.000', forms)).toBe('1.000 mixes');
    expect(counter('de', ',')('1.5', forms)).toBe('1,5 mixes');
  });
});

describe('French spaces', () => {
  it('hold a sign to its word, so that no line begins with it', () => {
    setLanguage('fr');
    expect(t('areas.part_how', 'nuque')).toBe('Comment diviser nuque\u00a0?');
    expect(t('trouble.no_targets', 'nuque')).toMatch(/objectif\u00a0: nuque/);
    expect(t('problem.name_used_twice', { name: 'a' })).toContain('«\u00a0a\u00a0»');
    expect(t('gate.no_test_text')).not.toMatch(/ [:;?!»%]/);
    setLanguage('en');
    expect(t('problem.share_out_of_range', { value: '120' })).toContain('100\u00a0%');
  });

  it('stand before the colon after a place', () => {
    const problem = { code: 'empty_bowl', path: '/head/areas/0', params: {} };
    const visit = { head: { areas: [{ id: 'nape', spans: [] }] } } as unknown as Visit;
    expect(problemLine(problem, visit)).toMatch(/^nape: /);
    setLanguage('fr');
    expect(problemLine(problem, visit)).toMatch(/^nuque\u00a0: /);
  });
});

describe('numbers', () => {
  it('follow the language', () => {
    setLanguage('fr');
    expect(number(12.5, 1)).toBe('12,5');
    setLanguage('en');
    expect(number(12.5, 1)).toBe('12.5');
  });

  it('show mass in grams or ounces (1 oz = 28.349523125 g, international pound)', () => {
    expect(mass(12.5)).toBe('12.5 g');
    settings.mass = 'oz';
    expect(mass(28.349523125)).toBe('1.00 oz');
  });

  it('show strength in percent or volumes (10 vol = 3 %, common practice)', () => {
    expect(strength(6)).toBe('6\u00a0%');
    settings.strength = 'volumes';
    expect(strength(6)).toBe('20 vol');
    expect(strength(1.5)).toBe('5 vol');
    expect(strength(4.5)).toBe('15 vol');
  });

  it('say a developer in a reason as the salon says it', () => {
    const reason = { code: 'developer_for_white', path: '', params: { percent: '6.0' } };
    const visit = { head: { areas: [] } } as unknown as Visit;
    for (const language of ['en', 'fr', 'es', 'de'] as const) {
      setLanguage(language);
      settings.strength = 'percent';
      expect(whyLine(reason, visit), language).toContain('6\u00a0%');
      settings.strength = 'volumes';
      expect(whyLine(reason, visit), language).toContain('20 vol');
      expect(whyLine(reason, visit), language).not.toContain('%');
    }
  });

  it('writes half levels the trade’s way', () => {
    expect(level(6)).toBe('6');
    expect(level(6.5)).toBe('6½');
    expect(level(10)).toBe('10');
  });
});
