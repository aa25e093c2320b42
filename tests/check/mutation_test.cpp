// The robustness law: whatever happens to a project file, a run over it ends, throws nothing, and every message has a place
// in the file and a sentence. Mutations are drawn from one fixed seed, so every machine tries the same files.
#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "support/faulty.h"
#include "support/random_draws.h"

using namespace gownsheaf;
using namespace gownsheaf::support;
using draws::Draws;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t end = std::min(text.find('\n', from), text.size() - 1) + 1;
    lines.push_back(text.substr(from, end - from));
    from = end;
  }
  return lines;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line;
  return text;
}

struct Part {
  std::size_t at, length;
};

bool ends_word(char c) { return std::string_view("\n,{}[]:#").find(c) != std::string_view::npos; }

// Every run of words between the signs of YAML: keys, where a colon follows, and values elsewhere.
std::vector<Part> words_of(const std::string& text, bool keys) {
  std::vector<Part> words;
  for (std::size_t i = 0; i < text.size();) {
    if (ends_word(text[i]) || text[i] == ' ' || text[i] == '-') {
      ++i;
      continue;
    }
    std::size_t end = i;
    while (end < text.size() && !ends_word(text[end])) ++end;
    if ((end < text.size() && text[end] == ':') == keys) words.push_back({i, end - i});
    i = end;
  }
  return words;
}

std::size_t place_in(Draws& draw, std::size_t size) {
  return static_cast<std::size_t>(draw.of(0, static_cast<std::int64_t>(size) - 1));
}

void change_characters(Draws& draw, std::string& text) {
  static const std::string signs = "{}[]:,-#&*!|>%@`?'\" \t\n\r0123456789/.+=~<ainx\x01\xC2\xBD\xE2\x80\xA8\xFF";
  const std::size_t at = place_in(draw, text.size());
  switch (draw.of(0, 4)) {
    case 0: text.erase(at, static_cast<std::size_t>(draw.of(1, 6))); break;
    case 1: text.insert(at, text.substr(at, static_cast<std::size_t>(draw.of(1, 6)))); break;
    case 2: std::swap(text[at], text[place_in(draw, text.size())]); break;
    case 3: text[at] = signs[place_in(draw, signs.size())]; break;
    default: text.insert(at, 1, signs[place_in(draw, signs.size())]); break;
  }
}

void change_lines(Draws& draw, std::string& text) {
  std::vector<std::string> lines = lines_of(text);
  const std::size_t at = place_in(draw, lines.size()), other = place_in(draw, lines.size());
  const auto here = lines.begin() + static_cast<std::ptrdiff_t>(at);
  switch (draw.of(0, 4)) {
    case 0: lines.erase(here); break;
    case 1: lines.insert(here, std::string(lines[at])); break;
    case 2: std::swap(lines[at], lines[other]); break;
    case 3: lines.insert(here, std::string(lines[other])); break;
    default: lines[at].insert(0, static_cast<std::size_t>(draw.of(1, 4)), draw.of(0, 9) == 0 ? '\t' : ' '); break;
  }
  text = joined(lines);
}

// One key or value is left out, written twice, exchanged for another of the file, or for a word that is none of its kind.
void change_words(Draws& draw, std::string& text, bool keys) {
  static const std::vector<std::string> strangers = {"",
                                                     "to measure",
                                                     "none",
                                                     "0",
                                                     "-1 in",
                                                     "1",
                                                     "2",
                                                     "500",
                                                     "99999999999999999999 in",
                                                     "0.0001 mm",
                                                     "1/0 in",
                                                     "50 yd",
                                                     "0 in",
                                                     "30 %",
                                                     "101 %",
                                                     "1e3 mm",
                                                     "13\"",
                                                     "2031-02-30",
                                                     "yes",
                                                     "no",
                                                     "off",
                                                     "full",
                                                     "the rest",
                                                     "pair",
                                                     "share of bought",
                                                     "{}",
                                                     "[]",
                                                     "[a, b]",
                                                     "{ a: b }",
                                                     "box",
                                                     "inverted",
                                                     "gathers",
                                                     "plain",
                                                     "across",
                                                     "bias",
                                                     "centimetres",
                                                     "inches",
                                                     "\xE2\x80\xA8",
                                                     "~",
                                                     "1 in",
                                                     "3 %",
                                                     "0 %",
                                                     "2.5",
                                                     "50 mm",
                                                     "the moon",
                                                     "60 in",
                                                     "half"};
  const std::vector<Part> words = words_of(text, keys);
  if (words.empty()) return;
  const Part at = words[place_in(draw, words.size())], other = words[place_in(draw, words.size())];
  const std::string here = text.substr(at.at, at.length), there = text.substr(other.at, other.length);
  switch (draw.of(0, 4)) {
    case 0: text.erase(at.at, at.length + (keys ? 1 : 0)); break;
    case 1: text.insert(at.at, here + (keys ? ": " : ", ")); break;
    case 2: text.replace(at.at, at.length, there); break;
    case 3: text.insert(at.at, there + (keys ? ": 2 in, " : ", ")); break;
    default: text.replace(at.at, at.length, strangers[place_in(draw, strangers.size())]); break;
  }
}

// A number becomes another one: the file stays sound, so the calculators have to do with it.
void change_number(Draws& draw, std::string& text) {
  std::vector<Part> numbers;
  for (std::size_t i = 0; i < text.size(); ++i) {
    std::size_t end = i;
    while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
    if (end == i) continue;
    numbers.push_back({i, end - i});
    i = end;
  }
  if (numbers.empty()) return;
  const Part at = numbers[place_in(draw, numbers.size())];
  static const std::vector<std::string> others = {"0",  "1",  "2",   "3",   "7",   "13",  "24",
                                                  "60", "99", "100", "250", "500", "0.1", "1/64"};
  text.replace(at.at, at.length, others[place_in(draw, others.size())]);
}

void change(Draws& draw, std::string& text) {
  if (text.empty()) return;
  switch (draw.of(0, 3)) {
    case 0: change_characters(draw, text); break;
    case 1: change_lines(draw, text); break;
    case 2: change_words(draw, text, true); break;
    default: change_words(draw, text, false); break;
  }
}

// Line ends as the reader counts them: a line feed, or a return that stands alone.
int count_lines(const std::string& text) {
  int lines = 1;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n'))) ++lines;
  return lines;
}

bool can_be_seen(const std::string& words) {
  return std::none_of(words.begin(), words.end(),
                      [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\t'; });  // a tab is quoted as it stands
}

// No gap where a name or number should stand; what is quoted may hold gaps of its own.
bool is_whole(const std::string& words) {
  std::string own;
  bool quoted = false;
  for (const char c : words) {
    if (c == '`') quoted = !quoted;
    if (!quoted) own += c;
  }
  for (const char* gap : {"  ", " .", " ,", " ;"})
    if (own.find(gap) != std::string::npos) return false;
  return own.empty() || own.front() != ' ';
}

std::vector<Diagnostic> messages_of_text(const std::string& text) {
  Diagnostics diag;
  const Entry source = read_yaml(text, "project.yaml", diag);
  if (source.kind != Entry::Kind::nothing) {
    const Project project = check_project(source, the_library(), diag);
    WorkOptions quick;
    quick.lay_work = 0;
    calculate(project, the_library(), quick, diag);
  } else {
    CHECK(diag.has_errors());  // nothing is read only for a reason that is told
  }
  return diag.sorted();
}

void check_messages(const std::string& text) {
  std::vector<Diagnostic> messages;
  bool threw = false;
  try {
    messages = messages_of_text(text);
  } catch (...) {
    threw = true;
  }
  const int lines = count_lines(text);
  const bool ticks = text.find('`') != std::string::npos;  // then a quotation may end early
  std::vector<Diagnostic> wrong;
  std::set<std::pair<SourceSpan, std::string>> told;
  for (const Diagnostic& d : messages) {
    const bool placed = d.at.line >= 1 && d.at.line <= lines && d.at.column >= 1 && d.at.length >= 1;
    const bool worded =
        !d.code.empty() && d.sentence.size() > 8 && can_be_seen(d.sentence + d.hint) && (ticks || is_whole(d.sentence));
    const bool once = told.emplace(d.at, d.sentence).second;
    if (!placed || !worded || !once) wrong.push_back(d);
  }
  if (!threw && wrong.empty()) return;
  INFO(text);
  CHECK_FALSE(threw);
  CHECK(as_foot(wrong) == "");
}

}  // namespace

TEST_CASE("a project file with anything done to it gives messages with a place and a sentence", "[law]") {
  std::vector<std::string> examples;  // and files that use what the examples do not: repeats, remnants, later sections
  for (const char* file : {"examples/linen-skirt/project.yaml", "examples/wool-day-dress/project.yaml",
                           "tests/check/clean/waistcoat.yaml", "tests/check/clean/wool_dress.yaml"})
    examples.push_back(faulty_file(std::string(GOWNSHEAF_SOURCE_DIR) + "/" + file).body);
  for (const std::string& text : examples) check_messages(text);
  Draws draw(1869);
  for (int round = 0; round < kLawRounds; ++round) {
    std::string text = examples[static_cast<std::size_t>(round) % examples.size()];
    const bool only_numbers = draw.of(0, 2) == 0;
    for (std::int64_t n = draw.of(1, 3); n > 0; --n) only_numbers ? change_number(draw, text) : change(draw, text);
    check_messages(text);
  }
}
