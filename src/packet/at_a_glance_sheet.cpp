// At a glance: what and when; may I cut now; the next acts that cannot be undone; what to settle. One page always.
#include <algorithm>
#include <utility>

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

constexpr std::size_t kMostToSettle = 8;
constexpr std::size_t kNextActs = 3;

Text what_and_when(const PacketInput& input) {
  const Project& project = input.project;
  std::string what =
      project.garment.known() && *project.garment != Garment::other ? std::string(word_for(*project.garment)) : "garment";
  std::vector<std::string> outer;
  for (const Cloth& c : project.cloths) {
    if (c.used_as.known() && *c.used_as == UsedAs::outer) outer.push_back(c.named.name);
  }
  std::string sentence = capital(what);
  if (!outer.empty()) sentence += " in " + listed(outer);
  const FigureText text = figure_text_of(input);
  const std::string size = project.size_choice ? " " + size_word(*project.size_choice) + "." : "";
  if (!project.worn_on.known()) return words(sentence + ". The day it is worn is not written." + size);
  std::string day = text.has("garment/worn on") ? text.value("garment/worn on") : long_day(*project.worn_on);
  return words(sentence + ", worn on ") + text.marked("garment/worn on", bold(replaced(day, " ", "\u00A0"))) + words("." + size);
}

bool answered_alike(const CutVerdict& a, const CutVerdict& b) {
  return a.verdict == b.verdict && a.after == b.after && a.reason == b.reason && a.reason_figure == b.reason_figure &&
         a.decided == b.decided;
}

// Cloths of one answer in one row, for a page that would be too full.
std::vector<CutVerdict> together(const std::vector<CutVerdict>& verdicts) {
  std::vector<CutVerdict> all;
  for (const CutVerdict& v : verdicts) {
    const auto alike = std::find_if(all.begin(), all.end(), [&](const CutVerdict& other) { return answered_alike(v, other); });
    if (alike == all.end()) {
      all.push_back(v);
    } else {
      alike->cloth += ", " + v.cloth;
      for (const std::string& part : v.parts)
        if (std::find(alike->parts.begin(), alike->parts.end(), part) == alike->parts.end()) alike->parts.push_back(part);
    }
  }
  return all;
}

void may_i_cut(const PacketInput& input, const std::vector<CutVerdict>& verdicts, Sheet& sheet) {
  sheet.blocks.push_back(heading("May I cut now?"));
  if (verdicts.empty()) {
    sheet.blocks.push_back(paragraph(words("No cloth is cut for this garment.")));
    return;
  }
  const FigureText text = figure_text_of(input);
  for (std::size_t i = 0; i < verdicts.size(); ++i) {
    const CutVerdict& v = verdicts[i];
    PairRow row;
    row.left = verdict(capital(v.cloth));
    row.left_under = condensed(listed(v.parts));
    const char* answer = v.verdict == MayCut::no ? "No." : "Yes.";
    row.right = verdict(v.verdict == MayCut::yes_after ? "Yes, after " + v.after + "." : answer);
    if (!v.reason.empty()) {
      std::string reason = v.reason;
      // A figure may stand for itself in the sentence; otherwise the sentence already holds it in words.
      const std::size_t at = reason.find("{}");
      if (at != std::string::npos && !v.reason_figure.empty()) {
        row.right = row.right + words(" ") + sentence_text(reason.substr(0, at), true) + text.measured(v.reason_figure) +
                    sentence_text(ends_with_stop(reason.substr(at + 2)), true);
      } else {
        row.right = row.right + words(" ") + sentence_text(ends_with_stop(reason), true);
      }
    }
    if (!v.decided.empty()) row.right = row.right + words(" ") + sentence_text(ends_with_stop(v.decided), false);
    row.last = i + 1 == verdicts.size();
    sheet.blocks.push_back(block(row));
  }
}

// Lays that an interrupt ended: said here always, whatever else finds no room.
void say_cut_short(const PacketInput& input, Sheet& sheet) {
  std::vector<std::string> cloths;
  for (const LayPlan& lay : input.plans.lays)
    if (lay.cut_short) cloths.push_back(lay.cloth);
  if (cloths.empty()) return;
  sheet.blocks.push_back(
      paragraph(bold("Cut short. ") + words("An interrupt ended the search for the lay of " + listed(cloths) +
                                            ". Made again, the packet will differ: keep this one while you cut by it.")));
}

void next_acts(const PacketInput& input, Sheet& sheet) {
  std::vector<const PlannedStep*> acts;
  for (const PlannedStep& s : input.plans.work) {
    if (!s.done && !s.cannot_undo.empty() && acts.size() < kNextActs) acts.push_back(&s);
  }
  if (acts.empty()) {
    sheet.blocks.push_back(heading("Acts that cannot be undone"));
    sheet.blocks.push_back(paragraph(words(input.plans.work.empty() ? "There are no steps." : "None is left.")));
    return;
  }
  sheet.blocks.push_back(heading(acts.size() == 3   ? "The next three acts that cannot be undone"
                                 : acts.size() == 2 ? "The next two acts that cannot be undone"
                                                    : "The next act that cannot be undone"));
  const FigureText text = figure_text_of(input);
  for (const PlannedStep* s : acts) {
    PairRow row;
    row.left = bold(capital(nth_step(s->number))) + condensed(" " + s->cannot_undo);
    if (s->conditional && !s->condition.empty()) row.right = words("If " + s->condition + ": ");
    for (const Inline& part : text.act(s->act)) {  // the act is bold on its step and plain here
      Inline one = part;
      if (one.kind == Inline::Kind::words) one.face = Face::regular;
      row.right.push_back(std::move(one));
    }
    row.last = s == acts.back();
    sheet.blocks.push_back(block(row));
  }
}

// "and 6 warnings": what is left off the page, by kind.
std::string left_off(const std::vector<ToSettle>& rows, std::size_t from) {
  std::int64_t holds = 0, warnings = 0, rest = 0;
  for (std::size_t i = from; i < rows.size(); ++i) {
    if (rows[i].kind == ToSettle::Kind::hold) ++holds;
    else if (rows[i].kind == ToSettle::Kind::warning) ++warnings;
    else ++rest;
  }
  std::vector<std::string> parts;
  if (holds > 0) parts.push_back(counted(holds, "more hold", "more holds"));
  if (warnings > 0) parts.push_back(counted(warnings, "more warning", "more warnings"));
  if (rest > 0) parts.push_back(counted(rest, "more thing to know", "more things to know"));
  return "and " + listed(parts) + ": all of them on page";
}

// What stands above them on the page.
std::vector<Block> above_them(const PacketInput& input, const std::vector<CutVerdict>& verdicts) {
  Sheet sheet;
  may_i_cut(input, verdicts, sheet);
  say_cut_short(input, sheet);
  next_acts(input, sheet);
  sheet.blocks.push_back(heading("Settle these"));
  return sheet.blocks;
}

void settle_these(const PacketInput& input, Sheet& sheet) {
  const std::vector<ToSettle> rows = to_settle(input);
  std::size_t shown = rows.size();
  if (rows.size() > kMostToSettle) {  // holds only
    shown = 0;
    while (shown < rows.size() && rows[shown].kind == ToSettle::Kind::hold) ++shown;
    shown = std::min(shown, kMostToSettle);
  }
  const auto below = [rows](std::vector<Block> blocks, std::size_t count) {
    if (rows.empty()) blocks.push_back(paragraph(words("Nothing is open.")));
    for (std::size_t i = 0; i < count; ++i) {
      PairRow row = rows[i].row;
      row.last = i + 1 == rows.size();
      blocks.push_back(block(row));
    }
    if (count < rows.size()) blocks.push_back(block(ContentsLine{left_off(rows, count), kAllWarningsAnchor}));
    return blocks;
  };
  sheet.blocks = below(above_them(input, input.plans.may_cut), shown);
  // One page always: first the cloths of one answer share a row; then what finds no room is counted, with the page on which it stands whole.
  const std::vector<CutVerdict> merged = together(input.plans.may_cut);
  if (merged.size() < input.plans.may_cut.size())
    sheet.shorter.push_back([below, input, merged, shown] { return below(above_them(input, merged), shown); });
  while (shown > 0)
    sheet.shorter.push_back([below, input, merged, count = --shown] { return below(above_them(input, merged), count); });
}

}  // namespace

Sheet at_a_glance_sheet(const PacketInput& input) {
  Sheet sheet;
  sheet.section = Section::glance;
  sheet.answer = what_and_when(input);
  settle_these(input, sheet);
  return sheet;
}

}  // namespace gownsheaf
