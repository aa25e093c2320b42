// The wearer beyond bare measures: who, over what, what the garment must do, and what each fitting showed.
#include <algorithm>

#include "check/sections.h"

namespace gownsheaf {

namespace {

std::vector<std::string> texts_in(const Item& item, std::string_view key) {
  std::vector<std::string> texts;
  for (const Entry* e : item.values(key))
    if (e->kind == Entry::Kind::text && e->text != kNone) texts.push_back(clean_name(e->text));
  return texts;
}

// `side of bodice front` where the piece declares that edge.
bool edge_of_a_piece(const Filling& file, std::string_view written) {
  const std::string whole = folded_name(clean_name(written));
  const auto of = whole.find(" of ");
  const auto& pieces = file.names.piece_edges();
  const auto has = [](const std::vector<std::string>& edges, std::string_view edge) {
    return std::any_of(edges.begin(), edges.end(), [&](const std::string& e) { return folded_name(e) == edge; });
  };
  if (of == std::string::npos)
    return std::any_of(pieces.begin(), pieces.end(), [&](const auto& p) { return has(p.second, whole); });
  const auto piece = pieces.find(whole.substr(of + 4));
  return piece != pieces.end() && has(piece->second, whole.substr(0, of));
}

// The measure, edge or round that a finding is at, as it was first named; nothing when there is none of that name.
std::optional<std::string> place_of(const Filling& file, const Item& fitting, const Entry& at) {
  if (auto known = file.names.find("measures|edges|rounds", at.text)) return known;
  if (edge_of_a_piece(file, at.text)) return clean_name(at.text);
  std::vector<std::string> choices = file.names.all("measures|edges|rounds");
  for (const auto& [piece, edges] : file.names.piece_edges()) choices.insert(choices.end(), edges.begin(), edges.end());
  const std::string near = did_you_mean(clean_name(at.text), choices);
  report(file, {"fittings", clean_name(fitting.plain("fitting"))}, Severity::error, "unknown-name", at.at,
         "No measure, edge or round is called `" + at.text + "`.",
         near.empty() ? "`at: waist`, or the name of an edge" : "did you mean `" + near + "`?");
  return {};
}

Finding finding_of(const Filling& file, const Item& fitting, const Item& item) {
  Finding f;
  f.at = item.entry()->at;
  if (const Entry* at = item.at("at"); at != nullptr && at->kind == Entry::Kind::text) {
    f.at = at->at;
    f.where = place_of(file, fitting, *at).value_or("");
  }
  f.is = item.word("is").value.value_or("");
  f.by = item.length("by").value.value_or(Length{});
  f.shared_over = names_in(file, item, "shared over", "seams");
  f.at_most = item.length("at most");
  if (!f.at_most.known())
    f.at_most = Given<Length>::standing(Length::sixty_fourths(16), 'c', "no edge takes more without a new mock-up");
  return f;
}

void report_twice(const Filling& file, const Fitting& fitting, const Finding& f) {
  const auto first = std::find_if(fitting.found.begin(), fitting.found.end(),
                                  [&](const Finding& other) { return same_name(other.where, f.where); });
  if (first == fitting.found.end()) return;
  report(file, {"fittings", fitting.named.name}, Severity::error, "name-twice", f.at,
         "Two findings of " + fitting.named.name + " are at `" + f.where + "`.", "put them together: one place, one finding",
         {first->at});
}

}  // namespace

void fill_wearer(const Filling& file, Project& project) {
  const Item wearer = file.root.block("wearer");
  project.wearer.name = wearer.text("name");
  project.wearer.age = wearer.count("age");
  for (const Entry* e : file.root.values("worn for"))
    if (e->kind == Entry::Kind::text && e->text != kNone) project.worn_for.insert(e->text);
  for (const Item& item : file.root.items("still to make")) {
    StillToMake layer{clean_name(item.plain("layer")), item.day("ready by").value, item.entry()->at};
    if (const Entry* name = item.at("layer")) layer.at = name->at;
    if (!layer.layer.empty()) project.still_to_make.push_back(std::move(layer));
  }
}

void fill_taken(const Filling& file, Project& project) {
  const Item item = file.root.block("measures").block("taken");
  if (item.entry() == nullptr) return;
  Taken taken;
  taken.at = item.entry()->key_at;
  taken.day = item.day("day");
  taken.over = texts_in(item, "over");
  taken.measured_by = item.text("measured by");
  taken.corset_gap = item.length("corset gap");
  project.taken = std::move(taken);
}

void fill_finished_girths(const Filling& file, Project& project) {
  project.finished_girths = girths_in(file, file.root.at("finished girths"));
  const bool inches = *project.show_lengths_in == ShownIn::inches;
  const auto shown = [&](Length l) {
    const ShownIn in = inches ? ShownIn::inches : ShownIn::centimetres;
    return text_of(l, in, mark_step(in), Rounding::nearest).plain();
  };
  for (const auto& [name, finished] : project.finished_girths) {
    const auto body = project.measures.girths_and_lengths.find(name);
    if (!finished.known() || body == project.measures.girths_and_lengths.end() || !body->second.both.known()) continue;
    const Length girth = *body->second.both;
    const auto ease = project.ease.find(name);
    if (ease == project.ease.end() || ease->second.origin == Origin::absent) {
      project.ease[name] = Given<Length>::standing(*finished - girth, 'x', "the finished girth less the body's");
      continue;
    }
    if (!ease->second.known() || girth + *ease->second == *finished) continue;
    Diagnostic d;
    d.code = "length-disagrees";
    d.at = finished.at;
    d.also = {ease->second.at};
    d.sentence =
        "Finished " + name + " says " + shown(*finished) + "; body and ease come to " + shown(girth + *ease->second) + ".";
    d.hint = "drop one: `ease` follows from the other two";
    d.item = name;
    d.section = "finished girths";
    d.is_private = true;
    file.diag.add(std::move(d));
  }
}

void fill_fittings(const Filling& file, Project& project) {
  for (const Item& item : file.root.items("fittings")) {
    Fitting fitting;
    fitting.named = named_of(file, item, "fittings", "fitting");
    fitting.day = item.day("day");
    fitting.wore = texts_in(item, "wore");
    fitting.cloth_thickness = item.length("cloth thickness");
    if (!fitting.cloth_thickness.known())
      fitting.cloth_thickness = Given<Length>::standing(Length::tenth_mm(3), 'c', "a mock-up of one thin cotton");
    for (const Item& one : item.items("found")) {
      Finding f = finding_of(file, item, one);
      if (f.where.empty() || f.is.empty() || f.by <= Length{}) continue;
      report_twice(file, fitting, f);
      fitting.found.push_back(std::move(f));
    }
    fitting.girths = girths_in(file, item.at("girths"));
    fitting.signed_on = item.day("signed");
    if (const Entry* signed_on = item.at("signed"); signed_on != nullptr && signed_on->text == "not yet") {
      fitting.signed_on = {};
      fitting.signed_on.origin = Origin::written;
      fitting.signed_on.at = signed_on->at;
    }
    project.fittings.push_back(std::move(fitting));
  }
}

}  // namespace gownsheaf
