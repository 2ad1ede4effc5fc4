// Every code that engine, salon, wire or server can say has a sentence.
#include "en/sentences.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

#include "strandline/rules.h"

namespace strandline::cli::en {
namespace {

// Words with an underscore in the sources that are no codes: parameters, keys, forms and uses of the law
// tables.
const std::set<std::string> not_codes = {
    "as_listed", "asked_tone", "free_base", "in_bowl", "leave_on_hair", "nail_hardener", "non_oxidative_dye",
    "other_order", "oxidative_dye", "practice_held_back", "reached_tone", "rinse_off_hair", "second_pair_of_hands",
    "shorter_development", "straightening_general", "straightening_professional", "sum_of_ratios", "waving_general",
    "waving_professional", "made_at", "opened_at", "changed_at", "store_seq", "visit_id", "fewer_bowls",
    "later_on_lengths", "as_wished", "lighter_first", "softer_line", "remove_packet", "not_searched", "store_conflict",
    "common_practice", "high_lift", "law_or_identity", "outside_fitted", "outside_unused", "own_simulation",
    "second_step",
    "valid_months",  // a figure of a rule
    "bad_request", "store_id_taken",
    // kinds of facts
    "shelf_chosen", "shelf_saved",
    // a simulated salon
    "own_family",
    // keys of answers
    "show_number", "damp_hair", "to_nearest", "by_spectra",
    // keys of the diary
    "starts_at", "test_booking",
    // keys and kinds of stock, prices, notes for the hands and what a visit came to
    "mix_factor", "package_g", "price_from", "price_per_g", "price_to", "hand_note", "hand_notes", "ended_at",
    "finish_min",
    // columns and tables of the store, and what a connection is asked for
    "save_id", "all_facts", "all_keys", "all_masters", "all_drafts", "all_saves", "all_salons", "connect_timeout",
    "tcp_user_timeout", "fallback_application_name", "client_encoding"};

std::set<std::string> words_with_underscore(const std::filesystem::path& folder) {
  std::set<std::string> out;
  static const std::regex word("\"([a-z][a-z0-9]*(_[a-z0-9]+)+)\"");
  for (const auto& file : std::filesystem::recursive_directory_iterator(folder)) {
    if (file.path().extension() != ".cpp" && file.path().extension() != ".h") continue;
    // Names of facts, figures and classes of the rules, whose own test follows, and of figures of the house.
    static const std::set<std::string> figures{"door_rules.cpp", "diary_rules.cpp", "stock_rules.cpp", "amounts.cpp",
                                               "retention.cpp"};
    if (file.path().parent_path().filename() == "rules" || figures.count(file.path().filename().string())) continue;
    std::ifstream in(file.path());
    const std::string text(std::istreambuf_iterator<char>(in), {});
    for (std::sregex_iterator it(text.begin(), text.end(), word), end; it != end; ++it) out.insert((*it)[1]);
  }
  return out;
}

TEST(Say, OneOfAThingIsOne) {
  EXPECT_EQ(en::say({"finding_uneven_ends", "", {{"zone", "crown/ends"}, {"levels", "1"}}}),
            "crown/ends: ends 1 level apart from the lengths before them.");
  EXPECT_EQ(en::say({"finding_uneven_ends", "", {{"zone", "crown/ends"}, {"levels", "1.0"}}}),
            "crown/ends: ends 1 level apart from the lengths before them.");
  EXPECT_EQ(en::say({"finding_uneven_ends", "", {{"zone", "crown/ends"}, {"levels", "1.5"}}}),
            "crown/ends: ends 1.5 levels apart from the lengths before them.");
}

TEST(Sentences, CoverEveryCodeOfEngineAndSalon) {
  const std::filesystem::path root(STRANDLINE_SOURCE_DIR);
  std::size_t codes = 0;
  for (const char* folder : {"engine/src", "salon/src", "store/src"}) {
    for (const std::string& code : words_with_underscore(root / folder)) {
      if (not_codes.count(code)) continue;
      ++codes;
      EXPECT_NE(find(code), nullptr) << code << " of " << folder << " has no sentence in cli/en";
    }
  }
  EXPECT_GT(codes, 60u) << "the search must find the codes";
}

TEST(Sentences, CoverEveryRule) {
  EXPECT_GT(rules().size(), 100u);
  for (const Rule& r : rules()) {
    EXPECT_NE(find(r.id), nullptr) << r.id;
    for (const std::string_view code : r.change) EXPECT_NE(find("change_" + std::string(code)), nullptr) << code;
    for (const std::string_view code : r.today) EXPECT_NE(find("today_" + std::string(code)), nullptr) << code;
  }
  for (const char* code : {"unknown_rule", "rule_not_of_the_house", "rule_value_out_of_range", "unknown_rule_figure"})
    EXPECT_NE(find(code), nullptr) << code;
}

TEST(Sentences, CoverEveryCodeOfTheCodec) {
  for (const char* code :
       {"document_too_large", "invalid_utf8", "not_json", "not_a_number", "too_deep", "duplicate_key", "wrong_type",
        "missing_key", "unknown_key", "unknown_word", "unknown_name", "unknown_schema", "out_of_range", "too_long",
        "too_many", "wrong_count", "bad_date", "control_character", "populations_and_shorthand"}) {
    ASSERT_NE(find(code), nullptr) << code;
    EXPECT_FALSE(find(code)->remedy.empty()) << code;
  }
}

TEST(Sentences, WhatIsWrongWithADocumentHasARemedy) {
  for (const auto& table : {document_sentences(), work_sentences()}) {
    for (const Sentence& s : table) EXPECT_FALSE(s.remedy.empty()) << s.code;
  }
}

TEST(Sentences, NoCodeIsWordedTwice) {
  std::set<std::string_view> seen;
  for (const auto& table : {document_sentences(), work_sentences(), reason_sentences(), rule_sentences(),
                            door_sentences(), learned_sentences()}) {
    for (const Sentence& s : table) EXPECT_TRUE(seen.insert(s.code).second) << s.code;
  }
}

TEST(Sentences, NeverCallAnythingSafe) {
  for (const auto& table : {document_sentences(), work_sentences(), reason_sentences(), rule_sentences(),
                            door_sentences(), learned_sentences()}) {
    for (const Sentence& s : table) {
      EXPECT_EQ((std::string(s.text) + std::string(s.remedy)).find("safe"), std::string::npos) << s.code;
    }
  }
}

TEST(Say, FillsParametersAndDropsPartsWithoutThem) {
  EXPECT_EQ(say({"unknown_key", "", {{"key", "haed"}, {"nearest", "head"}}}),
            "There is no key \"haed\"; did you mean \"head\"?");
  EXPECT_EQ(say({"unknown_key", "", {{"key", "haed"}}}), "There is no key \"haed\"");
  EXPECT_EQ(say({"ceiling", "", {{"rule", "range_not_on_scalp"}}}), "This range may not touch the scalp.");
  EXPECT_EQ(say({"never_heard_of", "", {{"a", "b"}}}), "never_heard_of a=b");
}

}  // namespace
}  // namespace strandline::cli::en
