// What is to be settled before the scissors: rows shared by "at a glance" and the sheet that lists them all.
#include <algorithm>

#include "figures/privacy.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

// What a message is about, in the left column: its step, else its item.
Text about(const PacketInput& input, const Diagnostic& d) {
  const PlannedStep* step = d.step.empty() ? nullptr : step_with_id(input.plans, d.step);
  if (step != nullptr) return condensed(" " + nth_step(step->number));
  return d.item.empty() ? Text{} : condensed(" " + d.item);
}

// The sentence, and the hint unless it is something to type.
std::string said(const Diagnostic& d) {
  std::string out = ends_with_stop(d.sentence);
  const bool to_type = d.hint.find('`') != std::string::npos;
  if (!d.hint.empty() && !to_type) out += " " + ends_with_stop(capital(d.hint));
  return out;
}

void add_messages(const PacketInput& input, Severity severity, std::vector<ToSettle>& rows) {
  const bool hold = severity == Severity::hold;
  for (const Diagnostic& d : input.messages) {
    if (d.severity != severity || !d.accepted_because.empty() || !shown_to_reader(input, d)) continue;
    ToSettle one;
    one.kind = hold ? ToSettle::Kind::hold : ToSettle::Kind::warning;
    one.row.left = tag(hold ? Tag::hold : Tag::warning) + about(input, d);
    one.row.right = sentence_text(said(d), true);
    rows.push_back(std::move(one));
  }
}

// Guesses: one row for each thing guessed from; what rests on it in words.
void add_guesses(const PacketInput& input, std::vector<ToSettle>& rows) {
  const FigureText text = figure_text_of(input);
  std::vector<std::string> seen;
  for (const Figure& f : input.figures.all()) {
    if (!f.guessed || (f.is_private && !input.set.private_shown)) continue;
    if (std::find(seen.begin(), seen.end(), f.guessed_from) != seen.end()) continue;
    seen.push_back(f.guessed_from);
    std::vector<const Figure*> roots, resting;
    for (const Figure& other : input.figures.all()) {
      if (!other.guessed || other.guessed_from != f.guessed_from) continue;
      if (other.is_private && !input.set.private_shown) continue;
      if (other.formula.empty()) roots.push_back(&other);
      else if (other.action != Action::none && other.key.find("/mark ") == std::string::npos) resting.push_back(&other);
    }
    ToSettle one;
    one.kind = ToSettle::Kind::guess;
    one.row.left = tag(Tag::guessed);
    Text said;
    std::size_t told = 0;
    for (const Figure* root : roots) {
      if (told == 3) break;
      said = said + words(told == 0 ? capital(figure_name(root->key)) + ", " : "; " + figure_name(root->key) + ", ");
      said = said + text.drawn(root->key, Inline::Size::measured, Face::bold);
      ++told;
    }
    if (roots.size() > 3) said = said + words(" and " + counted(static_cast<std::int64_t>(roots.size()) - 3, "more", "more"));
    const bool hide_from = !input.set.private_shown && sum_is_private(f, input.figures);
    const std::string from = f.guessed_from.empty() || hide_from ? "other figures" : f.guessed_from;
    said = said + words(roots.empty() ? "Guessed from " + from + "." : ": guessed from " + from + ".");
    std::vector<std::string> names;
    for (const Figure* r : resting) {
      if (names.size() == 3) break;
      names.push_back(figure_name(r->key));
    }
    if (names.empty()) {
      said = said + words(" No cut rests on it.");
    } else {
      const auto more = static_cast<std::int64_t>(resting.size() - names.size());
      if (more > 0) names.push_back(counted(more, "figure more", "figures more"));
      said = said + words(" On it rests: " + listed(names) + ".");
    }
    one.row.right = said;
    rows.push_back(std::move(one));
  }
}

void add_to_measure(const PacketInput& input, std::vector<ToSettle>& rows) {
  std::vector<std::string> names;
  for (const auto& [path, at] : input.project.to_measure)
    if (input.set.private_shown || !is_private_name(path)) names.push_back(figure_name(path));
  if (names.empty()) return;
  ToSettle one;
  one.kind = ToSettle::Kind::to_measure;
  one.row.left = bold("To measure");
  one.row.right = words(capital(listed(names)) + ". Until then the packet does without.");
  rows.push_back(std::move(one));
}

void add_decided(const PacketInput& input, std::vector<ToSettle>& rows) {
  for (const Diagnostic& d : input.messages) {
    if (d.accepted_because.empty() || d.severity == Severity::error || !shown_to_reader(input, d)) continue;
    ToSettle one;
    one.kind = ToSettle::Kind::decided;
    one.row.left = bold("Decided") + (d.item.empty() ? Text{} : condensed(" " + d.item));
    std::string sentence = ends_with_stop(d.sentence);
    sentence.pop_back();
    one.row.right = sentence_text(sentence + ", because " + ends_with_stop(d.accepted_because), false);
    rows.push_back(std::move(one));
  }
}

// What a sheet says in its own words, where it lies in them.
bool has_its_own_line(const Diagnostic& d) {
  static constexpr std::string_view kCodes[] = {"cloth-short",    "fills-unknown", "gate-unsigned", "joined-interlining",
                                                "second-mock-up", "size-missing",  "width-unknown"};
  return std::find(std::begin(kCodes), std::end(kCodes), d.code) != std::end(kCodes);
}

// What is said of how a closing holds is about its places too: they are marked by another sheet.
bool is_about(const Diagnostic& d, std::string_view sheet) {
  return d.sheet == sheet || (sheet == "closures" && d.sheet == "closure reinforcement");
}

}  // namespace

std::vector<Block> told_on(const PacketInput& input, std::string_view sheet, std::string_view item,
                           const std::vector<std::string>& items) {
  std::vector<Block> told;
  for (const Severity severity : {Severity::hold, Severity::warning})
    for (const Diagnostic& d : input.messages) {
      if (d.severity != severity || !is_about(d, sheet) || !d.accepted_because.empty() || !shown_to_reader(input, d) ||
          has_its_own_line(d))
        continue;
      const bool of_a_sheet = std::find(items.begin(), items.end(), d.item) != items.end();
      if (!item.empty() && (of_a_sheet ? d.item != item : item != items.front())) continue;
      told.push_back(paragraph(
          tag(severity == Severity::hold ? Tag::hold : Tag::warning) + words(" ") + sentence_text(said(d), true), true));
    }
  return told;
}

std::string holds_on_cutting(const PacketInput& input, const std::string& cloth) {
  for (const PlannedStep& s : input.plans.work) {
    if (s.item != cloth || s.cannot_undo != kCannotUndo[0] || s.done || s.holds.empty()) continue;
    std::string said;
    for (std::string hold : s.holds) {
      if (hold.ends_with('.')) hold.pop_back();
      said += (said.empty() ? "" : "; ") + hold;
    }
    return said + ", " + nth_step(s.number);
  }
  return "";
}

std::vector<ToSettle> to_settle(const PacketInput& input) {
  std::vector<ToSettle> rows;
  add_messages(input, Severity::hold, rows);
  add_messages(input, Severity::warning, rows);
  add_guesses(input, rows);
  add_to_measure(input, rows);
  add_decided(input, rows);
  return rows;
}

}  // namespace gownsheaf
