#include "calculate/layers.h"

#include <algorithm>

#include "calculate/cut_list.h"
#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

constexpr std::string_view kStiffness[] = {"limp", "soft", "crisp", "stiff", "board"};
constexpr double kStifferBy = 2;                        // of measured rigidities; common practice, no source
const Length kShrinkApart = Length::sixty_fourths(16);  // 1/4 in, common practice

std::optional<int> class_of(const Cloth& cloth) {
  if (!cloth.stiffness.known()) return std::nullopt;
  for (int i = 0; i < 5; ++i)
    if (*cloth.stiffness == kStiffness[i]) return i;
  return std::nullopt;
}

// Weight times the cube of the bending length, which is half the overhang (ASTM D1388, from memory).
std::optional<double> rigidity(const Cloth& cloth) {
  if (!cloth.overhang.known() || cloth.weight.origin != Origin::written) return std::nullopt;
  const double c = cloth.overhang->in_inches() / 2;
  return cloth.weight->value * c * c * c;
}

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

bool may_get_wet(const Cloth& cloth) { return cloth.care.known() && *cloth.care != "never wet" && *cloth.care != "dry clean"; }

bool shrunk(const Cloth& cloth) { return cloth.shrunk_already.known() && *cloth.shrunk_already; }

class Layers {
 public:
  Layers(const Project& project, Diagnostics& diag) : project_(project), diag_(diag), in_(shown_in(project)) {}

  void check(const Piece& piece) {
    check_nap(piece);
    check_lining(piece);
    const Cloth* outer = piece.from.empty() ? nullptr : project_.cloth(piece.from.front());
    if (outer == nullptr) return;
    for (std::size_t i = 1; i < piece.from.size(); ++i) {
      const Cloth* inner = project_.cloth(piece.from[i]);
      if (inner == nullptr || inner == outer ||
          std::find(piece.from.begin(), piece.from.begin() + static_cast<std::ptrdiff_t>(i), piece.from[i]) !=
              piece.from.begin() + static_cast<std::ptrdiff_t>(i))
        continue;
      check_stiffness(piece, *outer, *inner);
      check_shrinkage(piece, *outer, *inner);
    }
  }

 private:
  void say(Severity severity, const char* code, const Piece& piece, const SourceSpan& at, std::string sentence,
           std::string hint) {
    diag_.add(message({piece.named.name, "pieces", "cutting list"}, severity, code, at, std::move(sentence), std::move(hint)));
  }

  bool pleated_at_top(const Piece& piece) const {
    return std::any_of(project_.pleats.begin(), project_.pleats.end(), [&](const PleatRun& run) {
      return run.kind != PleatKind::plain && std::any_of(run.of.begin(), run.of.end(), [&](const std::string& name) {
               return same_name(name, piece.named.name);
             });
    });
  }

  void check_stiffness(const Piece& piece, const Cloth& outer, const Cloth& inner) {
    if (inner.used_as.known() && (*inner.used_as == UsedAs::strengthening || *inner.used_as == UsedAs::facing)) return;
    const std::string names = capital(inner.named.name) + " under " + outer.named.name + " in " + piece.named.name;
    const char* hint = "a softer layer, or none where it is pleated: `interlining stops` below the top; maker's judgment";
    const auto a = rigidity(outer), b = rigidity(inner);
    if (a && b) {  // both measured: the classes are not asked
      if (*b > kStifferBy * *a)
        say(Severity::warning, "interlining-stiff", piece, inner.overhang.at,
            names + " is more than twice as stiff by its overhang and weight: the outside bubbles, and pleats spring.", hint);
      return;
    }
    const auto outside = class_of(outer), inside = class_of(inner);
    if (!outside || !inside) return;
    const int steps = *inside - *outside;
    if (steps < 2 && !(steps == 1 && pleated_at_top(piece))) return;
    say(Severity::warning, "interlining-stiff", piece, piece.from_at,
        names + " is " + *inner.stiffness + " under " + *outer.stiffness + ": the outside bubbles, and pleats spring.", hint);
  }

  void check_shrinkage(const Piece& piece, const Cloth& outer, const Cloth& inner) {
    if (!may_get_wet(outer) || !may_get_wet(inner) || (shrunk(outer) && shrunk(inner))) return;
    if (piece.length.kind != Size::Kind::finished && piece.length.kind != Size::Kind::cut) return;
    const Ratio a = shrinks_along(outer), b = shrinks_along(inner);
    const Length length = piece.length.value;
    const Length one = a.n == 0 ? Length{} : length.times(a.n, a.d), other = b.n == 0 ? Length{} : length.times(b.n, b.d);
    const Length apart = one > other ? one - other : other - one;
    if (apart <= kShrinkApart) return;
    say(Severity::warning, "shrink-differs", piece, piece.from_at,
        capital(outer.named.name) + " and " + inner.named.name + " shrink apart by " +
            worked(apart.to_step(cut_step(in_), Rounding::nearest), in_) + " over the length of " + piece.named.name + ".",
        "shrink both before they are cut, then write `shrunk already: yes` on each");
  }

  void check_nap(const Piece& piece) {
    if (!piece.lay.known() || (*piece.lay != LayRule::either_way && *piece.lay != LayRule::any_way)) return;
    for (const std::string& name : piece.from) {
      const Cloth* cloth = project_.cloth(name);
      if (cloth == nullptr || !cloth->lay.known() || *cloth->lay != LayRule::one_way) continue;
      say(Severity::hold, "nap-turned", piece, piece.lay.at.line > 0 ? piece.lay.at : piece.named.at,
          capital(piece.named.name) + " may lie " + (*piece.lay == LayRule::any_way ? "turned any way" : "head down") + " on " +
              name + ", which lies one way: its shade would differ from the pieces beside it.",
          "take `lay` out of the piece; one way may need more cloth");
      return;
    }
  }

  void check_lining(const Piece& piece) {
    if (project_.bones.empty() || !piece.lining_longer_by.known() || !piece.lining_longer_by->is_zero()) return;
    for (std::size_t i = 1; i < piece.from.size(); ++i) {
      const Cloth* cloth = project_.cloth(piece.from[i]);
      if (cloth == nullptr || !lining_longer_by(project_, piece, *cloth)) continue;
      say(Severity::warning, "lining-short", piece, piece.lining_longer_by.at,
          capital(cloth->named.name) + " is cut as long as the outside of " + piece.named.name +
              ": a flat lining without a little more length draws the outside into rings.",
          "`lining longer by: 1/4 in`");
      return;
    }
  }

  const Project& project_;
  Diagnostics& diag_;
  ShownIn in_;
};

}  // namespace

std::optional<Given<Length>> lining_longer_by(const Project& project, const Piece& piece, const Cloth& cloth) {
  if (piece.from.empty() || piece.drawn) return std::nullopt;
  if (same_name(piece.from.front(), cloth.named.name) || !cloth.used_as.known() || *cloth.used_as != UsedAs::lining)
    return std::nullopt;
  if (piece.lining_longer_by.known()) return piece.lining_longer_by;
  if (!piece.part_of.known() || *piece.part_of != PartOf::bodice) return std::nullopt;
  if (!project.lining_sewn_in.known() || *project.lining_sewn_in != "flat") return std::nullopt;
  if (project.bones.empty() || piece.lining_longer_by.origin == Origin::to_measure) return std::nullopt;
  return Given<Length>::standing(Length::sixty_fourths(16), 'a', "1/4 in, a flat lining of a close bodice");
}

void check_layers(const Project& project, Diagnostics& diag) {
  Layers layers(project, diag);
  for (const Piece& piece : project.pieces) layers.check(piece);
}

}  // namespace gownsheaf
