// Findings to figures, and how each change is said.
#include <algorithm>

#include "calculate/fitting.h"
#include "calculate/fitting_share.h"
#include "calculate/gates.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

constexpr const char* kLayers = "the layers";  // the place of what thicker cloth asks for

SayPart say_words(std::string s) { return {std::move(s), ""}; }
SayPart say_figure(std::string key) { return {"", std::move(key)}; }

std::string together(const std::vector<std::string>& names) {
  std::string all;
  for (std::size_t i = 0; i < names.size(); ++i) all += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return all;
}

// What is too large is taken in, what is too small is let out.
bool too_large(const Finding& f) { return f.is == "loose" || f.is == "long"; }

bool of_a_mock_up(const Fitting& fitting) {
  return is_mock_up(fitting.named.name) || fitting.cloth_thickness.origin == Origin::written;
}

class FittingWorked {
 public:
  FittingWorked(const Project& project, const Fitting& fitting, Figures& figures, Diagnostics& diag)
      : project_(project), fitting_(fitting), figures_(figures), diag_(diag), in_(shown_in(project)) {}

  void add(std::vector<FittingChange>& into) {
    for (const Finding& f : fitting_.found) into.push_back(worked_out(f));
    if (auto layers = more_layers()) into.push_back(std::move(*layers));
  }

 private:
  NewFigure figure(const std::string& place, const char* quantity, const SourceSpan& at) {
    NewFigure f(figures_, in_, "fittings", fitting_.named.name, place + "/" + quantity);
    f.at(at);
    return f;
  }

  // It would print as nothing.
  bool too_little(Length each) const { return each.to_step(pleat_step(in_), Rounding::nearest).is_zero(); }

  FittingChange worked_out(const Finding& f) {
    FittingChange change;
    change.fitting = fitting_.named.name;
    change.where = f.where;
    change.at = f.at;
    const std::string found = figure(f.where, "found", f.at).is(f.by).written().add().key;
    change.found = {say_words(f.is + " by "), say_figure(found)};
    const Sharing s = sharing_at(project_, f);
    switch (s.rule) {
      case ChangeRule::girth: girth(f, s, found, change); break;
      case ChangeRule::pleats: pleats(f, s, found, change); break;
      case ChangeRule::closing:
        change.change = {say_words(too_large(f) ? "take in " : "let out "), say_figure(each_edge(f, s.edges, found, change)),
                         say_words(" at each of the two closing edges")};
        break;
      case ChangeRule::wedge: wedge(f, found, change); break;
      case ChangeRule::shoulder_tip:
        change.change = {say_words(too_large(f) ? "take off " : "add "), say_figure(found),
                         say_words(" at the tip of the shoulder, nothing at the neck; move the underarm the same way")};
        break;
      case ChangeRule::top: top(f, found, change); break;
      case ChangeRule::point:
        change.change = {say_words(too_large(f) ? "take out " : "add "), say_figure(found),
                         say_words(" there, to nothing at the next balance mark")};
        break;
    }
    return change;
  }

  // Figures of a change shared over edges, none above what it may take; what is left is said and warned of.
  std::string each_edge(const Finding& f, std::int64_t edges, const std::string& found, FittingChange& change) {
    const Shared s = share(f.by, edges, *f.at_most);
    const std::string count = figure(f.where, "edges", f.at).is(edges).plain_input("seams").add().key;
    const bool whole = s.left.is_zero();
    const std::string total = whole ? worked(f.by, in_) : "(" + worked(f.by, in_) + " − " + worked(s.left, in_) + ")";
    NewFigure each = figure(f.where, "each edge", f.at);
    each.is(s.taken.times(1, edges))
        .from(found)
        .from(count)
        .from("fittings/" + fitting_.named.name + "/" + f.where + "/at most", f.at_most);
    const std::string key =
        each.working(f.where + " of " + fitting_.named.name + ", each edge",
                     whole ? "found / edges" : "(found − left over) / edges", total + " / " + whole_number(edges))
            .add()
            .key;
    if (whole) return key;
    const std::string left = figure(f.where, "left over", f.at)
                                 .is(s.left)
                                 .from(found)
                                 .from(count)
                                 .working("left for another mock-up", "found − edges × at most",
                                          worked(f.by, in_) + " − " + whole_number(edges) + " × " + worked(*f.at_most, in_))
                                 .add()
                                 .key;
    change.left = {say_figure(left), say_words(" is left: sew another mock-up before good cloth is cut")};
    warn("second-mock-up", f,
         capital(f.where) + " of " + fitting_.named.name + " is off by " + worked(f.by, in_) + "; " + whole_number(edges) +
             " edges take " + worked(s.taken, in_) + " at " + worked(*f.at_most, in_) + " each, " + worked(s.left, in_) +
             " is left.",
         "sew another mock-up, or share it over more seams");
    return key;
  }

  void girth(const Finding& f, const Sharing& sharing, const std::string& found, FittingChange& change) {
    if (!sharing.known) return unshared(f, change);
    const std::string key = each_edge(f, sharing.edges, found, change);
    if (too_little(*figures_.length(key))) {
      change.change = {say_words("too little to mark at so many edges: share it over fewer seams")};
      return;
    }
    change.change = {say_words(too_large(f) ? "take in " : "let out "), say_figure(key), say_words(" at each of "),
                     say_figure("fittings/" + fitting_.named.name + "/" + f.where + "/edges"),
                     say_words(" edges: " + together(sharing.seams))};
  }

  void unshared(const Finding& f, FittingChange& change) {
    change.change = {
        say_words((too_large(f) ? std::string("take in") : std::string("let out")) + ": no seam is named that takes it")};
    warn("finding-unshared", f, "Nothing says which seams cross the " + f.where + ", so the change cannot be shared out.",
         project_.seams.empty() ? "name the seams under `seams`"
                                : "`shared over: [" + project_.seams.front().named.name + "]`, say");
  }

  void pleats(const Finding& f, const Sharing& sharing, const std::string& found, FittingChange& change) {
    if (!sharing.known) {
      change.change = {say_words(too_large(f) ? "show less of each pleat" : "show more of each pleat")};
      return;
    }
    const std::string count = figure(f.where, "edges", f.at).is(sharing.edges).plain_input("pleats").add().key;
    const std::string each = figure(f.where, "each pleat", f.at)
                                 .is(f.by.times(1, sharing.edges))
                                 .from(found)
                                 .from(count)
                                 .working(f.where + " of " + fitting_.named.name + ", each pleat", "found / pleats",
                                          worked(f.by, in_) + " / " + whole_number(sharing.edges))
                                 .add()
                                 .key;
    change.change = {say_words("show "), say_figure(each), say_words(too_large(f) ? " less on each of " : " more on each of "),
                     say_figure(count), say_words(" pleats")};
  }

  void wedge(const Finding& f, const std::string& found, FittingChange& change) {
    if (f.is == "tight") {
      change.change = {say_words("clip into the allowance first, no deeper than " + worked(Length::sixty_fourths(24), in_) +
                                 "; look again; pare it last")};
      return;
    }
    const std::string each = each_edge(f, 2, found, change);
    change.change = {say_words("fold out a wedge of "), say_figure(found),
                     say_words(" at the edge, nothing at the bust point; in the nearest seam that is "), say_figure(each),
                     say_words(" at each of its two edges")};
  }

  void top(const Finding& f, const std::string& found, FittingChange& change) {
    const bool at_hem = project_.skirt && project_.skirt->levelled_at.known() && *project_.skirt->levelled_at == "hem";
    if (at_hem)
      change.change = {say_words(too_large(f) ? "turn the hem up by " : "let the hem down by "), say_figure(found),
                       say_words(" there")};
    else
      change.change = {say_words(too_large(f) ? "sink the top edge by " : "raise the top edge by "), say_figure(found),
                       say_words(" there; the hem stays")};
  }

  // The garment is thicker than its mock-up was: its girth grows by 2 pi times the difference.
  std::optional<FittingChange> more_layers() {
    if (!of_a_mock_up(fitting_) || project_.edge(kLayers) != nullptr) return {};
    const Piece* thickest = nullptr;
    Length most;
    for (const Piece& p : project_.pieces) {
      if (!p.part_of.known() || (*p.part_of != PartOf::bodice && *p.part_of != PartOf::corset)) continue;
      Length sum;
      for (const std::string& name : p.from)
        if (const Cloth* c = project_.cloth(name); c != nullptr && c->thickness.known()) sum += *c->thickness;
      if (sum > most) {
        most = sum;
        thickest = &p;
      }
    }
    if (thickest == nullptr || most <= *fitting_.cloth_thickness) return {};
    Sharing sharing = seams_across(project_, "bust");
    if (!sharing.known) sharing = seams_across(project_, "waist");
    if (!sharing.known) return {};
    const Length more = most - *fitting_.cloth_thickness, round = girth_of_layer(more);
    if (round.to_step(cut_step(in_), Rounding::nearest).is_zero()) return {};  // nothing that a tape shows
    const auto fine = [](Length l) { return text_of(l, ShownIn::centimetres, Length::tenth_mm(1), Rounding::nearest).plain(); };
    NewFigure f = figure(kLayers, "round", fitting_.named.at);
    f.is(round).from("fittings/" + fitting_.named.name + "/cloth thickness", fitting_.cloth_thickness);
    for (const std::string& name : thickest->from)
      if (const Cloth* c = project_.cloth(name); c != nullptr) f.from("cloths/" + name + "/thickness", c->thickness);
    f.working("layers more than the mock-up had", "2 π × (layers of " + thickest->named.name + " − mock-up)",
              "2 π × (" + fine(most) + " − " + fine(*fitting_.cloth_thickness) + ")");
    const std::string whole = f.add().key;
    const std::string edges = figure(kLayers, "edges", fitting_.named.at).is(sharing.edges).plain_input("seams").add().key;
    const std::string each = figure(kLayers, "each edge", fitting_.named.at)
                                 .is(round.times(1, sharing.edges))
                                 .from(whole)
                                 .from(edges)
                                 .working("for the thicker layers, each edge", "round / edges",
                                          worked(round, in_) + " / " + whole_number(sharing.edges))
                                 .add()
                                 .key;
    if (round > Length::sixty_fourths(16)) {
      Diagnostic d = message(
          {fitting_.named.name, "fittings", "fitting checklist", true}, Severity::warning, "layers-thicker", fitting_.named.at,
          "The layers of " + thickest->named.name + " go " + worked(round.to_step(cut_step(in_), Rounding::nearest), in_) +
              " farther round than those of " + fitting_.named.name + ", and its pattern holds none of it.",
          "let it out as the fitting's page says; or `cloth thickness` of what the mock-up was made of");
      diag_.add(std::move(d));
    }
    FittingChange change;
    change.fitting = fitting_.named.name;
    change.where = kLayers;
    change.at = fitting_.named.at;
    change.found = {say_words("thicker than the mock-up: "), say_figure(whole), say_words(" more all round")};
    change.change = {say_words("too little to mark on an edge; leave it")};
    if (!too_little(round.times(1, sharing.edges)))
      change.change = {say_words("let out "), say_figure(each), say_words(" at each of "), say_figure(edges),
                       say_words(" edges: " + together(sharing.seams))};
    return change;
  }

  void warn(std::string code, const Finding& f, std::string sentence, std::string hint) {
    diag_.add(message({fitting_.named.name, "fittings", "fitting checklist", true}, Severity::warning, std::move(code), f.at,
                      std::move(sentence), std::move(hint)));
  }

  const Project& project_;
  const Fitting& fitting_;
  Figures& figures_;
  Diagnostics& diag_;
  ShownIn in_;
};

bool same_layers(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  const auto holds = [](const std::vector<std::string>& all, const std::string& one) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& x) { return same_name(x, one); });
  };
  return std::all_of(a.begin(), a.end(), [&](const std::string& x) { return holds(b, x); }) &&
         std::all_of(b.begin(), b.end(), [&](const std::string& x) { return holds(a, x); });
}

}  // namespace

std::vector<FittingChange> add_fittings(const Project& project, Figures& figures, Diagnostics& diag) {
  std::vector<FittingChange> changes;
  for (const Fitting& fitting : project.fittings) FittingWorked(project, fitting, figures, diag).add(changes);
  return changes;
}

bool needs_second_mock_up(const Project& project) {
  if (project.fittings.empty()) return false;
  const std::vector<Finding>& found = project.fittings.back().found;
  return std::any_of(found.begin(), found.end(), [&](const Finding& f) {
    const Sharing s = sharing_at(project, f);
    const bool shared =
        s.rule == ChangeRule::girth || s.rule == ChangeRule::closing || (s.rule == ChangeRule::wedge && f.is != "tight");
    return shared && s.known && f.by > *f.at_most * s.edges;
  });
}

void check_fittings(const Project& project, const std::vector<std::string>& gates, Diagnostics& diag) {
  for (std::size_t i = 0; i < project.fittings.size(); ++i) {
    const Fitting& fitting = project.fittings[i];
    const std::string gate = gate_of_fitting(fitting.named.name, gates);
    const bool held_again = std::any_of(project.fittings.begin() + static_cast<std::ptrdiff_t>(i) + 1, project.fittings.end(),
                                        [&](const Fitting& later) { return gate_of_fitting(later.named.name, gates) == gate; });
    const Subject about{fitting.named.name, "fittings", "fitting checklist"};
    if (!gates.empty() && !find_gate(fitting.named.name, gates).named)
      diag.add(message(about, Severity::warning, "gate-unnamed", fitting.named.at,
                       capital(fitting.named.name) +
                           " is named after none of the fittings in the order of work, or after several; it is taken for " +
                           gate + ".",
                       "name it after one of them: " + together(gates)));
    if (held_again) continue;
    if (!fitting.signed_on.known()) {
      const Day day = project.today.known() ? *project.today : fitting.day.known() ? *fitting.day : make_day(2027, 3, 1);
      diag.add(message(about, Severity::hold, kGateUnsigned,
                       fitting.signed_on.at.line > 0 ? fitting.signed_on.at : fitting.named.at,
                       capital(fitting.named.name) + " is not signed; " +
                           (gates.empty() ? "cutting waits." : "what comes after it and cannot be undone waits."),
                       "when it is right: `signed: " + iso_day(day) + "`"));
    }
    if (!project.taken || project.taken->over.empty() || fitting.wore.empty() || same_layers(project.taken->over, fitting.wore))
      continue;
    Diagnostic d = message(about, Severity::warning, "layers-changed", fitting.named.at,
                           "Measures were taken over " + together(project.taken->over) + "; " + fitting.named.name +
                               " was tried on over " + together(fitting.wore) + ".",
                           "measure again over what will be worn: waist, hip, waist to floor");
    d.also = {project.taken->at};
    diag.add(std::move(d));
  }
}

}  // namespace gownsheaf
