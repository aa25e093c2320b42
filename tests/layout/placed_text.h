// Reads finished pages back: which words stand where.
#pragma once
#include <algorithm>
#include <string>
#include <vector>

#include "layout/lay_out.h"
#include "support/half_em_font.h"
#include "unicode/utf8.h"

namespace gownsheaf::testing {

struct PlacedText {
  std::string words;
  Length left, right, base, top, bottom;  // top and bottom of what is inked, tails left out
  bool white = false;
  int angle = 0;
};

inline std::string words_of(const TextMark& mark) {
  std::string all;
  for (const TextRun& run : mark.runs) all += run.utf8;
  return all;
}

// Extents by the half-em face: capitals 0.7 em, every letter half an em. The space inside a set fraction is squeezed, so
// a run ends where the next one begins at the latest.
inline PlacedText placed(const TextMark& mark) {
  PlacedText text{words_of(mark), mark.at.x, mark.at.x, mark.at.y, mark.at.y, mark.at.y, mark.white, mark.angle};
  for (std::size_t i = 0; i < mark.runs.size(); ++i) {
    const TextRun& run = mark.runs[i];
    Length end = run.offset + run.size.times(static_cast<std::int64_t>(decode_utf8(run.utf8).size()), 2);
    if (i + 1 < mark.runs.size()) end = std::min(end, mark.runs[i + 1].offset + run.size.times(1, 20));
    text.right = std::max(text.right, mark.at.x + end);
    text.top = std::min(text.top, mark.at.y - run.rise - run.size.times(7, 10));
    text.bottom = std::max(text.bottom, mark.at.y - run.rise);
  }
  return text;
}

// Level text of the page below the running head.
inline std::vector<PlacedText> body_text(const Page& page) {
  std::vector<PlacedText> all;
  for (const Mark& mark : page.marks) {
    const auto* text = std::get_if<TextMark>(&mark.what);
    if (text != nullptr && text->angle == 0 && text->at.y > Length::points(54)) all.push_back(placed(*text));
  }
  return all;
}
inline std::string joined(const std::vector<PlacedText>& texts, const std::string& between = "|") {
  std::string all;
  for (const PlacedText& text : texts) all += (all.empty() ? "" : between) + text.words;
  return all;
}
inline bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
inline const PlacedText* find_text(const std::vector<PlacedText>& texts, const std::string& words) {
  const auto found = std::find_if(texts.begin(), texts.end(), [&](const PlacedText& t) { return t.words == words; });
  return found == texts.end() ? nullptr : &*found;
}

struct HalfEmPages {
  HalfEmFont font;
  Typesetter pin_up{font, pin_up_scale()};
  Typesetter binder{font, binder_scale()};
  PaperDocument pages(const std::vector<Sheet>& sheets, const Typesetter& type) const {
    return lay_out(sheets, page_shape(PaperName::letter, HoleCount::three), {"Cape", "Set, packet 4f2a"}, type);
  }
};

inline Sheet sheet_of(std::string title, std::vector<Block> blocks) {
  Sheet sheet;
  sheet.title = sheet.anchor = std::move(title);
  sheet.blocks = std::move(blocks);
  return sheet;
}

inline const HalfEmPages kBench;

inline Length pt(double points) { return Length::from_points(points); }

}  // namespace gownsheaf::testing
