// {…} references in template texts, and facts that need an item, checked when the file is read: not at a maker's table.
#include <algorithm>

#include "check/template_block.h"
#include "figures/figures.h"
#include "templates/say.h"

namespace gownsheaf {
namespace {

constexpr std::string_view kSources = "sources.md#";

bool names_items(std::string_view section) {
  return section == "cloths" || section == "pieces" || section == "pleats" || section == "rounds" || section == "closures" ||
         section == "bones" || section == "bone stock" || section == "notions" || section == "fittings";
}

// What is wrong with one reference: a sentence and a hint, or two empty texts.
struct Wrong {
  std::string sentence, hint;
};

Wrong wrong_with(const SayReference& r, const std::string& written, const std::string& for_each) {
  const auto of_section = [&](const FigureKind& k) { return k.section == r.section; };
  if (!r.item_word.empty() && r.item_word != for_each)
    return {"`{" + written + "}` speaks of one " + r.item_word + ", but this is not repeated for each " + r.item_word + ".",
            "for each: " + r.item_word};
  if (r.item_word.empty() && std::none_of(figure_kinds().begin(), figure_kinds().end(), of_section))
    return {"`{" + written + "}` names no figure.", "a whole key begins with measures, skirt or garment"};
  if (r.item_word.empty() && names_items(r.section))
    return {"`{" + written + "}` names an item, and a template knows nobody's items.", "use `for each`, then {run:count}"};
  if (r.item_word.empty() ? r.quantity.empty() : false)
    return {"`{" + written + "}` names a section, not a figure.", "{" + written + "/…}"};
  if (r.quantity.empty() || find_figure_kind(r.section, r.quantity) != nullptr) return {};
  std::vector<std::string> choices;
  for (const FigureKind& k : figure_kinds())
    if (of_section(k)) choices.emplace_back(k.quantity);
  const std::string near = did_you_mean(r.quantity, choices);
  std::string all;
  for (const std::string& c : choices) all += (all.empty() ? "" : ", ") + c;
  return {"`{" + written + "}`: there is no figure `" + r.quantity + "` in " + r.section + ".",
          near.empty() ? "its figures are " + all : "did you mean `" + near + "`?"};
}

}  // namespace

bool is_id(std::string_view id) {
  const auto sound = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
  return !id.empty() && id.size() <= 60 && std::all_of(id.begin(), id.end(), sound) && id.front() >= 'a' && id.front() <= 'z' &&
         id.back() != '-';
}

void check_source(const TemplateBlock& block, char label, const std::string& source) {
  const bool wants_source = label == 'a' || label == 'b';
  if (wants_source && source.empty())
    block.error("source-missing", "label", "Label a or b says that a source was read; none is named.",
                "source: sources.md#…, or label: c");
  if (source.empty()) return;
  const std::string_view anchor = std::string_view(source).substr(std::min(source.size(), kSources.size()));
  if (source.rfind(kSources, 0) != 0 || !is_id(anchor))
    block.error("source-form", "source", "`" + source + "` is no anchor of the sources.", "sources.md#largest-first");
}

ReferenceCount check_lengths_and_figures(const Entry& e, bool figures_allowed, Diagnostics& diag) {
  ReferenceCount count;
  const SayRead read = read_say(e.text);
  if (read.fault) {
    diag.error("braces", part_of_text(e, read.fault->at, read.fault->length), read.fault->sentence, "{1/4 in}");
    ++count.faults;
    return count;
  }
  for (const SayPiece& piece : read.pieces) {
    if (!piece.reference) continue;
    if (piece.text == "one" || read_length(piece.text, "").ok()) {
      ++count.names;
      continue;
    }
    const auto first = piece.text.find('/'), last = piece.text.rfind('/');
    const std::string section = piece.text.substr(0, first);
    const bool known = first != std::string::npos && !names_items(section) &&
                       (find_figure_kind(section, piece.text.substr(first + 1)) != nullptr ||
                        (last != first && find_figure_kind(section, piece.text.substr(last + 1)) != nullptr));
    if (known && figures_allowed) {
      ++count.figures;
      continue;
    }
    ++count.faults;
    diag.error("unknown-figure", part_of_text(e, piece.at, piece.length),
               known ? "`{" + piece.text + "}`: this text holds lengths, no figures of the garment."
                     : "`{" + piece.text + "}` is neither a length nor a figure.",
               known ? "{3 in}" : "{1/4 in}, or a whole key such as {girths/waist/finished}");
  }
  return count;
}

ReferenceCount check_references(const Entry& e, const std::string& for_each, bool title_allowed, Diagnostics& diag) {
  ReferenceCount count;
  const SayRead read = read_say(e.text);
  if (read.fault) {
    diag.error("braces", part_of_text(e, read.fault->at, read.fault->length), read.fault->sentence, "{run:count}");
    ++count.faults;
    return count;
  }
  for (const SayPiece& piece : read.pieces) {
    if (!piece.reference) continue;
    if (title_allowed && piece.text == "title") {
      ++count.names;
      continue;
    }
    const SayReference r = read_reference(piece.text);
    Wrong wrong = wrong_with(r, piece.text, for_each);
    if (!wrong.sentence.empty()) {
      diag.error("unknown-figure", part_of_text(e, piece.at, piece.length), std::move(wrong.sentence), std::move(wrong.hint));
      ++count.faults;
      continue;
    }
    if (r.quantity.empty()) ++count.names;
    else ++count.figures;
  }
  return count;
}

void check_fact_items(const Condition& condition, const std::string& for_each, const SourceSpan& at, Diagnostics& diag) {
  for (const std::string& name : condition.facts_used()) {
    const FactKind* fact = find_fact(name);
    if (fact == nullptr || fact->item.empty() || fact->item == for_each) continue;
    diag.error("fact-item", at,
               "`" + name + "` speaks of one " + std::string(fact->item) + ", but this is not repeated for each " +
                   std::string(fact->item) + ".",
               "for each: " + std::string(fact->item));
  }
}

}  // namespace gownsheaf
