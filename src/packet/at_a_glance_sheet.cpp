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
  std::string what = project.garment.known() && *project.garment != Garment::other ? std::string(word_for(*project.garment)) : "garment";
  std::vector<std::string> outer;
  for (const Cloth& c : project.cloths) {
    if (c.used_as.known() && *c.used_as == UsedAs::outer) outer.push_back(c.named.name);
  }
  std::string sentence = capital(what);
  if (!outer.empty()) sentence += " in " + listed(outer);
  const FigureText text = figure_text_of(input);
  if (!project.worn_on.known()) return words(sentence + ". The day it is worn is not written.");
  std::string day = text.has("garment/worn on") ? text.value("garment/worn on") : long_day(*project.worn_on);
  return words(sentence + ", worn on ") + text.marked("garment/worn on", bold(replaced(day, " ", "\u00A0"))) + words(".");
}

void may_i_cut(const PacketInput& input, Sheet& sheet) {
  sheet.blocks.push_back(heading("May I cut now?"));
  if (input.plans.may_cut.empty()) {
    sheet.blocks.push_back(paragraph(words("No cloth is cut for this garment.")));
    return;
  }
  const FigureText text = figure_text_of(input);
  for (std::size_t i = 0; i < input.plans.may_cut.size(); ++i) {
    const CutVerdict& v = input.plans.may_cut[i];
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
    row.last = i + 1 == input.plans.may_cut.size();
    sheet.blocks.push_back(block(row));
  }
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

// Height that a block will take, a little more rather than less: for keeping the sheet to one page.
double height_of(const Block& b, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  const auto lines = [&](const Text& text, double room, double size) {
    return text.empty() ? 0.0 : static_cast<double>(typesetter.lines(text, Length::from_points(room), size).size());
  };
  if (const auto* row = std::get_if<PairRow>(&b.what)) {
    const double left = lines(row->left, 154, t.text) + lines(row->left_under, 154, t.text);
    return std::max(left, lines(row->right, 320, t.text)) * t.step + 12;
  }
  if (std::holds_alternative<Heading>(b.what)) return t.heading_step + 36;
  if (const auto* p = std::get_if<Paragraph>(&b.what)) return lines(p->text, t.text_width, t.text) * t.step + 6;
  return t.step;
}

double height_of(const Sheet& sheet, const Typesetter& typesetter) {
  const TypeScale& t = typesetter.scale();
  double high = t.title_step +
                static_cast<double>(typesetter.lines(sheet.answer, Length::from_points(486), t.answer).size()) * t.answer_step;
  for (const Block& b : sheet.blocks) high += height_of(b, typesetter);
  return high;
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
  return "and " + listed(parts);
}

void settle_these(const PacketInput& input, Sheet& sheet) {
  const std::vector<ToSettle> rows = to_settle(input);
  sheet.blocks.push_back(heading("Settle these"));
  if (rows.empty()) {
    sheet.blocks.push_back(paragraph(words("Nothing is open.")));
    return;
  }
  std::size_t shown = rows.size();
  if (rows.size() > kMostToSettle) {  // holds only
    shown = 0;
    while (shown < rows.size() && rows[shown].kind == ToSettle::Kind::hold) ++shown;
    shown = std::min(shown, kMostToSettle);
  }
  // A page that overflows is better than one that names no hold.
  std::size_t least = 0;
  while (least < std::min<std::size_t>(shown, 3) && rows[least].kind == ToSettle::Kind::hold) ++least;
  const double room = input.shape.bottom - input.shape.top;
  const std::size_t kept = sheet.blocks.size();
  for (;; --shown) {
    sheet.blocks.resize(kept);
    for (std::size_t i = 0; i < shown; ++i) {
      PairRow row = rows[i].row;
      row.last = i + 1 == rows.size();
      sheet.blocks.push_back(block(row));
    }
    if (shown < rows.size()) sheet.blocks.push_back(block(ContentsLine{left_off(rows, shown), kAllWarningsAnchor}));
    if (shown <= least || height_of(sheet, input.typesetter) <= room) return;
  }
}

}  // namespace

Sheet at_a_glance_sheet(const PacketInput& input) {
  Sheet sheet;
  sheet.section = Section::glance;
  sheet.answer = what_and_when(input);
  may_i_cut(input, sheet);
  next_acts(input, sheet);
  settle_these(input, sheet);
  return sheet;
}

}  // namespace gownsheaf
