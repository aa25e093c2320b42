// A Figure turned into the rich text of a sheet. Sheets print numbers only through here, so that the same figure reads
// the same in a table, a sentence, a step and a drawing, and always says when it rests on a guess.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "figures/changes.h"
#include "figures/figures.h"
#include "figures/plans.h"
#include "layout/text.h"

namespace gownsheaf {

// Words that stand where a figure should be and is not: a test looks for them in whole packets.
inline constexpr const char* kFigureAbsent = "(not worked out)";
// In a set that leaves private figures out.
inline constexpr const char* kLeftOut = "(left out)";

class FigureText {
 public:
  // `changes`: what prints one of its figures is marked, and so is the line it stands on. A private figure is printed
  // only where `private_shown`.
  FigureText(const Figures& figures, ShownIn shown_in, const Changes* changes = nullptr, bool private_shown = true)
      : figures_(&figures), shown_in_(shown_in), changes_(changes), private_shown_(private_shown) {}

  ShownIn shown_in() const { return shown_in_; }
  const Figures& figures() const { return *figures_; }
  bool has(std::string_view key) const { return figures_->find(key) != nullptr; }

  // A length that somebody will measure or cut: length size, bold; then what it rests on.
  Text measured(std::string_view key) const;
  // A length that only checks or explains another: text size, regular; then what it rests on.
  Text checking(std::string_view key) const;
  // In a drawing: no words after it. `small_words` sets it in the smallest words.
  Text drawn(std::string_view key, Inline::Size size = Inline::Size::as_text, Face face = Face::condensed) const;
  // Across × along, unit once: `41 1/2 × 45 in`.
  Text sizes(std::string_view across, std::string_view along, Face face = Face::condensed,
             Inline::Size size = Inline::Size::as_text) const;
  // For a column whose head names the unit. `to_measure` sets it in the length size; what it rests on follows.
  Text cell(std::string_view key, bool to_measure) const;
  // Counts and words: "9", "knife".
  std::string value(std::string_view key) const;
  std::int64_t count(std::string_view key) const;  // 0 when absent
  // An estimate: "about 2.7 lbf", two figures at most, in the set's units. Pulls, weights, pressures.
  std::string about(std::string_view key) const;

  // Text of a sheet's own making that says this figure, such as its working or its count in a sentence: marked when the
  // figure is another since the older packet.
  Text marked(std::string_view key, Text text) const;

  // "changed, was 13 in" when the older packet had another figure there; else empty. `measured` and `checking` say it
  // themselves; a table says it in a column of words.
  Text was(std::string_view key) const;
  Text then_was(std::string_view key) const;  // the same after a blank, to follow a name

  // ", guessed" or " maker's default" as the figure's cell or sentence needs it; empty when it rests on neither.
  Text rests_on(std::string_view key) const;
  // A step's words with its figures set in: the act measured and bold, a reason checking and condensed.
  Text act(const Say& say) const;
  Text reason(const Say& say) const;
  Text beside_step(const Say& say) const;

 private:
  Text say(const Say& parts, Face words_face, bool to_measure) const;
  Text was_after(std::string_view key) const;  // with a comma before it
  bool hidden(const Figure& figure) const { return figure.is_private && !private_shown_; }
  const Figures* figures_;
  ShownIn shown_in_;
  const Changes* changes_;
  bool private_shown_;
};

// Units of the column heads: "in" or "cm"; "yd" or "m" for cloth.
std::string unit_of(ShownIn shown_in);
std::string cloth_unit_of(ShownIn shown_in);

// A place on a ruler or a cut across the cloth: read off the plan, to the step of marks.
LengthText ruler_text(Length length, ShownIn shown_in);

// A finished sentence (of a message, a working, a verdict) whose lengths become set lengths: `3/8 yd`, `13 1/2 in`.
// Backticks, which mark what is typed, are left out on paper.
Text sentence_text(std::string_view sentence, bool to_measure, Face face = Face::regular);

// More builders than layout/text.h has, each in one face and size.
Text words_in(Face face, std::string s, Inline::Size size = Inline::Size::as_text);
Text length_in(Face face, LengthText length, Inline::Size size);
Text verdict(std::string s);

}  // namespace gownsheaf
