// Words that stand in lists of shades, in English, German, French and Spanish, in small letters without accents.
#include <algorithm>
#include <array>

#include "table_text.h"

namespace strandline::wire {

namespace {

template <class V>
struct Word {
  std::string_view word;
  V value;
};

using C = TableColumn;

constexpr std::array headings{
    Word<C>{"code", C::code},
    Word<C>{"no", C::code},
    Word<C>{"nr", C::code},
    Word<C>{"number", C::code},
    Word<C>{"shade code", C::code},
    Word<C>{"shade number", C::code},
    Word<C>{"ref", C::code},
    Word<C>{"reference", C::code},
    Word<C>{"nummer", C::code},
    Word<C>{"farbnummer", C::code},
    Word<C>{"farbcode", C::code},
    Word<C>{"numero", C::code},
    Word<C>{"num", C::code},
    Word<C>{"codigo", C::code},
    Word<C>{"referencia", C::code},
    Word<C>{"name", C::name},
    Word<C>{"shade", C::name},
    Word<C>{"shade name", C::name},
    Word<C>{"product", C::name},
    Word<C>{"description", C::name},
    Word<C>{"nuance", C::name},
    Word<C>{"farbe", C::name},
    Word<C>{"produkt", C::name},
    Word<C>{"bezeichnung", C::name},
    Word<C>{"beschreibung", C::name},
    Word<C>{"nom", C::name},
    Word<C>{"produit", C::name},
    Word<C>{"designation", C::name},
    Word<C>{"nombre", C::name},
    Word<C>{"producto", C::name},
    Word<C>{"descripcion", C::name},
    Word<C>{"color", C::name},
    Word<C>{"colour", C::name},
    Word<C>{"level", C::level},
    Word<C>{"depth", C::level},
    Word<C>{"tiefe", C::level},
    Word<C>{"tonhohe", C::level},
    Word<C>{"farbtiefe", C::level},
    Word<C>{"hauteur", C::level},
    Word<C>{"hauteur de ton", C::level},
    Word<C>{"niveau", C::level},
    Word<C>{"altura", C::level},
    Word<C>{"altura de tono", C::level},
    Word<C>{"nivel", C::level},
    Word<C>{"tone", C::tone},
    Word<C>{"reflect", C::tone},
    Word<C>{"ton", C::tone},
    Word<C>{"farbton", C::tone},
    Word<C>{"farbrichtung", C::tone},
    Word<C>{"reflet", C::tone},
    Word<C>{"reflejo", C::tone},
    Word<C>{"tono", C::tone},
    Word<C>{"matiz", C::tone},
    Word<C>{"class", C::cls},
    Word<C>{"klasse", C::cls},
    Word<C>{"classe", C::cls},
    Word<C>{"clase", C::cls},
    Word<C>{"%", C::strength},
    Word<C>{"strength", C::strength},
    Word<C>{"peroxide", C::strength},
    Word<C>{"starke", C::strength},
    Word<C>{"peroxid", C::strength},
    Word<C>{"force", C::strength},
    Word<C>{"peroxyde", C::strength},
    Word<C>{"fuerza", C::strength},
    Word<C>{"peroxido", C::strength},
    Word<C>{"concentration", C::strength},
    Word<C>{"konzentration", C::strength},
    Word<C>{"concentracion", C::strength},
    Word<C>{"price", C::price},
    Word<C>{"cost", C::price},
    Word<C>{"preis", C::price},
    Word<C>{"kosten", C::price},
    Word<C>{"prix", C::price},
    Word<C>{"cout", C::price},
    Word<C>{"precio", C::price},
    Word<C>{"coste", C::price},
    Word<C>{"price per g", C::price_per_g},
    Word<C>{"preis je g", C::price_per_g},
    Word<C>{"prix par g", C::price_per_g},
    Word<C>{"precio por g", C::price_per_g},
    Word<C>{"package", C::package_g},
    Word<C>{"pack", C::package_g},
    Word<C>{"size", C::package_g},
    Word<C>{"g", C::package_g},
    Word<C>{"grams", C::package_g},
    Word<C>{"inhalt", C::package_g},
    Word<C>{"packung", C::package_g},
    Word<C>{"gramm", C::package_g},
    Word<C>{"contenance", C::package_g},
    Word<C>{"contenu", C::package_g},
    Word<C>{"grammes", C::package_g},
    Word<C>{"contenido", C::package_g},
    Word<C>{"envase", C::package_g},
    Word<C>{"gramos", C::package_g},
    Word<C>{"stock", C::stock_g},
    Word<C>{"in stock", C::stock_g},
    Word<C>{"bestand", C::stock_g},
    Word<C>{"vorrat", C::stock_g},
    Word<C>{"existencias", C::stock_g},
    Word<C>{"density", C::density},
    Word<C>{"dichte", C::density},
    Word<C>{"densite", C::density},
    Word<C>{"densidad", C::density},
    Word<C>{"barcode", C::barcode},
    Word<C>{"bar code", C::barcode},
    Word<C>{"gtin", C::barcode},
    Word<C>{"strichcode", C::barcode},
    Word<C>{"code-barres", C::barcode},
    Word<C>{"code barres", C::barcode},
    Word<C>{"codigo de barras", C::barcode},
};

constexpr std::array tones{
    Word<Tone>{"natural", Tone::natural}, Word<Tone>{"neutral", Tone::natural},
    Word<Tone>{"natur", Tone::natural},   Word<Tone>{"naturlich", Tone::natural},
    Word<Tone>{"naturel", Tone::natural}, Word<Tone>{"naturelle", Tone::natural},
    Word<Tone>{"neutre", Tone::natural},  Word<Tone>{"neutro", Tone::natural},
    Word<Tone>{"ash", Tone::ash},         Word<Tone>{"ashy", Tone::ash},
    Word<Tone>{"asch", Tone::ash},        Word<Tone>{"aschig", Tone::ash},
    Word<Tone>{"cendre", Tone::ash},      Word<Tone>{"cendree", Tone::ash},
    Word<Tone>{"ceniza", Tone::ash},      Word<Tone>{"cenizo", Tone::ash},
    Word<Tone>{"violet", Tone::violet},   Word<Tone>{"violett", Tone::violet},
    Word<Tone>{"violette", Tone::violet}, Word<Tone>{"violeta", Tone::violet},
    Word<Tone>{"beige", Tone::beige},     Word<Tone>{"gold", Tone::gold},
    Word<Tone>{"golden", Tone::gold},     Word<Tone>{"dore", Tone::gold},
    Word<Tone>{"doree", Tone::gold},      Word<Tone>{"dorado", Tone::gold},
    Word<Tone>{"oro", Tone::gold},        Word<Tone>{"copper", Tone::copper},
    Word<Tone>{"kupfer", Tone::copper},   Word<Tone>{"cuivre", Tone::copper},
    Word<Tone>{"cuivree", Tone::copper},  Word<Tone>{"cobre", Tone::copper},
    Word<Tone>{"cobrizo", Tone::copper},  Word<Tone>{"red", Tone::red},
    Word<Tone>{"rot", Tone::red},         Word<Tone>{"rouge", Tone::red},
    Word<Tone>{"rojo", Tone::red},        Word<Tone>{"green", Tone::green},
    Word<Tone>{"grun", Tone::green},      Word<Tone>{"vert", Tone::green},
    Word<Tone>{"verde", Tone::green},
};

constexpr std::array hues{
    Word<Tone>{"yellow", Tone::gold},    Word<Tone>{"gelb", Tone::gold}, Word<Tone>{"jaune", Tone::gold},
    Word<Tone>{"amarillo", Tone::gold},  Word<Tone>{"blue", Tone::ash},  Word<Tone>{"blau", Tone::ash},
    Word<Tone>{"bleu", Tone::ash},       Word<Tone>{"azul", Tone::ash},  Word<Tone>{"orange", Tone::copper},
    Word<Tone>{"naranja", Tone::copper},
};

constexpr std::array<std::string_view, 7> clears{"clear",    "klar",     "transparent", "transparente",
                                                 "incolore", "incoloro", "farblos"};

template <class V, std::size_t N>
std::optional<V> found(const std::array<Word<V>, N>& list, std::string_view word) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const Word<V>& w) { return w.word == word; });
  return it == list.end() ? std::nullopt : std::optional(it->value);
}

// The letter under an accent, of U+00C0 … U+00FF; 0 = none of them.
char base_letter(unsigned char second) {
  constexpr std::string_view bases =
      "aaaaaaaceeeeiiiidnoooooxouuuuyps";  // ß is written twice by its caller, × and þ are not asked for
  static_assert(bases.size() == 32);
  return bases[second & 0x1Fu];
}

}  // namespace

std::string folded(std::string_view text) {
  constexpr unsigned char latin = 0xC3, latin_more = 0xC5, sharp_s = 0x9F, oe_small = 0x93, oe_large = 0x92;
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    const unsigned char next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0;
    if (c == latin && next >= 0x80 && next != 0x97 && next != 0xB7 && next != 0xBE && next != 0x9E) {
      const char base = next == 0xBF ? 'y' : base_letter(next);
      out += base, ++i;
      if (next == sharp_s) out += 's';
    } else if (c == latin_more && (next == oe_small || next == oe_large)) {
      out += "oe", ++i;
    } else {
      out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : text[i];
    }
  }
  return out;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  std::string word;
  const auto close = [&] {
    if (!word.empty()) out.push_back(word);
    word.clear();
  };
  for (const char c : text) {
    if (c == ' ' || c == '(' || c == ')' || c == ',') {
      close();
    } else {
      word += c;
    }
  }
  close();
  return out;
}

std::optional<TableColumn> heading(std::string_view cell) {
  std::string text = folded(cell);
  text = text.substr(0, text.find_first_of("([/"));
  std::replace(text.begin(), text.end(), '_', ' ');
  const auto last = text.find_last_not_of(" .:");
  text = last == std::string::npos ? "" : text.substr(0, last + 1);
  // "strength %", "package g": the unit beside the word.
  for (const std::string_view unit : {" %", " g", " g ml"}) {
    if (text != "price per g" && text.ends_with(unit) && !found(headings, std::string_view(text)))
      text = text.substr(0, text.size() - unit.size());
  }
  return found(headings, std::string_view(text));
}

std::optional<Tone> tone_word(std::string_view word) { return found(tones, word); }
std::optional<Tone> hue_word(std::string_view word) {
  const auto hue = found(hues, word);
  return hue ? hue : tone_word(word);
}
bool clear_word(std::string_view word) { return std::find(clears.begin(), clears.end(), word) != clears.end(); }

}  // namespace strandline::wire
